import { describe, expect, it } from 'vitest';
import { type Candidate, has, intersection, isEmpty, membersOf, setOf } from '../../src/grid/candidates.ts';
import { cellAt, sharedHouses } from '../../src/grid/geometry.ts';
import { candidateAt, type Grid, gridOf } from '../../src/grid/grid.ts';
import { parseChain } from '../../src/grid/notation/chain.ts';
import { parseConclusions } from '../../src/grid/notation/conclusions.ts';
import { printCandidate } from '../../src/grid/notation/print.ts';
import type { ChainNode, Conclusion } from '../../src/grid/terms.ts';
import { begin, eitherOf, type Position, takeAsRead } from '../../src/proof/kernel.ts';
import { judgeStrong, judgeWeak } from '../../src/proof/links.ts';
import { type Chance, chanceFrom } from '../random.ts';
import { randomPosition, randomSolution } from './positions.ts';
import { satisfiabilityOn } from './satisfiability.ts';

const nine = gridOf('3x3');

function positionWithout(removed: string): Position {
  const start = begin(nine, [], { oneSolution: true });
  if (removed === '') return start;
  const read = parseConclusions(nine, removed);
  if (!read.ok) throw new Error(read.faults[0]?.message);
  return read.value.reduce((at, { conclusion }) => takeAsRead(at, conclusion), start);
}

const eitherOr: Conclusion = {
  kind: 'one-of',
  candidates: setOf(
    nine,
    [cellAt(nine, 1, 5), cellAt(nine, 2, 8)].map((cell) => candidateAt(nine, cell, nine.digits[6]!)),
  ),
};

/** The two ends of a chain of one link. */
function endsOf(text: string): readonly [ChainNode, ChainNode] {
  const read = parseChain(nine, text);
  if (!read.ok) throw new Error(read.faults[0]?.message);
  return [read.value.nodes[0]!, read.value.nodes[1]!];
}

describe('links of common practice', () => {
  const rows: readonly [link: string, removed: string, holds: boolean, brokenBy: string][] = [
    ['(7)r1c5=r9c5', 'r2345678c5<>7', true, ''],
    ['(7)r1c5=r9c5', 'r235678c5<>7', false, '7r4c5'],
    ['(7)r1c5-r9c5', '', true, ''],
    ['(7)r1c5-r9c8', '', false, '7r1c5 7r9c8'],
    ['(7=8)r1c2', 'r1c2<>1234569', true, ''],
    ['(7=8)r1c2', 'r1c2<>123456', false, '9r1c2'],
    ['(7-8)r1c2', '', true, ''],
    ['(7)r12c5=r9c5', 'r345678c5<>7', true, ''],
    ['(7)r12c5=r9c5', 'r34678c5<>7', false, '7r5c5'],
    ['(7)r12c5-r3c6', '', true, ''],
    ['(7)r12c5-r4c5', '', true, ''],
    ['(7)r12c5-r4c6', '', false, '7r1c5 7r4c6'],
    ['(5=28)r9c34', 'r9c3<>134679 r9c4<>134679', true, ''],
    ['(5=8)r9c34', 'r9c3<>134679 r9c4<>134679', true, ''],
    ['(5=28)r9c34', 'r9c3<>134679 r9c4<>34679', false, '1r9c4'],
    ['(28)r9c34-(2)r9c5', '', true, ''],
    ['(28)r9c34-(5)r9c5', '', false, ''],
    ['(1)r1c1=r1c2', 'r1c456789<>1 r2c3<>1 r3c123<>1', false, '1r1c3'],
  ];
  it.each(rows)('%s without %s', (text, removed, holds, brokenBy) => {
    const position = positionWithout(removed);
    const [a, b] = endsOf(text);
    const judged = text.includes('-') ? judgeWeak(position, a, b) : judgeStrong(position, a, b, []);
    expect(judged.holds).toBe(holds);
    if (brokenBy !== '')
      expect(judged.brokenBy.map((candidate) => printCandidate(nine, candidate)).join(' ')).toBe(brokenBy);
  });

  it('is strong by an either/or only where all of both ends is among what it offers', () => {
    const position = takeAsRead(begin(nine, [], { oneSolution: true }), eitherOr);
    const set = eitherOf(position, eitherOr);
    const isStrong = (text: string) => judgeStrong(position, ...endsOf(text), [set]).holds;
    expect(isStrong('(7)r1c5=r2c8')).toBe(true);
    expect(isStrong('(7)r1c56=r2c8')).toBe(false);
    expect(isStrong('(7)r1c5=r2c9')).toBe(false);
  });
  it('takes the house with fewest places where two houses are shared and neither serves', () => {
    const position = positionWithout('r1c456789<>1 r2c3<>1 r3c123<>1');
    const [a, b] = endsOf('(1)r1c1=r1c2');
    const [set] = judgeStrong(position, a, b, []).sets;
    expect(set?.source).toMatchObject({ kind: 'places', house: { name: 'r1' } });
  });
});

