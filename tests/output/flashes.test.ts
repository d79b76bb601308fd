/**
 * Flashes by W3C WCAG 2.2, success criterion 2.3.1, and its definition of "general flash and red flash thresholds".
 */
import { readdirSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { openLesson } from '../../src/commands/lesson.ts';
import { filmOf } from '../../src/film/film-of.ts';
import { flashesOf } from '../../src/output/flashes/film-flashes.ts';
import { defaultLook } from '../../src/picture/default-look.ts';
import { flashMeter } from '../../src/picture/flashes.ts';
import { frameAt } from '../../src/timeline/film.ts';
import { during, type FilmWish, fill, film, type MarkWish } from '../picture/films.ts';

/** The most pixels of one field that may flash: a quarter of 341x256, for a meter of 1024x768 one to one over 16. */
const [width, height, scale] = [64, 48, 16];
const quarter = (341 * 256) / (scale * scale) / 4;

/** Whether a patch of so many pixels, as square as can be, going to and fro so many times in a second, is too much. */
function flashes({ pixels = 400, changes = 8, dark = 0, light = 0.2, every = 3 } = {}): boolean {
  const meter = flashMeter(width, height, scale, 25);
  const side = Math.ceil(Math.sqrt(pixels));
  const seen = Array.from({ length: changes + 1 }, (_, index) => {
    const luminance = new Float32Array(width * height).fill(dark);
    for (let pixel = 0; pixel < pixels; pixel++) {
      luminance[(10 + Math.floor(pixel / side)) * width + 10 + (pixel % side)] = index % 2 === 0 ? dark : light;
    }
    return meter.see(index * every, luminance);
  });
  return seen.includes(true);
}

describe('the measure of flashes', () => {
  const rows: readonly (readonly [string, Parameters<typeof flashes>[0], boolean])[] = [
    ['four flashes in a second', {}, true],
    ['three', { changes: 7 }, false],
    ['four in more than a second', { every: 4 }, false],
    ['changes of a tenth', { light: 0.1 }, true],
    ['changes of less than a tenth', { light: 0.09 }, false],
    ['the darker just below 0.8', { dark: 0.79, light: 1 }, true],
    ['the darker at 0.8', { dark: 0.81, light: 1 }, false],
    ['just over a quarter of a field', { pixels: Math.ceil(quarter) + 1 }, true],
    ['just under a quarter of a field', { pixels: Math.floor(quarter) }, false],
  ];
  for (const [name, wish, isTooMuch] of rows) it(name, () => expect(flashes(wish)).toBe(isTooMuch));

  it('adds up a slow rise, which is one change', () => {
    const meter = flashMeter(width, height, scale, 25);
    const seen = Array.from({ length: 80 }, (_, frame) => {
      const wave = Math.abs(((frame % 6) - 3) / 3);
      return meter.see(frame, new Float32Array(width * height).fill(0.15 * wave));
    });
    expect(seen).toContain(true);
  });
});

describe('a film', () => {
  const board = 'r123456789c123456789';
  const blinking = (cells: string, length: number, times: number): MarkWish[] =>
    Array.from({ length: times }, (_, index) =>
      during(fill(cells, 4), 20 + index * 2 * length, 20 + (index * 2 + 1) * length),
    );
  const found = (marks: readonly MarkWish[], wish: FilmWish = {}) =>
    flashesOf(film({ ...wish, marks }), defaultLook).length;

  it('made to flash is found, and where', () => {
    const [from, ...others] = flashesOf(film({ marks: blinking(board, 3, 5) }), defaultLook);
    expect([from! > 20 && from! <= 20 + 26, others]).toEqual([true, []]);
  });

  it('that lies over a recording is found too', () => {
    const place = [{ from: frameAt(0), shape: { kind: 'square', left: 40, top: 40, side: 1000 } }] as const;
    expect(found(blinking(board, 3, 5), { draw: 'overlay', board: place })).toBe(1);
  });

  it('that flashes slowly, seldom, or in a corner is none', () => {
    expect([found(blinking(board, 5, 8)), found(blinking(board, 3, 3)), found(blinking('r1c12', 3, 5))]).toEqual([
      0, 0, 0,
    ]);
  });
});

describe('no lesson flashes', () => {
  const folder = fileURLToPath(new URL('../../scenes', import.meta.url));
  for (const name of readdirSync(folder).filter((each) => each.endsWith('.yaml'))) {
    it(name, async () => {
      const lesson = await openLesson(`${folder}/${name}`, { media: 'if there' });
      if (lesson.kind !== 'lesson') throw new Error(`${name} is unusable`);
      expect(flashesOf(filmOf(lesson.checked, lesson.schedule, defaultLook), defaultLook)).toEqual([]);
    }, 60_000);
  }
});
