/**
 * The frames of a film as the encoder takes them, each different one drawn once as long as it stands. Of a frame that
 * is drawn only what differs from the one before is converted.
 */
import { convertOpaque, convertStraight, emptyBlocks, opaqueToPlanar, planarBytes } from './bt709.ts';
import { canvasOrder, type FrameCanvas } from './canvas.ts';
import type { Painter } from './painter.ts';
import { changedRegions, type Region } from './regions.ts';
import { straighten, straightenInto } from './straight-alpha.ts';

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
  const convert = converter(canvas, format);
  let digest: string | undefined;
  let bytes: Uint8Array = new Uint8Array();
  let drawnCount = 0;
  return {
    bytesAt(frame) {
      const wanted = painter.digestAt(frame);
      if (wanted !== digest) {
        canvas.draw(painter, frame);
        bytes = convert();
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

/** What is on the canvas, each time in a new array. */
function converter(canvas: FrameCanvas, format: PixelFormat | 'png'): () => Uint8Array {
  switch (format) {
    case 'png':
      return () => canvas.png();
    case 'opaque':
      return () => canvas.pixels();
    case 'rgba':
      return straightConverter(canvas);
    case 'yuv420p':
      return opaqueConverter(canvas);
    case 'yuva420p':
      return planarConverter(canvas);
    default:
      return format satisfies never;
  }
}

function opaqueConverter(canvas: FrameCanvas): () => Uint8Array {
  const { width, height } = canvas;
  const changes = changesOf(canvas);
  let planes: Uint8Array | undefined;
  return () => {
    const { pixels, regions } = changes();
    if (planes === undefined) planes = opaqueToPlanar(pixels, width, height, canvasOrder);
    else {
      planes = new Uint8Array(planes);
      for (const region of regions) convertOpaque(planes, pixels, width, height, canvasOrder, region);
    }
    return planes;
  };
}

function straightConverter(canvas: FrameCanvas): () => Uint8Array {
  const changes = changesOf(canvas);
  let straight: Uint8Array | undefined;
  return () => {
    const { pixels, regions } = changes();
    if (straight === undefined) straight = straighten(pixels, canvasOrder);
    else {
      straight = new Uint8Array(straight);
      straightenRegions(straight, pixels, canvas.width, regions);
    }
    return straight;
  };
}

function planarConverter(canvas: FrameCanvas): () => Uint8Array {
  const { width, height } = canvas;
  const changes = changesOf(canvas);
  const blocks = emptyBlocks(width, height);
  const straight = new Uint8Array(width * height * 4);
  let planes: Uint8Array | undefined;
  return () => {
    const { pixels, regions } = changes();
    const all = planes === undefined ? [{ left: 0, right: width, top: 0, bottom: height }] : regions;
    planes = planes === undefined ? new Uint8Array(planarBytes(width, height, true)) : new Uint8Array(planes);
    straightenRegions(straight, pixels, width, all);
    for (const { top, bottom } of all) convertStraight(planes, blocks, straight, width, height, top, bottom);
    return planes;
  };
}

function straightenRegions(straight: Uint8Array, pixels: Uint8Array, width: number, regions: readonly Region[]): void {
  for (const { left, right, top, bottom } of regions) {
    for (let row = top; row < bottom; row++) {
      straightenInto(straight, pixels, canvasOrder, row * width + left, row * width + right);
    }
  }
}

/** The canvas's pixels, and where they differ from those of the call before. */
function changesOf(canvas: FrameCanvas) {
  const { width, height } = canvas;
  let before: Uint8Array | undefined;
  return (): { readonly pixels: Uint8Array; readonly regions: readonly Region[] } => {
    const pixels = canvas.pixels();
    const regions = before === undefined ? [] : changedRegions(pixels, before, width, height);
    before = pixels;
    return { pixels, regions };
  };
}
