/**
 * Every frame is in the file, once, at its own time. The witness is ffprobe, which decodes and counts.
 */
import { readdirSync, readFileSync } from 'node:fs';
import { afterAll, describe, expect, it } from 'vitest';
import { renderFilm } from '../../src/output/render.ts';
import { fraction, toNumber } from '../../src/scene/fraction.ts';
import { frameTimes, probeVideo, scratchFolder } from './outside.ts';
import { squarePainter, walkingSquare } from './square-painter.ts';

const scratch = scratchFolder();
afterAll(scratch.remove);

const rates = [
  { name: '24', rate: fraction(24n), frameCount: 25 },
  { name: '25', rate: fraction(25n), frameCount: 13 },
  { name: '30000/1001', rate: fraction(30000n, 1001n), frameCount: 31 },
  { name: '60', rate: fraction(60n), frameCount: 61 },
];
const files = ['film.mp4', 'film.mov', 'film.webm'];

describe.each(rates)('at $name frames a second', ({ rate, frameCount }) => {
  it.each(files)('%s holds each frame once, at n/rate', async (name) => {
    const painter = squarePainter({
      rate,
      frameCount,
      ground: [20, 40, 60],
      squares: walkingSquare(7, [220, 40, 40, 255]),
    });
    const file = scratch.at(name);
    expect(await renderFilm(painter, file)).toMatchObject({ kind: 'written', frameCount });
    const stream = probeVideo(file);
    expect(stream.nb_read_frames).toBe(String(frameCount));
    expect(stream.r_frame_rate).toBe(`${rate.numerator}/${rate.denominator}`);
    // Matroska and WebM keep times in whole milliseconds (RFC 9559, TimestampScale), the others exactly.
    const digits = name.endsWith('.webm') ? 2 : 5;
    frameTimes(file).forEach((time, frame) => {
      expect(time).toBeCloseTo(frame / toNumber(rate), digits);
    });
  });
});

describe('a film of a single frame', () => {
  it.each(files)('is a whole %s', async (name) => {
    const painter = squarePainter({ frameCount: 1, ground: [20, 40, 60] });
    await renderFilm(painter, scratch.at(`single-${name}`));
    expect(probeVideo(scratch.at(`single-${name}`)).nb_read_frames).toBe('1');
  });
});

describe('a folder of frames', () => {
  it('is numbered from 0 without a gap', async () => {
    const painter = squarePainter({ frameCount: 12, squares: walkingSquare(5, [0, 177, 64, 255]) });
    await renderFilm(painter, `${scratch.at('frames')}/`);
    const wanted = Array.from({ length: 12 }, (_, frame) => `${String(frame).padStart(6, '0')}.png`);
    expect(readdirSync(scratch.at('frames')).sort()).toEqual(wanted);
  });
});

describe('a still stretch', () => {
  const squares = walkingSquare(5, [0, 177, 64, 255]);
  it.each(['still.mov', 'still.webm', 'still-frames/'])('is drawn once: %s', async (name) => {
    const painter = squarePainter({ frameCount: 12, squares });
    expect(await renderFilm(painter, scratch.at(name))).toMatchObject({ kind: 'written', drawn: 3 });
    expect(painter.painted).toEqual([0, 5, 10]);
  });

  it('looks in each frame as if that frame had been drawn by itself', async () => {
    await renderFilm(squarePainter({ frameCount: 12, squares }), scratch.at('run'));
    await renderFilm(squarePainter({ frameCount: 1, squares: () => squares(9) }), scratch.at('alone'));
    expect(readFileSync(scratch.at('run/000009.png'))).toEqual(readFileSync(scratch.at('alone/000000.png')));
  });
});

describe('two renders of one film', () => {
  it.each(files)('are the same to the byte: %s', async (name) => {
    const film = { ground: [20, 40, 60] as const, squares: walkingSquare(1, [220, 40, 40, 255]), frameCount: 9 };
    await renderFilm(squarePainter(film), scratch.at(`first-${name}`));
    await renderFilm(squarePainter(film), scratch.at(`second-${name}`));
    expect(readFileSync(scratch.at(`first-${name}`))).toEqual(readFileSync(scratch.at(`second-${name}`)));
  });
});
