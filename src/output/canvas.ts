/**
 * The canvas that frames are drawn on, and the ways of taking pixels from it.
 *
 * One canvas serves a whole film: hundreds of new ones of 1920x1080 fill the memory before they are collected.
 */
import { existsSync, readdirSync } from 'node:fs';
import { endianness } from 'node:os';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { type Canvas, type CanvasRenderingContext2D, createCanvas, registerFont } from 'canvas';
import { Bug } from '../grid/bug.ts';
import type { Painter } from './painter.ts';
import type { ByteOrder } from './straight-alpha.ts';

/** The one typeface of the tool's own looks; its files stand in `assets/fonts`. */
export const fontFamily = 'IBM Plex Sans';

/** The bytes of a pixel of the canvas, which keeps machine words of alpha, red, green, blue. */
export const canvasOrder: ByteOrder =
  endianness() === 'LE' ? { red: 2, green: 1, blue: 0, alpha: 3 } : { red: 1, green: 2, blue: 3, alpha: 0 };
/** The same by ffmpeg's name, alpha left out of account. */
export const canvasPixelFormat = endianness() === 'LE' ? 'bgr0' : '0rgb';

export interface FrameCanvas {
  readonly width: number;
  readonly height: number;
  /** Draws frame `frame` and nothing else; what was there is gone. */
  draw(painter: Painter, frame: number): void;
  /** Four bytes a pixel in `canvasOrder`, rows from the top, the colours multiplied by alpha. A copy. */
  pixels(): Uint8Array;
  png(): Buffer;
}

/**
 * A canvas of that size in pixels, with the fonts registered. `key` (`#rrggbb`) is laid under every frame, so that all
 * pixels are opaque.
 */
export function frameCanvas(width: number, height: number, key: string | undefined): FrameCanvas {
  registerFonts();
  const canvas: Canvas = createCanvas(width, height);
  const context = canvas.getContext('2d');
  return {
    width,
    height,
    draw(painter, frame) {
      if (painter.width !== width || painter.height !== height) throw new Bug('the canvas has the size of the frames');
      clear(context, width, height);
      context.save();
      painter.paint(context, frame);
      context.restore();
      if (key !== undefined) layUnder(context, width, height, key);
    },
    pixels: () => canvas.toBuffer('raw'),
    png: () => canvas.toBuffer('image/png'),
  };
}

/**
 * Makes the files of `assets/fonts` known to the canvas, by family and weight. Must come before the first canvas of
 * the process; calling it again does nothing.
 */
export function registerFonts(): void {
  if (fontsAreRegistered) return;
  for (const { path, weight, style } of fontFiles()) registerFont(path, { family: fontFamily, weight, style });
  fontsAreRegistered = true;
}

/** A font of the typeface. */
export interface FontFile {
  readonly path: string;
  /** `400` to `700`. */
  readonly weight: string;
  readonly style: 'normal' | 'italic';
}

/** The files of `assets/fonts`, by weight. */
export function fontFiles(): FontFile[] {
  const folder = fontFolder();
  return readdirSync(folder)
    .sort()
    .flatMap((file): FontFile[] => {
      // The files keep the names they are published under: IBMPlexSans_600SemiBold.ttf, ..._400Regular_Italic.ttf.
      const [, weight, italic] = /^IBMPlexSans_(\d{3})[A-Za-z]+(_Italic)?\.ttf$/.exec(file) ?? [];
      if (weight === undefined) return [];
      return [{ path: join(folder, file), weight, style: italic === undefined ? 'normal' : 'italic' }];
    });
}

/** The canvas library keeps its fonts for the whole process, so this is a fact about the process too. */
let fontsAreRegistered = false;

/** `assets/fonts`, beside `src` or beside `dist`, whichever this module was loaded from. */
export function fontFolder(): string {
  let folder = dirname(fileURLToPath(import.meta.url));
  for (;;) {
    const fonts = join(folder, 'assets', 'fonts');
    if (existsSync(fonts)) return fonts;
    const parent = dirname(folder);
    // Without its own fonts the canvas would draw in some other face without a word.
    if (parent === folder) throw new Bug('assets/fonts lies beside the program');
    folder = parent;
  }
}

function clear(context: CanvasRenderingContext2D, width: number, height: number): void {
  context.resetTransform();
  context.clearRect(0, 0, width, height);
}

/** After the painter, not before, so that it holds even if the painter clears the frame itself. */
function layUnder(context: CanvasRenderingContext2D, width: number, height: number, colour: string): void {
  context.save();
  context.resetTransform();
  context.globalAlpha = 1;
  context.globalCompositeOperation = 'destination-over';
  context.fillStyle = colour;
  context.fillRect(0, 0, width, height);
  context.restore();
}
