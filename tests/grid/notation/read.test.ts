import { describe, expect, test } from 'vitest';
import { type BoxShape, gridOf } from '../../../src/grid/grid.ts';
import { parseChain } from '../../../src/grid/notation/chain.ts';
import { parseConclusions } from '../../../src/grid/notation/conclusions.ts';
import { parseSets } from '../../../src/grid/notation/sets.ts';
import type { Chain } from '../../../src/grid/terms.ts';
import { type ReaderName, readers } from './readings.ts';

/** What each text is read as, written in the canonical form, one value after a comma. */
const table: Readonly<Record<ReaderName, readonly (readonly [text: string, read: string])[]>> = {
  cells: [
    ['r3c5', 'r3c5'],
    ['R3C5', 'r3c5'],
    ['r12c57', 'r1c5, r1c7, r2c5, r2c7'],
    ['r21c75', 'r1c5, r1c7, r2c5, r2c7'],
    ['b7p156', 'r7c1, r8c2, r8c3'],
    ['B9P9', 'r9c9'],
    ['b12p1', 'r1c1, r1c4'],
    ['r9c3|r8c1', 'r8c1, r9c3'],
    ['r9c3 | r8c1', 'r8c1, r9c3'],
    ['r12c5|b7p1|r2c5', 'r1c5, r2c5, r7c1'],
    ['r3c5 r1c1', 'r1c1, r3c5'],
    ['r3c5,r1c1 ,\n r3c5', 'r1c1, r3c5'],
    [' r3c5 ', 'r3c5'],
  ],
  candidates: [
    ['7r3c5', '7r3c5'],
    ['27r3c5', '2r3c5, 7r3c5'],
    ['72r3c5', '2r3c5, 7r3c5'],
    ['(7)r3c5', '7r3c5'],
    ['( 27 )r3c5', '2r3c5, 7r3c5'],
    ['7r12c5', '7r1c5, 7r2c5'],
    ['7b7p14', '7r7c1, 7r8c1'],
    ['7r9c3|r8c1', '7r8c1, 7r9c3'],
    ['8r3c5, 7r3c5 8r3c5', '7r3c5, 8r3c5'],
  ],
  houses: [
    ['r3', 'r3'],
    ['c58', 'c5, c8'],
    ['B2 r3, b2', 'b2, r3'],
  ],
  sets: [
    ['7c58', '7c5, 7c8'],
    ['12c58', '1c5, 1c8, 2c5, 2c8'],
    ['7b5', '7b5'],
    ['(7)r3', '7r3'],
    ['r9c13', 'r9c1, r9c3'],
    ['b7p14', 'r7c1, r8c1'],
    ['r1c1|r5c5', 'r1c1, r5c5'],
    ['step towers', 'step towers'],
    ['STEP Towers-2', 'step Towers-2'],
    ['step 1e3, 7c5', 'step 1e3, 7c5'],
    ['5b6, 6r6, r2c9 7C5', '5b6, 6r6, r2c9, 7c5'],
    ['7c5 7c58', '7c5, 7c8'],
  ],
  conclusions: [
    ['r1c79<>7', 'r1c7<>7, r1c9<>7'],
    ['r9c2<>16', 'r9c2<>1, r9c2<>6'],
    ['r9c2≠16', 'r9c2<>1, r9c2<>6'],
    ['r9c2 <> 16', 'r9c2<>1, r9c2<>6'],
    ['-7r1c79', 'r1c7<>7, r1c9<>7'],
    ['−7r1c7', 'r1c7<>7'],
    ['–7r1c7', 'r1c7<>7'],
    ['-(7)r1c7', 'r1c7<>7'],
    ['r8c4=8', 'r8c4=8'],
    ['+8r8c4', 'r8c4=8'],
    ['r12c4=8', 'r1c4=8, r2c4=8'],
    ['r3c3|r4c13<>3', 'r3c3<>3, r4c1<>3, r4c3<>3'],
    ['b7p14<>2', 'r7c1<>2, r8c1<>2'],
    ['either 7r1c5 7r2c8', 'either 7r1c5 7r2c8'],
    ['Either 7r2c8, 7r1c5', 'either 7r1c5 7r2c8'],
    ['either 7r12c5', 'either 7r1c5 7r2c5'],
    ['either 7r1c5 7r2c8 r1c1=2', 'either 7r1c5 7r2c8, r1c1=2'],
    ['r1c1=2, either 7r1c5 (7)r2c8 -3r1c1', 'r1c1=2, either 7r1c5 7r2c8, r1c1<>3'],
    ['either 7r1c5 7r2c8 either 1r1c5 1r2c8', 'either 7r1c5 7r2c8, either 1r1c5 1r2c8'],
    ['-6r2c9 r8c9<>36 +1r1c1', 'r2c9<>6, r8c9<>3, r8c9<>6, r1c1=1'],
    ['r1c1<>2 r1c1<>2', 'r1c1<>2, r1c1<>2'],
  ],
  chain: [
    ['(7)r1c5=r9c5-r9c8=r2c8', '(7)r1c5=r9c5-r9c8=r2c8'],
    ['7r1c5=r9c5', '(7)r1c5=r9c5'],
    ['7R1C5=7R9C5', '(7)r1c5=r9c5'],
    ['(7=8)r1c2-(8=5)r4c2-(5=7)r4c9', '(7=8)r1c2-(8=5)r4c2-(5=7)r4c9'],
    ['(7-8)r2c5', '(7-8)r2c5'],
    ['(7)r12c5=r9c5', '(7)r12c5=r9c5'],
    ['(5=28)r9c34', '(5=28)r9c34'],
    ['(5=8)r9c34', '(5=8)r9c34'],
    ['(5=28)r9c34-r9c1', '(5=28)r9c34-r9c1'],
    ['(3=5)r2c7-r2c2', '(3=5)r2c7-r2c2'],
    ['(2)r1c1=r1c6-(9)r1c6=r2c4', '(2)r1c1=(2-9)r1c6=r2c4'],
    ['(7)r4c1=r4c3=(7=9)r2c3=r2c4', '(7)r4c1=r4c3=(7=9)r2c3=r2c4'],
    ['(7)b7p14=r1c1', '(7)r78c1=r1c1'],
    ['(7)r9c1|r7c3=r1c1', '(7)r7c3|r9c1=r1c1'],
    [' ( 7 = 8 ) r1c2 − ( 8 = 5 ) r4c2 ⇒ r1c7≠7 ', '(7=8)r1c2-(8=5)r4c2 => r1c7<>7'],
    ['(7)r1c5=r9c5 – r9c8\n = r2c8 → -7r1c8', '(7)r1c5=r9c5-r9c8=r2c8 => r1c8<>7'],
    ['(7)r1c5=r9c5=>r1c7<>7 r8c4=8', '(7)r1c5=r9c5 => r1c7<>7 r8c4=8'],
    ['(7)r1c5=r9c5 => either 7r1c5 7r9c5', '(7)r1c5=r9c5 => either 7r1c5 7r9c5'],
    ['(7)r1c5=r9c5-r9c8=r1c8-', '(7)r1c5=r9c5-r9c8=r1c8-r1c5'],
    ['(7)r1c5=r9c5-r9c8=r1c8- => r1c1<>7', '(7)r1c5=r9c5-r9c8=r1c8-r1c5 => r1c1<>7'],
    ['(7)r1c5=r9c5-r9c8=r1c8-r1c5', '(7)r1c5=r9c5-r9c8=r1c8-r1c5'],
    ['(7=8)r1c2-(8=5)r4c2-(5=7)r4c9-(7=8)r1c2', '(7=8)r1c2-(8=5)r4c2-(5=7)r4c9-r1c2'],
    ['(7=8)r1c2-(8=5)r4c2-(5=7)r4c9-(7)r1c2', '(7=8)r1c2-(8=5)r4c2-(5=7)r4c9-r1c2'],
    ['(7)r1c2=r1c5-r4c5=(8-7)r1c2', '(7)r1c2=r1c5-r4c5=(8-7)r1c2'],
  ],
  deadly: [
    ['12r34c58', '12r34c58'],
    ['(12)r34c58', '12r34c58'],
    ['12r1c14 12r2c47, 12r3c17', '12r1c14 12r2c47 12r3c17'],
    ['12r1c1|r1c4', '12r1c14'],
    ['Grid', 'grid'],
    ['grid without 7r1c5, 3r4c4', 'grid without 7r1c5 3r4c4'],
    ['GRID WITHOUT 37r1c5', 'grid without 37r1c5'],
  ],
  only: [
    ['4b5 in r4c46', '4b5 in r4c46'],
    ['4B5 IN r4c4, r5c6', '4b5 in r4c4|r5c6'],
    ['24b5 in r4c46', '2b5 in r4c46, 4b5 in r4c46'],
    ['4b5 in r4c46, 3c1 in r12c1 r5c1 2r1 in b1p13', '4b5 in r4c46, 3c1 in r125c1, 2r1 in r1c13'],
  ],
  pencil: [
    ['2358r9c1 28r9c3', '2358r9c1, 28r9c3'],
    ['78r12c3', '78r1c3, 78r2c3'],
    ['8532r9c1', '2358r9c1'],
  ],
  targets: [
    ['r1c5 b2', 'cells r1c5, house b2'],
    ['r12c57', 'cells r12c57'],
    ['b2p14', 'cells r12c4'],
    ['c58', 'house c5, house c8'],
    ['7', 'digit 7'],
    ['79', 'digit 7, digit 9'],
    ['7r1c5', 'candidates 7r1c5'],
    ['27r12c5', 'candidates 27r12c5'],
    ['7 r1c5', 'digit 7, cells r1c5'],
    ['7 b2', 'digit 7, house b2'],
    ['7b2', 'candidates 7r123c456'],
    ['7c58', 'candidates 7r123456789c5, candidates 7r123456789c8'],
  ],
};

