/**
 * The frames of a film as the encoder takes them, each different one drawn once as long as it stands. Of a frame that
 * is drawn only what differs from the one before is converted.
 */

import type { Painter } from '../painters/painter.ts';
import { convertOpaque, convertStraight, emptyBlocks, planarBytes } from './bt709.ts';
import { canvasOrder, type FrameCanvas } from './canvas.ts';
import type { Region } from './regions.ts';
import { type Picture, runningPictures } from './running-pictures.ts';
import { straightenInto } from './straight-alpha.ts';

/** Pixels as they are handed to the encoder, by ffmpeg's names; `opaque` is `canvasPixelFormat`. */
export type PixelFormat = 'yuv420p' | 'yuva420p' | 'rgba' | 'opaque';

export interface FrameSource {
  /** The bytes of frame `frame`; two calls may give the same array, so it must not be written to. */
  bytesAt(frame: number): Uint8Array;
  /** Whether `frame` looks exactly as the frame last asked for. */
  isRepeat(frame: number): boolean;
  readonly drawnCount: number;
}

export function frameSource(painter: Painter, canvas: FrameCanvas, format: PixelFormat | 'png'): FrameSource {
  const picture = pictures(painter, canvas, format);
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
    isRepeat: (frame) => painter.digestAt(frame) === digest,
    get drawnCount() {
      return drawnCount;
    },
  };
}

/** Draws a frame; each time in other memory than the times before that may still be on their way to the encoder. */
function pictures(painter: Painter, canvas: FrameCanvas, format: PixelFormat | 'png'): (frame: number) => Uint8Array {
  if (format === 'png') {
    return (frame) => {
      canvas.draw(painter, frame);
      return canvas.png();
    };
  }
  const draw = runningPictures(painter, canvas);
  const convert = converter(canvas, format);
  return (frame) => convert(draw(frame));
}

/** The bytes of a picture. Only its regions are converted: what differs from the picture before. */
function converter({ width, height }: FrameCanvas, format: PixelFormat): (picture: Picture) => Uint8Array {
  const own = inTurn(bytesOf(format, width, height));
  switch (format) {
    case 'opaque':
      return ({ pixels }) => {
        const bytes = own.next();
        bytes.set(pixels);
        return bytes;
      };
    case 'rgba':
      return ({ pixels, regions }) => {
        const straight = own.continued();
        straightenRegions(straight, pixels, width, regions);
        return straight;
      };
    case 'yuv420p':
      return ({ pixels, regions }) => {
        const planes = own.continued();
        for (const region of regions) convertOpaque(planes, pixels, width, height, canvasOrder, region);
        return planes;
      };
    case 'yuva420p': {
      const blocks = emptyBlocks(width, height);
      const straight = new Uint8Array(width * height * 4);
      return ({ pixels, regions }) => {
        const planes = own.continued();
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
 * So many pictures may be on their way at once: one in the stream's hands, one that waits behind it (the stream asks
 * for no more, `ffmpeg.ts`), one that is being made, and one to spare.
 */
const underWay = 4;

/** Memory of so many bytes, used in turn. */
function inTurn(length: number) {
  const all: Uint8Array[] = [];
  let turn = 0;
  let last: Uint8Array | undefined;
  const next = (): Uint8Array => {
    turn = (turn + 1) % underWay;
    all[turn] ??= new Uint8Array(length);
    return all[turn]!;
  };
  return {
    next,
    /** With what the last one holds. */
    continued(): Uint8Array {
      const bytes = next();
      if (last !== undefined) bytes.set(last);
      last = bytes;
      return bytes;
    },
  };
}

function bytesOf(format: PixelFormat, width: number, height: number): number {
  if (format === 'yuv420p' || format === 'yuva420p') return planarBytes(width, height, format === 'yuva420p');
  return width * height * 4;
}

function straightenRegions(straight: Uint8Array, pixels: Uint8Array, width: number, regions: readonly Region[]): void {
  for (const { left, right, top, bottom } of regions) {
    for (let row = top; row < bottom; row++) {
      straightenInto(straight, pixels, canvasOrder, row * width + left, row * width + right);
    }
  }
}

/** The rows of the regions, which come from above, put together where they touch. */
function rowsOf(regions: readonly Region[]): readonly (readonly [number, number])[] {
  const rows: [number, number][] = [];
  for (const { top, bottom } of regions) {
    const last = rows.at(-1);
    if (last !== undefined && top <= last[1]) last[1] = Math.max(last[1], bottom);
    else rows.push([top, bottom]);
  }
  return rows;
}
