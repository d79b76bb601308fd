/**
 * Arguments that rest on a deadly pattern, read as such: its cells, their digits, its guardians and the other sets.
 */
import type { Candidates } from '../grid/candidates.ts';
import { countOf } from '../grid/counting.ts';
import { columnOf, rowOf } from '../grid/geometry.ts';
import type { Cell, Digit, Grid } from '../grid/grid.ts';
import type { Deadly, PatternPart } from '../grid/terms.ts';
import { guardiansOf } from '../proof/guardians.ts';
import { isPlaced } from '../proof/is-placed.ts';
import type { OneOf, Position } from '../proof/kernel.ts';
import { cellsOf } from './seen-by-all.ts';
import type { Shape } from './technique.ts';

/** An argument with one set of guardians. */
export interface DeadlyReading {
  readonly position: Position;
  readonly deadly: Deadly;
  readonly guardians: Candidates;
  /** The cells that hold guardians. */
  readonly guarded: readonly Cell[];
  /** The argument's other sets. */
  readonly others: readonly OneOf[];
}

/** The argument read this way, if it has exactly one set of guardians. */
export function readDeadly({ position, sets }: Shape): DeadlyReading | undefined {
  const [own, ...more] = sets.filter((set) => set.source.kind === 'guardians');
  if (own === undefined || own.source.kind !== 'guardians' || more.length > 0) return undefined;
  return {
    position,
    deadly: own.source.deadly,
    guardians: own.members,
    guarded: cellsOf(position.grid, own.members),
    others: sets.filter((set) => set !== own),
  };
}

/** The cells of a pattern, in order, each with its digits; undefined if the whole grid is the pattern. */
export function cellsOfPattern(grid: Grid, deadly: Deadly): ReadonlyMap<Cell, readonly Digit[]> | undefined {
  if (deadly.kind === 'grid') return undefined;
  return new Map(
    grid.cells.flatMap((cell): [Cell, readonly Digit[]][] => {
      const parts = deadly.parts.filter((part) => part.cells.includes(cell));
      if (parts.length === 0) return [];
      const digits = new Set(parts.flatMap((part) => part.digits));
      return [[cell, [...digits].sort((a, b) => a - b)]];
    }),
  );
}

/** Four corners in two rows and two columns, which two digits fill between them. */
export interface Rectangle {
  readonly digits: readonly [Digit, Digit];
  readonly corners: readonly Cell[];
}

/** The pattern as a rectangle, if it is one. */
export function readRectangle(grid: Grid, deadly: Deadly): Rectangle | undefined {
  const cells = cellsOfPattern(grid, deadly);
  if (cells?.size !== 4) return undefined;
  const corners = [...cells.keys()];
  const digits = new Set([...cells.values()].flat());
  const rows = new Set(corners.map((cell) => rowOf(grid, cell)));
  const columns = new Set(corners.map((cell) => columnOf(grid, cell)));
  if (digits.size !== 2 || rows.size !== 2 || columns.size !== 2) return undefined;
  const [low, high] = [...digits].sort((a, b) => a - b);
  return { digits: [low!, high!], corners };
}

/** The pattern of these parts with its guardians, if the kernel accepts it and there are guardians. */
export function guardedPattern(
  position: Position,
  parts: readonly PatternPart[],
): { deadly: Deadly; set: OneOf } | undefined {
  const deadly = { kind: 'pattern', parts } as const;
  const set = guardiansOf(position, deadly);
  return 'refused' in set ? undefined : { deadly, set };
}

/** How many of the cells hold their digit. */
export function placedAmong(position: Position, cells: readonly Cell[]): number {
  return cells.filter((cell) => isPlaced(position, cell)).length;
}

/** Whether the set is a single candidate. */
export function isOneCandidate(set: Candidates): boolean {
  return countOf(set) === 1;
}
