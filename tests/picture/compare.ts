/**
 * Comparing a picture with its reference: colours by pixelmatch, alpha by itself, since pixelmatch lays both pictures
 * over white first and so misses a shift between two kinds of almost transparent.
 */
import { existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import pixelmatch from 'pixelmatch';
import { PNG } from 'pngjs';
import { drawn } from './drawn.ts';
import type { Golden } from './goldens.ts';

export const referenceFolder = fileURLToPath(new URL('goldens', import.meta.url));
/** Where a failed comparison leaves old, difference and new. */
export const outFolder = fileURLToPath(new URL('../../out/pictures', import.meta.url));

/**
 * What two pictures may differ by: another build of the font renderer smooths the edge of a letter a little
 * differently. A stroke that moves by a tenth of a pixel is more than this.
 */
export const tolerance = { differentPixels: 0, alphaLevels: 1, colour: 0.02 } as const;

export type Comparison =
  | { readonly kind: 'same' }
  | { readonly kind: 'missing'; readonly now: Buffer }
  | { readonly kind: 'resized'; readonly now: Buffer; readonly was: Buffer }
  | {
      readonly kind: 'different';
      readonly now: Buffer;
      readonly was: Buffer;
      readonly difference: Buffer;
      readonly pixels: number;
      readonly alphaLevels: number;
    };

/** Draws the picture and compares it with its file; what differs is left in `out/pictures`. */
export function compare(golden: Golden): Comparison {
  const now = drawn(golden.film, golden.frame, golden.look).png;
  const file = join(referenceFolder, `${golden.name}.png`);
  if (!existsSync(file)) {
    leave(golden.name, { new: now });
    return { kind: 'missing', now };
  }
  const was = readFileSync(file);
  const result = comparePngs(was, now);
  if (result.kind === 'resized') leave(golden.name, { old: was, new: now });
  if (result.kind === 'different') leave(golden.name, { old: was, difference: result.difference, new: now });
  return result;
}

export function comparePngs(was: Buffer, now: Buffer): Comparison {
  const [old, fresh] = [PNG.sync.read(was), PNG.sync.read(now)];
  if (old.width !== fresh.width || old.height !== fresh.height) return { kind: 'resized', was, now };
  const image = new PNG({ width: old.width, height: old.height });
  const options = { threshold: tolerance.colour, includeAA: true };
  const pixels = pixelmatch(old.data, fresh.data, image.data, old.width, old.height, options);
  let alphaLevels = 0;
  for (let index = 3; index < old.data.length; index += 4) {
    alphaLevels = Math.max(alphaLevels, Math.abs(old.data[index]! - fresh.data[index]!));
  }
  if (pixels <= tolerance.differentPixels && alphaLevels <= tolerance.alphaLevels) return { kind: 'same' };
  return { kind: 'different', was, now, difference: PNG.sync.write(image), pixels, alphaLevels };
}

function leave(name: string, pictures: Readonly<Record<string, Buffer>>): void {
  mkdirSync(outFolder, { recursive: true });
  for (const [which, png] of Object.entries(pictures)) writeFileSync(join(outFolder, `${name}.${which}.png`), png);
}
