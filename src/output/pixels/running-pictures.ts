/**
 * Frames drawn one after the other, with what changed from each to the next. If the painter's calls can be recorded,
 * only what changed is drawn; the picture is byte for byte the same as one drawn as a whole.
 */

import type { Call } from '../../picture/calls.ts';
import { callList } from '../../picture/calls.ts';
import { changedBoxes, drawCalls, fewBoxes } from '../../picture/changed-calls.ts';
import type { Painter } from '../painters/painter.ts';
import type { FrameCanvas } from './canvas.ts';
import { changedRegions, type Region } from './regions.ts';

export interface Picture {
  /** As the canvas stores them (`FrameCanvas.pixels`). Valid until the next picture is drawn. */
  readonly pixels: Uint8Array;
  /** What differs from the previous picture; the whole for the first. */
  readonly regions: readonly Region[];
}

/** A function that draws a frame of the painter. */
export function runningPictures(painter: Painter, canvas: FrameCanvas): (frame: number) => Picture {
  return painter.draw === undefined ? compared(painter, canvas) : redrawn(painter.draw, canvas);
}

function compared(painter: Painter, canvas: FrameCanvas): (frame: number) => Picture {
  const { width, height } = canvas;
  let before: Uint8Array | undefined;
  return (frame) => {
    canvas.draw(painter, frame);
    const pixels = canvas.pixels();
    const regions = before === undefined ? [whole(canvas)] : changedRegions(pixels, before, width, height);
    before = pixels;
    return { pixels, regions };
  };
}

function redrawn(draw: NonNullable<Painter['draw']>, canvas: FrameCanvas): (frame: number) => Picture {
  const { width, height } = canvas;
  const list = callList(canvas.measure);
  const pixels = new Uint8Array(width * height * 4);
  let before: readonly Call[] | undefined;
  return (frame) => {
    draw(list.context, frame);
    const calls = list.take();
    const regions =
      before === undefined ? [whole(canvas)] : fewBoxes(changedBoxes(before, calls), width, height).sort(fromAbove);
    before = calls;
    for (const region of regions) {
      const part = canvas.part(region, (context) => drawCalls(context, calls, region));
      const length = 4 * (region.right - region.left);
      for (let row = region.top; row < region.bottom; row++) {
        const from = 4 * (row - region.top) * part.stride;
        pixels.set(part.pixels.subarray(from, from + length), 4 * (row * width + region.left));
      }
    }
    return { pixels, regions };
  };
}

function fromAbove(a: Region, b: Region): number {
  return a.top - b.top;
}

function whole({ width, height }: FrameCanvas): Region {
  return { left: 0, top: 0, right: width, bottom: height };
}
