/**
 * Films for tests of runs: a timeline of pictures, each of which stands for some frames, and what a decoder makes of
 * the file. A frame is right if it looks like the frame drawn alone, and less like any other picture of its film.
 */
import { execFileSync } from 'node:child_process';
import { expect } from 'vitest';
import type { Painter } from '../../src/output/painters/painter.ts';
import { canvasOrder, frameCanvas } from '../../src/output/pixels/canvas.ts';
import { straighten } from '../../src/output/pixels/straight-alpha.ts';
import type { Fraction } from '../../src/scene/fraction.ts';
import { decodeFrames, frameTimes, probeVideo } from './outside.ts';
import { type Square, squarePainter } from './square-painter.ts';

/** Pictures by number, and for how many frames each stands. */
export type Timeline = readonly (readonly [picture: number, frames: number])[];

/** Motion and rest by turns, a rest over more than two keyframes at 60 a second, one picture that returns. */
export const mixed: Timeline = [
  ...[0, 1, 2, 3, 4].map((picture) => [picture, 1] as const),
  [5, 130],
  ...[6, 7, 8].map((picture) => [picture, 2] as const),
  [9, 8],
  [10, 9],
  ...[11, 12].map((picture) => [picture, 1] as const),
  [5, 30],
  [13, 7],
  [14, 1],
];

export function framesOf(timeline: Timeline): readonly number[] {
  return timeline.flatMap(([picture, frames]) => Array.from({ length: frames }, () => picture));
}

/** A painter of that timeline: a square at a place that stands for the picture's number. */
export function timelinePainter(
  timeline: Timeline,
  film: { readonly rate: Fraction; readonly opaque: boolean; readonly width?: number; readonly height?: number },
): Painter & { readonly painted: readonly number[] } {
  const pictures = framesOf(timeline);
  const { rate, width = 160, height = 96 } = film;
  const places = Math.floor(width / 8) - 2;
  const square = (picture: number): Square => ({
    left: 8 * (picture % places),
    top: 8 * (Math.floor(picture / places) % (Math.floor(height / 8) - 1)),
    ...{ width: 17, height: 13, colour: [220, 40, 40, film.opaque ? 255 : 160] },
  });
  return squarePainter({
    ...{ width, height, rate, frameCount: pictures.length },
    ...(film.opaque ? { ground: [20, 40, 60] as const } : {}),
    squares: (frame) => [square(pictures[frame]!)],
  });
}

/** The frames on both sides of every change of picture. */
export function bordersOf(timeline: Timeline): readonly number[] {
  const borders: number[] = [];
  let from = 0;
  for (const [, frames] of timeline) {
    borders.push(from, from + frames - 1);
    from += frames;
  }
  return [...new Set(borders)];
}

/** Expects every frame at a border to be the one drawn alone, and all times to be regular, without a warning. */
export function expectExact(file: string, painter: Painter, timeline: Timeline): void {
  const pictures = framesOf(timeline);
  const { pixels, count, width, height } = decodeFrames(file);
  expect(count).toBe(pictures.length);
  const size = width * height * 4;
  const drawn = drawnAlone(painter, timeline);
  for (const frame of bordersOf(timeline)) {
    const decoded = pixels.subarray(frame * size, (frame + 1) * size);
    const nearest = nearestOf(decoded, drawn);
    expect({ frame, picture: nearest.picture }).toEqual({ frame, picture: pictures[frame] });
    expect(nearest.off).toBeLessThan(2);
  }
  expectRegular(file, painter);
  expect(warningsOf(file)).toBe('');
}

/** The pictures of a timeline by their numbers, each drawn by itself: R, G, B, A, straight alpha. */
export function drawnAlone(painter: Painter, timeline: Timeline): ReadonlyMap<number, Uint8Array> {
  const canvas = frameCanvas(painter.width, painter.height, undefined);
  const drawn = new Map<number, Uint8Array>();
  framesOf(timeline).forEach((picture, frame) => {
    if (drawn.has(picture)) return;
    canvas.draw(painter, frame);
    drawn.set(picture, straighten(canvas.pixels(), canvasOrder));
  });
  return drawn;
}

/** The drawn picture that a decoded one is most like, and how far it is off on average, in levels of 255. */
export function nearestOf(decoded: Uint8Array, drawn: ReadonlyMap<number, Uint8Array>) {
  const all = [...drawn].map(([picture, own]) => ({ picture, off: difference(decoded, own) }));
  return all.reduce((best, one) => (one.off < best.off ? one : best));
}

/** Constant times, by ffprobe. Matroska and WebM keep whole milliseconds (RFC 9559, TimestampScale). */
export function expectRegular(file: string, { rate, frameCount }: Painter): void {
  const times = frameTimes(file);
  const most = file.endsWith('.webm') ? 0.00051 : 0.000002;
  const each = Number(rate.denominator) / Number(rate.numerator);
  expect(times).toHaveLength(frameCount);
  expect(times.findIndex((time, frame) => Math.abs(time - frame * each) > most)).toBe(-1);
}

/** All that ffmpeg's decoder has to say; nothing is as it should be. */
export function warningsOf(file: string): string {
  const decoder = probeVideo(file).codec_name === 'vp9' ? ['-c:v', 'libvpx-vp9'] : [];
  const words = ['-nostdin', '-v', 'warning', ...decoder, '-i', file, '-f', 'null', '-'];
  return execFileSync('sh', ['-c', `ffmpeg "$@" 2>&1 >/dev/null`, 'sh', ...words], { encoding: 'utf8' });
}

/** The mean over all samples, colours as far as they can be seen. */
function difference(a: Uint8Array, b: Uint8Array): number {
  let sum = 0;
  for (let at = 0; at < a.length; at += 4) {
    const [alphaA, alphaB] = [a[at + 3]!, b[at + 3]!];
    sum += Math.abs(alphaA - alphaB);
    for (let part = 0; part < 3; part++) sum += Math.abs(a[at + part]! * alphaA - b[at + part]! * alphaB) / 255;
  }
  return sum / a.length;
}
