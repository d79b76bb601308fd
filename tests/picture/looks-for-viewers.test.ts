/**
 * What two looks are made for: highest contrast, by the ratio of WCAG 2.2 as culori works it out, from rendered pixels;
 * and no motion.
 */
import { wcagContrast } from 'culori';
import { describe, expect, it } from 'vitest';
import { defaultLook } from '../../src/picture/default-look.ts';
import type { Look } from '../../src/scene/look.ts';
import { type Drawn, drawn } from './drawn.ts';
import { circle, fill, film, link, type MarkWish, note, outline, place, sight, sparseGivens, strike } from './films.ts';
import { lookFile } from './goldens.ts';

const [limelight, stillwater] = [lookFile('limelight'), lookFile('stillwater')];

/** The highest contrast of any pixel of a box against another colour. */
function bestIn({ at }: Drawn, [left, top, right, bottom]: readonly number[], ground: string): number {
  const colours = new Set<string>();
  for (let y = top!; y < bottom!; y++) {
    for (let x = left!; x < right!; x++) {
      const [red, green, blue] = at(x, y);
      colours.add(`#${[red, green, blue].map((value) => value.toString(16).padStart(2, '0')).join('')}`);
    }
  }
  return Math.max(...[...colours].map((colour) => wcagContrast(colour, ground)));
}

describe('limelight', () => {
  // The board that the tool lays out: cells of 100 pixels from 45, 45.
  const marks = [circle('5r4c4', 4), link('weak', '5r4c4', '5r6c1'), strike('4r5c9'), outline('r9c12')];
  const picture = drawn(
    film({ givens: sparseGivens, candidates: true, title: 'A title', heading: { argument: 'kite' }, marks }),
    50,
    limelight,
  );
  // AAA of 1.4.6 is 7:1 for words; of 1.4.11 3:1 for what is no word.
  for (const [name, least, box] of [
    ['a given', 20, [50, 50, 140, 140]],
    ['a small digit that has no part in what is marked', 9, [146 + 10, 50, 240, 140]],
    ['the title', 15, [1000, 45, 1800, 110]],
    ['a ring', 5, [345 + 24, 345 + 24, 345 + 76, 345 + 76]],
    ['a strike', 5, [845, 445, 945, 545]],
    ['an outline', 15, [50, 850, 240, 860]],
  ] as const) {
    it(`${name} reaches ${least}:1`, () => {
      expect(bestIn(picture, box, limelight.colours.cell)).toBeGreaterThanOrEqual(least);
    });
  }

  it('reaches more than any other look does', () => {
    const quiet = (look: Look) =>
      bestIn(
        drawn(film({ givens: sparseGivens, candidates: true, marks: [circle('5r4c4')] }), 50, look),
        [156, 50, 240, 140],
        look.colours.cell,
      );
    for (const other of [defaultLook, lookFile('bluehour'), stillwater]) {
      expect(quiet(limelight)).toBeGreaterThan(quiet(other));
    }
  });
});

describe('stillwater', () => {
  const marks: readonly (readonly [string, MarkWish])[] = [
    ['a fill', fill('r5c5', 0)],
    ['a circle', circle('5r5c5', 1)],
    ['a strong link', link('strong', '5r5c2', '5r5c8')],
    ['a weak link', link('weak', '5r5c2', '5r2c2')],
    ['a strike', strike('5r5c5')],
    ['a placement', place('r5c5=5')],
    ['an outline', outline('r123c123', 1)],
    ['a sight line', sight('r5c1', 'r5c2345')],
    ['a note', note('A note.')],
  ];
  for (const [name, mark] of marks) {
    it(`has ${name} whole from its first frame`, () => {
      expect(uncovered(mark, stillwater)).toEqual([0, 0]);
    });
  }

  it('unlike a look with motion', () => {
    expect(uncovered(link('strong', '5r5c2', '5r5c8'), defaultLook)[0]).toBeGreaterThan(100);
  });

  /** How many pixels the mark has at last and not on its first frame, and the other way round. */
  function uncovered(mark: MarkWish, look: Look): readonly [missing: number, beyond: number] {
    const shown = film({ width: 640, height: 360, draw: 'overlay', small: 'whole', marks: [mark] });
    const [first, whole] = [drawn(shown, 0, look), drawn(shown, 60, look)];
    let [missing, beyond] = [0, 0];
    for (let at = 3; at < whole.pixels.length; at += 4) {
      // What is as faint as the edge of a stroke may round to nothing while it fades in.
      if (whole.pixels[at]! > 60 && first.pixels[at] === 0) missing++;
      if (whole.pixels[at] === 0 && first.pixels[at]! > 0) beyond++;
    }
    return [missing, beyond];
  }
});
