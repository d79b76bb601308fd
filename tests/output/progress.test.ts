/**
 * What is said while frames are made, with a clock that the test holds.
 */
import { describe, expect, it } from 'vitest';
import { type Progress, progressMeter, type Work } from '../../src/output/machine/progress-meter.ts';
import { progressLine, progressText, workText } from '../../src/output/progress.ts';
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
});

describe('lines in a log', () => {
  /** A render of `seconds` seconds that gets on evenly, told of ten times a second. */
  const logOf = (seconds: number, total = 1000): readonly string[] => {
    const file = stream(false);
    let milliseconds = 0;
    const line = progressLine(file, () => milliseconds);
    for (; milliseconds <= seconds * 1000; milliseconds += 100) {
      const done = Math.floor((total * milliseconds) / (seconds * 1000));
      line.show({ ...half, done, total, secondsLeft: seconds - milliseconds / 1000 });
    }
    line.clear();
    return file.written;
  };

  it('are none in a short render', () => {
    expect(logOf(9.5)).toEqual([]);
  });

  it('come ten seconds apart at the least', () => {
    expect(logOf(25)).toEqual(['400/1000 frames, 25/s, 0:15 left\n', '800/1000 frames, 25/s, 0:05 left\n']);
  });

  it('come with every tenth', () => {
    expect(logOf(400)).toHaveLength(10);
    expect(logOf(400)[0]).toBe('100/1000 frames, 25/s, 6:00 left\n');
    expect(logOf(400).at(-1)).toBe('1000/1000 frames, 25/s, finishing\n');
  });

  it('and at the least once a minute', () => {
    const log = logOf(3600);
    expect(log).toHaveLength(60);
    expect(log[0]).toBe('16/1000 frames, 25/s, 59:00 left\n');
  });

  it('hold no control codes', () => {
    // ISO/IEC 6429: what is no letter but orders a terminal about, the line feed at the end apart.
    for (const line of logOf(400)) expect(line.slice(0, -1)).toMatch(/^\P{Cc}+$/u);
  });

  it('begin anew with the next file', () => {
    const file = stream(false);
    let milliseconds = 0;
    const line = progressLine(file, () => milliseconds);
    line.show({ ...half, done: 1 });
    line.clear();
    milliseconds = 11_000;
    line.show({ ...half, done: 50 });
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
      '1200 frames, 123 different: 2 to draw, less than a second; the rest is kept from an earlier render',
    );
    expect(workText({ frames: 216_000, pictures: 40_000, toMake: 40_000, seconds: 700 })).toMatch(/about 12 min$/);
    expect(workText({ frames: 1200, pictures: 123, toMake: 0, seconds: 0.5 })).toBe(
      '1200 frames, 123 different: all of them kept from an earlier render',
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
