/**
 * Exact to the frame in every format at every usual rate, and many timelines by chance in every format.
 */
import fc from 'fast-check';
import { afterAll, describe, it } from 'vitest';
import { renderFilm } from '../../src/output/render.ts';
import { fraction } from '../../src/scene/fraction.ts';
import { scratchFolder } from './outside.ts';
import { expectExact, mixed, type Timeline, timelinePainter } from './timelines.ts';

const scratch = scratchFolder();
afterAll(scratch.remove);

const formats = [
  { name: 'film.mp4', opaque: true },
  { name: 'compatible.mp4', opaque: true, compatible: true },
  { name: 'film.mov', opaque: false },
  { name: 'opaque.mov', opaque: true },
  { name: 'lossless.mov', opaque: false, lossless: true },
  { name: 'opaque-lossless.mov', opaque: true, lossless: true },
  { name: 'png.mov', opaque: false, png: true },
  { name: 'opaque-png.mov', opaque: true, png: true },
  { name: 'film.webm', opaque: false },
  { name: 'opaque.webm', opaque: true },
  { name: 'av1.mp4', opaque: true, codec: 'av1' },
  { name: 'av1.webm', opaque: true, codec: 'av1' },
  { name: 'hevc.mov', opaque: true, codec: 'hevc' },
] as const;

const rates = [fraction(24n), fraction(25n), fraction(30000n, 1001n), fraction(50n), fraction(60n)];

describe.each(formats)('$name', ({ name, opaque, ...options }) => {
  it.each(rates)('at $numerator/$denominator', async (rate) => {
    const painter = timelinePainter(mixed, { rate, opaque });
    await renderFilm(painter, scratch.at(name), options);
    expectExact(scratch.at(name), painter, mixed);
  });

  it('for timelines by chance', async () => {
    const run = fc.tuple(fc.nat({ max: 40 }), fc.constantFrom(1, 1, 1, 2, 7, 8, 9, 49, 50, 51, 97, 300));
    const timeline = fc
      .array(run, { minLength: 1, maxLength: 14 })
      .map((runs): Timeline => runs.filter(([picture], at) => at === 0 || picture !== runs[at - 1]![0]));
    await fc.assert(
      fc.asyncProperty(timeline, fc.constantFrom(...rates), async (runs, rate) => {
        const painter = timelinePainter(runs, { rate, opaque, width: 96, height: 64 });
        await renderFilm(painter, scratch.at(name), options);
        expectExact(scratch.at(name), painter, runs);
      }),
      { numRuns: 25 },
    );
  });
});
