/**
 * The canvas that frames are drawn on, and the ways of taking pixels from it.
 *
 * One canvas or two serve a whole film: hundreds of new ones of 1920x1080 fill the memory before they are collected.
 */
import { existsSync, readdirSync } from 'node:fs';
import { endianness } from 'node:os';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { type Canvas, type CanvasRenderingContext2D, createCanvas, registerFont, type TextMetrics } from 'canvas';
import { Bug } from '../../grid/bug.ts';
import type { TextBox } from '../../picture/calls.ts';
import type { Context2D } from '../../picture/context.ts';
import type { Painter } from '../painters/painter.ts';
import type { Region } from './regions.ts';
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
  /**
   * Draws a part of a frame alone, and returns its pixels as above, `stride` pixels to a row. `paint` must draw all that
   * reaches into it. The rest of the canvas is then no picture.
   */
  part(region: Region, paint: (context: Context2D) => void): { readonly pixels: Uint8Array; readonly stride: number };
  /** A text as this canvas will draw it. */
  measure(font: string, text: string, align: 'left' | 'center' | 'right'): TextBox;
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
  let patch: Canvas | undefined;
  let isFresh = true;
  return {
    width,
    height,
    draw(painter, frame) {
      if (painter.width !== width || painter.height !== height) throw new Bug('the canvas has the size of the frames');
      clear(context, width, height);
      context.save();
      painter.paint(context, frame);
      context.restore();
      if (key !== undefined) layUnder(context, { left: 0, top: 0, right: width, bottom: height }, key);
    },
    pixels: () => canvas.toBuffer('raw'),
    part(region, paint) {
      const { left, top, right, bottom } = region;
      // Without a clip: shapes and letters that are cut by one are rounded otherwise at some of their pixels.
      context.save();
      context.resetTransform();
      if (isFresh) clear(context, width, height);
      isFresh = false;
      const middle = Math.floor((top + bottom) / 2);
      context.clearRect(left, top, right - left, middle - top);
      context.clearRect(left, middle, right - left, bottom - middle);
      paint(context);
      if (key !== undefined) layUnder(context, region, key);
      context.restore();
      patch ??= createCanvas(1, 1);
      // In steps, so that it is seldom made anew.
      const [wide, high] = [upTo64(right - left), upTo64(bottom - top)];
      if (patch.width !== wide) patch.width = wide;
      if (patch.height !== high) patch.height = high;
      const onPatch = patch.getContext('2d');
      onPatch.globalCompositeOperation = 'copy';
      onPatch.drawImage(canvas, -left, -top);
      return { pixels: patch.toBuffer('raw'), stride: wide };
    },
    measure(font, text, align) {
      context.save();
      context.resetTransform();
      context.font = font;
      context.textAlign = align;
      const measured = context.measureText(text);
      context.restore();
      return textBoxOf(measured);
    },
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

function upTo64(length: number): number {
  return 64 * Math.ceil(length / 64);
}

/** Of the four sides of the ink some libraries turn the sign of the left one, so none is taken to be within the text. */
function textBoxOf(measured: TextMetrics): TextBox {
  const outward = (length: number): number => (Number.isFinite(length) ? Math.abs(length) : 0);
  return {
    width: measured.width,
    left: outward(measured.actualBoundingBoxLeft),
    right: outward(measured.actualBoundingBoxRight),
    ascent: outward(measured.actualBoundingBoxAscent),
    descent: outward(measured.actualBoundingBoxDescent),
  };
}

function clear(context: CanvasRenderingContext2D, width: number, height: number): void {
  context.resetTransform();
  context.clearRect(0, 0, width, height);
  // Cairo takes note of a canvas on which nothing was laid yet, and rounds the first thing otherwise (see `paint`).
  context.globalAlpha = 1;
  context.fillStyle = '#000000';
  context.fillRect(0, 0, 1, 1);
  context.clearRect(0, 0, 1, 1);
}

/** After the painter, not before, so that it holds even if the painter clears the frame itself. */
function layUnder(context: CanvasRenderingContext2D, { left, top, right, bottom }: Region, colour: string): void {
  context.save();
  context.resetTransform();
  context.globalAlpha = 1;
  context.globalCompositeOperation = 'destination-over';
  context.fillStyle = colour;
  context.fillRect(left, top, right - left, bottom - top);
  context.restore();
}
