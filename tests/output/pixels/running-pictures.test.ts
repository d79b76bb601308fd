/**
 * A picture of which only what changed was drawn is, to the byte, the picture drawn as a whole: for every mark, with
 * and without transparency, over a key colour, and for frames in any order.
 */
import { describe, expect, it } from 'vitest';
import { filmPainter } from '../../../src/output/painters/film-painter.ts';
import { frameCanvas } from '../../../src/output/pixels/canvas.ts';
import { runningPictures } from '../../../src/output/pixels/running-pictures.ts';
import { callList } from '../../../src/picture/calls.ts';
import { changedBoxes } from '../../../src/picture/changed-calls.ts';
import { defaultLook } from '../../../src/picture/default-look.ts';
import { circle, fill, film, link, sparseGivens, strike } from '../../picture/films.ts';

const width = 480;
const height = 270;

const lesson = (draw: 'board' | 'overlay' | 'writing') =>
  film({
    ...{ width, height, draw, givens: sparseGivens, candidates: true, frameCount: 160 },
    ...{ heading: { title: 'A table: 7r1c5', argument: 'hidden single' }, written: ['r5c5=5'] },
    marks: [
      { ...fill('r3c1 r4c3'), from: 0, until: 90 },
      { ...circle('7r1c5'), from: 5, until: 90 },
      { ...circle('7r6c4'), from: 9, until: 90 },
      { ...link('strong', '7r1c5', '7r6c4'), from: 14, until: 90 },
      { ...strike('7r8c6'), from: 30, until: 90 },
      { ...circle('4r9c1'), from: 95, until: 150, step: 'two' },
      { ...strike('4r2c8'), from: 100, until: 150, step: 'two' },
    ],
  });

describe.each(['board', 'overlay', 'writing'] as const)('%s', (draw) => {
  const painter = filmPainter(lesson(draw), defaultLook);
  // Forwards as a film runs, and then to and fro.
  const frames = [...Array.from({ length: 32 }, (_, at) => 5 * at), 80, 12, 159, 33, 0, 101];

  it.each([undefined, '#00b140'])('key %s', (key) => {
    const alone = frameCanvas(width, height, key);
    const running = runningPictures(painter, frameCanvas(width, height, key));
    const differing = frames.filter((frame) => {
      alone.draw(painter, frame);
      return Buffer.compare(alone.pixels(), running(frame).pixels) !== 0;
    });
    expect(differing).toEqual([]);
  });

  it('tells where the picture changed, and that is little', () => {
    const canvas = frameCanvas(width, height, undefined);
    const running = runningPictures(painter, canvas);
    let before = running(0).pixels.slice();
    for (const frame of frames.slice(1, 32).filter((_, at) => at % 3 !== 0)) {
      const { pixels, regions } = running(frame);
      for (let y = 0; y < height; y++) {
        for (let x = 0; x < width; x++) {
          if (regions.some(({ left, right, top, bottom }) => left <= x && x < right && top <= y && y < bottom))
            continue;
          const at = 4 * (y * width + x);
          if (pixels.subarray(at, at + 4).some((level, part) => level !== before[at + part]))
            expect.fail(`frame ${frame}: ${x},${y} changed`);
        }
      }
      before = pixels.slice();
    }
    // A stroke of the link grows: less than a quarter of the frame.
    running(18);
    const area = running(19).regions.reduce(
      (sum, { left, right, top, bottom }) => sum + (right - left) * (bottom - top),
      0,
    );
    expect(area).toBeLessThan((width * height) / 4);
  });
});

it('two lists of calls differ where one has a call that the other lacks, or in another order', () => {
  const list = callList(() => ({ width: 10, left: 0, right: 10, ascent: 7, descent: 0 }));
  const squares = (...lefts: readonly number[]) => {
    for (const left of lefts) list.context.fillRect(left, 0, 10, 10);
    return list.take();
  };
  expect(changedBoxes(squares(0, 20, 40), squares(0, 20, 40))).toEqual([]);
  expect(changedBoxes(squares(0, 20, 40), squares(0, 40)).map(({ left }) => left)).toEqual([18]);
  expect(changedBoxes(squares(0, 40), squares(60, 0, 40)).map(({ left }) => left)).toEqual([58]);
  expect(changedBoxes(squares(0, 40), squares(40, 0)).length).toBeGreaterThan(0);
  list.context.globalAlpha = 0.5;
  expect(changedBoxes(squares(0), squares(0)).map(({ left }) => left)).toEqual([-2, -2]);
});
