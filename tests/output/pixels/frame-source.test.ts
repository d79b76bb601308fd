/**
 * A frame of which only what changed was converted is, to the byte, the frame converted as a whole.
 */
import fc from 'fast-check';
import { expect, it } from 'vitest';
import { frameCanvas } from '../../../src/output/pixels/canvas.ts';
import { frameSource } from '../../../src/output/pixels/frame-source.ts';
import { type Square, squarePainter } from '../square-painter.ts';

const square = (width: number, height: number): fc.Arbitrary<Square> =>
  fc.record({
    left: fc.integer({ min: -3, max: width - 1 }),
    top: fc.integer({ min: -3, max: height - 1 }),
    width: fc.integer({ min: 1, max: 20 }),
    height: fc.integer({ min: 1, max: 20 }),
    colour: fc.tuple(
      ...([255, 255, 255, 255].map((max) => fc.nat({ max })) as [
        fc.Arbitrary<number>,
        fc.Arbitrary<number>,
        fc.Arbitrary<number>,
        fc.Arbitrary<number>,
      ]),
    ),
  });

it.each(['yuv420p', 'yuva420p', 'rgba', 'opaque'] as const)('%s', (format) => {
  const ground = format === 'yuv420p' ? { ground: [20, 40, 60] as const } : {};
  fc.assert(
    fc.property(fc.integer({ min: 1, max: 70 }), fc.integer({ min: 1, max: 50 }), fc.gen(), (width, height, gen) => {
      const frames = gen(fc.array, fc.array(square(width, height), { maxLength: 4 }), { minLength: 1, maxLength: 9 });
      const painter = squarePainter({
        ...{ width, height, ...ground, frameCount: frames.length },
        squares: (frame) => frames[frame]!,
      });
      const running = frameSource(painter, frameCanvas(width, height, undefined), format, 4);
      for (let frame = 0; frame < frames.length; frame++) {
        const alone = frameSource(painter, frameCanvas(width, height, undefined), format, 4);
        expect(Buffer.from(running.bytesAt(frame)).equals(Buffer.from(alone.bytesAt(frame)))).toBe(true);
      }
    }),
    { numRuns: 60 },
  );
});
