/**
 * Exact to the frame: in every format and at every usual rate, each border of each run is the frame drawn alone. The
 * witnesses are ffmpeg's decoders and ffprobe. Other rates and longer films stand in `runs-exact.slow.test.ts`.
 */
import fc from 'fast-check';
import { afterAll, describe, expect, it } from 'vitest';
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
  { name: 'lossless.mov', opaque: false, lossless: true },
  { name: 'png.mov', opaque: false, png: true },
  { name: 'film.webm', opaque: false },
  { name: 'av1.mp4', opaque: true, codec: 'av1' },
  { name: 'av1.webm', opaque: true, codec: 'av1' },
  { name: 'hevc.mov', opaque: true, codec: 'hevc' },
] as const;

describe.each([fraction(30000n, 1001n)])('at $numerator/$denominator', (rate) => {
  it.each(formats)('$name', async ({ name, opaque, ...options }) => {
    const painter = timelinePainter(mixed, { rate, opaque });
    const file = scratch.at(name);
    const result = await renderFilm(painter, file, options);
    // The picture that returns is drawn again, but no picture is drawn for as long as it stands.
    expect(result).toMatchObject({ kind: 'written', frameCount: painter.frameCount, drawn: mixed.length });
    expectExact(file, painter, mixed);
  });
});

/** Where cuts fall: films of one picture, of one frame, stills just too short and just long enough, keyframes at the end. */
const timeline: fc.Arbitrary<Timeline> = fc
  .array(fc.tuple(fc.nat({ max: 30 }), fc.constantFrom(1, 1, 1, 2, 7, 8, 9, 48, 49, 50, 51, 97)), {
    minLength: 1,
    maxLength: 9,
  })
  .map((runs) => runs.filter(([picture], at) => at === 0 || picture !== runs[at - 1]![0]));

it('for timelines by chance', async () => {
  let number = 0;
  await fc.assert(
    fc.asyncProperty(timeline, async (runs) => {
      const painter = timelinePainter(runs, { rate: fraction(24n), opaque: true, width: 96, height: 64 });
      const file = scratch.at(`${number++}.mp4`);
      await renderFilm(painter, file);
      expectExact(file, painter, runs);
    }),
    { numRuns: Number(process.env.TIMELINES ?? 3) },
  );
});
