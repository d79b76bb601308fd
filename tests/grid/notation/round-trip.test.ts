/**
 * What is printed is read back as the same thing, on every size of grid.
 */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type Candidate, membersOf, setOf } from '../../../src/grid/candidates.ts';
import { boxShapes, type Cell, candidateAt, type Digit, type Grid, gridOf } from '../../../src/grid/grid.ts';
import { parseCandidates } from '../../../src/grid/notation/candidates.ts';
import { parseCells } from '../../../src/grid/notation/cells.ts';
import { parseChain } from '../../../src/grid/notation/chain.ts';
import { parseConclusions } from '../../../src/grid/notation/conclusions.ts';
import { parseDeadly } from '../../../src/grid/notation/deadly.ts';
import { parseHouses } from '../../../src/grid/notation/houses.ts';
import { parseOnly, parsePencil } from '../../../src/grid/notation/lists.ts';
import * as print from '../../../src/grid/notation/print.ts';
import { parseSets } from '../../../src/grid/notation/sets.ts';
import { parseTargets } from '../../../src/grid/notation/targets.ts';
import type {
  Chain,
  ChainNode,
  Conclusion,
  Deadly,
  LinkKind,
  Reading,
  SetName,
  Target,
} from '../../../src/grid/terms.ts';

function valueRead<T>(reading: Reading<T>, text: string): T {
  if (reading.ok) return reading.value;
  throw new Error(`"${text}": ${reading.faults.map((fault) => fault.message).join('; ')}`);
}

/** What may be drawn at random on a grid; lists ascend, as the parsers make them. */
function arbitraries(grid: Grid) {
  const some = <T extends number>(all: readonly T[], most = all.length) =>
    fc.subarray([...all], { minLength: 1, maxLength: most }).map((picked) => picked.sort((a, b) => a - b));
  const cell = fc.constantFrom<Cell[]>(...grid.cells);
  const digit = fc.constantFrom<Digit[]>(...grid.digits);
  const house = fc.constantFrom(...grid.houses);
  const candidate = fc.tuple(cell, digit).map(([where, of]) => candidateAt(grid, where, of));
  const candidates = fc.uniqueArray(candidate, { minLength: 1, maxLength: 12 }).map((all) => all.sort((a, b) => a - b));
  const set = fc.oneof(
    cell.map((where): SetName => ({ kind: 'cell', cell: where })),
    fc.tuple(digit, house).map(([of, where]): SetName => ({ kind: 'places', digit: of, house: where })),
    fc.stringMatching(/^[A-Za-z0-9-]{1,8}$/).map((id): SetName => ({ kind: 'step', id })),
  );
  const conclusion = fc.oneof(
    candidate.map((each): Conclusion => ({ kind: 'impossible', candidate: each })),
    candidates.map((each): Conclusion => ({ kind: 'one-of', candidates: setOf(grid, each) })),
  );
  const deadly = fc.oneof(
    fc
      .array(fc.record({ digits: some(grid.digits), cells: some(grid.cells, 6) }), { minLength: 1, maxLength: 4 })
      .map((parts): Deadly => ({ kind: 'pattern', parts })),
    fc
      .option(candidates, { nil: undefined })
      .map((without): Deadly => ({ kind: 'grid', without: without === undefined ? undefined : setOf(grid, without) })),
  );
  const target = fc.oneof(
    some(grid.cells, 8).map((cells): Target => ({ kind: 'cells', cells })),
    house.map((each): Target => ({ kind: 'house', house: each })),
    digit.map((each): Target => ({ kind: 'digit', digit: each })),
    candidate.map((each): Target => ({ kind: 'candidates', candidates: [each] })),
  );
  const only = house.chain((where) => fc.record({ digit, house: fc.constant(where), cells: some(where.cells) }));
  const pencil = fc.record({ cell, digits: some(grid.digits) });
  return { some, cell, digit, house, candidates, set, conclusion, deadly, target, only, pencil };
}

/**
 * A chain of single, grouped and almost locked nodes. Neighbours differ, and the last node of a chain that is no loop
 * is not its first: the notation has no other way to tell a loop. Two nodes in the same cells are common, as in chains.
 */
function chainOn(grid: Grid): fc.Arbitrary<Chain> {
  const { some, house, conclusion } = arbitraries(grid);
  const cells = house.chain((where) => some(where.cells, 3));
  const node = fc.record({ digits: some(grid.digits, 3), cells });
  const nodeInSameCells = fc.record({ digits: some(grid.digits, 2), cells: fc.constant(undefined) });
  const sameDigits = fc.record({ digits: fc.constant(undefined), cells });
  const next = fc.oneof(node, nodeInSameCells, sameDigits);
  return fc
    .record({
      first: node,
      rest: fc.array(next, { minLength: 1, maxLength: 9 }),
      kinds: fc.array(fc.constantFrom<LinkKind[]>('strong', 'weak'), { minLength: 10, maxLength: 10 }),
      loop: fc.boolean(),
      concludes: fc.array(conclusion, { maxLength: 3 }),
    })
    .map(({ first, rest, kinds, loop, concludes }) => {
      const nodes: ChainNode[] = [first];
      for (const each of rest) {
        const before = nodes.at(-1)!;
        nodes.push({ digits: each.digits ?? before.digits, cells: each.cells ?? before.cells });
      }
      const linkCount = loop ? nodes.length : nodes.length - 1;
      const links = kinds.slice(0, linkCount).map((kind, from) => ({ kind, from, to: (from + 1) % nodes.length }));
      return { nodes, links, loop, concludes };
    })
    .filter(({ nodes, links }) => links.every(({ from, to }) => !isSame(nodes[from]!, nodes[to]!)))
    .filter(({ nodes }) => !isSame(nodes[0]!, nodes.at(-1)!))
    .filter(({ nodes }) => nodes.length < 4 || !isSame(nodes[0]!, nodes.at(-2)!) || !isSame(nodes[1]!, nodes.at(-1)!));
}

