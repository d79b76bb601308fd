/**
 * Arguments as a scene writes them, on an otherwise empty board: `only` and `pencil` say what is possible.
 */
import { buildArgument } from '../../src/check/argument.ts';
import { has } from '../../src/grid/candidates.ts';
import { candidateAt, type Digit, type Grid, gridOf } from '../../src/grid/grid.ts';
import { parseChain } from '../../src/grid/notation/chain.ts';
import { parseConclusions } from '../../src/grid/notation/conclusions.ts';
import { parseOnly, parsePencil } from '../../src/grid/notation/lists.ts';
import { printConclusion, printSet } from '../../src/grid/notation/print.ts';
import { parseSets } from '../../src/grid/notation/sets.ts';
import type { Conclusion, Reading } from '../../src/grid/terms.ts';
import { begin, type OneOf, type Position, prove, takeAsRead } from '../../src/proof/kernel.ts';
import type { Instance, Shape } from '../../src/techniques/technique.ts';

export interface Written {
  readonly grid?: Grid;
  /** `7c5 in r19c5`: the places of the digit in the house are these. */
  readonly only?: string;
  /** `12r1c1`: the digits of the cell are these. */
  readonly pencil?: string;
  /** `r1c1=4`: what is on the board. */
  readonly placed?: string;
  readonly from?: string;
  readonly chain?: string;
  readonly so: string;
}

/** The position that is described. */
export function positionWith({
  grid = gridOf('3x3'),
  only = '',
  pencil = '',
  placed = '',
}: Omit<Written, 'so'>): Position {
  let position = begin(grid, [], { oneSolution: true });
  const keep = (
    among: readonly (readonly [cell: number, digit: Digit])[],
    kept: (cell: number, digit: Digit) => boolean,
  ) => {
    for (const [cell, digit] of among) {
      const candidate = candidateAt(grid, grid.cells[cell]!, digit);
      if (kept(cell, digit) || !has(position.possible, candidate)) continue;
      position = takeAsRead(position, { kind: 'impossible', candidate });
    }
  };
  for (const { digit, house, cells } of readIf(only, parseOnly, grid)) {
    keep(
      house.cells.map((cell) => [cell, digit]),
      (cell) => cells.some((each) => each === cell),
    );
  }
  for (const { cell, digits } of readIf(pencil, parsePencil, grid)) {
    keep(
      grid.digits.map((digit) => [cell, digit]),
      (_, digit) => digits.includes(digit),
    );
  }
  for (const { conclusion } of readIf(placed, parseConclusions, grid)) position = takeAsRead(position, conclusion);
  return position;
}

/** The argument in its position. What it concludes must be proved by it, so that no test is about a broken one. */
export function shapeOf(written: Written): Shape {
  const position = positionWith(written);
  const { grid } = position;
  const span = { start: 0, end: 0 };
  const at = <T>(value: T) => ({ value, span });
  const from = readIf(written.from ?? '', parseSets, grid).map(({ name }) => at(name));
  const chains = written.chain === undefined ? [] : [at(read(parseChain(grid, written.chain)))];
  const built = buildArgument(position, { from, chains, deadly: undefined }, new Map());
  const conclusions = conclusionsIn(grid, written.so);
  const sets = built.sets.map((named) => named.set);
  for (const conclusion of conclusions) {
    const { kind } = prove(position, sets, conclusion);
    if (kind !== 'proved') throw new Error(`${printConclusion(grid, conclusion)} is ${kind}`);
  }
  const broken = built.links.filter((link) => !link.holds);
  if (broken.length > 0) throw new Error(`${broken[0]!.from} and ${broken[0]!.to} are not linked`);
  return { position, sets, chains: chains.map((chain) => chain.value), deadly: undefined, conclusions };
}

export function conclusionsIn(grid: Grid, text: string): Conclusion[] {
  return readIf(text, parseConclusions, grid).map(({ conclusion }) => conclusion);
}

/** `7c5 7c8 => r1c7<>7`. */
export function printInstance({ grid }: Position, { sets, conclusions }: Instance): string {
  const named = sets.map((set) => printSource(grid, set)).join(' ');
  return `${named} => ${conclusions.map((conclusion) => printConclusion(grid, conclusion)).join(' ')}`;
}

export function printSource(grid: Grid, { source }: OneOf): string {
  return source.kind === 'cell' || source.kind === 'places' ? printSet(grid, source) : source.kind;
}

function readIf<T>(text: string, parse: (grid: Grid, text: string) => Reading<readonly T[]>, grid: Grid): readonly T[] {
  return text === '' ? [] : read(parse(grid, text));
}

/** What was read; a fault in the text is a fault of the test. */
export function read<T>(reading: Reading<T>): T {
  if (!reading.ok) throw new Error(reading.faults.map((fault) => fault.message).join('; '));
  return reading.value;
}
