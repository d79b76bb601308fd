/**
 * Facts of common practice (no source: the trade's own knowledge), each as a scene that must hold, with a twin that has
 * one candidate too many and must not. A row says what is left in some cells and of a digit in some houses of one
 * generated puzzle; all else that they could hold is taken as removed when the scene begins.
 *
 * Its solution: 714682539 298375416 365194827 857943261 942561783 136827954 679218345 423756198 581439672
 */
import { describe, expect, it } from 'vitest';
import { reportOn } from '../scenes/run.ts';
import { boardOf, candidate, cellName, digitsLeft, entered, type Position, placesLeft, startOf } from './rules.ts';

const givens = '.14..2... ..8....1. ....9...7 8.....2.1 9..5..7.. .36...... 6..21..4. ..3....98 ...4.....'.split(' ');
const board = boardOf(3, 3);
const given = [...givens.join('')].flatMap((sign, cell) =>
  sign === '.' ? [] : [candidate(board, cell, Number(sign))],
);

interface Row {
  readonly fact: string;
  /** `37r1c1`: a cell holds these; `3c4 in r2c4 r4c4`: a house has the digit there; divided by commas. */
  readonly left: string;
  readonly step: string;
  /** Candidates that are left in the twin as well; the twin must then be as below. */
  readonly tooMany?: string;
  /** Or another step in the same position. */
  readonly twinStep?: string;
  /** What comes of the links and conclusions, in order, and of the twin's. */
  readonly gives: string;
  readonly twinGives: string;
  /** What the message to the twin says. */
  readonly says?: string;
}

const tower = '3c4 in r2c4 r4c4, 3c8 in r1c8 r4c8';
const square = '3c5 in r4c5 r9c5, 3r9 in r9c5 r9c7, 3c7 in r7c7 r9c7';
const kite = '6r8 in r8c6 r8c7, 6c9 in r2c9 r9c9, 6b8 in r8c6 r9c5 r9c6';

const rows: readonly Row[] = [
  {
    fact: 'a skyscraper shows that at least one of its two roof ends is true',
    left: tower,
    step: 'because: skyscraper, from: 3c48, so: either 3r2c4 3r1c8',
    gives: 'proved',
    tooMany: '3r3c4',
    twinGives: 'unproved',
  },
  {
    fact: 'a skyscraper clears what sees both roof ends',
    left: tower,
    step: 'because: skyscraper, from: 3c48, so: r2c79<>3',
    gives: 'proved proved',
    tooMany: '3r3c4',
    twinGives: 'unproved unproved',
  },
  {
    fact: 'both roof ends of a skyscraper may be true: they are not weakly linked',
    left: tower,
    step: "chain: '(3)r2c4=r4c4-r4c8=r1c8', so: r1c5<>3",
    gives: 'holds holds holds proved',
    twinStep: "chain: '(3)r2c4-r1c8', so: r2c4<>3",
    twinGives: 'broken false',
  },
  {
    fact: 'the only two places of a digit in a house are strongly and weakly linked at once',
    left: square,
    step: "chain: '(3)r4c5=r9c5=r9c7=r7c7'",
    gives: 'holds holds holds',
    tooMany: '3r9c8',
    twinGives: 'holds broken holds',
    says: 'r9c8 also holds a 3',
  },
  {
    fact: 'two of three places are weakly linked, and not strongly',
    left: square.replace('r9c7,', 'r9c7 r9c8,'),
    step: "chain: '(3)r4c5=r9c5-r9c7=r7c7'",
    gives: 'holds holds holds',
    twinStep: "chain: '(3)r9c5=r9c7'",
    twinGives: 'broken',
  },
  {
    fact: 'links of a chain alternate',
    left: square,
    step: "chain: '(3)r4c5=r9c5-r9c7=r7c7'",
    gives: 'holds holds holds',
    twinStep: "chain: '(3)r4c5=r9c5-r9c7-r7c7'",
    twinGives: 'holds holds holds',
    says: 'alternate',
  },
  {
    fact: 'an XY-chain clears its digit from what sees both ends',
    left: '37r1c1, 36r1c4, 67r8c4',
    step: "because: XY-chain, chain: '(7=3)r1c1-(3=6)r1c4-(6=7)r8c4', so: r8c1<>7",
    gives: 'holds holds holds holds holds proved',
    tooMany: '5r1c1',
    twinGives: 'broken holds holds holds holds unproved',
    says: 'r1c1 also holds a 5',
  },
  {
    fact: 'an XY-chain begins and ends with the same digit',
    left: '37r1c1, 36r1c4, 67r8c4',
    step: 'from: r1c14 r8c4, so: r8c1<>7',
    gives: 'proved',
    twinStep: 'from: r1c14, so: r8c1<>7',
    twinGives: 'unproved',
  },
  {
    fact: 'a naked quad is four cells with four digits between them',
    left: '37r1c1, 2357r2c1, 235r3c1, 57r9c1',
    step: 'because: naked quad, from: r1239c1, so: r6c1<>257 r8c1<>257',
    gives: 'proved proved proved proved proved proved',
    tooMany: '1r9c1',
    twinGives: 'unproved unproved unproved unproved unproved unproved',
  },
  {
    fact: 'two digits with the same two places in a house clear those cells of all others',
    left: '7r6 in r6c4 r6c6, 8r6 in r6c4 r6c6',
    step: 'because: hidden pair, from: 78r6, so: r6c4<>19 r6c6<>149',
    gives: 'proved proved proved proved proved',
    tooMany: '8r6c5',
    twinGives: 'unproved unproved unproved unproved unproved',
  },
  {
    fact: 'three places of a digit in one box, all in one row, clear the rest of the row',
    left: '7b2 in r2c4 r2c5 r2c6',
    step: 'because: pointing triple, from: 7b2, so: r2c12<>7',
    gives: 'proved proved',
    tooMany: '7r1c4',
    twinGives: 'unproved unproved',
  },
  {
    fact: 'one elimination comes from a two-string kite',
    left: kite,
    step: 'because: two-string kite, from: 6r8 6c9, so: r2c6<>6',
    gives: 'proved',
    tooMany: '6r5c9',
    twinGives: 'unproved',
  },
  {
    fact: '... and the same from an empty rectangle',
    left: kite,
    step: 'because: empty rectangle, from: 6b8 6c9, so: r2c6<>6',
    gives: 'proved',
    tooMany: '6r5c9',
    twinGives: 'unproved',
  },
  {
    fact: '... and not from a pattern with a place too many',
    left: kite,
    step: 'from: 6b8 6c9, so: r2c6<>6',
    gives: 'proved',
    tooMany: '6r8c4',
    twinGives: 'unproved',
  },
  {
    fact: 'the corner of a unique rectangle with one digit more is that digit',
    left: '36r1c4, 36r2c4, 36r2c9, 369r1c9',
    step: 'because: unique rectangle type 1, deadly: 36r12c49, so: r1c9=9',
    gives: 'proved',
    tooMany: '4r2c9',
    twinGives: 'unproved',
  },
  {
    fact: 'a rectangle in four boxes is not deadly, nor one with a given',
    left: '36r1c4, 36r2c4, 36r2c9, 369r1c9',
    step: 'deadly: 36r12c49, so: r1c9<>36',
    gives: 'proved proved',
    twinStep: 'deadly: 36r19c49, so: r1c9<>36',
    twinGives: 'unproved unproved',
    says: 'refused',
  },
  {
    fact: 'two cells with three digits: without one of them the other two are locked in',
    left: '58r1c7, 38r1c8',
    step: "chain: '(3=58)r1c78', so: either 3r1c8 5r1c7",
    gives: 'holds proved',
    tooMany: '6r1c8',
    twinGives: 'broken unproved',
    says: 'r1c8 also holds a 6',
  },
];

