import { describe, expect, it } from 'vitest';
import { gridOf } from '../../../src/grid/grid.ts';
import { parseConclusions } from '../../../src/grid/notation/conclusions.ts';
import { printConclusions } from '../../../src/grid/notation/print.ts';
import { asShown } from '../../../src/grid/notation/shown.ts';

const grid = gridOf('3x3');

/** What is typed, and what viewers and listings show of it. */
const rows: readonly (readonly [typed: string, shown: string])[] = [
  ['r1c7<>7', 'r1c7≠7'],
  ['r4c1<>48', 'r4c1≠48'],
  ['r8c4=8', 'r8c4=8'],
  ['either 7r1c5 7r2c8', 'either 7r1c5 or 7r2c8'],
  ['either 7r1c5 7r2c8 3r4c4', 'either 7r1c5, 7r2c8 or 3r4c4'],
  ['either 7r1c5 7r2c8 either 3r4c4 3r4c5 r9c9<>1', 'either 7r1c5 or 7r2c8 either 3r4c4 or 3r4c5 r9c9≠1'],
  ['either 7r1c5 7r2c8, and 7r3c3 is not', 'either 7r1c5 or 7r2c8, and 7r3c3 is not'],
  ['r1c1<>3 is not proved: 3r5c5 can be true', 'r1c1≠3 is not proved: 3r5c5 can be true'],
  ['(7)r1c5=r9c5-r9c8', '(7)r1c5=r9c5-r9c8'],
  ['an either/or, either way', 'an either/or, either way'],
  ['', ''],
];

describe('as viewers see it', () => {
  it.each(rows)('%s', (typed, shown) => {
    expect(asShown(typed)).toBe(shown);
    expect(asShown(shown)).toBe(shown);
  });

  it('a removal can be typed as it is shown', () => {
    const typed = 'r1c79<>7 r8c4=8';
    expect(parseConclusions(grid, asShown(typed))).toMatchObject({ ok: true });
    const read = (text: string) => {
      const reading = parseConclusions(grid, text);
      return reading.ok
        ? printConclusions(
            grid,
            reading.value.map(({ conclusion }) => conclusion),
          )
        : [];
    };
    expect(read(asShown(typed))).toEqual(['r1c79<>7', 'r8c4=8']);
  });
});