function isSame(a: ChainNode, b: ChainNode): boolean {
  return a.digits.join() === b.digits.join() && a.cells.join() === b.cells.join();
}

describe.each(boxShapes)('%s', (boxes) => {
  const grid = gridOf(boxes);
  const any = arbitraries(grid);
  const check = <T>(arbitrary: fc.Arbitrary<T>, printed: (value: T) => string, read: (text: string) => Reading<T>) =>
    fc.assert(
      fc.property(arbitrary, (value) => {
        const text = printed(value);
        expect(valueRead(read(text), text)).toEqual(value);
      }),
    );
  const listOf = <T>(arbitrary: fc.Arbitrary<T>, selector?: (value: T) => unknown) =>
    selector === undefined
      ? fc.array(arbitrary, { minLength: 1, maxLength: 6 })
      : fc.uniqueArray(arbitrary, { minLength: 1, maxLength: 6, selector });
  const spaced =
    <T>(printOne: (grid: Grid, value: T) => string) =>
    (values: readonly T[]) =>
      values.map((value) => printOne(grid, value)).join(' ');
  const mapped = <T, U>(reading: Reading<readonly T[]>, each: (value: T) => U): Reading<U[]> =>
    reading.ok ? { ok: true, value: reading.value.map(each) } : reading;

  test('cells', () => {
    check<readonly Cell[]>(
      any.some(grid.cells, 12),
      (cells) => print.printCells(grid, cells),
      (text) => parseCells(grid, text),
    );
  });
  test('candidates', () => {
    const printed = (candidates: readonly Candidate[]) => print.printCandidates(grid, candidates);
    check<readonly Candidate[]>(any.candidates, printed, (text) => parseCandidates(grid, text));
  });
  test('houses', () => {
    const houses = listOf(any.house, (house) => house.name);
    check(
      houses,
      (all) => all.map(print.printHouse).join(' '),
      (text) => mapped(parseHouses(grid, text), (house) => house),
    );
  });
  test('sets', () => {
    const sets = listOf(any.set, (set) => print.printSet(grid, set));
    check(sets, spaced(print.printSet), (text) => mapped(parseSets(grid, text), ({ name }) => name));
  });
  test('conclusions', () => {
    const read = (text: string) => mapped(parseConclusions(grid, text), ({ conclusion }) => conclusion);
    check(listOf(any.conclusion), spaced(print.printConclusion), read);
  });
  test('chains', () => {
    check(
      chainOn(grid),
      (chain) => print.printChain(grid, chain),
      (text) => parseChain(grid, text),
    );
  });
  test('deadly patterns', () => {
    check(
      any.deadly,
      (deadly) => print.printDeadly(grid, deadly),
      (text) => parseDeadly(grid, text),
    );
  });
  test('only and pencil', () => {
    check(listOf(any.only), spaced(print.printOnly), (text) => mapped(parseOnly(grid, text), (only) => only));
    const lists = listOf(any.pencil, (list) => list.cell);
    check(lists, spaced(print.printPencil), (text) => mapped(parsePencil(grid, text), (list) => list));
  });
  test('targets', () => {
    check(listOf(any.target), spaced(print.printTarget), (text) =>
      mapped(parseTargets(grid, text), (target) => target),
    );
  });
});

describe('printing', () => {
  const grid = gridOf('3x3');
  const cellsOf = (text: string) => valueRead(parseCells(grid, text), text);
  const products = [
    ['r1c5 r1c7 r2c5 r2c7', 'r12c57'],
    ['r9c3|r8c1', 'r8c1|r9c3'],
    ['r1c1 r1c2 r2c1', 'r1c12|r2c1'],
    ['b1p123456789', 'r123c123'],
    ['r1c1 r2c1 r2c2 r3c1', 'r13c1|r2c12'],
  ] as const;
  test.each(products)('cells %s as %s', (text, printed) => {
    expect(print.printCells(grid, cellsOf(text).toReversed())).toBe(printed);
  });
  test.each([
    ['7r1c5 7r2c5 2r1c5 2r2c5', '27r12c5'],
    ['7r1c5 3r4c4', '7r1c5 3r4c4'],
    ['7r1c5 7r2c8', '7r1c5 7r2c8'],
    ['12r1c1 13r1c2', '12r1c1 13r1c2'],
    ['78r1c5 8r1c6 7r2c5', '7r12c5 8r1c56'],
  ])('candidates %s as %s', (text, printed) => {
    const candidates = valueRead(parseCandidates(grid, text), text);
    expect(print.printCandidates(grid, candidates)).toBe(printed);
    expect(membersOf(setOf(grid, candidates))).toEqual(candidates);
  });
});
