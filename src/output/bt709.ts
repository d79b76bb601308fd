/**
 * From RGB to the Y'CbCr of ITU-R BT.709-6 (section 3: luma and colour differences; section 4: limited range, black 16,
 * white 235, colour differences 16 to 240 around 128), in planes with one chroma sample for four pixels ("4:2:0").
 *
 * Done here and not in the encoder for two reasons. A still stretch is converted once. And alpha is straight: the
 * colour of a pixel that cannot be seen must not bleed into the chroma that it shares with three others, so each of
 * the four counts by its alpha. (Plain averaging halves the colour of a stroke's edge.)
 */

/** Where red and blue stand within the four bytes of a pixel; green is second either way, alpha last. */
export interface ByteOrder {
  readonly red: number;
  readonly green: number;
  readonly blue: number;
  readonly alpha: number | undefined;
}

export const straightRgba: ByteOrder = { red: 0, green: 1, blue: 2, alpha: 3 };

/** The number of bytes of one frame: Y, Cb, Cr, and a full-size alpha plane where it is asked for. */
export function planarSize(width: number, height: number, withAlpha: boolean): number {
  const chroma = Math.ceil(width / 2) * Math.ceil(height / 2);
  return width * height * (withAlpha ? 2 : 1) + 2 * chroma;
}

/**
 * The planes Y, Cb, Cr, A of a frame, one after the other (ffmpeg's yuva420p; without `alpha` in the order yuv420p).
 * `pixels`: four bytes each, rows from the top. Odd sizes are allowed; the last block is then smaller.
 */
export function toPlanar(pixels: Uint8Array | Uint8ClampedArray, width: number, height: number, order: ByteOrder): Buffer {
  const { red, green, blue, alpha } = order;
  const chromaWidth = Math.ceil(width / 2);
  const area = width * height;
  const chromaArea = chromaWidth * Math.ceil(height / 2);
  const planes = Buffer.allocUnsafe(planarSize(width, height, alpha !== undefined));
  planes.fill(black, 0, area).fill(neutral, area, area + 2 * chromaArea).fill(0, area + 2 * chromaArea);
  const words = new Uint32Array(pixels.buffer, pixels.byteOffset, area);
  const alphaStart = area + 2 * chromaArea;

  for (let top = 0; top < height; top += 2) {
    const rowCount = Math.min(2, height - top);
    for (let left = 0; left < width; left += 2) {
      const columnCount = Math.min(2, width - left);
      const first = top * width + left;
      // Nearly all of an overlay is empty, and the planes are filled with "empty" already.
      if (alpha !== undefined && isEmpty(words, first, width, rowCount, columnCount)) continue;

      let reds = 0;
      let greens = 0;
      let blues = 0;
      let weights = 0;
      for (let row = 0; row < rowCount; row++) {
        for (let column = 0; column < columnCount; column++) {
          const pixel = first + row * width + column;
          const at = pixel * 4;
          const weight = alpha === undefined ? 1 : pixels[at + alpha]!;
          const r = pixels[at + red]!;
          const g = pixels[at + green]!;
          const b = pixels[at + blue]!;
          if (alpha !== undefined) planes[alphaStart + pixel] = weight;
          if (weight === 0) continue;
          planes[pixel] = (black + lumaRed * r + lumaGreen * g + lumaBlue * b + 0.5) | 0;
          reds += r * weight;
          greens += g * weight;
          blues += b * weight;
          weights += weight;
        }
      }
      if (weights === 0) continue;
      const luma = lumaRed * reds + lumaGreen * greens + lumaBlue * blues;
      const chroma = area + (top >> 1) * chromaWidth + (left >> 1);
      planes[chroma] = (neutral + (blueScale * blues - blueLuma * luma) / weights + 0.5) | 0;
      planes[chroma + chromaArea] = (neutral + (redScale * reds - redLuma * luma) / weights + 0.5) | 0;
    }
  }
  return planes;
}

function isEmpty(words: Uint32Array, first: number, width: number, rowCount: number, columnCount: number): boolean {
  let any = words[first]!;
  if (columnCount === 2) any |= words[first + 1]!;
  if (rowCount === 2) {
    any |= words[first + width]!;
    if (columnCount === 2) any |= words[first + width + 1]!;
  }
  return any === 0;
}

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
