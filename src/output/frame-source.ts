/**
 * The frames of a film one after the other, each different one drawn and read back once: a frame with the digest of
 * the one before is handed out as the same bytes.
 */
import { opaqueToPlanar, straightToPlanar } from './bt709.ts';
import { canvasOrder, type FrameCanvas } from './canvas.ts';
import type { Painter } from './painter.ts';
import { straighten } from './straight-alpha.ts';

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
  let digest: string | undefined;
  let bytes: Uint8Array = new Uint8Array();
  let drawnCount = 0;
  return {
    bytesAt(frame) {
      const wanted = painter.digestAt(frame);
      if (wanted !== digest) {
        canvas.draw(painter, frame);
        bytes = pixelsOf(canvas, format);
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

function pixelsOf(canvas: FrameCanvas, format: PixelFormat | 'png'): Uint8Array {
  switch (format) {
    case 'png':
      return canvas.png();
    case 'rgba':
      return straighten(canvas.pixels(), canvasOrder);
    case 'opaque':
      return canvas.pixels();
    case 'yuva420p':
      return straightToPlanar(straighten(canvas.pixels(), canvasOrder), canvas.width, canvas.height);
    case 'yuv420p':
      return opaqueToPlanar(canvas.pixels(), canvas.width, canvas.height, canvasOrder);
    default:
      return format satisfies never;
  }
}
