/**
 * From RGB to the Y'CbCr of ITU-R BT.709-6 (section 3: luma and colour differences; section 4: limited range, black 16,
 * white 235, colour differences 16 to 240 around 128), in planes with one chroma sample for four pixels ("4:2:0").
 *
 * Done here and not in the encoder for two reasons. A hold is converted once. And alpha is straight: the colour of an
 * invisible pixel must not get into the chroma that it shares with three others, so each of the four is weighted by its
 * alpha. (Plain averaging takes half the colour from a stroke's edge.)
 */
import { bleed } from './bleed.ts';
import type { Region } from './regions.ts';
import type { ByteOrder } from './straight-alpha.ts';

/**
 * The planes Y, Cb, Cr of an opaque frame, one after the other: ffmpeg's yuv420p. `pixels`: four bytes each, rows from
 * the top. Odd sizes are allowed: the last column or row then shares its chroma among fewer pixels.
 */
export function opaqueToPlanar(pixels: Uint8Array, width: number, height: number, order: ByteOrder): Buffer {
  const planes = Buffer.allocUnsafe(planarBytes(width, height, false));
  convertOpaque(planes, pixels, width, height, order, { left: 0, right: width, top: 0, bottom: height });
  return planes;
}

/** How many bytes the planes of a frame take. */
export function planarBytes(width: number, height: number, alpha: boolean): number {
  const area = width * height;
  return area * (alpha ? 2 : 1) + 2 * Math.ceil(width / 2) * Math.ceil(height / 2);
}

/** The same for a part of a frame, written into its planes. */
export function convertOpaque(
  planes: Uint8Array,
  pixels: Uint8Array,
  width: number,
  height: number,
  order: ByteOrder,
  region: Region,
): void {
  const { red, green, blue } = order;
  const chromaWidth = Math.ceil(width / 2);
  const area = width * height;
  const chromaArea = chromaWidth * Math.ceil(height / 2);
  const words = new Uint32Array(pixels.buffer, pixels.byteOffset, area);
  // Most blocks have one colour, the same as the previous block.
  let known = 0;
  let [knownLuma, knownBlue, knownRed] = [-1, 0, 0];
  for (let top = region.top & ~1; top < region.bottom; top += 2) {
    const below = top + 1 < height ? width : 0; // The pixel itself again if there is none below.
    for (let left = region.left & ~1; left < region.right; left += 2) {
      const right = left + 1 < width ? 1 : 0;
      const first = top * width + left;
      const chroma = area + (top >> 1) * chromaWidth + (left >> 1);
      const word = words[first]!;
      const isPlain =
        word === words[first + right] && word === words[first + below] && word === words[first + below + right];
      if (isPlain && word === known && knownLuma >= 0) {
        planes[first] = knownLuma;
        planes[first + right] = knownLuma;
        planes[first + below] = knownLuma;
        planes[first + below + right] = knownLuma;
        planes[chroma] = knownBlue;
        planes[chroma + chromaArea] = knownRed;
        continue;
      }
      let reds = 0;
      let greens = 0;
      let blues = 0;
      for (let corner = 0; corner < 4; corner++) {
        const pixel = first + (corner & 1) * right + (corner >> 1) * below;
        const r = pixels[pixel * 4 + red]!;
        const g = pixels[pixel * 4 + green]!;
        const b = pixels[pixel * 4 + blue]!;
        planes[pixel] = black + lumaRed * r + lumaGreen * g + lumaBlue * b + 0.5;
        reds += r;
        greens += g;
        blues += b;
      }
      const luma = lumaRed * reds + lumaGreen * greens + lumaBlue * blues;
      planes[chroma] = neutral + (blueScale * blues - blueLuma * luma) / 4 + 0.5;
      planes[chroma + chromaArea] = neutral + (redScale * reds - redLuma * luma) / 4 + 0.5;
      if (!isPlain) continue;
      known = word;
      [knownLuma, knownBlue, knownRed] = [planes[first]!, planes[chroma]!, planes[chroma + chromaArea]!];
    }
  }
}

/**
 * The planes Y, Cb, Cr, A of a frame with straight alpha, one after the other: ffmpeg's yuva420p. `pixels`: R, G, B, A,
 * rows from the top; a pixel of alpha 0 is all zeros, as `straighten` leaves it.
 */
export function straightToPlanar(pixels: Uint8Array, width: number, height: number): Buffer {
  const planes = Buffer.allocUnsafe(planarBytes(width, height, true));
  convertStraight(planes, emptyBlocks(width, height), pixels, width, height, 0, height);
  return planes;
}

