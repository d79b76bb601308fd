import { describe, expect, test } from 'vitest';
import { filmOf } from '../../src/film/film-of.ts';
import { cellAt, digit } from '../../src/grid/geometry.ts';
import { candidateAt, gridOf } from '../../src/grid/grid.ts';
import { defaultLook } from '../../src/picture/default-look.ts';
import type { Mark } from '../../src/timeline/film.ts';
import { marksOf, skyscraper, stretchesOf, tell, towers, writtenIn } from './stage.ts';

/** Column 4 has 3s in r1, r2, r5 and r6: this strong link is none. */
const broken = 'chain: (3)r6c3=r1c3-r1c4=r5c4, so: r6c4<>3';

describe('a step that is not proved', () => {
  const told = tell(towers(`  - {id: s, at: 0, until: 10, ${broken}}\n  - {id: t, at: 10, until: 14, so: r3c5=5}`));

  test('bears a stamp over all its frames, and no other step does', () => {
    const stamps = told.film.marks.filter(({ shape }) => shape.kind === 'stamp');
    expect(stamps).toHaveLength(1);
    expect(stamps[0]).toMatchObject({ step: 's', from: 0, until: 250 });
  });

  test('says on its stamp what is wrong, and not how it may be fixed', () => {
    const [step, ...others] = told.checked.steps;
    const message = '3r1c4=3r6c4 is not a strong link. A pointing pair (3b2) removes 3r1c4';
    const checked = { ...told.checked, steps: [{ ...step!, message }, ...others] };
    const { marks } = filmOf(checked, told.schedule, defaultLook);
    expect(marks.flatMap(({ shape }) => (shape.kind === 'stamp' ? [shape.text] : []))).toEqual([
      '3r1c4=3r6c4 is not a strong link',
    ]);
  });

  test('says on its stamp what is wrong, in a line', () => {
    const text = marksOf(told, 's').find((mark) => mark.includes(' stamp '))!;
    expect(text).toContain('3r1c4=3r5c4 is not a strong link');
    expect(text.length).toBeLessThan(125);
  });

  test('draws its links as they are written, the one that does not hold too', () => {
    expect(marksOf(told, 's').filter((mark) => mark.includes(' link '))).toEqual([
      '25-250 link 3r6c3=3r1c3',
      '75-250 link 3r1c3-3r1c4',
      '125-250 link 3r1c4=3r5c4',
    ]);
  });

  test('strikes what it does not prove, and the candidate stays', () => {
    expect(marksOf(told, 's').at(-1)).toBe('188-250 strike 3r6c4');
    expect(stretchesOf(told, '3r6c4')).toEqual(['0-350']);
  });

  test('a digit that is not proved is not written', () => {
    const placed = tell(towers('  - {id: s, at: 0, until: 10, from: 3c4, so: r1c4=3}\n  - {id: t, at: 10, until: 12}'));
    expect(marksOf(placed, 's').at(-1)).toBe('188-250 place r1c4=3');
    expect(writtenIn(placed)).toEqual([]);
    expect(stretchesOf(placed, '1r1c4')).toEqual(['0-300']);
  });

  test('its claims do not outlive the stamp, even if they are kept', () => {
    const kept = tell(
      towers(
        `  - {id: s, at: 0, until: 4, ${broken}, show: [{fill: r1c1, keep: true}, {link: all, keep: true, at: 1}, {strike: all, keep: true, at: 2}]}\n  - {id: t, at: 4, until: 8}`,
      ),
    );
    const outliving = kept.film.marks.filter(({ until }) => until > 100).map(({ shape }) => shape.kind);
    expect(outliving).toEqual(['fill']);
  });

  test('one that merely rests on another is stamped too', () => {
    const steps = `  - {id: s, at: 0, until: 4, ${broken}}\n  - {id: t, at: 4, until: 8, from: 3c4, so: r1c4=3}`;
    const stamped = tell(towers(steps)).film.marks.filter(({ shape }) => shape.kind === 'stamp');
    expect(stamped.map(({ step }) => step)).toEqual(['s', 't']);
  });

  test('clear takes no stamp away', () => {
    const cleared = tell(towers(`  - {id: s, at: 0, until: 4, ${broken}, show: [{clear: all, at: 2}]}`));
    expect(cleared.film.marks).toMatchObject([{ from: 0, until: 100, shape: { kind: 'stamp' } }]);
  });
});

