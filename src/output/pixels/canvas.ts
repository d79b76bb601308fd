/**
 * The canvas that frames are drawn on, and the ways to read its pixels.
 *
 * One or two canvases serve a whole film: hundreds of new ones at 1920x1080 fill the memory before they are collected.
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

/** The only typeface of the built-in looks; its files are in `assets/fonts`. */
export const fontFamily = 'IBM Plex Sans';

/** The byte order of a canvas pixel: the canvas stores machine words of alpha, red, green, blue. */
export const canvasOrder: ByteOrder =
  endianness() === 'LE' ? { red: 2, green: 1, blue: 0, alpha: 3 } : { red: 1, green: 2, blue: 3, alpha: 0 };
/** The same by ffmpeg's name, ignoring alpha. */
export const canvasPixelFormat = endianness() === 'LE' ? 'bgr0' : '0rgb';

export interface FrameCanvas {
  readonly width: number;
  readonly height: number;
  /** Clears the canvas and draws frame `frame`. */
  draw(painter: Painter, frame: number): void;
  /** Four bytes a pixel in `canvasOrder`, rows from the top, the colours multiplied by alpha. A copy. */
  pixels(): Uint8Array;
  /**
   * Draws only a part of a frame, and returns its pixels as above, `stride` pixels per row. `paint` must draw
   * everything that reaches into it. The rest of the canvas is then undefined.
   */
  part(region: Region, paint: (context: Context2D) => void): { readonly pixels: Uint8Array; readonly stride: number };
  /** The dimensions of a text as this canvas will draw it. */
  measure(font: string, text: string, align: 'left' | 'center' | 'right'): TextBox;
  png(): Buffer;
}

/**
 * A canvas of that size in pixels, with the fonts registered. `key` (`#rrggbb`) goes under every frame, so that all
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
      // Without a clip: shapes and letters cut by a clip are rounded differently at some of their pixels.
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
      // In steps, so that it is seldom recreated.
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
 * Registers the files of `assets/fonts` with the canvas, by family and weight. Must be called before the first canvas
 * of the process is created; calling it again does nothing.
 */
export function registerFonts(): void {
  if (fontsAreRegistered) return;
  for (const { path, weight, style } of fontFiles()) registerFont(path, { family: fontFamily, weight, style });
  fontsAreRegistered = true;
}

/** A font file of the typeface. */
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
      // The files keep their published names: IBMPlexSans_600SemiBold.ttf, ..._400Regular_Italic.ttf.
      const [, weight, italic] = /^IBMPlexSans_(\d{3})[A-Za-z]+(_Italic)?\.ttf$/.exec(file) ?? [];
      if (weight === undefined) return [];
      return [{ path: join(folder, file), weight, style: italic === undefined ? 'normal' : 'italic' }];
    });
}

/** The canvas library keeps its fonts for the whole process, so this is process-wide too. */
let fontsAreRegistered = false;

/** `assets/fonts`, next to `src` or `dist`, depending on where this module was loaded from. */
export function fontFolder(): string {
  let folder = dirname(fileURLToPath(import.meta.url));
  for (;;) {
    const fonts = join(folder, 'assets', 'fonts');
    if (existsSync(fonts)) return fonts;
    const parent = dirname(folder);
    // Without its own fonts, the canvas would silently use some other typeface.
    if (parent === folder) throw new Bug('assets/fonts is next to the program');
    folder = parent;
  }
}

function upTo64(length: number): number {
  return 64 * Math.ceil(length / 64);
}

/** Some libraries flip the sign of the left side of the ink box, so absolute values are used for all four sides. */
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
  // Cairo remembers that a canvas has not been drawn on, and rounds the first shape differently (see `paint`).
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
