import { describe, expect, it } from 'vitest';
import { membersOf } from '../../src/grid/candidates.ts';
import { type BoxShape, candidateAt, gridOf } from '../../src/grid/grid.ts';
import { parseConclusions } from '../../src/grid/notation/conclusions.ts';
import { parseDeadly } from '../../src/grid/notation/deadly.ts';
import { printCandidate } from '../../src/grid/notation/print.ts';
import { guardiansOf } from '../../src/proof/guardians.ts';
import { begin, type Position, takeAsRead } from '../../src/proof/kernel.ts';

function judge(setup: {
  boxes?: BoxShape;
  given?: string;
  removed?: string;
  deadly: string;
  oneSolution?: boolean;
}): string {
  const grid = gridOf(setup.boxes ?? '3x3');
  const conclusions = (text: string) => {
    const read = parseConclusions(grid, text);
    if (!read.ok) throw new Error(read.faults[0]?.message);
    return read.value.map(({ conclusion }) => conclusion);
  };
  const givens =
    setup.given === undefined
      ? []
      : conclusions(setup.given).flatMap((each) => (each.kind === 'one-of' ? membersOf(each.candidates) : []));
  const start: Position = begin(grid, givens, { oneSolution: setup.oneSolution ?? true });
  const position = setup.removed === undefined ? start : conclusions(setup.removed).reduce(takeAsRead, start);
  const deadly = parseDeadly(grid, setup.deadly);
  if (!deadly.ok) throw new Error(deadly.faults[0]?.message);
  const judged = guardiansOf(position, deadly.value);
  if ('refused' in judged) return `refused: ${judged.refused}`;
  return membersOf(judged.members)
    .map((candidate) => printCandidate(grid, candidate))
    .join(' ');
}

describe('deadly patterns', () => {
  const bare = 'r34c58<>3456789';
  it.each([
    [
      'a rectangle in two boxes, its guardians',
      { removed: 'r3c58<>3456789 r4c5<>456789 r4c8<>3456789', deadly: '12r34c58' },
      'refused: its digits cannot be exchanged within every house: it has a filling without a twin',
    ],
    [
      'a rectangle within two boxes',
      { removed: 'r1c1<>3456789 r1c4<>3456789 r2c1<>456789 r2c4<>3456789', deadly: '12r12c14' },
      '3r2c1',
    ],
    [
      'a rectangle in four boxes is none',
      { removed: bare, deadly: '12r25c36' },
      'refused: its digits cannot be exchanged within every house: it has a filling without a twin',
    ],
    [
      'a given cannot be exchanged',
      { given: 'r1c1=1', deadly: '12r12c14' },
      'refused: r1c1 is a given, and a given cannot be exchanged',
    ],
    [
      'nothing guards it',
      { removed: 'r12c14<>3456789', deadly: '12r12c14' },
      'refused: its cells hold no other candidates, so nothing keeps it from being left over',
    ],
    [
      'a loop of six cells',
      { removed: 'r1c14<>3456789 r2c4<>3456789 r2c7<>3456789 r3c17<>3456789', deadly: '12r1c14 12r2c47 12r3c17' },
      'refused: its cells hold no other candidates, so nothing keeps it from being left over',
    ],
    [
      'three digits in two rows',
      { removed: 'r12c1<>456789 r12c4<>45678 r12c7<>456789', deadly: '123r12c147' },
      '9r1c4 9r2c4',
    ],
    [
      'digits that cannot fill the cells',
      { deadly: '1r12c1' },
      'refused: its digits cannot fill its cells without a clash',
    ],
    [
      'several solutions',
      { deadly: '12r12c14', oneSolution: false },
      'refused: no step may assume here that the puzzle has one solution',
    ],
    [
      'a grid far from two candidates a cell',
      { deadly: 'grid' },
      'refused: the grid is too far from two candidates in every open cell',
    ],
  ] as const)('%s', (_, setup, expected) => {
    expect(judge(setup)).toBe(expected);
  });
});

describe('the whole grid', () => {
  // A 4x4 solution 12|34 / 34|12 / 21|43 / 43|21; the middle rows' pairs can be exchanged.
  const rows = ['1234', '3412', '2143', '4321'];
  const open = new Map([
    ['r1c1', '12'],
    ['r1c2', '12'],
    ['r3c1', '12'],
    ['r3c2', '12'],
  ]);
  function setup(extra: string): { given: string; removed: string } {
    const given: string[] = [];
    const removed: string[] = [];
    rows.forEach((row, r) => {
      [...row].forEach((value, c) => {
        const name = `r${r + 1}c${c + 1}`;
        const keeps = open.get(name);
        if (keeps === undefined) given.push(`${name}=${value}`);
        else
          removed.push(
            `${name}<>${['1', '2', '3', '4'].filter((digit) => !keeps.includes(digit) && !extra.includes(`${digit}${name}`)).join('')}`,
          );
      });
    });
    return { given: given.join(' '), removed: removed.filter((text) => !text.endsWith('>')).join(' ') };
  }
  const grid = gridOf('2x2');

  it('names no guardian where every open cell has two already', () => {
    expect(judge({ boxes: '2x2', ...setup(''), deadly: 'grid' })).toContain(
      'every open cell has two candidates already',
    );
  });
  it('refuses candidates named that leave it otherwise', () => {
    expect(judge({ boxes: '2x2', ...setup(''), deadly: 'grid without 1r1c1' })).toContain(
      'refused: without these candidates',
    );
  });
  it('knows its cells', () => {
    expect(printCandidate(grid, candidateAt(grid, grid.cells[0]!, grid.digits[0]!))).toBe('1r1c1');
  });
});
