/**
 * The frames of a film as the encoder takes them; consecutive equal frames are drawn once. Only what differs from the
 * previous frame is converted.
 */

import type { Painter } from '../painters/painter.ts';
import { convertOpaque, convertStraight, emptyBlocks } from './bt709.ts';
import { canvasOrder, type FrameCanvas } from './canvas.ts';
import type { Region } from './regions.ts';
import { type Picture, runningPictures } from './running-pictures.ts';
import { straightenInto } from './straight-alpha.ts';

/** Pixels as they are passed to the encoder, by ffmpeg's names; `opaque` is `canvasPixelFormat`. */
export type PixelFormat = 'yuv420p' | 'yuva420p' | 'rgba' | 'opaque';

export interface FrameSource {
  /** The bytes of frame `frame`; two calls may return the same array, so it must not be modified. */
  bytesAt(frame: number): Uint8Array;
  readonly drawnCount: number;
}

/** `underWay`: how many pictures may still be in use when the next is made, including that one. */
export function frameSource(
  painter: Painter,
  canvas: FrameCanvas,
  format: PixelFormat | 'png',
  underWay: number,
): FrameSource {
  const picture = pictures(painter, canvas, format, underWay);
  let digest: string | undefined;
  let bytes: Uint8Array = new Uint8Array();
  let drawnCount = 0;
  return {
    bytesAt(frame) {
      const wanted = painter.digestAt(frame);
      if (wanted !== digest) {
        bytes = picture(frame);
        digest = wanted;
        drawnCount += 1;
      }
      return bytes;
    },
    get drawnCount() {
      return drawnCount;
    },
  };
}

/** Draws a frame; each time into different memory from pictures that may still be on their way to the encoder. */
function pictures(
  painter: Painter,
  canvas: FrameCanvas,
  format: PixelFormat | 'png',
  underWay: number,
): (frame: number) => Uint8Array {
  if (format === 'png') {
    return (frame) => {
      canvas.draw(painter, frame);
      return canvas.png();
    };
  }
  const draw = runningPictures(painter, canvas);
  const convert = converter(canvas, format, underWay);
  return (frame) => convert(draw(frame));
}

/** The bytes of a picture. Only its regions are converted: what differs from the previous picture. */
function converter(
  { width, height }: FrameCanvas,
  format: PixelFormat,
  underWay: number,
): (picture: Picture) => Uint8Array {
  const own = inTurn(width, height, format, underWay);
  switch (format) {
    case 'opaque':
      return ({ pixels, regions }) => {
        const bytes = own.continued(regions);
        for (const [top, bottom] of rowsOf(regions))
          bytes.set(pixels.subarray(4 * width * top, 4 * width * bottom), 4 * width * top);
        return bytes;
      };
    case 'rgba':
      return ({ pixels, regions }) => {
        const straight = own.continued(regions);
        straightenRegions(straight, pixels, width, regions);
        return straight;
      };
    case 'yuv420p':
      return ({ pixels, regions }) => {
        const planes = own.continued(regions);
        for (const region of regions) convertOpaque(planes, pixels, width, height, canvasOrder, region);
        return planes;
      };
    case 'yuva420p': {
      const blocks = emptyBlocks(width, height);
      const straight = new Uint8Array(width * height * 4);
      return ({ pixels, regions }) => {
        const planes = own.continued(regions);
        straightenRegions(straight, pixels, width, regions);
        for (const [top, bottom] of rowsOf(regions))
          convertStraight(planes, blocks, straight, width, height, top, bottom);
        return planes;
      };
    }
    default:
      return format satisfies never;
  }
}

/**
 * How many pictures are on their way to a stream: one being written, one waiting behind it (the stream requests no
 * more, see `ffmpeg.ts`), one being made, and one spare.
 */
export const picturesInStream = 4;

/** A picture's conversion writes at most this many rows beyond its regions: a block of colour, and the next one. */
const rowsBeyond = 4;

/** Memory for `underWay` pictures, used in turn. */
function inTurn(width: number, height: number, format: PixelFormat, underWay: number) {
  const planes = planesOf(width, height, format);
  const length = pictureBytes(format, width, height);
  interface Place {
    readonly bytes: Uint8Array;
    /** The rows in which it differs from the last picture. */
    top: number;
    bottom: number;
  }
  const places: Place[] = [];
  let turn = 0;
  let last: Place | undefined;
  return {
    /** With the contents of the last one; `regions` are about to be overwritten. */
    continued(regions: readonly Region[]): Uint8Array {
      turn = (turn + 1) % underWay;
      places[turn] ??= { bytes: new Uint8Array(length), top: 0, bottom: height };
      const place = places[turn]!;
      if (last !== undefined) copyRows(place.bytes, last.bytes, planes, place.top, place.bottom);
      [place.top, place.bottom] = [height, 0];
      last = place;
      for (const region of regions) {
        for (const other of places) {
          if (other === undefined || other === place) continue;
          other.top = Math.min(other.top, Math.max(0, region.top - rowsBeyond));
          other.bottom = Math.max(other.bottom, Math.min(height, region.bottom + rowsBeyond));
        }
      }
      return place.bytes;
    },
  };
}

/** One of the planes that make up a picture's bytes, one after the other. */
interface Plane {
  readonly rowBytes: number;
  readonly rows: number;
  /** How many rows of the picture one of its rows covers. */
  readonly step: number;
}

function planesOf(width: number, height: number, format: PixelFormat): readonly Plane[] {
  if (format === 'opaque' || format === 'rgba') return [{ rowBytes: 4 * width, rows: height, step: 1 }];
  const full = { rowBytes: width, rows: height, step: 1 };
  const half = { rowBytes: Math.ceil(width / 2), rows: Math.ceil(height / 2), step: 2 };
  return format === 'yuv420p' ? [full, half, half] : [full, half, half, full];
}

/** The bytes that one picture takes. */
export function pictureBytes(format: PixelFormat, width: number, height: number): number {
  return planesOf(width, height, format).reduce((sum, { rowBytes, rows }) => sum + rowBytes * rows, 0);
}

/** Copies the picture's rows `top` to `bottom`. */
function copyRows(to: Uint8Array, from: Uint8Array, planes: readonly Plane[], top: number, bottom: number): void {
  let start = 0;
  for (const { rowBytes, rows, step } of planes) {
    const [first, until] = [Math.floor(top / step), Math.min(rows, Math.ceil(bottom / step))];
    if (first < until) {
      to.set(from.subarray(start + first * rowBytes, start + until * rowBytes), start + first * rowBytes);
    }
    start += rowBytes * rows;
  }
}

function straightenRegions(straight: Uint8Array, pixels: Uint8Array, width: number, regions: readonly Region[]): void {
  for (const { left, right, top, bottom } of regions) {
    for (let row = top; row < bottom; row++) {
      straightenInto(straight, pixels, canvasOrder, row * width + left, row * width + right);
    }
  }
}

/** The rows of the regions (sorted from the top), merged where they touch. */
function rowsOf(regions: readonly Region[]): readonly (readonly [number, number])[] {
  const rows: [number, number][] = [];
  for (const { top, bottom } of regions) {
    const last = rows.at(-1);
    if (last !== undefined && top <= last[1]) last[1] = Math.max(last[1], bottom);
    else rows.push([top, bottom]);
  }
  return rows;
}
