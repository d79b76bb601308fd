/**
 * The givens: one symbol a cell, read row by row, and whether they agree with one another.
 */
import { columnOf, digit, rowOf, sees, sharedHouses } from '../grid/geometry.ts';
import { type BoxShape, type Cell, type Digit, type Grid, gridOf } from '../grid/grid.ts';
import { printCell } from '../grid/notation/print.ts';
import { type Faults, listed, quoted } from './faults.ts';
import { spanIn, type TextNode } from './yaml-tree.ts';

/** By cell the given, if there is one; undefined after a report. */
export type Givens = readonly (Digit | undefined)[];

interface Symbol {
  readonly text: string;
  readonly at: number;
}

/**
 * The givens of the text, with all faults reported: strange characters, too few or too many cells, a digit twice in a
 * house.
 */
export function readGivens(node: TextNode, grid: Grid, faults: Faults): Givens | undefined {
  const symbols = symbolsOf(node.text);
  const strange = symbols.filter((symbol) => isStrange(symbol, grid));
  reportStrange(node, symbols, grid, faults);
  if (symbols.length !== grid.cellCount) {
    // A word among the givens is one fault, not also too many cells.
    if (symbols.length - strange.length !== grid.cellCount) reportCount(node, symbols, grid, faults);
    return undefined;
  }
  if (strange.length > 0) return undefined;
  const givens = symbols.map(({ text }) => (isBlankSign(text) ? undefined : digit(grid, Number(text))));
  return reportClashes(node, symbols, givens, grid, faults) ? undefined : givens;
}

/** The box shape that the number of symbols suggests, if `boxes` does not give it. */
export function shapeByCount(text: string): BoxShape | undefined {
  const count = symbolsOf(text).length;
  const shapes: readonly BoxShape[] = ['3x3', '2x4', '2x3', '2x2'];
  return shapes.find((shape) => gridOf(shape).cellCount === count);
}

function symbolsOf(text: string): readonly Symbol[] {
  const symbols: Symbol[] = [];
  let at = 0;
  for (const sign of text) {
    if (!/[\s|+-]/.test(sign)) symbols.push({ text: sign, at });
    at += sign.length;
  }
  return symbols;
}

function isStrange({ text }: Symbol, grid: Grid): boolean {
  return !isBlankSign(text) && !isDigitOf(grid, text);
}

/** Each sequence of strange characters on one line is one fault. */
function reportStrange(node: TextNode, symbols: readonly Symbol[], grid: Grid, faults: Faults): void {
  let index = 0;
  while (index < symbols.length) {
    const first = symbols[index++]!;
    if (!isStrange(first, grid)) continue;
    let end = first.at + first.text.length;
    for (; index < symbols.length; index++) {
      const next = symbols[index]!;
      if (!isStrange(next, grid) || node.text.slice(end, next.at).includes('\n')) break;
      end = next.at + next.text.length;
    }
    const written = quoted(node.text.slice(first.at, end));
    const fix = `a cell is 1 to ${grid.size}, or . 0 _ where it is empty`;
    faults.error(
      'givens-sign',
      spanIn(node, first.at, end),
      `${written} is neither a digit of this grid nor a blank; ${fix}`,
    );
  }
}

function isBlankSign(text: string): boolean {
  return text === '.' || text === '0' || text === '_';
}

function isDigitOf(grid: Grid, text: string): boolean {
  return /^[1-9]$/.test(text) && Number(text) <= grid.size;
}

/**
 * Says how many cells there are and should be, and points to the lines that are too short or too long, if there are
 * any.
 */
function reportCount(node: TextNode, symbols: readonly Symbol[], grid: Grid, faults: Faults): void {
  const expected = `expected ${grid.cellCount} (${grid.size} rows of ${grid.size})`;
  const isDrawn = grid.boxRows === grid.size; // the regions say how large the board is
  const shape = isDrawn ? undefined : shapeByCount(node.text);
  const other = shape === undefined ? '' : `; ${symbols.length} cells are a puzzle of boxes: ${shape}`;
  const there = `${symbols.length} ${symbols.length === 1 ? 'cell is' : 'cells are'} among the givens, ${expected}${other}`;
  const lines = linesOf(node.text, symbols).filter(({ count }) => count > 0);
  const odd = lines.filter(({ count }) => count !== grid.size);
  const [first, ...others] = odd;
  // If the text is not laid out row by row, no single line is at fault.
  if (first === undefined || odd.length > lines.length / 2) {
    faults.error('givens-count', node.span, there);
    return;
  }
  const notes = others.map(({ from, to, count }) => ({
    span: spanIn(node, from, to),
    message: `this row has ${count}`,
  }));
  faults.error(
    'givens-count',
    spanIn(node, first.from, first.to),
    `this row has ${first.count} cells; ${there}`,
    notes,
  );
}

interface Line {
  readonly from: number;
  readonly to: number;
  readonly count: number;
}

function linesOf(text: string, symbols: readonly Symbol[]): readonly Line[] {
  const lines: Line[] = [];
  let start = 0;
  for (const line of text.split('\n')) {
    const from = start + line.length - line.trimStart().length;
    const to = start + line.trimEnd().length;
    const count = symbols.filter(({ at }) => at >= start && at < start + line.length).length;
    lines.push({ from, to: Math.max(from, to), count });
    start += line.length + 1;
  }
  return lines;
}

/** Reports every two givens that clash; whether there are any. */
function reportClashes(
  node: TextNode,
  symbols: readonly Symbol[],
  givens: Givens,
  grid: Grid,
  faults: Faults,
): boolean {
  const clashing = grid.cells.flatMap((second) => {
    const first = grid.cells.find((cell) => cell < second && clash(grid, givens, cell, second));
    return first === undefined ? [] : [{ first, second }];
  });
  const placeOf = (cell: Cell) => spanIn(node, symbols[cell]!.at, symbols[cell]!.at + 1);
  for (const { first, second } of clashing) {
    const message = `${givens[second]} stands in ${printCell(grid, first)} and in ${printCell(grid, second)}, ${whyApart(grid, first, second)}`;
    faults.error('givens-clash', placeOf(second), message, [
      { span: placeOf(first), message: `the other ${givens[first]}` },
    ]);
  }
  return clashing.length > 0;
}

/** Why two cells cannot hold the same digit: their houses, or else a rule of the board. */
function whyApart(grid: Grid, a: Cell, b: Cell): string {
  const houses = sharedHouses(grid, [a, b]).map((house) => house.name);
  if (houses.length > 0) return `both in ${listed(houses, 'and')}; a house holds each digit once`;
  const isDiagonalStep = Math.abs(rowOf(grid, a) - rowOf(grid, b)) === Math.abs(columnOf(grid, a) - columnOf(grid, b));
  return `which the rule ${isDiagonalStep ? 'anti-king' : 'anti-knight'} keeps apart`;
}

function clash(grid: Grid, givens: Givens, a: Cell, b: Cell): boolean {
  return givens[a] !== undefined && givens[a] === givens[b] && sees(grid, a, b);
}
