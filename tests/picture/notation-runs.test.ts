import { describe, expect, it } from 'vitest';
import { cutSmall, isRightToLeft, piecesOf } from '../../src/picture/line-breaks.ts';
import { linksOf, runsOf } from '../../src/picture/notation-runs.ts';

describe('notation in a sentence', () => {
  const rows: readonly (readonly [text: string, found: readonly string[]])[] = [
    ['Look at r3c5, then at 7r1c5.', ['r3c5', '7r1c5']],
    ['so r4c4<>5 and r8c4=8.', ['r4c4<>5', 'r8c4=8']],
    ['so r4c46≠5, r1c7≠16.', ['r4c46≠5', 'r1c7≠16']],
    ['either 7r1c5 or 7r2c8', ['7r1c5', '7r2c8']],
    ['(7)r1c5=r9c5-r9c8=r2c8 is a chain', ['(7)r1c5=r9c5-r9c8=r2c8']],
    ['(7=8)r1c2-(8=5)r4c2: bivalue', ['(7=8)r1c2-(8=5)r4c2']],
    ['in b7 and c58, 27r3c5', ['b7', 'c58', '27r3c5']],
    ['r7c1和r9c3', ['r7c1', 'r9c3']],
    ['two-string kite, 5 places, mp3, a2b', []],
    ['abc r3c5x xr3c5', []],
  ];
  for (const [text, found] of rows) {
    it(text, () => {
      const runs = runsOf(text);
      expect(runs.filter(({ isNotation }) => isNotation).map((run) => run.text)).toEqual(found);
      expect(runs.map((run) => run.text).join('')).toBe(text);
    });
  }
});

describe('where a line may end', () => {
  it('is between words, and not within notation', () => {
    expect(piecesOf('look at (7)r1c5=r9c5 now').map(({ text }) => text)).toEqual(['look', 'at', '(7)r1c5=r9c5', 'now']);
  });
  it('is between Chinese letters, but for marks that begin or end nothing', () => {
    expect(piecesOf('看（这里）。r7c1和').map(({ text }) => text)).toEqual(['看', '（这', '里）。', 'r7c1', '和']);
  });
  it('is before the joints of a chain that is too wide', () => {
    expect(linksOf('(7)r1c5=r9c5-(7=8)r9c8=r2c8')).toEqual(['(7)r1c5', '=r9c5', '-(7=8)r9c8', '=r2c8']);
  });
  it('is anywhere in a word that is too wide, accents kept', () => {
    const cut = cutSmall({ text: 'abe\u0301d', isSpaced: true }, (part) => part.length < 3);
    expect(cut.map(({ text }) => text)).toEqual(['a', 'b', 'e\u0301', 'd']);
    expect(cut.map(({ isSpaced }) => isSpaced)).toEqual([true, false, false, false]);
  });
});

it('a text runs as its first letter does', () => {
  expect(['r1c1', '12 שלום', 'غرفة', '看', '5'].map(isRightToLeft)).toEqual([false, true, true, false, false]);
});
