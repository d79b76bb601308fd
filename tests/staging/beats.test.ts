import { describe, expect, test } from 'vitest';
import { cellOf } from '../../src/grid/grid.ts';
import { marksOf, skyscraper, tell, towers } from './stage.ts';

/** A step of four seconds (frames 25 to 125) with this `show`. */
function shown(show: string, keys = skyscraper, video = ''): string[] {
  return marksOf(tell(towers(`  - {id: s, at: 1, until: 5, ${keys}, show: [${show}]}`, video)), 's');
}

describe('a beat is drawn from its frame until its step ends', () => {
  const rows: readonly { readonly name: string; readonly show: string; readonly marks: readonly string[] }[] = [
    { name: 'cells are tinted together', show: '{fill: r1c3 r1c5 b6}', marks: ['25-125 fill r1c35|r56c456'] },
    { name: 'at its time', show: '{outline: b2, at: +1.5}', marks: ['63-125 outline r12c456'] },
    { name: 'in its group', show: '{outline: b2, group: low}', marks: ['25-125 outline r12c456 @orange1'] },
    {
      name: 'each outline for itself',
      show: '{outline: r1 c2}',
      marks: ['25-125 outline r1c123456', '25-125 outline r123456c2'],
    },
    {
      name: 'circles one after another',
      show: '{circle: 3r6c3 3r1c35}',
      marks: ['25-125 circle 3r6c3', '26-125 circle 3r1c3', '28-125 circle 3r1c5'],
    },
    {
      name: 'a bare digit is circled wherever it is open, and not where it stands',
      show: '{circle: 1, group: high}',
      marks: [
        '25-125 circle 1r1c1 @blue0',
        '26-125 circle 1r1c2 @blue0',
        '28-125 circle 1r1c3 @blue0',
        '29-125 circle 1r1c4 @blue0',
        '30-125 circle 1r2c1 @blue0',
        '31-125 circle 1r2c2 @blue0',
        '33-125 circle 1r2c4 @blue0',
        '34-125 circle 1r3c1 @blue0',
        '35-125 circle 1r3c3 @blue0',
        '36-125 circle 1r6c2 @blue0',
        '38-125 circle 1r6c3 @blue0',
      ],
    },
    {
      name: 'a bare digit tints the cells where it is open',
      show: '{fill: 6}',
      marks: ['25-125 fill r1c12|r3c146|r4c126|r6c46'],
    },
    {
      name: 'a candidate that is not possible gets no circle',
      show: '{circle: 1r5c1 3r1c5}',
      marks: ['25-125 circle 3r1c5'],
    },
    {
      name: 'a word',
      show: '{label: 3r1c3 "roof"}, {label: r1c1 "corner", at: +1}',
      marks: ['25-125 label 3r1c3 "roof"', '50-125 label r1c1 "corner"'],
    },
    { name: 'a note', show: '{note: look here}', marks: ['25-125 note look here'] },
    {
      name: 'a focus lasts until the next one',
      show: '{focus: r1}, {focus: c2, at: +2}',
      marks: ['25-75 focus r1c123456', '75-125 focus r123456c2'],
    },
    {
      name: 'clear takes everything away',
      show: '{fill: r1c1}, {note: words, at: +0}, {clear: all, at: +2}, {fill: r2c1, at: +3}',
      marks: ['25-75 fill r1c1', '25-75 note words', '100-125 fill r2c1'],
    },
    {
      name: 'clear takes a group away',
      show: '{fill: r1c1, group: low}, {fill: r2c1, group: high, at: +0}, {clear: low, at: +2}',
      marks: ['25-75 fill r1c1 @orange1', '25-125 fill r2c1 @blue0'],
    },
    {
      name: 'all of a beat has begun before the next',
      show: '{circle: 3r6c3 3r1c3 3r1c5}, {clear: all, at: +0.08}',
      marks: ['25-27 circle 3r6c3', '26-27 circle 3r1c3', '26-27 circle 3r1c5'],
    },
    {
      name: 'the same circle in the same colour is drawn once',
      show: '{circle: 3r1c3}, {circle: 3r1c35, at: +1}',
      marks: ['25-125 circle 3r1c3', '50-125 circle 3r1c5'],
    },
    {
      name: 'another colour lies over the one before',
      show: '{circle: 3r1c3, group: low}, {circle: 3r1c3, group: high, at: +1}',
      marks: ['25-125 circle 3r1c3 @orange1', '50-125 circle 3r1c3 @blue0'],
    },
    { name: 'a beat on the last edge of its step is never seen', show: '{fill: r1c1, at: 5}', marks: [] },
  ];
  test.each(rows)('$name', ({ show, marks }) => {
    expect(shown(show)).toEqual(marks);
  });
});