/** A random node of one to three cells that share a house, with one to three digits. */
function randomNode(grid: Grid, chance: Chance): ChainNode {
  const house = chance.pick(grid.houses);
  const cells = chance
    .shuffled(house.cells)
    .slice(0, 1 + chance.below(3))
    .sort((x, y) => x - y);
  const digits = chance
    .shuffled(grid.digits)
    .slice(0, 1 + chance.below(chance.below(2) + 1))
    .sort((x, y) => x - y);
  return { digits, cells };
}

/** The statement of a node, read off a filled grid. */
function isTrueIn(grid: Grid, solution: readonly Candidate[], node: ChainNode): boolean {
  const stands = new Set(solution);
  const digitStands = (digit: ChainNode['digits'][number]) =>
    node.cells.some((cell) => stands.has(candidateAt(grid, cell, digit)));
  const cellHolds = (cell: ChainNode['cells'][number]) =>
    node.digits.some((digit) => stands.has(candidateAt(grid, cell, digit)));
  return node.digits.length <= node.cells.length ? node.digits.every(digitStands) : node.cells.every(cellHolds);
}

describe('links against a filled grid and a general SAT solver', () => {
  it.each(['2x2', '2x3', '3x3'] as const)('on random nodes of %s', (boxes) => {
    const grid = gridOf(boxes);
    const satisfiable = satisfiabilityOn(grid);
    const counts = { weak: 0, strong: 0, broken: 0 };
    for (let seed = 1; seed <= 150; seed++) {
      const chance = chanceFrom(seed * 104729);
      const solution = randomSolution(grid, chance);
      const position = randomPosition(grid, solution, chance);
      for (let round = 0; round < 20; round++) {
        const a = randomNode(grid, chance);
        const b = chance.below(3) === 0 ? { ...randomNode(grid, chance), cells: a.cells } : randomNode(grid, chance);
        const weak = judgeWeak(position, a, b);
        const strong = judgeStrong(position, a, b, []);
        if (weak.holds) expect(isTrueIn(grid, solution, a) && isTrueIn(grid, solution, b)).toBe(false);
        if (strong.holds) expect(isTrueIn(grid, solution, a) || isTrueIn(grid, solution, b)).toBe(true);
        counts[weak.holds ? 'weak' : 'broken']++;
        if (strong.holds) counts.strong++;
        expect(weak.holds).toBe(!satisfiable({ groups: groupsOf(position, [a, b]) }));
        if (!weak.holds) {
          const pairs = weak.brokenBy.flatMap((x) => weak.brokenBy.map((y) => has(grid.conflicts[x]!, y)));
          expect(pairs).not.toContain(true);
        }
        if (a.digits.length === 1 && a.digits.join() === b.digits.join() && a.cells.join() !== b.cells.join()) {
          expect(strong.holds).toBe(someHouseHoldsNoOther(position, a, b));
        }
      }
    }
    expect(Math.min(counts.weak, counts.strong, counts.broken)).toBeGreaterThan(30);
  });
});

/** What must be chosen from for both ends to be true: the weak link's question, for the solver. */
function groupsOf(position: Position, nodes: readonly ChainNode[]): Candidate[][] {
  const { grid, possible } = position;
  return nodes.flatMap((node) => {
    const groups =
      node.digits.length <= node.cells.length
        ? node.digits.map((digit) => node.cells.map((cell) => candidateAt(grid, cell, digit)))
        : node.cells.map((cell) => node.digits.map((digit) => candidateAt(grid, cell, digit)));
    return groups.map((group) => group.filter((candidate) => has(possible, candidate)));
  });
}

/** A strong link of one digit, said plainly: a house holds both ends, and the digit has no place there but theirs. */
function someHouseHoldsNoOther(position: Position, a: ChainNode, b: ChainNode): boolean {
  const { grid, possible } = position;
  const digit = a.digits[0]!;
  const ends = [...a.cells, ...b.cells];
  return sharedHouses(grid, ends).some((house) => {
    const others = house.cells.filter((cell) => !ends.includes(cell)).map((cell) => candidateAt(grid, cell, digit));
    return isEmpty(intersection(setOf(grid, others), possible)) && membersOf(possible).length > 0;
  });
}
