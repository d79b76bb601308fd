/**
 * Sue de Coq (common practice, from memory; also called two-sector disjoint subsets): two or three cells where a box
 * and a line cross, further cells of the line, and further cells of the box. Counting how often each digit can appear
 * in all of them (once if all its places see one another, twice if it has places in both the line's and the box's
 * further cells) gives the number of cells; so each appears as often as it can. A digit that appears once is removed
 * from what sees all its places; one that appears twice is removed from the cells of the crossing, and from the rest of
 * the line and of the box.
 *
 * If all the cells are in one house, it is a naked subset.
 */
import { type Candidates, has, isEmpty, setOf, union } from '../grid/candidates.ts';
import { bitsIn } from '../grid/counting.ts';
import type { Cell, Digit, Grid, HouseShape } from '../grid/grid.ts';
import type { Conclusion } from '../grid/terms.ts';
import type { Position } from '../proof/kernel.ts';
import { combinations } from './combinations.ts';
import { needsEverySet } from './minimal-argument.ts';
import { type CellOneOf, openCells } from './open-cells.ts';
import { fits, forEachConclusion } from './recognition.ts';
import { plainInstance, removalsOf } from './removals.ts';
import { maskOf } from './search-links.ts';
import { digitsOf, ofDigit, seenByAll } from './seen-by-all.ts';
import { type CellSet, readAsCells } from './set-reading.ts';
import { type Instance, type Needless, type Recognition, type Shape, technique } from './technique.ts';

export const sueDeCoq = technique({
  name: 'Sue de Coq',
  plural: 'Sue de Coqs',
  otherNames: [],
  family: 'almost locked sets',
  kindOf: [],
  teaching: { place: 4240, cost: 17, sets: 4, each: 1 },
  isOffered: false,
  phrase: 'step by step',
  page: { under: 'Almost locked sets', shows: 'removals' },
  recognise,
  find,
});

/** The two houses that cross. */
interface Crossing {
  readonly line: HouseShape;
  readonly box: HouseShape;
}

function recognise(shape: Shape): Recognition {
  const { grid } = shape.position;
  const cells = readAsCells(shape.sets);
  if (cells === undefined || cells.length < 4) return undefined;
  const cleared = crossingsOf(grid)
    .map((crossing) => clearedByCrossing(grid, crossing, cells))
    .filter((candidates) => candidates !== undefined);
  if (cleared.length === 0) return undefined;
  return forEachConclusion(shape, (conclusion) =>
    cleared.some((candidates) => follows(candidates, conclusion)) ? fits : undefined,
  );
}

function follows(cleared: Candidates, conclusion: Conclusion): boolean {
  return conclusion.kind === 'impossible' && has(cleared, conclusion.candidate);
}

/** Every line with every box that it crosses in two or more cells. */
function crossingsOf(grid: Grid): Crossing[] {
  const boxes = grid.houses.filter((house) => house.kind === 'box');
  const lines = grid.houses.filter((house) => house.kind !== 'box');
  return lines.flatMap((line) =>
    boxes.map((box) => ({ line, box })).filter(({ box }) => crossed({ line, box }).length > 1),
  );
}

/** The cells where the two cross. */
function crossed({ line, box }: Crossing): Cell[] {
  return line.cells.filter((cell) => box.cells.includes(cell));
}

/** What these cells remove as a Sue de Coq of this line and box; undefined if they are not one. */
function clearedByCrossing(grid: Grid, { line, box }: Crossing, cells: readonly CellSet[]): Candidates | undefined {
  const inside = cells.filter(({ cell }) => line.cells.includes(cell) && box.cells.includes(cell));
  const inLine = cells.filter(({ cell }) => line.cells.includes(cell) && !box.cells.includes(cell));
  const inBox = cells.filter(({ cell }) => box.cells.includes(cell) && !line.cells.includes(cell));
  if (inside.length < 2 || inLine.length === 0 || inBox.length === 0) return undefined;
  if (inside.length + inLine.length + inBox.length !== cells.length) return undefined;
  const members = cells.map((cell) => cell.members).reduce(union);
  const digits = digitsOf(grid, members);
  const placesAmong = (some: readonly CellSet[], digit: Digit) =>
    setOf(
      grid,
      some.flatMap((cell) => ofDigit(grid, cell.members, digit)),
    );
  const isTwice = (digit: Digit) => !isEmpty(placesAmong(inLine, digit)) && !isEmpty(placesAmong(inBox, digit));
  if (digits.length + digits.filter(isTwice).length !== cells.length) return undefined;
  return digits
    .map((digit) => {
      if (!isTwice(digit)) return seenByAll(grid, placesAmong(cells, digit));
      return union(seenByAll(grid, placesAmong(inLine, digit)), seenByAll(grid, placesAmong(inBox, digit)));
    })
    .reduce(union);
}

/** Within each crossing, those with the fewest cells first. */
function* find(
  position: Position,
  _wanted?: readonly Conclusion[],
  needless: Needless = 'left out',
): Generator<Instance> {
  const { grid } = position;
  for (const crossing of crossingsOf(grid)) {
    const { line, box } = crossing;
    const open = openCells(position).map((set) => ({ set, cell: set.source.cell, mask: maskOf(position, set) }));
    const inside = choicesOf(
      open.filter(({ cell }) => line.cells.includes(cell) && box.cells.includes(cell)),
      [2, 3],
    );
    const inLine = choicesOf(
      open.filter(({ cell }) => line.cells.includes(cell) && !box.cells.includes(cell)),
      [1, 2, 3],
    );
    const inBox = choicesOf(
      open.filter(({ cell }) => box.cells.includes(cell) && !line.cells.includes(cell)),
      [1, 2, 3],
    );
    for (const a of inside) {
      for (const b of inLine) {
        for (const c of inBox) {
          const sets = [...a.sets, ...b.sets, ...c.sets];
          if (bitsIn(a.mask | b.mask | c.mask) + bitsIn(b.mask & c.mask) !== sets.length) continue;
          const cleared = clearedByCrossing(grid, crossing, readAsCells(sets) ?? []);
          const conclusions = cleared === undefined ? [] : removalsOf(position, cleared);
          if (conclusions.length === 0) continue;
          if (needless === 'kept' || needsEverySet(position, { sets, conclusions }))
            yield plainInstance(sets, conclusions);
        }
      }
    }
  }
}

interface Choice {
  readonly sets: readonly CellOneOf[];
  readonly mask: number;
}

function choicesOf(
  open: readonly { readonly set: CellOneOf; readonly mask: number }[],
  sizes: readonly number[],
): Choice[] {
  return sizes.flatMap((size) =>
    [...combinations(open, size)].map((choice) => ({
      sets: choice.map((each) => each.set),
      mask: choice.reduce((mask, each) => mask | each.mask, 0),
    })),
  );
}
