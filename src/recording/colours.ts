/**
 * Colours of pixels, and how far apart two of them are: in levels, black and white 255 apart.
 */
import type { RgbPicture } from './picture.ts';

export type Colour = readonly [red: number, green: number, blue: number];

export function colourDistance(a: Colour, b: Colour): number {
  return Math.sqrt(((a[0] - b[0]) ** 2 + (a[1] - b[1]) ** 2 + (a[2] - b[2]) ** 2) / 3);
}

/** The colour of one pixel. */
export function colourAt({ rgb }: RgbPicture, pixel: number): Colour {
  return [rgb[3 * pixel]!, rgb[3 * pixel + 1]!, rgb[3 * pixel + 2]!];
}

/**
 * How far each pixel is from every mixture of two of these colours, which are one or more. What a soft edge between two
 * surfaces shows is such a mixture, so that it is 0 away.
 */
export function distancesFrom({ rgb }: RgbPicture, colours: readonly Colour[]): Float32Array {
  const distances = new Float32Array(rgb.length / 3).fill(Number.POSITIVE_INFINITY);
  for (const [index, one] of colours.entries()) {
    const others = colours.length === 1 ? [one] : colours.slice(index + 1);
    for (const other of others) lessen(distances, rgb, one, other);
  }
  return distances.map((squared) => Math.sqrt(squared / 3));
}

/** Leaves in each pixel's place the least of what is there and its squared distance from the mixtures of two colours. */
function lessen(squares: Float32Array, rgb: Uint8Array, one: Colour, other: Colour): void {
  const [x, y, z] = [other[0] - one[0], other[1] - one[1], other[2] - one[2]];
  const length = x * x + y * y + z * z;
  for (let pixel = 0; pixel < squares.length; pixel++) {
    let [red, green, blue] = [rgb[3 * pixel]! - one[0], rgb[3 * pixel + 1]! - one[1], rgb[3 * pixel + 2]! - one[2]];
    if (length > 0) {
      const share = Math.min(1, Math.max(0, (red * x + green * y + blue * z) / length));
      red -= share * x;
      green -= share * y;
      blue -= share * z;
    }
    const square = red * red + green * green + blue * blue;
    if (square < squares[pixel]!) squares[pixel] = square;
  }
}

/**
 * The colour that most of these pixels share, as the mean of those near to it, and what part of them that is. Some of
 * the pixels, evenly spread, are tried and counted.
 */
export function commonColour(picture: RgbPicture, pixels: readonly number[]): { colour: Colour; share: number } {
  const counted = thinned(pixels, 800);
  let best: readonly number[] = [];
  for (const pixel of thinned(pixels, 40)) {
    const near = nearTo(picture, counted, colourAt(picture, pixel));
    if (near.length > best.length) best = near;
  }
  return { colour: meanColour(picture, best), share: best.length / Math.max(1, counted.length) };
}

export function meanColour({ rgb }: RgbPicture, pixels: readonly number[]): Colour {
  let [red, green, blue] = [0, 0, 0];
  for (const pixel of pixels) {
    red += rgb[3 * pixel]!;
    green += rgb[3 * pixel + 1]!;
    blue += rgb[3 * pixel + 2]!;
  }
  const count = Math.max(1, pixels.length);
  return [red / count, green / count, blue / count];
}

/** Within what the pixels of one surface differ after strong compression (crf 34), in levels. */
const oneSurface = 12;

function nearTo({ rgb }: RgbPicture, pixels: readonly number[], [red, green, blue]: Colour): readonly number[] {
  const most = 3 * oneSurface ** 2;
  return pixels.filter((pixel) => {
    const [x, y, z] = [rgb[3 * pixel]! - red, rgb[3 * pixel + 1]! - green, rgb[3 * pixel + 2]! - blue];
    return x * x + y * y + z * z < most;
  });
}

function thinned(all: readonly number[], most: number): readonly number[] {
  if (all.length <= most) return all;
  return Array.from({ length: most }, (_, index) => all[Math.floor(((index + 0.5) * all.length) / most)]!);
}
