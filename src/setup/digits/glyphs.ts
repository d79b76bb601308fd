/**
 * Symbols drawn in fonts, with the box of their ink known beforehand.
 */
import { createHash } from 'node:crypto';
import { type CanvasRenderingContext2D, createCanvas, registerFont } from 'canvas';
import type { Font } from './fetch-typefaces.ts';

/** From the point at which it is drawn, in parts of the font size; `up` is above the baseline. */
export interface InkBox {
  readonly left: number;
  readonly right: number;
  readonly up: number;
  readonly down: number;
}

const measuredAt = 100;

/**
 * Makes the fonts known to the canvas. It falls back in silence on a font that it does not know, so each must draw digits
 * that no other draws.
 */
export function registerFonts(fonts: readonly Font[]): void {
  const canvas = createCanvas(240, 60);
  const context = canvas.getContext('2d');
  const drawn = (name: string): string => {
    context.fillStyle = '#fff';
    context.fillRect(0, 0, canvas.width, canvas.height);
    context.fillStyle = '#000';
    context.font = `32px "${name}"`;
    context.fillText('123456789', 10, 42);
    return createHash('sha256').update(canvas.toBuffer('raw')).digest('hex');
  };
  const seen = new Map([[drawn('no font is called so'), 'the fallback']]);
  for (const { file, name } of fonts) registerFont(file, { family: name });
  for (const { name } of fonts) {
    const digits = drawn(name);
    const same = seen.get(digits);
    if (same !== undefined) throw new Error(`the canvas draws ${name} as it draws ${same}`);
    seen.set(digits, name);
  }
}

const boxes = new Map<string, InkBox>();

/** The box of a symbol's ink in the font of this name, looked for among the pixels: what the canvas says of it is not so. */
export function inkBoxOf(font: string, symbol: string): InkBox {
  const key = `${font} ${symbol}`;
  const known = boxes.get(key);
  if (known !== undefined) return known;
  const side = 3 * measuredAt;
  const context = createCanvas(side, side).getContext('2d');
  context.font = `${measuredAt}px "${font}"`;
  context.fillText(symbol, measuredAt, 2 * measuredAt);
  const { data } = context.getImageData(0, 0, side, side);
  let [left, right, top, bottom] = [side, 0, side, 0];
  for (let pixel = 0; pixel < side * side; pixel++) {
    if (data[4 * pixel + 3]! < 128) continue;
    const [column, row] = [pixel % side, Math.floor(pixel / side)];
    [left, right] = [Math.min(left, column), Math.max(right, column + 1)];
    [top, bottom] = [Math.min(top, row), Math.max(bottom, row + 1)];
  }
  const parts = (pixels: number) => pixels / measuredAt;
  const box = { left: parts(left) - 1, right: parts(right) - 1, up: 2 - parts(top), down: parts(bottom) - 2 };
  boxes.set(key, box);
  return box;
}

/** Draws a symbol with the middle of its ink at a point; gives the box of its ink in pixels. */
export function drawCentred(
  context: CanvasRenderingContext2D,
  { font, symbol, size, x, y }: { font: string; symbol: string; size: number; x: number; y: number },
): { readonly left: number; readonly top: number; readonly right: number; readonly bottom: number } {
  const box = inkBoxOf(font, symbol);
  const [originX, originY] = [x - ((box.left + box.right) / 2) * size, y + ((box.up - box.down) / 2) * size];
  context.font = `${size}px "${font}"`;
  context.fillText(symbol, originX, originY);
  return {
    left: originX + box.left * size,
    right: originX + box.right * size,
    top: originY - box.up * size,
    bottom: originY + box.down * size,
  };
}
