/**
 * The board over time: until when each candidate is open, and from when each digit is on the board.
 *
 * A candidate ends twice. It is *open* until the claim that ends it is drawn, and it *shows* a little longer, while it
 * is crossed out or the digit that it sees is being written. Marks end when it no longer shows; the places of a bare
 * digit are those still open.
 */
import { type Candidate, membersOf } from '../grid/candidates.ts';
import { countOf } from '../grid/counting.ts';
import { type Cell, candidateAt, candidatesInCell, cellOf, type Digit, digitOf, type Grid } from '../grid/grid.ts';
import type { Scene } from '../scene/scene.ts';
import type { Film, Frame } from '../timeline/film.ts';
import { enters, type StagedConclusion } from './staged-conclusions.ts';

export interface BoardState {
  readonly grid: Grid;
  readonly standing: Film['standing'];
  /** The digits that the lesson proves, in order, each with its first frame. */
  readonly written: readonly { readonly cell: Cell; readonly digit: Digit; readonly from: Frame }[];
  /** The first frame at which the candidate is no longer open: 0 if it never was, infinite if it stays. */
  openUntil(candidate: Candidate): number;
  /** The first frame at which nothing of it is on the board; not before `openUntil`. */
  showsUntil(candidate: Candidate): number;
  /** The first frame at which a digit on the board rules it out for good; infinite if none does. */
  shutOutFrom(candidate: Candidate): number;
  /** From when the cell holds a digit (0: from the start), and which; the id of the step that writes it. */
  digitOf(cell: Cell): { readonly digit: Digit; readonly from: number; readonly step?: string } | undefined;
}

/** The board that follows from the puzzle and from the proved conclusions. */
export function boardStateOf(scene: Scene, staged: readonly StagedConclusion[]): BoardState {
  const { grid } = scene.puzzle;
  const standing = standingOf(scene);
  const openUntil = new Array<number>(grid.candidateCount).fill(Number.POSITIVE_INFINITY);
  const showsUntil = new Array<number>(grid.candidateCount).fill(Number.POSITIVE_INFINITY);
  const end = (candidate: Candidate, open: number, shows: number) => {
    openUntil[candidate] = Math.min(openUntil[candidate]!, open);
    showsUntil[candidate] = Math.min(showsUntil[candidate]!, shows);
  };
  const shutOutFrom = new Array<number>(grid.candidateCount).fill(Number.POSITIVE_INFINITY);
  const shutOut = (candidate: Candidate, open: number, shows: number) => {
    end(candidate, open, shows);
    shutOutFrom[candidate] = Math.min(shutOutFrom[candidate]!, shows);
  };
  // The placed cell's own candidates first: they disappear immediately, and the list of conflicts contains them too.
  const place = (candidate: Candidate, from: number, othersGone: number) => {
    for (const own of candidatesInCell(grid, cellOf(grid, candidate))) shutOut(own, from, from);
    for (const seen of membersOf(grid.conflicts[candidate]!)) shutOut(seen, from, othersGone);
  };

  const digits = new Map<Cell, { readonly digit: Digit; readonly from: number; readonly step?: string }>();
  for (const { cell, digit } of standing) {
    digits.set(cell, { digit, from: 0 });
    place(candidateAt(grid, cell, digit), 0, 0);
  }
  for (const { value } of scene.puzzle.start) if (value.kind === 'impossible') end(value.candidate, 0, 0);

  const written: { readonly cell: Cell; readonly digit: Digit; readonly from: Frame }[] = [];
  for (const each of staged.filter(enters).sort((a, b) => a.from - b.from)) {
    const { conclusion } = each.checked;
    if (conclusion.kind === 'impossible') {
      end(conclusion.candidate, each.from, each.gone);
      continue;
    }
    const [only, ...others] = membersOf(conclusion.candidates);
    if (only === undefined || others.length > 0) continue;
    const cell = cellOf(grid, only);
    if (digits.has(cell)) continue;
    const digit = digitOf(grid, only);
    digits.set(cell, { digit, from: each.from, step: each.step.step.id });
    written.push({ cell, digit, from: each.from });
    place(only, each.from, each.gone);
  }
  return {
    grid,
    standing,
    written,
    openUntil: (candidate) => openUntil[candidate]!,
    showsUntil: (candidate) => Math.max(openUntil[candidate]!, showsUntil[candidate]!),
    shutOutFrom: (candidate) => shutOutFrom[candidate]!,
    digitOf: (cell) => digits.get(cell),
  };
}

/** The givens, and what was placed before the video begins. */
function standingOf({ puzzle }: Scene): Film['standing'] {
  const { grid, givens, start } = puzzle;
  const given = grid.cells.flatMap((cell) => {
    const digit = givens[cell];
    return digit === undefined ? [] : [{ cell, digit, given: true }];
  });
  const placed = start.flatMap(({ value }) =>
    value.kind === 'one-of' && countOf(value.candidates) === 1
      ? membersOf(value.candidates).map((candidate) => ({
          cell: cellOf(grid, candidate),
          digit: digitOf(grid, candidate),
          given: false,
        }))
      : [],
  );
  const cells = new Set(given.map(({ cell }) => cell));
  return [...given, ...placed.filter(({ cell }) => !cells.has(cell))];
}
