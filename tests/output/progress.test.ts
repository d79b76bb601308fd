/**
 * What is said while frames are made, with a clock that the test holds.
 */
import { describe, expect, it } from 'vitest';
import {
  type Progress,
  progressLine,
  progressMeter,
  progressText,
  type Work,
  workText,
} from '../../src/output/progress.ts';
import { renderFilm } from '../../src/output/render.ts';
import { scratchFolder } from './outside.ts';
import { squarePainter, walkingSquare } from './square-painter.ts';

const half: Progress = { done: 50, total: 100, framesPerSecond: 25, secondsLeft: 2, drawn: 10, kept: 0, reused: 40 };

describe('the meter', () => {
  it('counts frames, their rate and the time that is left', () => {
    let milliseconds = 1000;
    const told: Progress[] = [];
    const meter = progressMeter(
      100,
      (progress) => told.push(progress),
      () => milliseconds,
    );
    for (let frame = 0; frame < 50; frame++) {
      milliseconds += 40;
      meter.count(Math.min(10, frame + 1));
    }
    expect(told).toHaveLength(50);
    expect(told.at(-1)).toEqual(half);
    expect(meter).toMatchObject({ done: 50, drawn: 10 });
  });

  it('knows no time left before time has passed', () => {
    const told: Progress[] = [];
    progressMeter(
      2,
      (progress) => told.push(progress),
      () => 5,
    ).count(1);
    expect(told).toEqual([
      { done: 1, total: 2, framesPerSecond: 0, secondsLeft: undefined, drawn: 1, kept: 0, reused: 0 },
    ]);
  });

  it('is told of every frame of a render', async () => {
    const scratch = scratchFolder();
    const told: Progress[] = [];
    const painter = squarePainter({ frameCount: 7, squares: walkingSquare(3, [1, 2, 3, 255]) });
    await renderFilm(painter, scratch.at('frames/'), { onProgress: (progress) => told.push(progress) });
    scratch.remove();
    expect(told.map(({ done, drawn, reused }) => [done, drawn, reused])).toEqual([
      [1, 1, 0],
      [2, 1, 1],
      [3, 1, 2],
      [4, 2, 2],
      [5, 2, 3],
      [6, 2, 4],
      [7, 3, 4],
    ]);
  });
});

describe('the line', () => {
  it.each([
    [half, 80, '[===============               ] 50/100 frames, 25/s, 0:02 left'],
    [half, 50, '[========         ] 50/100 frames, 25/s, 0:02 left'],
    [half, 30, ' 50/100 frames, 25/s, 0:02 lef'],
    [
      { ...half, framesPerSecond: 3.14, secondsLeft: 754.2 },
      80,
      '[===============               ] 50/100 frames, 3.1/s, 12:35 left',
    ],
    [{ ...half, secondsLeft: 3661 }, 80, '[===============               ] 50/100 frames, 25/s, 1:01:01 left'],
    [
      { ...half, secondsLeft: undefined, framesPerSecond: 0 },
      80,
      '[===============               ] 50/100 frames, 0.0/s',
    ],
    [{ ...half, done: 100, secondsLeft: 0 }, 80, '[==============================] 100/100 frames, 25/s, finishing'],
  ])('%# of %j in %i columns', (progress, columns, text) => {
    expect(progressText(progress, columns)).toBe(text);
  });

  it('is drawn on a terminal, ten times a second at most, and taken away', () => {
    const terminal = stream(true);
    let milliseconds = 0;
    const line = progressLine(terminal, () => milliseconds);
    for (; milliseconds < 1000; milliseconds += 10) line.show(half);
    expect(terminal.written).toHaveLength(10);
    expect(terminal.written[0]).toBe('\r[===============               ] 50/100 frames, 25/s, 0:02 left\u001b[K');
    line.clear();
    expect(terminal.written.at(-1)).toBe('\r\u001b[K');
  });

  it('is not drawn anywhere else', () => {
    const file = stream(false);
    const line = progressLine(file);
    line.show(half);
    line.clear();
    expect(file.written).toEqual([]);
  });
});

function stream(isTTY: boolean) {
  const written: string[] = [];
  return { isTTY, columns: 80, written, write: (text: string) => written.push(text) };
}

describe('before it begins', () => {
  it('says how many frames there are, how many pictures, what is to be drawn and what is there', () => {
    expect(workText({ frames: 1200, pictures: 123, toMake: 123, seconds: 3.6 })).toBe(
      '1200 frames, 123 different: 123 to draw, about 4 s',
    );
    expect(workText({ frames: 1200, pictures: 123, toMake: 2, seconds: 0.6 })).toBe(
      '1200 frames, 123 different: 2 to draw, less than a second; the rest is there from an earlier render',
    );
    expect(workText({ frames: 216_000, pictures: 40_000, toMake: 40_000, seconds: 700 })).toMatch(/about 12 min$/);
    expect(workText({ frames: 1200, pictures: 123, toMake: 0, seconds: 0.5 })).toBe(
      '1200 frames, 123 different: all of them there from an earlier render',
    );
  });

  it('knows what an earlier render has left', async () => {
    const scratch = scratchFolder();
    const told: Work[] = [];
    const painter = squarePainter({
      frameCount: 30,
      ground: [9, 9, 9],
      squares: walkingSquare(10, [220, 40, 40, 255]),
    });
    const options = { cache: scratch.at('cache'), onStart: (work: Work) => told.push(work) };
    try {
      await renderFilm(painter, scratch.at('one.mp4'), options);
      await renderFilm(painter, scratch.at('two.mp4'), options);
      expect(told).toMatchObject([
        { frames: 30, pictures: 3, toMake: 3 },
        { frames: 30, pictures: 3, toMake: 0 },
      ]);
    } finally {
      scratch.remove();
    }
  });
});