/** For each block of four, the luma of its visible pixels; 0 if there are none. */
export function emptyBlocks(width: number, height: number): Uint8Array {
  return new Uint8Array(Math.ceil(width / 2) * Math.ceil(height / 2));
}

/** The same for the rows from `from` to `until`, written into the planes and blocks of the frame. */
export function convertStraight(
  planes: Uint8Array,
  blockLuma: Uint8Array,
  pixels: Uint8Array,
  width: number,
  height: number,
  from: number,
  until: number,
): void {
  const chromaWidth = Math.ceil(width / 2);
  const area = width * height;
  const chromaArea = chromaWidth * Math.ceil(height / 2);
  const alphaStart = area + 2 * chromaArea;
  // Colour is extended by a block, so the adjacent rows have to be redone too.
  const first = Math.max(0, (from & ~1) - 2);
  const end = Math.min(height, until + 3 - ((until + 1) % 2));
  const [firstBlock, endBlock] = [(first >> 1) * chromaWidth, Math.ceil(end / 2) * chromaWidth];
  planes.fill(black, first * width, end * width);
  planes.fill(neutral, area + firstBlock, area + endBlock);
  planes.fill(neutral, area + chromaArea + firstBlock, area + chromaArea + endBlock);
  planes.fill(0, alphaStart + first * width, alphaStart + end * width);
  blockLuma.fill(0, firstBlock, endBlock);
  const words = new Uint32Array(pixels.buffer, pixels.byteOffset, area);
  for (let top = first; top < end; top += 2) {
    const below = top + 1 < height ? width : 0;
    for (let left = 0; left < width; left += 2) {
      const right = left + 1 < width ? 1 : 0;
      const corner0 = top * width + left;
      // Nearly all of an overlay is empty, and the planes are already filled with "empty".
      if ((words[corner0]! | words[corner0 + right]! | words[corner0 + below]! | words[corner0 + below + right]!) === 0)
        continue;
      let reds = 0;
      let greens = 0;
      let blues = 0;
      let weights = 0;
      let hidden = false;
      for (let corner = 0; corner < 4; corner++) {
        const pixel = corner0 + (corner & 1) * right + (corner >> 1) * below;
        const r = pixels[pixel * 4]!;
        const g = pixels[pixel * 4 + 1]!;
        const b = pixels[pixel * 4 + 2]!;
        const weight = pixels[pixel * 4 + 3]!;
        planes[pixel] = black + lumaRed * r + lumaGreen * g + lumaBlue * b + 0.5;
        planes[alphaStart + pixel] = weight;
        reds += r * weight;
        greens += g * weight;
        blues += b * weight;
        weights += weight;
        hidden ||= weight === 0;
      }
      const luma = lumaRed * reds + lumaGreen * greens + lumaBlue * blues;
      const block = (top >> 1) * chromaWidth + (left >> 1);
      planes[area + block] = neutral + (blueScale * blues - blueLuma * luma) / weights + 0.5;
      planes[area + chromaArea + block] = neutral + (redScale * reds - redLuma * luma) / weights + 0.5;
      const mean = black + luma / weights + 0.5;
      blockLuma[block] = mean;
      if (!hidden) continue;
      for (let corner = 0; corner < 4; corner++) {
        const pixel = corner0 + (corner & 1) * right + (corner >> 1) * below;
        if (planes[alphaStart + pixel] === 0) planes[pixel] = mean;
      }
    }
  }
  bleed(planes, blockLuma, width, height, first >> 1, Math.ceil(end / 2));
}

/** Storing into a byte array truncates, so adding 0.5 rounds to the nearest. */
const black = 16;
const neutral = 128;
const [kRed, kGreen, kBlue] = [0.2126, 0.7152, 0.0722];
/** Luma steps for one step of a colour: 219 steps for 255. */
const lumaRed = (219 / 255) * kRed;
const lumaGreen = (219 / 255) * kGreen;
const lumaBlue = (219 / 255) * kBlue;
/** (B - Y) / 1.8556 and (R - Y) / 1.5748 in 224 steps; `luma` above is in steps of 219 already. */
const blueScale = 224 / 255 / 1.8556;
const blueLuma = 224 / 219 / 1.8556;
const redScale = 224 / 255 / 1.5748;
const redLuma = 224 / 219 / 1.5748;
