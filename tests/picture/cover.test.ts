/**
 * Strokes leave the digits to be read: measured on frames as they are painted. Digits that bear a mark are painted
 * over the strokes; of any other at most a third is covered, and that where small digits stand shoulder to shoulder.
 */
import { describe, expect, it } from 'vitest';
import { openFilm } from '../../src/commands/open-film.ts';
import { lastFullFrame } from '../../src/film/last-full-frame.ts';
import { defaultLook } from '../../src/picture/default-look.ts';
import { frameAt } from '../../src/timeline/film.ts';
import { coverOfSmallDigits } from './cover.ts';
import { circle, film, link, opens, outline, sparseGivens, strike } from './films.ts';

const most = 1 / 3;
const nowhere = { out: () => undefined, err: () => undefined, columns: 80, isInteractive: false };

/** Scenes of every family, those with the most crowded marks among them. */
const scenes = [
  ...['names/als-xy-wing', 'names/continuous-loop', 'names/grouped-aic', 'names/jellyfish', 'names/remote-pair'],
  ...['names/two-string-kite', 'names/unique-rectangle-type-1', 'names/hidden-triple', 'two-towers'],
  ...['names/h-wing', 'names/m-wing'],
];

describe('of the small digits that bear no mark', () => {
  for (const scene of scenes) {
    it(`${scene}: none is covered by more than a third`, async () => {
      const path = new URL(`../../scenes/${scene}.yaml`, import.meta.url).pathname;
      const opened = await openFilm(path, {}, nowhere as never);
      const { film: shown, look, lesson } = opened!;
      const frame = lastFullFrame(shown, lesson.scene.steps[0]!.id, look);
      expect(coverOfSmallDigits(shown, look, frame).filter(({ share }) => share > most)).toEqual([]);
    });
  }

  const wide = { givens: sparseGivens, candidates: true };

  it('an outline and the corners of what opens cover none', () => {
    const shown = film({
      ...wide,
      marks: [outline('r789c123'), outline('r4c456', 1), opens('5r2c8'), opens('6r8c4')],
    });
    expect(coverOfSmallDigits(shown, defaultLook, frameAt(60))[0]!.share).toBeLessThan(0.02);
  });

  it('a ring touches those above and below it by no more than a tenth', () => {
    const shown = film({ ...wide, marks: [circle('5r7c4', 0)] });
    const [worst] = coverOfSmallDigits(shown, defaultLook, frameAt(60));
    expect(worst!.share).toBeLessThan(0.1);
    expect(worst!.share).toBeGreaterThan(0);
  });

  it('a line straight over one is found', () => {
    const shown = film({
      width: 540,
      height: 540,
      boxes: '2x2',
      candidates: true,
      marks: [link('strong', '1r1c1', '1r4c4'), strike('2r2c1')],
    });
    const bare = { ...defaultLook, strokes: { ...defaultLook.strokes, link: 0.4 } };
    expect(coverOfSmallDigits(shown, bare, frameAt(60))[0]!.share).toBeGreaterThan(0.8);
  });
});