const grid = gridOf('2x3');
const victim = candidateAt(grid, cellAt(grid, 6, 4), digit(grid, 3));

describe('a step that is meant to fail', () => {
  const fails = `fails: true, ${broken}`;

  test('draws what holds of its argument, then the choice that breaks it, and strikes nothing', () => {
    const told = tell(towers(`  - {id: s, at: 0, until: 10, ${fails}}\n  - {id: t, at: 10, until: 12}`));
    expect(told.checked.sound).toBe(true);
    const choice = told.checked.steps[0]!.conclusions[0]!.counterexample!;
    const marks = marksOf(told, 's');
    expect(marks.filter((mark) => mark.includes(' link '))).toEqual([
      '25-250 link 3r6c3=3r1c3',
      '100-250 link 3r1c3-3r1c4',
    ]);
    expect(marks.filter((mark) => mark.includes(' ghost '))).toHaveLength(new Set([...choice, victim]).size);
    expect(marks.at(-1)).toBe(
      `${marks.findLast((mark) => mark.includes(' ghost '))!.split(' ')[0]} label 3r6c4 "does not follow"`,
    );
    expect(marks.some((mark) => / (strike|place|stamp) /.test(mark))).toBe(false);
    expect(stretchesOf(told, '3r6c4')).toEqual(['0-300']);
  });

  test('shows the choice where its own beats ask for the strike', () => {
    const told = tell(towers(`  - {id: s, at: 0, until: 10, ${fails}, show: [{strike: all, at: 5}]}`));
    const kinds = new Set(told.film.marks.map(({ shape }) => shape.kind));
    expect([...kinds]).toEqual(['ghost', 'label']);
    const isVictim = ({ shape }: Mark) => shape.kind === 'ghost' && shape.isTrue && shape.candidates.includes(victim);
    expect(told.film.marks.some(isVictim)).toBe(true);
  });

  const proved = `  - {id: first, at: 0, until: 4, ${skyscraper}}\n`;
  test.each([
    ['what its argument proves', '', skyscraper],
    ['what an earlier step proved by the same argument', proved, skyscraper],
    ['what is partly proved', '', 'chain: (3)r6c3=r1c3-r1c5=r5c5, so: r5c1<>3 r1c1<>3'],
    ['a given', '', 'from: 3c3, so: r6c1=5'],
    ['what no argument is named for', '', 'because: X-wing, so: r6c4<>3'],
  ])('never says of %s that it does not follow', (_, before, claim) => {
    const told = tell(towers(`${before}  - {id: s, at: 4, until: 10, fails: true, ${claim}}`));
    expect(told.checked.steps.at(-1)?.sound).toBe(false);
    expect(marksOf(told, 's').filter((mark) => / stamp /.test(mark))).toHaveLength(1);
    expect(marksOf(told, 's').filter((mark) => mark.includes('does not follow'))).toEqual([]);
    expect(told.film.headings.filter(({ step, isFalseStep }) => step === 's' && isFalseStep)).toEqual([]);
  });

  test('is stamped where it holds after all', () => {
    const told = tell(towers(`  - {id: s, at: 0, until: 10, fails: true, ${skyscraper}}`));
    expect(told.film.marks.filter(({ shape }) => shape.kind === 'stamp')).toHaveLength(1);
    expect(stretchesOf(told, '3r5c1')).toEqual(['0-250']);
  });
});
