/** What a call says of a puzzle that it cannot use: what is there, then what would be right. */
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { readGivenPuzzle } from '../../src/commands/given-puzzle.ts';
import type { Terminal } from '../../src/commands/terminal.ts';

const folder = mkdtempSync(join(tmpdir(), 'puzzle-'));
afterAll(() => rmSync(folder, { recursive: true }));

const plain = (words: string) => words;
const paint = { bold: plain, dim: plain, red: plain, green: plain, yellow: plain };

/** All that is said, and whether there is a puzzle. */
function read(given: string): { readonly said: string; readonly cells: number | undefined } {
  let said = '';
  const terminal: Terminal = {
    out: () => {
      throw new Error('nothing goes to standard output');
    },
    err: (text) => {
      said += text;
    },
    outPaint: paint,
    errPaint: paint,
    isWatched: false,
    columns: undefined,
  };
  try {
    const puzzle = readGivenPuzzle(given, terminal);
    return { said, cells: puzzle?.puzzle.grid.cellCount };
  } catch (failure) {
    return { said: said + (failure as Error).message, cells: undefined };
  }
}

const puzzle = '64.8.2..9...9....1.....6......3....4....4.8...81..........3..9...5.2.17.....9.6.2';
const solved = '1234341221434321';

const rows: readonly (readonly [about: string, given: string, said: RegExp])[] = [
  ['no solution', `11${'.'.repeat(79)}`, /1 stands in r1c1 and in r1c2, both in r1 and b1/],
  ['none by and by', `12345678.........9${'.'.repeat(63)}`, /the puzzle has no solution; compare its givens/],
  [
    'several solutions',
    puzzle.replace('8', '.'),
    /several solutions .* two of them are\n {2}\d{81}\n {2}\d{81}\nthey differ in \d+ cells/,
  ],
  ['too few symbols', puzzle.slice(1), /80 cells are among the givens, expected 81/],
  ['too many symbols', `${puzzle}1`, /82 cells are among the givens, expected 81/],
  ['strange signs', puzzle.replace('9', '?'), /"\?" is neither a digit of this grid nor a blank/],
  ['a puzzle that is solved', solved, /already solved/],
  ['a file that is not there', 'puzzels/one.txt', /there is no file puzzels\/one.txt/],
  ['a folder', folder, /is a folder/],
];

describe('a puzzle that cannot be used', () => {
  it.each(rows)('%s', (_, given, said) => {
    const result = read(given);
    expect(result.said).toMatch(said);
    expect(result.cells).toBeUndefined();
  });
});

describe('a puzzle that can', () => {
  it('as symbols, spaced and ruled', () => expect(read(`${puzzle.slice(0, 9)} | ${puzzle.slice(9)}`).cells).toBe(81));
  it('of four by four', () => expect(read('..13.......14...').cells).toBe(16));
  it('as a file of symbols', () => {
    const file = join(folder, 'one.txt');
    writeFileSync(file, `${puzzle}\n`);
    expect(read(file)).toEqual({ said: '', cells: 81 });
  });
  it('as a scene', () => expect(read('scenes/lamp-room.yaml').cells).toBe(81));
  it('a fault in a file is told with its line', () => {
    const file = join(folder, 'bad.txt');
    writeFileSync(file, puzzle.replace(/(.{9})/g, '$1\n').replace('9', 'x'));
    expect(read(file).said).toContain(`${file}:1:9: error givens-sign`);
  });
});
