/**
 * Where upright lines and edges pass on a picture. Of the picture on its side (`transposed`) they are the level ones.
 *
 * The level's change to the right is averaged along a dozen rows, so that noise and the traces of compression fall away
 * and a faint line that goes on is left; a threshold makes it yes or no. Tried beside it: Hough's transform of the whole
 * picture, which the digits and everything else on a screen drown, and contours, which end wherever a line is faint.
 */
import type { GreyPicture } from './picture.ts';

export interface UprightEdges {
  readonly width: number;
  readonly height: number;
  /** Row by row: how strong the change is, in quarters of a level, 255 at most; 0 below the threshold. */
  readonly strength: Uint8Array;
  /** How many rows above row y have an edge within `reach` of column x, at `y * width + x`; `height + 1` rows. */
  readonly above: Uint16Array;
}

/** Columns by which an edge may lie beside where it is looked for. */
const reach = 2;

/** Rows over which changes are averaged, an odd number. */
const window = 13;

/** Levels of mean change below which there is no edge, where the picture has no noise. */
const leastChange = 1.5;

export function uprightEdges(picture: GreyPicture): UprightEdges {
  const { width, height, levels } = picture;
  const threshold = thresholdOf(picture);
  const strength = new Uint8Array(width * height);
  const sums = new Int32Array(width);
  const half = (window - 1) / 2;
  const add = (row: number, sign: number): void => {
    const start = row * width;
    for (let x = 1; x < width - 1; x++) sums[x]! += sign * (levels[start + x + 1]! - levels[start + x - 1]!);
  };
  for (let row = 0; row < Math.min(half, height); row++) add(row, 1);
  for (let row = 0; row < height; row++) {
    if (row + half < height) add(row + half, 1);
    if (row - half - 1 >= 0) add(row - half - 1, -1);
    const rows = Math.min(row + half, height - 1) - Math.max(row - half, 0) + 1;
    const least = threshold * rows;
    const start = row * width;
    for (let x = 1; x < width - 1; x++) {
      const size = Math.abs(sums[x]!);
      if (size >= least) strength[start + x] = Math.min(255, (4 * size) / rows);
    }
  }
  return { width, height, strength, above: counted(strength, width, height) };
}

/** Which part of the rows from `from` up to `until` has an edge near column `x`; 0 where the picture has none of them. */
export function covered({ width, height, above }: UprightEdges, x: number, from: number, until: number): number {
  const column = Math.round(x - 0.5);
  const [first, end] = [Math.max(0, Math.round(from)), Math.min(height, Math.round(until))];
  if (column < 0 || column >= width || end <= first) return 0;
  return (above[end * width + column]! - above[first * width + column]!) / (end - first);
}

/** Rows become columns. */
export function transposed({ width, height, levels }: GreyPicture): GreyPicture {
  const turned = new Uint8Array(levels.length);
  for (let y = 0; y < height; y++) for (let x = 0; x < width; x++) turned[x * height + y] = levels[y * width + x]!;
  return { width: height, height: width, levels: turned };
}

/** Each pixel the mean of `factor` x `factor`; what is over at the right and below is left out. */
export function shrunk(picture: GreyPicture, factor: number): GreyPicture {
  if (factor === 1) return picture;
  const [width, height] = [Math.floor(picture.width / factor), Math.floor(picture.height / factor)];
  const levels = new Uint8Array(width * height);
  for (let y = 0; y < height; y++) {
    for (let x = 0; x < width; x++) {
      let sum = 0;
      for (let dy = 0; dy < factor; dy++) {
        const start = (y * factor + dy) * picture.width + x * factor;
        for (let dx = 0; dx < factor; dx++) sum += picture.levels[start + dx]!;
      }
      levels[y * width + x] = Math.round(sum / (factor * factor));
    }
  }
  return { width, height, levels };
}

/** Higher where half of all pixels differ from their neighbours: that is noise, since most of a screen is plain. */
function thresholdOf({ width, height, levels }: GreyPicture): number {
  const counts = new Uint32Array(256);
  let total = 0;
  for (let y = 2; y < height; y += 5) {
    for (let x = 1 + (y % 3); x < width - 1; x += 3) {
      const at = y * width + x;
      counts[Math.abs(levels[at + 1]! - levels[at - 1]!)]! += 1;
      total += 1;
    }
  }
  let median = 0;
  for (let seen = counts[0]!; seen < total / 2 && median < 255; seen += counts[median]!) median += 1;
  // Of normal noise the median is 0.67 times its spread, of which a mean over the window has one in the root of its rows.
  return Math.max(leastChange, ((3.5 / 0.67) * median) / Math.sqrt(window));
}

function counted(strength: Uint8Array, width: number, height: number): Uint16Array {
  const above = new Uint16Array((height + 1) * width);
  for (let y = 0; y < height; y++) {
    const start = y * width;
    let last = -reach - 1;
    for (let x = 0; x < Math.min(reach, width); x++) if (strength[start + x] !== 0) last = x;
    for (let x = 0; x < width; x++) {
      if (x + reach < width && strength[start + x + reach] !== 0) last = x + reach;
      above[start + width + x] = above[start + x]! + (last >= x - reach ? 1 : 0);
    }
  }
  return above;
}