function removedFor(row: Row, tooMany: string | undefined): number[] {
  const start: Position = startOf(board, given);
  const removed = new Set<number>();
  for (const text of row.left.split(', ')) {
    const places = /^(\d)(\w\d) in (.*)$/.exec(text);
    if (places === null) {
      const [, digits = '', cell = ''] = /^(\d+)(r\dc\d)$/.exec(text) ?? [];
      for (const one of digitsLeft(board, start, cellNamed(cell))) {
        if (!digits.includes(String((one % 9) + 1))) removed.add(one);
      }
    } else {
      const house = board.houses.find((each) => each.name === places[2])!;
      const cells = places[3]!.split(' ').map(cellNamed);
      for (const one of placesLeft(board, start, Number(places[1]), house)) {
        if (!cells.includes(Math.floor(one / 9))) removed.add(one);
      }
    }
  }
  if (tooMany !== undefined) {
    const extra = candidate(board, cellNamed(tooMany.slice(1)), Number(tooMany[0]));
    expect(removed.delete(extra), `${tooMany} is removed in the scene and left in its twin`).toBe(true);
  }
  expect(
    entered(
      board,
      start,
      [...removed].map((not) => ({ not })),
    ).possible.size,
  ).toBeGreaterThan(0);
  return [...removed];
}

function cellNamed(text: string): number {
  return (Number(text[1]) - 1) * 9 + Number(text[3]) - 1;
}

function judged(step: string, removed: readonly number[]) {
  const text = [
    'proofreel: 1',
    'puzzle:',
    '  givens: |',
    ...givens.map((line) => `    ${line}`),
    '  start:',
    `    removed: ${removed.map((one) => `${cellName(board, Math.floor(one / 9))}<>${(one % 9) + 1}`).join(' ')}`,
    'steps:',
    '  - id: step',
    ...step.split(/, (?=because|from|chain|deadly|so)/).map((line) => `    ${line}`),
  ].join('\n');
  const { report } = reportOn('fact.yaml', text);
  const found = report.steps[0];
  if (found === undefined) throw new Error(JSON.stringify(report.errors));
  const links = found.links.map((link) => (link.holds ? 'holds' : 'broken'));
  const gives = [...links, ...found.conclusions.map((each) => each.verdict)].join(' ');
  return { gives, sound: found.sound, message: found.message, name: found.name?.judged };
}

describe('facts of common practice', () => {
  it.each(rows)('$fact', (row) => {
    const is = judged(row.step, removedFor(row, undefined));
    expect(is.gives).toBe(row.gives);
    if (row.step.includes('because')) expect(is.name).toBe('fits');
    const twin = judged(row.twinStep ?? row.step, removedFor(row, row.tooMany));
    expect(twin.gives).toBe(row.twinGives);
    if (row.says !== undefined) expect(twin.message).toContain(row.says);
    expect(is.sound).toBe(true);
    expect(twin.sound).toBe(false);
  });
});
