import { describe, expect, test } from 'vitest';
import { marksOf, skyscraper, stretchesOf, tell, towers, writtenIn } from './stage.ts';

describe('small digits', () => {
  test('all that no given sees stand from the start, and none else', () => {
    const told = tell(towers('  - {id: s, at: 0, until: 4}'));
    expect(stretchesOf(told, '3r1c3')).toEqual(['0-100']);
    expect(stretchesOf(told, '2r1c3')).toEqual([]);
    expect(stretchesOf(told, '3r3c2')).toEqual([]);
  });

  test('what a scene starts without is not there', () => {
    const text = towers('  - {id: s, at: 0, until: 4}').replace(
      'givens: ',
      'start: {placed: r3c5=5, removed: r5c1<>3}, givens: ',
    );
    const told = tell(text);
    expect(['3r5c1', '5r3c5', '5r3c4', '5r1c5', '3r1c5'].map((small) => stretchesOf(told, small))).toEqual([
      [],
      [],
      [],
      [],
      ['0-100'],
    ]);
    expect(told.film.standing.filter(({ given }) => !given)).toEqual([{ cell: 16, digit: 5, given: false }]);
  });

  const show = (beats: string) =>
    tell(towers(`  - {id: s, at: 1, until: 5, ${skyscraper}, show: [${beats}]}\n  - {id: t, at: 5, until: 6}`));

  test('what is struck is held until the step goes on', () => {
    expect(stretchesOf(show('{strike: all, at: +1}'), '3r5c1')).toEqual(['0-125']);
    expect(stretchesOf(show('{strike: all, at: +1}, {circle: 3r6c3, at: +3}'), '3r5c1')).toEqual(['0-100']);
  });

  test('0.7 s at least, however soon it goes on', () => {
    expect(stretchesOf(show('{strike: all, at: +1}, {circle: 3r6c3, at: +1.2}'), '3r5c1')).toEqual(['0-73']);
  });

  test('words and further strikes let it stand', () => {
    const beats = '{strike: 3r5c1, at: +1}, {note: One., at: +2}, {strike: 3r6c4, at: +3}';
    expect(stretchesOf(show(beats), '3r5c1')).toEqual(['0-125']);
  });

  test('or by the end of the step, where that comes first', () => {
    expect(stretchesOf(show('{strike: all, at: +3.6}'), '3r5c1')).toEqual(['0-125']);
  });

  test('what `so` concludes and `show` does not draw goes at three quarters of the step', () => {
    expect(stretchesOf(show('{fill: r1c1}'), '3r5c1')).toEqual(['0-100']);
  });

  test('or when the last beat stands, if that is later', () => {
    expect(stretchesOf(show('{fill: r1c1, at: +3}'), '3r5c1')).toEqual(['0-118']);
  });

  test('and so where one beat strikes only some of it', () => {
    const told = show('{strike: 3r5c1, at: +1}');
    expect(stretchesOf(told, '3r5c1')).toEqual(['0-125']);
    expect(stretchesOf(told, '3r6c4')).toEqual(['0-100']);
  });

  test('a beat on the very end of its step draws nothing, but what it would draw is done', () => {
    const told = show('{strike: all, at: 5}');
    expect(marksOf(told, 's')).toEqual([]);
    expect(stretchesOf(told, '3r5c1')).toEqual(['0-125']);
  });

  test('a placement takes those of its own cell at once and those it sees a moment later', () => {
    const told = tell(towers('  - {id: s, at: 1, until: 5, so: r3c5=5, show: [{place: all, at: +2}]}'));
    expect(stretchesOf(told, '5r3c5')).toEqual(['0-75']);
    expect(stretchesOf(told, '5r3c4')).toEqual(['0-101']);
    expect(stretchesOf(told, '5r1c5')).toEqual(['0-101']);
    expect(stretchesOf(told, '5r1c4')).toEqual(['0-125']);
    expect(writtenIn(told)).toEqual(['r3c5=5 from 75']);
  });

  test('a placement that nothing draws is written all the same', () => {
    const told = tell(towers('  - {id: s, at: 1, until: 5, so: r3c5=5, show: []}'));
    expect(writtenIn(told)).toEqual(['r3c5=5 from 100']);
    expect(marksOf(told, 's')).toEqual([]);
  });
});

