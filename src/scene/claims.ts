/**
 * What a step claims, as far as its marks need it: a mark may draw nothing that the step does not claim.
 */
import { type Candidate, membersOf } from '../grid/candidates.ts';
import { type Cell, cellOf, digitOf, type Grid } from '../grid/grid.ts';
import type { Conclusion } from '../grid/terms.ts';
import type { Step } from './scene.ts';

export interface Claims {
  /** By chain: how many links it has; undefined where a chain could not be read. */
  readonly links: readonly number[] | undefined;
  /** The argument is to be searched for, and may turn out to be a chain. */
  readonly mayHaveLinks: boolean;
  /** Whether the step removes this candidate, or may, as far as can be known before anything is proved. */
  removes(candidate: Candidate): boolean;
  readonly removesAny: boolean;
  places(cell: Cell): boolean;
  readonly placesAny: boolean;
}

/** The part of a step that contains its claims. */
export type Claiming = Pick<Step, 'from' | 'chains' | 'deadly' | 'so' | 'only' | 'pencil' | 'cascade'>;

/** `isWhole`: every part of the claims was readable. If not, the marks are not checked against them. */
export function claimsForMarks(step: Claiming, grid: Grid, isWhole: boolean): Claims {
  const conclusions = [
    ...(step.so?.kind === 'listed' ? step.so.conclusions : []),
    ...step.cascade.flatMap((item) => item.conclusions),
  ].map((each) => each.value);
  const removed = new Set(conclusions.flatMap((each) => (each.kind === 'impossible' ? [each.candidate] : [])));
  const placed = new Set(conclusions.flatMap((each) => placedBy(each, grid)));
  const open = !isWhole || step.so?.kind === 'all';
  return {
    links: isWhole ? step.chains.map((chain) => chain.value.links.length) : undefined,
    mayHaveLinks:
      step.so !== undefined && step.from.length === 0 && step.deadly === undefined && step.chains.length === 0,
    removes: (candidate) => open || removed.has(candidate) || leavesOut(step, candidate, grid),
    removesAny: open || removed.size > 0 || step.only.length > 0 || step.pencil.length > 0,
    places: (cell) => !isWhole || placed.has(cell),
    placesAny: !isWhole || placed.size > 0,
  };
}

/** Whether `pencil` or `only` omits the candidate. */
function leavesOut(step: Claiming, candidate: Candidate, grid: Grid): boolean {
  const [cell, digit] = [cellOf(grid, candidate), digitOf(grid, candidate)];
  const lists = step.pencil.flatMap((item) => item.lists);
  if (lists.some((list) => list.cell === cell && !list.digits.includes(digit))) return true;
  const places = step.only.flatMap((item) => item.places);
  return places.some(
    ({ digit: of, house, cells }) => of === digit && house.cells.includes(cell) && !cells.includes(cell),
  );
}

function placedBy(conclusion: Conclusion, grid: Grid): readonly Cell[] {
  if (conclusion.kind === 'impossible') return [];
  const members = membersOf(conclusion.candidates);
  return members.length === 1 ? members.map((each) => cellOf(grid, each)) : [];
}