describe.each(Object.keys(table) as ReaderName[])('%s', (name) => {
  test.each(table[name])('%j', (text, read) => {
    const reading = readers[name](gridOf('3x3'), text);
    expect(reading).toMatchObject({ ok: true });
    expect(reading.ok && reading.value.join(', ')).toBe(read);
  });
});

describe('boxes of other grids', () => {
  const rows: readonly (readonly [BoxShape, text: string, read: string])[] = [
    ['2x2', 'b4p14', 'r3c3, r4c4'],
    ['2x3', 'b2p16', 'r1c4, r2c6'],
    ['2x3', 'b5p2', 'r5c2'],
    ['2x4', 'b3p58', 'r4c1, r4c4'],
  ];
  test.each(rows)('%s %s', (boxes, text, read) => {
    const reading = readers.cells(gridOf(boxes), text);
    expect(reading.ok && reading.value.join(', ')).toBe(read);
  });
});

describe('a chain node by node', () => {
  const nodesOf = (chain: Chain) => chain.nodes.map(({ digits, cells }) => `${digits.join('')}@${cells.join(',')}`);
  const linksOf = (chain: Chain) =>
    chain.links.map(({ kind, from, to }) => `${from}${kind === 'strong' ? '=' : '-'}${to}`);
  const rows: readonly (readonly [text: string, nodes: string, links: string, loop: boolean])[] = [
    ['(7)r1c5=r9c5-r9c8', '7@4 7@76 7@79', '0=1 1-2', false],
    ['(3=5)r2c7-r2c2', '3@15 5@15 5@10', '0=1 1-2', false],
    ['(5=28)r9c34-r9c1', '5@74,75 28@74,75 28@72', '0=1 1-2', false],
    ['(2)r1c1=r1c6-(9)r1c6', '2@0 2@5 9@5', '0=1 1-2', false],
    ['(7)r1c5=r9c5-', '7@4 7@76', '0=1 1-0', true],
    ['(7)r1c5=r9c5-r1c5', '7@4 7@76', '0=1 1-0', true],
    ['(7=8)r1c2-(8)r4c2=(7)r4c2-(7=8)r1c2', '7@1 8@1 8@28 7@28', '0=1 1-2 2=3 3-0', true],
    // the last bracket has another link than the first: it repeats nothing
    ['(7=8)r1c2-(8)r4c2=(7)r4c2-(7-8)r1c2', '7@1 8@1 8@28 7@28 7@1 8@1', '0=1 1-2 2=3 3-4 4-5', false],
    // the ends are the two digits of one cell: no loop, unless a bracket repeats the first
    ['(7)r1c2=(7)r4c2-(8)r4c2=(8)r1c2', '7@1 7@28 8@28 8@1', '0=1 1-2 2=3', false],
  ];
  test.each(rows)('%s', (text, nodes, links, loop) => {
    const reading = parseChain(gridOf('3x3'), text);
    if (!reading.ok) throw new Error(JSON.stringify(reading.faults));
    expect(nodesOf(reading.value).join(' ')).toBe(nodes);
    expect(linksOf(reading.value).join(' ')).toBe(links);
    expect(reading.value.loop).toBe(loop);
  });
});

describe('each name keeps its place', () => {
  test('of a set', () => {
    const reading = parseSets(gridOf('3x3'), ' 7c58, step towers');
    expect(reading.ok && reading.value.map(({ at, length }) => [at, length])).toEqual([
      [1, 4],
      [1, 4],
      [7, 11],
    ]);
  });
  test('of a conclusion', () => {
    const reading = parseConclusions(gridOf('3x3'), 'r1c79<>7 either 7r1c5, 7r2c8 +8r8c4');
    expect(reading.ok && reading.value.map(({ at, length }) => [at, length])).toEqual([
      [0, 8],
      [0, 8],
      [9, 19],
      [29, 6],
    ]);
  });
});
