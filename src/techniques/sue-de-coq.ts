/**
 * Sue de Coq (common practice, from memory; also called two-sector disjoint subsets): two or three cells where a box and a
 * line cross, further cells of the line, and further cells of the box. Counting how often each digit can stand in them
 * all, once where all its places see one another and twice where it has places in line and box apart, gives as many as
 * there are cells; so each stands as often as it can. A digit that stands once goes from what sees all its places; one
 * that stands twice goes from the cells of the crossing, and from the rest of the line and of the box.
 *
 * Cells of one house alone are a naked subset.
 */
import { type Candidates, has, isEmpty, setOf, union } from '../grid/candidates.ts';
import type { Cell, Digit, Grid, HouseShape } from '../grid/grid.ts';
import type { Conclusion } from '../grid/terms.ts';
import { fits, forEachConclusion } from './recognition.ts';
import { digitsOf, ofDigit, seenByAll } from './seen-by-all.ts';
import { type CellSet, readAsCells } from './set-reading.ts';
import type { Recognition, Shape, Technique } from './technique.ts';

export const sueDeCoq: Technique = { name: 'Sue de Coq', recognise, find: undefined };

/** The two houses that cross. */
export interface Crossing {
  readonly line: HouseShape;
  readonly box: HouseShape;
}

function recognise(shape: Shape): Recognition {
  const { grid } = shape.position;
  const cells = readAsCells(shape.sets);
  if (cells === undefined || cells.length < 4) return undefined;
  const cleared = crossingsOf(grid).flatMap((crossing) => clearedByCrossing(grid, crossing, cells) ?? []);
  if (cleared.length === 0) return undefined;
  return forEachConclusion(shape, (conclusion) => (cleared.some((candidates) => follows(candidates, conclusion)) ? fits : undefined));
}

function follows(cleared: Candidates, conclusion: Conclusion): boolean {
  return conclusion.kind === 'impossible' && has(cleared, conclusion.candidate);
}

/** Every line with every box that it crosses in two cells or more. */
export function crossingsOf(grid: Grid): Crossing[] {
  const boxes = grid.houses.filter((house) => house.kind === 'box');
  const lines = grid.houses.filter((house) => house.kind !== 'box');
  return lines.flatMap((line) => boxes.map((box) => ({ line, box })).filter(({ box }) => crossed({ line, box }).length > 1));
}

/** The cells where the two cross. */
export function crossed({ line, box }: Crossing): Cell[] {
  return line.cells.filter((cell) => box.cells.includes(cell));
}

/** What these cells clear as a Sue de Coq of this line and box; undefined if they are none. */
export function clearedByCrossing(grid: Grid, { line, box }: Crossing, cells: readonly CellSet[]): Candidates | undefined {
  const inside = cells.filter(({ cell }) => line.cells.includes(cell) && box.cells.includes(cell));
  const inLine = cells.filter(({ cell }) => line.cells.includes(cell) && !box.cells.includes(cell));
  const inBox = cells.filter(({ cell }) => box.cells.includes(cell) && !line.cells.includes(cell));
  if (inside.length < 2 || inLine.length === 0 || inBox.length === 0) return undefined;
  if (inside.length + inLine.length + inBox.length !== cells.length) return undefined;
  const members = cells.map((cell) => cell.members).reduce(union);
  const digits = digitsOf(grid, members);
  const placesAmong = (some: readonly CellSet[], digit: Digit) => setOf(grid, some.flatMap((cell) => ofDigit(grid, cell.members, digit)));
  const isTwice = (digit: Digit) => !isEmpty(placesAmong(inLine, digit)) && !isEmpty(placesAmong(inBox, digit));
  if (digits.length + digits.filter(isTwice).length !== cells.length) return undefined;
  return digits
    .map((digit) => {
      if (!isTwice(digit)) return seenByAll(grid, placesAmong(cells, digit));
      return union(seenByAll(grid, placesAmong(inLine, digit)), seenByAll(grid, placesAmong(inBox, digit)));
    })
    .reduce(union);
}
