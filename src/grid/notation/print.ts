/**
 * Notation written out, each thing in one form: ASCII, lower case, in reading order. What is printed here is read
 * back by the parsers beside this file as the same thing.
 */
import { type Candidate, type Candidates, membersOf } from '../candidates.ts';
import { countOf } from '../counting.ts';
import { columnOf, rowOf } from '../geometry.ts';
import { type Cell, cellOf, type Digit, digitOf, type Grid, type HouseShape } from '../grid.ts';
import type { Chain, ChainNode, Conclusion, Deadly, OnlyPlaces, PencilList, SetName, Target } from '../terms.ts';

/** `r3c5`. */
export function printCell(grid: Grid, cell: Cell): string {
  return `r${rowOf(grid, cell)}c${columnOf(grid, cell)}`;
}

/** Cells in as few products as rows or columns give, joined: `r12c57`, `r8c1|r9c3`. Empty for no cells. */
export function printCells(grid: Grid, cells: readonly Cell[]): string {
  return productsOf(grid, cells).join('|');
}

/** `r3`. */
export function printHouse(house: HouseShape): string {
  return house.name;
}

/** `27`. */
export function printDigits(digits: readonly Digit[]): string {
  return digits.join('');
}

/** `7r3c5`. */
export function printCandidate(grid: Grid, candidate: Candidate): string {
  return `${digitOf(grid, candidate)}${printCell(grid, cellOf(grid, candidate))}`;
}

/** Candidates put together where that is shorter: `27r3c5`, `7r12c5`, apart from one another by a blank. */
export function printCandidates(grid: Grid, candidates: readonly Candidate[]): string {
  const inCell = (candidate: Candidate) => cellOf(grid, candidate);
  const ofDigit = (candidate: Candidate) => digitOf(grid, candidate);
  const products = (digits: readonly Digit[], cells: readonly Cell[]) =>
    productsOf(grid, cells).map((product) => printDigits(digits) + product);
  const byCells = grouped(candidates, inCell, ofDigit)
    .flatMap(([cells, digits]) => products(digits, cells))
    .join(' ');
  const byDigits = grouped(candidates, ofDigit, inCell)
    .flatMap(([digits, cells]) => products(digits, cells))
    .join(' ');
  return byDigits.length < byCells.length ? byDigits : byCells;
}

/** A node without brackets: `7r12c5`, `15r27c7`. */
export function printNode(grid: Grid, node: ChainNode): string {
  return printProduct(grid, node.digits, node.cells);
}

/** `r9c1`, `7c5`, `step towers`. */
export function printSet(grid: Grid, set: SetName): string {
  switch (set.kind) {
    case 'cell':
      return printCell(grid, set.cell);
    case 'places':
      return `${set.digit}${set.house.name}`;
    case 'step':
      return `step ${set.id}`;
    default:
      return set satisfies never;
  }
}

/** `r1c7<>7`, `r8c4=8`, `either 7r1c5 7r2c8`. */
export function printConclusion(grid: Grid, conclusion: Conclusion): string {
  switch (conclusion.kind) {
    case 'impossible':
      return printAbout(grid, conclusion.candidate, '<>');
    case 'one-of':
      return printOneOf(grid, conclusion.candidates);
    default:
      return conclusion satisfies never;
  }
}

/** Removals put together where that is shorter (`r1c79<>7`), then placements and either/ors in their order. */
export function printConclusions(grid: Grid, conclusions: readonly Conclusion[]): string[] {
  const removed = conclusions.flatMap((each) => (each.kind === 'impossible' ? [each.candidate] : []));
  const removals = removed.length === 0 ? [] : printCandidates(grid, removed).split(' ');
  const others = conclusions.filter(({ kind }) => kind === 'one-of').map((each) => printConclusion(grid, each));
  return [...removals.map((each) => each.replace(/^(\d+)(r.*)$/, '$2<>$1')), ...others];
}

/**
 * A chain with each digit left out where it carries on, neighbours in the same cells in one bracket, a loop closed by
 * its first node: `(7=8)r1c2-(8=5)r4c2-(5=7)r4c9 => r4c1<>7`, `(7)r1c5=r9c5-r9c8=r1c8-r1c5`.
 */