describe('links', () => {
  const rows: readonly { readonly name: string; readonly show: string; readonly marks: readonly string[] }[] = [
    {
      // Four seconds for three links: 0.85 * 100 / 3 frames apart.
      name: 'all, in order, over the time there is',
      show: '{link: all}',
      marks: ['25-125 link 3r6c3=3r1c3', '53-125 link 3r1c3-3r1c5', '82-125 link 3r1c5=3r5c5'],
    },
    {
      name: 'by number, then the rest; those that stand are not drawn again',
      show: '{link: 2}, {link: all, at: +2}',
      marks: ['25-125 link 3r1c3-3r1c5', '75-125 link 3r6c3=3r1c3', '96-125 link 3r1c5=3r5c5'],
    },
    {
      name: 'until the next beat',
      show: '{link: 1-2}, {fill: r1c1, at: +1}',
      marks: ['25-125 link 3r6c3=3r1c3', '36-125 link 3r1c3-3r1c5', '50-125 fill r1c1'],
    },
  ];
  test.each(rows)('$name', ({ show, marks }) => {
    expect(shown(show)).toEqual(marks);
  });

  test('of the second chain', () => {
    const keys = 'chain: ["(3)r6c3=r1c3", "(3)r1c5=r5c5"]';
    expect(shown('{link: "2:1"}', keys)).toEqual(['25-125 link 3r1c5=3r5c5']);
  });

  test('at most two and a half seconds apart', () => {
    const told = tell(towers(`  - {id: s, at: 0, until: 30, ${skyscraper}, show: [{link: all}]}`));
    expect(marksOf(told, 's')).toEqual([
      '0-750 link 3r6c3=3r1c3',
      '63-750 link 3r1c3-3r1c5',
      '125-750 link 3r1c5=3r5c5',
    ]);
  });
});

describe('strikes and placements', () => {
  test('a strike is drawn and held to the end of its step, and goes with its candidate', () => {
    expect(shown('{strike: all, at: +1}')).toEqual([
      '50-125 strike 3r5c1',
      '51-125 strike 3r6c4',
      '53-125 strike 3r6c6',
    ]);
  });

  test('only those that are named', () => {
    expect(shown('{strike: 3r6c4, at: +1}')).toEqual(['50-125 strike 3r6c4']);
  });

  test('a circle goes with its candidate, and so does a link', () => {
    const keys = 'chain: (3)r6c4-r6c3=r1c3-r1c5=r5c5-r6c4, so: r6c4<>3';
    expect(
      shown(
        '{circle: 3r6c4}, {link: all, at: +0}, {label: 3r6c4 "no", at: +1}, {strike: all, at: +2}, {fill: r1c1, at: +3}',
        keys,
      ),
    ).toEqual([
      '25-100 circle 3r6c4',
      '25-100 link 3r6c4-3r6c3',
      '29-125 link 3r6c3=3r1c3',
      '34-125 link 3r1c3-3r1c5',
      '38-125 link 3r1c5=3r5c5',
      '42-100 link 3r5c5-3r6c4',
      '50-100 label 3r6c4 "no"',
      '75-100 strike 3r6c4',
      '100-125 fill r1c1',
    ]);
  });

  test('a strike holds to the end of its step where no small digit could go', () => {
    expect(shown('{strike: all, at: +1}', skyscraper, 'candidates: none')).toEqual([
      '50-125 strike 3r5c1',
      '51-125 strike 3r6c4',
      '53-125 strike 3r6c6',
    ]);
  });

  test('gone says when', () => {
    expect(shown('{strike: 3r6c4, at: +1, gone: +3}')).toEqual(['50-100 strike 3r6c4']);
  });

  test('a placement is framed until its step ends, and a ring on its place goes round the digit', () => {
    const keys = 'so: r3c5=5';
    expect(shown('{circle: 5r3c5}, {circle: 5r3c4, group: low, at: +0}, {place: all, at: +2}', keys)).toEqual([
      '25-75 circle 5r3c5',
      '25-101 circle 5r3c4 @orange1',
      '75-125 ring r3c5=5',
      '75-125 place r3c5=5',
    ]);
  });
});

