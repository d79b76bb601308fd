import { describe, expect, test } from 'vitest';
import { skyscraper, tell, towers } from './stage.ts';

/** The headings of a film as `from-until step n/count | title | argument | conclusions`. */
function headings(steps: string): string[] {
  return tell(towers(steps)).film.headings.map(
    ({ from, until, step, number, count, title, argument, conclusions }) =>
      `${from}-${until} ${step} ${number}/${count} | ${title} | ${argument} | ${conclusions}`,
  );
}

describe('headings', () => {
  test('name step and argument from the start, and the conclusions once all are drawn', () => {
    const steps = `  - {id: s, at: 1, until: 5, title: Towers, because: Skyscraper, ${skyscraper}, show: [{strike: 3r5c1, at: +1}, {strike: all, at: +2}]}`;
    // The first gives way over a fade, four frames, to the second.
    expect(headings(steps)).toEqual([
      '25-80 s 1/1 | Towers | Skyscraper | undefined',
      '76-125 s 1/1 | Towers | Skyscraper | r5c1≠3 r6c46≠3',
    ]);
  });

  test("the author's own name goes first", () => {
    expect(
      headings(`  - {id: s, at: 1, until: 5, because: skyscraper, called: the two towers, ${skyscraper}}`)[0],
    ).toContain('| the two towers |');
  });

  test('a step without conclusions has one', () => {
    expect(headings('  - {id: s, at: 0, until: 4, title: One}\n  - {id: t, at: 4, until: 8}')).toEqual([
      '0-100 s 1/2 | One | undefined | undefined',
      '100-200 t 2/2 | undefined | undefined | undefined',
    ]);
  });

  test('what is not proved is not said', () => {
    const steps = '  - {id: s, at: 0, until: 4, from: 3c4, so: r1c4=3}';
    expect(headings(steps)).toEqual(['0-100 s 1/1 | undefined | undefined | undefined']);
  });

  test('a short cascade is listed', () => {
    expect(headings('  - {id: s, at: 0, until: 4, cascade: r3c5=5 r4c3=5 r1c6<>3}').at(-1)).toBe(
      '67-100 s 1/1 | undefined | undefined | r1c6≠3 r3c5=5 r4c3=5',
    );
  });
});
