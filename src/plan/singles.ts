/**
 * Singles until there are none: cells with one digit left, digits with one place left in a house. A search closes every
 * position that it reaches, so this works on masks; each placement still goes through the kernel, from the one set that
 * shows it.
 */

import { has } from '../grid/candidates.ts';
import { bitsIn } from '../grid/counting.ts';
import { type Cell, candidateAt, type Digit, type Grid, type HouseShape } from '../grid/grid.ts';
import { isPlaced } from '../proof/is-placed.ts';
import { after, digitsIn, type OneOf, oneOf, type Position, placesIn, prove } from '../proof/kernel.ts';
import type { ArgumentName } from '../techniques/all-techniques.ts';

export const singleNames = ['full house', 'hidden single', 'naked single'] as const satisfies readonly ArgumentName[];
export type SingleName = (typeof singleNames)[number];

export interface Single {
  readonly name: SingleName;
  readonly cell: Cell;
  readonly digit: Digit;
  /** As in the position in which it was found. */
  readonly set: OneOf;
  readonly position: Position;
}

/**
 * Places singles of these kinds one after the other until there is none, the easiest to see first: full houses, then
 * digits in boxes, in lines, in cells (common practice). Each is passed to `report` as it is placed.
 */
export function placeSingles(
  start: Position,
  kinds: readonly ArgumentName[],
  report?: (single: Single) => void,
): Position {
  let position = start;
  const board = boardOf(position);
  for (;;) {
    const found = nextSingle(board, kinds);
    if (found === undefined) return position;
    const { name, cell, digit, house } = found;
    const set = house === undefined ? digitsIn(position, cell) : placesIn(position, digit, house);
    const outcome = prove(position, [set], oneOf(position.grid, candidateAt(position.grid, cell, digit)));
    if (outcome.kind !== 'proved') return position; // some cell has no digit left: nothing here can be trusted
    report?.({ name, cell, digit, set, position });
    position = after(position, [outcome.proof]);
    place(board, cell, digit);
  }
}

interface Board {
  readonly grid: Grid;
  /** By cell: the mask of its digits, digit 1 lowest. */
  readonly digits: number[];
  /** By cell: whether its digit is placed. */
  readonly settled: boolean[];
  /** By house: how many of its cells are open. */
  readonly open: number[];
}

function boardOf(position: Position): Board {
  const { grid, possible } = position;
  const digits = grid.cells.map((cell) => {
    let mask = 0;
    for (const digit of grid.digits) if (has(possible, candidateAt(grid, cell, digit))) mask |= 1 << (digit - 1);
    return mask;
  });
  const settled = grid.cells.map((cell) => isPlaced(position, cell));
  const open = grid.houses.map((house) => house.cells.filter((cell) => !settled[cell]).length);
  return { grid, digits, settled, open };
}

function place({ grid, digits, settled, open }: Board, cell: Cell, digit: Digit): void {
  const bit = 1 << (digit - 1);
  digits[cell] = bit;
  settled[cell] = true;
  for (const house of grid.housesOf[cell]!) open[house.house]!--;
  for (const peer of grid.peers[cell]!) digits[peer]! &= ~bit;
}

interface Found {
  readonly name: SingleName;
  readonly cell: Cell;
  readonly digit: Digit;
  /** The house that shows it; undefined if the cell does. */
  readonly house: HouseShape | undefined;
}

function nextSingle(board: Board, kinds: readonly ArgumentName[]): Found | undefined {
  return (
    (kinds.includes('full house') ? fullHouse(board) : undefined) ??
    (kinds.includes('hidden single') ? hiddenSingle(board) : undefined) ??
    (kinds.includes('naked single') ? nakedSingle(board) : undefined)
  );
}

function fullHouse({ grid, digits, settled, open }: Board): Found | undefined {
  for (const house of grid.houses) {
    if (open[house.house] !== 1) continue;
    const cell = house.cells.find((each) => !settled[each])!;
    if (bitsIn(digits[cell]!) === 1)
      return { name: 'full house', cell, digit: lowest(digits[cell]!), house: undefined };
  }
  return undefined;
}

function hiddenSingle({ grid, digits, settled }: Board): Found | undefined {
  let inLine: Found | undefined;
  for (const house of grid.houses) {
    if (inLine !== undefined && house.kind !== 'box') continue;
    let once = 0;
    let twice = 0;
    for (const cell of house.cells) {
      twice |= once & digits[cell]!;
      once |= digits[cell]!;
    }
    for (let rest = once & ~twice; rest !== 0; rest &= rest - 1) {
      const digit = lowest(rest);
      const cell = house.cells.find((each) => (digits[each]! & (1 << (digit - 1))) !== 0)!;
      if (settled[cell]) continue;
      const found: Found = { name: 'hidden single', cell, digit, house };
      if (house.kind === 'box') return found;
      inLine ??= found;
    }
  }
  return inLine;
}

function nakedSingle({ grid, digits, settled }: Board): Found | undefined {
  const cell = grid.cells.find((each) => !settled[each] && bitsIn(digits[each]!) === 1);
  return cell === undefined
    ? undefined
    : { name: 'naked single', cell, digit: lowest(digits[cell]!), house: undefined };
}

function lowest(mask: number): Digit {
  return (32 - Math.clz32(mask & -mask)) as Digit;
}
