/**
 * Frames of small films as pixels.
 */
import { type CanvasRenderingContext2D, createCanvas } from 'canvas';
import { drawingAt } from '../../src/frames/drawing.ts';
import { paint } from '../../src/frames/paint.ts';
import { registerFonts } from '../../src/output/pixels/canvas.ts';
import { defaultLook } from '../../src/picture/default-look.ts';
import type { Look } from '../../src/scene/look.ts';
import { type Film, frameAt } from '../../src/timeline/film.ts';

export type Pixel = readonly [red: number, green: number, blue: number, alpha: number];

export interface Drawn {
  readonly width: number;
  readonly height: number;
  /** R G B A, alpha straight. */
  readonly pixels: Uint8ClampedArray;
  readonly png: Buffer;
  at(x: number, y: number): Pixel;
}

/** A frame of the film; over `ground` (`#rrggbb`), if one is given. */
export function drawn(film: Film, frame: number, look: Look = defaultLook, ground?: string): Drawn {
  registerFonts();
  const { width, height } = film;
  const canvas = createCanvas(width, height);
  const context = canvas.getContext('2d');
  paint(context, film, look, drawingAt(film, look, frameAt(frame)));
  if (ground !== undefined) layUnder(context, width, height, ground);
  const pixels = context.getImageData(0, 0, width, height).data;
  return {
    width,
    height,
    pixels,
    png: canvas.toBuffer('image/png'),
    at: (x, y) => {
      const start = (y * width + x) * 4;
      return [pixels[start]!, pixels[start + 1]!, pixels[start + 2]!, pixels[start + 3]!];
    },
  };
}

/** The smallest box around all pixels with any ink: `right` and `bottom` not included; undefined for none. */
export function inkBox({ width, height, pixels }: Drawn) {
  let [left, top, right, bottom] = [width, height, 0, 0];
  for (let y = 0; y < height; y++) {
    for (let x = 0; x < width; x++) {
      if (pixels[(y * width + x) * 4 + 3] === 0) continue;
      [left, top] = [Math.min(left, x), Math.min(top, y)];
      [right, bottom] = [Math.max(right, x + 1), Math.max(bottom, y + 1)];
    }
  }
  return right === 0 ? undefined : { left, top, right, bottom };
}

function layUnder(context: CanvasRenderingContext2D, width: number, height: number, colour: string): void {
  context.globalCompositeOperation = 'destination-over';
  context.fillStyle = colour;
  context.fillRect(0, 0, width, height);
}