export function printChain(grid: Grid, chain: Chain): string {
  const order = [...chain.nodes.keys(), ...(chain.loop ? [0] : [])].map((index) => chain.nodes[index]!);
  let text = '';
  let bracketOf: number | undefined;
  for (const [index, node] of order.entries()) {
    const next = order[index + 1];
    const sign = chain.links[index]?.kind === 'weak' ? '-' : '=';
    const inBracket = bracketOf === index - 1 && index > 0;
    const opensBracket = !inBracket && next !== undefined && isSame(node.cells, next.cells);
    if (inBracket) text += `${printDigits(node.digits)})${printCells(grid, node.cells)}`;
    else if (opensBracket) text += `(${printDigits(node.digits)}`;
    else if (index > 0 && isSame(node.digits, order[index - 1]!.digits)) text += printCells(grid, node.cells);
    else text += `(${printDigits(node.digits)})${printCells(grid, node.cells)}`;
    bracketOf = opensBracket ? index : undefined;
    if (next !== undefined) text += sign;
  }
  if (chain.concludes.length === 0) return text;
  return `${text} => ${chain.concludes.map((conclusion) => printConclusion(grid, conclusion)).join(' ')}`;
}

/** `12r34c58`, `grid`, `grid without 7r1c5 3r4c4`. */
export function printDeadly(grid: Grid, deadly: Deadly): string {
  switch (deadly.kind) {
    case 'pattern':
      return deadly.parts.map((part) => printProduct(grid, part.digits, part.cells)).join(' ');
    case 'grid':
      return deadly.without === undefined ? 'grid' : `grid without ${printCandidates(grid, membersOf(deadly.without))}`;
    default:
      return deadly satisfies never;
  }
}

/** `4b5 in r4c46`. */
export function printOnly(grid: Grid, only: OnlyPlaces): string {
  return `${only.digit}${only.house.name} in ${printCells(grid, only.cells)}`;
}

/** `2358r9c1`. */
export function printPencil(grid: Grid, list: PencilList): string {
  return printProduct(grid, list.digits, [list.cell]);
}

/** `r12c5`, `c5`, `7r1c5 8r2c3`, `7`. */
export function printTarget(grid: Grid, target: Target): string {
  switch (target.kind) {
    case 'cells':
      return printCells(grid, target.cells);
    case 'house':
      return printHouse(target.house);
    case 'candidates':
      return printCandidates(grid, target.candidates);
    case 'digit':
      return `${target.digit}`;
    default:
      return target satisfies never;
  }
}

function printProduct(grid: Grid, digits: readonly Digit[], cells: readonly Cell[]): string {
  return `${printDigits(digits)}${printCells(grid, cells)}`;
}

function printAbout(grid: Grid, candidate: Candidate, sign: '<>' | '='): string {
  return `${printCell(grid, cellOf(grid, candidate))}${sign}${digitOf(grid, candidate)}`;
}

function printOneOf(grid: Grid, candidates: Candidates): string {
  const members = membersOf(candidates);
  if (countOf(candidates) === 1) return printAbout(grid, members[0]!, '=');
  return `either ${members.map((candidate) => printCandidate(grid, candidate)).join(' ')}`;
}

/** The fewest products that grouping by rows or by columns gives, by rows where both give the same number. */
function productsOf(grid: Grid, cells: readonly Cell[]): string[] {
  const inRow = (cell: Cell) => rowOf(grid, cell);
  const inColumn = (cell: Cell) => columnOf(grid, cell);
  const written = (rows: readonly number[], columns: readonly number[]) => `r${rows.join('')}c${columns.join('')}`;
  const byRows = grouped(cells, inRow, inColumn).map(([rows, columns]) => written(rows, columns));
  const byColumns = grouped(cells, inColumn, inRow).map(([columns, rows]) => written(rows, columns));
  return byColumns.length < byRows.length ? byColumns : byRows;
}

/** The keys that have the same values put together; keys and values ascending, none twice, groups by their first key. */
function grouped<Thing extends number, Key extends number, Value extends number>(
  things: readonly Thing[],
  keyOf: (thing: Thing) => Key,
  valueIn: (thing: Thing) => Value,
): [keys: Key[], values: Value[]][] {
  const valuesByKey = new Map<Key, Set<Value>>();
  for (const thing of things.toSorted((a, b) => a - b)) {
    const values = valuesByKey.get(keyOf(thing)) ?? new Set();
    valuesByKey.set(keyOf(thing), values.add(valueIn(thing)));
  }
  const groups = new Map<string, [Key[], Value[]]>();
  for (const [key, values] of [...valuesByKey].sort(([a], [b]) => a - b)) {
    const ascending = [...values].sort((a, b) => a - b);
    const group = groups.get(ascending.join()) ?? [[], ascending];
    group[0].push(key);
    groups.set(ascending.join(), group);
  }
  return [...groups.values()];
}

function isSame(a: readonly number[], b: readonly number[]): boolean {
  return a.length === b.length && a.every((value, index) => value === b[index]);
}
