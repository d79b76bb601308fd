/**
 * Aligned pair exclusion (common practice, from memory): two cells that see each other. A digit is removed from one of
 * them if every pair that it makes with a digit of the other is impossible: the same digit twice, or two digits that
 * would leave a cell or an almost locked set with too few. Only the other cell and the excluders of the pairs are
 * named.
 *
 * The pivot of an XYZ-wing and a cell that it clears are such a pair. If all the cells are in one house, it is a naked
 * subset.
 */
import { type Candidate, has, isWithin, membersOf, setOf, union } from '../grid/candidates.ts';
import { sees, sharedHouses } from '../grid/geometry.ts';
import { type Cell, cellOf, type Digit, digitOf, type Grid } from '../grid/grid.ts';
import type { Conclusion } from '../grid/terms.ts';
import type { OneOf, Position } from '../proof/kernel.ts';
import { needsEverySet } from './minimal-argument.ts';
import { type CellOneOf, openCells } from './open-cells.ts';
import { fits, forEachConclusion } from './recognition.ts';
import { plainInstance } from './removals.ts';
import { type AlmostLocked, almostLockedSets } from './search-links.ts';
import { cellsOf, digitsOf, ofDigit } from './seen-by-all.ts';
import { readAsCells } from './set-reading.ts';
import { areOfOneHouse } from './strung-chains.ts';
import { type Instance, type Needless, type Recognition, type Shape, technique } from './technique.ts';

export const alignedPairExclusion = technique({
  name: 'aligned pair exclusion',
  plural: 'aligned pair exclusions',
  otherNames: ['APE'],
  family: 'almost locked sets',
  kindOf: [],
  teaching: { place: 4250, cost: 18, sets: 4, each: 1 },
  isOffered: false,
  phrase: 'step by step',
  page: { under: 'Almost locked sets', shows: 'removals' },
  recognise,
  find,
});

function recognise(shape: Shape): Recognition {
  const { grid } = shape.position;
  const cells = readAsCells(shape.sets);
  if (cells === undefined || cells.length < 3 || areOfOneHouse(grid, shape.sets)) return undefined;
  return forEachConclusion(shape, (conclusion) => {
    if (conclusion.kind !== 'impossible') return undefined;
    const { candidate } = conclusion;
    const partners = shape.sets.filter((set) => isCell(set, (cell) => sees(grid, cell, cellOf(grid, candidate))));
    return partners.some((partner) => excludes(grid, candidate, partner, shape.sets)) ? fits : undefined;
  });
}

/** Whether the victim makes an impossible pair with each digit of its partner, and every other set is used for one. */
function excludes(grid: Grid, victim: Candidate, partner: OneOf, sets: readonly OneOf[]): boolean {
  const others = sets.filter((set) => set !== partner);
  if (others.some((set) => isCell(set, (cell) => cell === cellOf(grid, victim)))) return false;
  const used = new Set<OneOf>();
  for (const digit of membersOf(partner.members)) {
    if (has(grid.conflicts[victim]!, digit)) continue;
    const excluders = excludersOf(grid, victim, digit, others);
    if (excluders.length === 0) return false;
    for (const set of excluders.flat()) used.add(set);
  }
  return used.size === others.length;
}

/** The cells and almost locked sets among these that the pair would leave with too few digits. */
function excludersOf(grid: Grid, a: Candidate, b: Candidate, sets: readonly OneOf[]): (readonly OneOf[])[] {
  const found: (readonly OneOf[])[] = [];
  for (let choice = 1; choice < 2 ** Math.min(sets.length, 12); choice++) {
    const cells = sets.filter((_, index) => ((choice >> index) & 1) === 1);
    if (leavesTooFew(grid, a, b, cells)) found.push(cells);
  }
  return found;
}

/** Whether these are almost locked (or one cell of two digits), and the pair strikes two of their digits. */
function leavesTooFew(grid: Grid, a: Candidate, b: Candidate, sets: readonly OneOf[]): boolean {
  const members = sets.map((set) => set.members).reduce(union);
  const cells = cellsOf(grid, members);
  const digits = digitsOf(grid, members);
  if (digits.length !== cells.length + 1 || sharedHouses(grid, cells).length === 0) return false;
  const struck = (candidate: Candidate, digit: Digit) =>
    isWithin(setOf(grid, ofDigit(grid, members, digit)), grid.conflicts[candidate]!);
  return digits.some((one) => struck(a, one) && digits.some((other) => other !== one && struck(b, other)));
}

function isCell({ source }: OneOf, test: (cell: Cell) => boolean): boolean {
  return source.kind === 'cell' && test(source.cell);
}

/** The most cells of an excluder that is searched for. */
const mostCells = 3;

/** For each candidate and each cell that sees its cell, with the smallest excluder of every pair. */
function* find(
  position: Position,
  wanted?: readonly Conclusion[],
  needless: Needless = 'left out',
): Generator<Instance> {
  const { grid } = position;
  const locked = almostLockedSets(position, mostCells);
  const struckBy = new Map<Candidate, readonly Struck[]>();
  for (const candidate of membersOf(position.possible)) struckBy.set(candidate, struck(grid, locked, candidate));
  const isWanted = (candidate: Candidate) =>
    wanted === undefined || wanted.some((each) => each.kind === 'impossible' && each.candidate === candidate);
  for (const cell of openCells(position)) {
    for (const partner of openCells(position)) {
      if (!sees(grid, cell.source.cell, partner.source.cell)) continue;
      for (const victim of membersOf(cell.members).filter(isWanted)) {
        const sets = excluding(grid, struckBy, { victim, partner, cell });
        if (sets === undefined || areOfOneHouse(grid, sets)) continue;
        const conclusions: Conclusion[] = [{ kind: 'impossible', candidate: victim }];
        if (sets.length <= 2) continue;
        if (needless === 'kept' || needsEverySet(position, { sets, conclusions }))
          yield plainInstance(sets, conclusions);
      }
    }
  }
}

/** An almost locked set, and a digit all of whose places there are struck by a candidate. */
interface Struck {
  readonly by: AlmostLocked;
  readonly digit: Digit;
}

function struck(grid: Grid, locked: readonly AlmostLocked[], candidate: Candidate): Struck[] {
  const seen = grid.conflicts[candidate]!;
  return locked.flatMap((by) =>
    by.parts.filter((part) => isWithin(part, seen)).map((part) => ({ by, digit: digitOf(grid, membersOf(part)[0]!) })),
  );
}

/** The partner, and the smallest excluder of each pair that the victim makes with it; undefined if a pair has none. */
function excluding(
  grid: Grid,
  struckBy: ReadonlyMap<Candidate, readonly Struck[]>,
  { victim, partner, cell }: { readonly victim: Candidate; readonly partner: CellOneOf; readonly cell: CellOneOf },
): readonly OneOf[] | undefined {
  const sets = new Set<OneOf>([partner]);
  for (const digit of membersOf(partner.members)) {
    if (has(grid.conflicts[victim]!, digit)) continue;
    const second = struckBy.get(digit) ?? [];
    const excluder = struckBy
      .get(victim)
      ?.find(
        (one) =>
          !one.by.sets.includes(partner) &&
          !one.by.sets.includes(cell) &&
          second.some((other) => other.by === one.by && other.digit !== one.digit),
      );
    if (excluder === undefined) return undefined;
    for (const set of excluder.by.sets) sets.add(set);
  }
  return [...sets];
}