describe('pencilled small digits', () => {
  const told = (steps: string) => tell(towers(steps, 'candidates: pencilled'));

  test('come with the item that lists them, and go with what ends them', () => {
    const film = told(
      [
        '  - {id: s, at: 1, until: 5, pencil: [5r3c5, {pencil: 135r2c4, at: +2}], show: []}',
        '  - {id: t, at: 5, until: 9, so: r3c5=5, show: [{place: all, at: +1}]}',
      ].join('\n'),
    );
    expect(stretchesOf(film, '5r3c5')).toEqual(['25-150']);
    expect(stretchesOf(film, '5r2c4')).toEqual(['75-225']);
    expect(stretchesOf(film, '5r3c4')).toEqual([]);
    expect(film.film.candidates).toHaveLength(4);
  });

  test('come cell by cell where the step tells itself', () => {
    // Three quarters of four seconds for three cells.
    const film = told('  - {id: s, at: 1, until: 5, pencil: 5r3c5 135r2c4 14r6c2}');
    expect(['5r3c5', '5r2c4', '4r6c2'].map((small) => stretchesOf(film, small))).toEqual([
      ['25-125'],
      ['50-125'],
      ['75-125'],
    ]);
    expect(marksOf(film, 's')).toEqual(['25-125 fill r3c5', '50-125 fill r2c4', '75-125 fill r6c2']);
  });

  test('come with `only` too', () => {
    const film = told('  - {id: s, at: 1, until: 5, only: 3c3 in r16c3}');
    expect(film.film.candidates.map(({ from, until }) => `${from}-${until}`)).toEqual(['25-125', '25-125']);
    expect(marksOf(film, 's')).toEqual(['25-125 outline r123456c3', '25-125 circle 3r1c3', '26-125 circle 3r6c3']);
  });

  test('stand under the stamp alone where the list is not proved', () => {
    // r2c4 may hold 1, 3 or 5.
    const film = told('  - {id: s, at: 1, until: 5, pencil: 13r2c4}\n  - {id: t, at: 5, until: 9}');
    expect(['1r2c4', '3r2c4', '5r2c4'].map((small) => stretchesOf(film, small))).toEqual([['25-125'], ['25-125'], []]);
    expect(film.checked.steps[0]?.sound).toBe(false);
  });

  test('a strike on one that is not on the board holds to the end of its step', () => {
    const film = told(`  - {id: s, at: 1, until: 5, ${skyscraper}, show: [{strike: 3r5c1, at: +1}]}`);
    expect(marksOf(film, 's')).toEqual(['50-125 strike 3r5c1']);
  });

  test('a mark on one that is not on the board brings it, and takes it along', () => {
    const keys = `${skyscraper}, show: [{circle: 3r1c3, at: +1}, {link: 1, at: +2}, {strike: 3r5c1, at: +3}]`;
    for (const candidates of ['pencilled', 'none']) {
      const film = tell(
        towers(`  - {id: s, at: 1, until: 5, ${keys}}\n  - {id: t, at: 5, until: 9}`, `candidates: ${candidates}`),
      );
      const brought = ['3r1c3', '3r6c3', '3r5c1', '3r1c5'].map((small) => stretchesOf(film, small));
      expect(brought).toEqual([['50-125'], ['75-125'], ['100-125'], []]);
    }
  });

  test('a mark on one that a list has written down leaves it there', () => {
    const film = told(
      '  - {id: s, at: 1, until: 5, pencil: 5r3c5, show: [{circle: 5r3c5, at: +1}]}\n  - {id: t, at: 5, until: 9}',
    );
    expect(stretchesOf(film, '5r3c5')).toEqual(['25-225']);
  });

  test('over a recording none are drawn, whatever is marked', () => {
    const film = tell(
      towers('  - {id: s, at: 1, until: 5, show: [{circle: 5r3c5}]}', 'candidates: none').replace(
        'draw: board',
        'draw: overlay',
      ),
    );
    expect(film.film.candidates).toEqual([]);
  });

  test('none at all where none are asked for', () => {
    expect(tell(towers('  - {id: s, at: 1, until: 5, pencil: 5r3c5}', 'candidates: none')).film.candidates).toEqual([]);
  });
});

