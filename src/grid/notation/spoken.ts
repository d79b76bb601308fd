/**
 * Cells and candidates in words, as they are read aloud: `row 4 column 5`, `the 5s in row 4 columns 4 and 5`.
 */
import type { Candidate } from '../candidates.ts';
import type { Cell, Grid, HouseShape } from '../grid.ts';
import { printCandidates, printCells } from './print.ts';

/** `column 5 and column 8`, `box 2`, `rows 1 and 2 of columns 5 and 7`: whole houses by their names. Empty for no cells. */
export function spokenCells(grid: Grid, cells: readonly Cell[]): string {
  const left = new Set(cells);
  const houses: HouseShape[] = [];
  for (const house of grid.houses) {
    if (!house.cells.every((cell) => cells.includes(cell)) || !house.cells.some((cell) => left.has(cell))) continue;
    houses.push(house);
    for (const cell of house.cells) left.delete(cell);
  }
  const products = left.size === 0 ? [] : printCells(grid, [...left]).split('|');
  return inSeries([...houses.map(spokenHouse), ...products.map(spokenProduct)]);
}

/** `column 5`. */
export function spokenHouse({ kind, number }: HouseShape): string {
  return `${kind} ${number}`;
}

/** `the 5 in row 4 column 4`, `the 2 and 7 in row 3 column 5`, `the 5s in row 4 columns 4 and 5`. Empty for none. */
export function spokenCandidates(grid: Grid, candidates: readonly Candidate[]): string {
  if (candidates.length === 0) return '';
  const products = printCandidates(grid, candidates).split(' ');
  return inSeries(products.map((product) => `the ${spokenProduct(product)}`));
}

/** `a`, `a and b`, `a, b and c`; `a and b, and c` where one of them is a series itself. */
export function inSeries(texts: readonly string[]): string {
  if (texts.length < 2) return texts.join('');
  const and = texts.some((text) => text.includes(' and ')) ? ', and' : ' and';
  return `${texts.slice(0, -1).join(', ')}${and} ${texts.at(-1)}`;
}

/** `5r4c45`: `5s in row 4 columns 4 and 5`; `r12c57`: `rows 1 and 2 of columns 5 and 7`. */
function spokenProduct(product: string): string {
  const match = /^(\d*)r(\d+)c(\d+)$/.exec(product);
  if (match === null) return product;
  const [, digits = '', rows = '', columns = ''] = match;
  const apart = rows.length > 1 && columns.length > 1 ? ' of ' : ' ';
  const where = `${counted('row', rows)}${apart}${counted('column', columns)}`;
  if (digits === '') return where;
  const several = rows.length * columns.length > 1 ? 's' : '';
  return `${inSeries([...digits].map((digit) => `${digit}${several}`))} in ${where}`;
}

function counted(noun: string, digits: string): string {
  return `${noun}${digits.length > 1 ? 's' : ''} ${inSeries([...digits])}`;
}