describe('what a placement of the step itself leaves standing', () => {
  const chain = 'from: r3c5, chain: (5)r3c5-r3c4, so: r3c5=5';

  test('a link stays with the digit that is written for its end, until its other end goes', () => {
    expect(shown('{link: 1}, {place: all, at: +2}', chain)).toEqual(['25-101 link 5r3c5-5r3c4', '75-125 place r3c5=5']);
  });

  test('no small digit stands in a cell whose digit is written', () => {
    const told = tell(
      towers(
        `  - {id: s, at: 1, until: 5, ${chain}, show: [{circle: 5r3c5}, {link: 1}, {place: all, at: +2}]}`,
        'candidates: none',
      ),
    );
    const cell = told.film.grid.cells[2 * 6 + 4]!;
    const small = told.film.candidates.filter(({ candidate }) => cellOf(told.film.grid, candidate) === cell);
    expect(small.map(({ from, until }) => [from, until])).toEqual([[25, 75]]);
  });

  test('of a later step nothing is left standing', () => {
    const told = tell(
      towers(
        '  - {id: s, at: 1, until: 3, show: [{circle: 5r3c5, keep: true}]}\n  - {id: t, at: 3, until: 5, so: r3c5=5}',
      ),
    );
    expect(marksOf(told, 's').filter((mark) => !mark.includes('circle'))).toEqual([]);
  });
});

describe('marks that live on', () => {
  const after = '{id: t, at: 5, until: 9, show: [{fill: r1c1}]}';

  test('a kept mark stands to the end of the film', () => {
    const told = tell(
      towers(
        `  - {id: s, at: 1, until: 5, ${skyscraper}, show: [{fill: r2c2, keep: true}, {link: 1, keep: true, at: +0}]}\n  - ${after}`,
      ),
    );
    expect(marksOf(told, 's')).toEqual(['25-225 fill r2c2', '25-225 link 3r6c3=3r1c3']);
  });

  test('but no longer than its candidate', () => {
    const steps = [
      `  - {id: s, at: 1, until: 5, ${skyscraper}, show: [{circle: 3r6c34, keep: true}, {link: 1, keep: true, at: +0}, {strike: all, at: +2}]}`,
      '  - {id: t, at: 5, until: 9, so: r6c3=3, show: [{place: all, at: +1}]}',
    ];
    expect(marksOf(tell(towers(steps.join('\n'))), 's').slice(0, 3)).toEqual([
      '25-150 circle 3r6c3',
      '25-150 link 3r6c3=3r1c3',
      '26-125 circle 3r6c4',
    ]);
  });

  test('a later step may take it away by the name of its step', () => {
    const steps = [
      '  - {id: s, at: 1, until: 5, show: [{fill: r2c2, keep: true}]}',
      '  - {id: u, at: 5, until: 6, show: [{fill: r3c3, keep: true}]}',
      '  - {id: t, at: 6, until: 9, show: [{clear: s, at: +1}]}',
    ];
    const told = tell(towers(steps.join('\n')));
    expect(marksOf(told, 's')).toEqual(['25-175 fill r2c2']);
    expect(marksOf(told, 'u')).toEqual(['125-225 fill r3c3']);
  });

  test('the places of a bare digit become fewer', () => {
    const steps = [
      '  - {id: s, at: 1, until: 5, show: [{circle: 3, keep: true, group: low}]}',
      `  - {id: t, at: 5, until: 9, ${skyscraper}, show: [{strike: all, at: +1}]}`,
      '  - {id: u, at: 9, until: 10, show: [{circle: 3}]}',
    ];
    const told = tell(towers(steps.join('\n')));
    const ends = marksOf(told, 's').filter((mark) => !mark.includes('-250 '));
    expect(ends).toEqual([
      expect.stringMatching(/^\d+-225 circle 3r5c1 /),
      expect.stringMatching(/^\d+-225 circle 3r6c4 /),
      expect.stringMatching(/^\d+-225 circle 3r6c6 /),
    ]);
    expect(marksOf(told, 'u').map((mark) => mark.split(' ').at(-1))).toEqual([
      '3r1c1',
      '3r1c3',
      '3r1c4',
      '3r1c5',
      '3r1c6',
      '3r2c1',
      '3r2c4',
      '3r2c6',
      '3r4c6',
      '3r5c4',
      '3r5c5',
      '3r6c3',
    ]);
  });
});