describe('items of a step', () => {
  test('what a list leaves out by locked candidates goes at its item', () => {
    // The 3 of box 4 has r4c6 alone.
    const told = tell(towers('  - {id: s, at: 1, until: 5, only: [{only: 3c6 in r4c6, at: +2}], show: []}'));
    const proved = told.checked.steps[0]!.conclusions.map(({ text, verdict }) => `${text} ${verdict}`);
    expect(proved).toEqual(['r1c6<>3 proved', 'r2c6<>3 proved', 'r6c6<>3 proved']);
    expect(stretchesOf(told, '3r1c6')).toEqual(['0-75']);
  });

  test('a cascade writes each digit at its own frame', () => {
    const told = tell(
      towers('  - {id: s, at: 1, until: 5, cascade: [{cascade: r3c5=5, at: +1}, {cascade: r4c3=5, at: +3}], show: []}'),
    );
    expect(writtenIn(told)).toEqual(['r3c5=5 from 50', 'r4c3=5 from 100']);
    expect(marksOf(told, 's')).toEqual([]);
  });

  test('place in such a step frames each cell when its digit is written, not before', () => {
    const told = tell(
      towers(
        '  - {id: s, at: 1, until: 5, cascade: [{cascade: r3c5=5, at: +1}, {cascade: r4c3=5, at: +3}], show: [{place: all, at: +2}]}',
      ),
    );
    expect(marksOf(told, 's')).toEqual(['75-125 place r3c5=5', '100-125 place r4c3=5']);
    expect(writtenIn(told)).toEqual(['r3c5=5 from 50', 'r4c3=5 from 100']);
  });
});

describe('over a recording', () => {
  const overlay = (steps: string) => tell(towers(steps).replace('draw: board', 'draw: overlay'));

  test('nothing is drawn that the recording shows itself', () => {
    const told = overlay(
      '  - {id: s, at: 1, until: 5, so: r3c5=5}\n  - {id: t, at: 5, until: 9, pencil: 135r2c4, only: 3c3 in r16c3}',
    );
    expect([told.film.written, told.film.candidates, marksOf(told, 't')]).toEqual([[], [], []]);
    expect(marksOf(told, 's').at(-1)).toBe('101-125 place r3c5=5');
  });

  const rows: readonly { readonly name: string; readonly beats: string; readonly marks: readonly string[] }[] = [
    { name: 'a strike holds until the step ends', beats: '{strike: 3r5c1, at: +1}', marks: ['50-125 strike 3r5c1'] },
    {
      name: 'or until the recording takes the candidate away',
      beats: '{strike: 3r5c1, at: +1, gone: +2}',
      marks: ['50-75 strike 3r5c1'],
    },
    { name: 'also where that is later', beats: '{strike: 3r5c1, at: +1, gone: 7}', marks: ['50-175 strike 3r5c1'] },
    { name: 'and longer if it is kept', beats: '{strike: 3r5c1, at: +1, keep: true}', marks: ['50-225 strike 3r5c1'] },
    {
      name: 'a circle goes with its candidate',
      beats: '{circle: 3r5c1}, {strike: 3r5c1, at: +1, gone: +2}',
      marks: ['25-75 circle 3r5c1', '50-75 strike 3r5c1'],
    },
  ];
  test.each(rows)('$name', ({ beats, marks }) => {
    const told = overlay(`  - {id: s, at: 1, until: 5, ${skyscraper}, show: [${beats}]}\n  - {id: t, at: 5, until: 9}`);
    expect(marksOf(told, 's')).toEqual(marks);
  });

  test('a kept strike goes when a digit covers it', () => {
    const told = overlay(
      [
        `  - {id: s, at: 1, until: 5, ${skyscraper}, show: [{strike: 3r6c4, keep: true, at: +1}]}`,
        '  - {id: t, at: 5, until: 9, so: r6c4=6, show: [{place: all, at: +1}]}',
      ].join('\n'),
    );
    expect(marksOf(told, 's')).toEqual(['50-150 strike 3r6c4']);
  });
});
