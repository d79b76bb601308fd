import { describe, expect, test } from 'vitest';
import { marksOf, tell, towers } from './stage.ts';

/** The sight lines of a step of four seconds on the board of two towers (see `towers`). */
function sights(sight: string): string[] {
  return marksOf(tell(towers(`  - {id: s, at: 0, until: 4, show: [{sight: ${sight}}]}`)), 's');
}

describe('lines of sight', () => {
  const rows: readonly { readonly name: string; readonly sight: string; readonly marks: readonly string[] }[] = [
    {
      name: 'everywhere: along row and column up to the last open cell, and the rest of the box',
      sight: '3r3c2',
      marks: [
        '0-100 sight r3c2 r3: r3c1 r3c3 r3c4 r3c5 r3c6',
        '0-100 sight r3c2 c2: r2c2 r1c2 r4c2 r5c2 r6c2',
        '0-100 sight r3c2 b3: r4c1 r4c3',
      ],
    },
    {
      name: 'from a digit at the edge; nothing beyond the last open cell',
      sight: 'r5c6',
      marks: [
        '0-100 sight r5c6 r5: r5c5 r5c4 r5c3 r5c2 r5c1',
        '0-100 sight r5c6 c6: r4c6 r3c6 r2c6 r1c6 r6c6',
        '0-100 sight r5c6 b6: r6c4',
      ],
    },
    {
      name: 'along one line',
      sight: '{of: 3r3c2, along: r3}',
      marks: ['0-100 sight r3c2 r3: r3c1 r3c3 r3c4 r3c5 r3c6'],
    },
    {
      name: 'into a box: across it',
      sight: '{of: 3r3c2, into: b4}',
      marks: ['0-100 sight r3c2 r3: r3c3 r3c4 r3c5 r3c6'],
    },
    {
      name: 'into a row: the column that meets it',
      sight: '{of: 3r3c2, into: r6}',
      marks: ['0-100 sight r3c2 c2: r4c2 r5c2 r6c2'],
    },
    {
      name: 'into the row beside it: the column, and what lies in the box',
      sight: '{of: 3r3c2, into: r4}',
      marks: ['0-100 sight r3c2 c2: r4c2', '0-100 sight r3c2 b3: r4c1 r4c3'],
    },
    {
      name: 'where it shuts out nothing there is no line',
      sight: '{of: 4r4c4, into: r4}',
      marks: ['0-100 sight r4c4 r4: r4c3 r4c2 r4c1 r4c5 r4c6'],
    },
  ];
  test.each(rows)('$name', ({ sight, marks }) => {
    expect(sights(sight)).toEqual(marks);
  });

  test('none from a cell to a line whose cells there are all filled', () => {
    // r4c5 is a 1; the only cell of row 4 that column 5 meets.
    expect(sights('{of: 6r2c5, into: r4}')).toEqual([]);
  });

  test('a line from a digit of the same step begins when that is written', () => {
    const told = tell(
      towers('  - {id: s, at: 0, until: 4, so: r3c5=5, show: [{sight: {of: 5r3c5, along: r3}}, {place: all, at: 2}]}'),
    );
    expect(marksOf(told, 's')).toEqual(['50-100 sight r3c5 r3: r3c4 r3c3 r3c2 r3c1 r3c6', '50-100 place r3c5=5']);
  });

  const under = (rules: string, sight: string) => {
    const scene = [
      'proofreel: 1',
      `puzzle: {boxes: 2x2, rules: [${rules}], givens: .... .1.. .... ....}`,
      'video: {rate: 25, draw: board}',
      'steps:',
      `  - {id: s, at: 0, until: 4, show: [{sight: ${sight}}]}`,
    ];
    return marksOf(tell(scene.join('\n')), 's');
  };

  test('along a diagonal that holds every digit', () => {
    expect(under('diagonals', '{of: 1r2c2, along: d1}')).toEqual(['0-100 sight r2c2 d1: r1c1 r3c3 r4c4']);
    expect(under('diagonals', '{of: 1r2c2, into: b4}')).toEqual(['0-100 sight r2c2 d1: r3c3 r4c4']);
    // What the diagonal passes does not stand apart in the box.
    expect(under('diagonals', '1r2c2')).toHaveLength(3);
  });

  test('to the cells that a rule alone shuts', () => {
    expect(under('anti-knight', '{of: 1r2c2, into: b4}')).toEqual(['0-100 sight r2c2 undefined: r3c4 r4c3']);
  });
});
