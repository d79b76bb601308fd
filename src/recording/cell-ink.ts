/**
 * What is written in a cell: its ink, apart from what the cell is filled with and from lines along its edges.
 *
 * The ground is the colour that most of the cell has. What lies far from it in colour falls into connected parts. A part
 * that runs out of the cell and is large is a ground too (a second tint, a broad frame, a line from cell to cell): it is
 * added to the grounds, and what then still differs is looked at anew. So a digit is found on two tints at once.
 */
import { type Colour, commonColour, distancesFrom, meanColour } from './colours.ts';
import { type Part, partsOf } from './connected-parts.ts';
import type { RgbPicture } from './picture.ts';

/** One connected piece of ink. Lengths are in cells, from the cell's left and top. */
export interface InkMark {
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
  /** Of its strokes, where they are fullest. */
  readonly colour: Colour;
  /** How far that is from the ground beside it, in levels. */
  readonly contrast: number;
  /** By pixel of the cell's picture: how much of it is ink of this mark, 0 to 1. */
  readonly coverage: Float32Array;
}

export interface CellInk {
  readonly ground: Colour;
  /** Large marks first. */
  readonly marks: readonly InkMark[];
  /** Whether something of several colours lies over the cell, such as a pointer, under which anything may stand. */
  readonly isCovered: boolean;
}

/** Along each edge, in cells, nothing is read: there grid lines lie, and no digit reaches it. */
const edge = 0.06;
/** Ink is at least so far from the ground, in levels; digits in pale grey on white are some 40. */
const leastContrast = 22;
/** Less than this in height and width, in cells, is a speck. */
const leastMark = 0.09;
const mostGrounds = 4;
/** That part of a surface at least has its colour; the rest are its edges, and what is written on it. */
const leastSurface = 0.5;

/** `cell`: one cell's picture, upright and square, from the middle of its grid lines to the middle. */
export function inkOf(cell: RgbPicture): CellInk {
  const side = cell.width;
  const margin = Math.round(edge * side);
  const inside = pixelsInside(side, margin);
  const ground = commonColour(cell, inside).colour;
  const grounds: Colour[] = [ground];
  for (;;) {
    const distances = distancesFrom(cell, grounds);
    const parts = partsOf(distances, side, margin, thresholdFor(distances, inside));
    const broad = broadPart(parts, side, margin);
    const further = broad === undefined ? undefined : surfaceOf(cell, broad);
    if (further === undefined || grounds.length === mostGrounds) {
      const marks = parts
        .filter((part) => part !== broad && isMark(part, side, margin))
        .flatMap((part) => apart(distances, part, side))
        .flatMap((part) => markOf(cell, distances, part) ?? []);
      return { ground, marks: marks.sort((one, other) => areaOf(other) - areaOf(one)), isCovered: broad !== undefined };
    }
    grounds.push(further);
  }
}

function pixelsInside(side: number, margin: number): number[] {
  const inside: number[] = [];
  for (let row = margin; row < side - margin; row++)
    for (let column = margin; column < side - margin; column++) inside.push(row * side + column);
  return inside;
}

/** Well above the grain of the ground, and not so high that thin strokes fall to pieces. */
function thresholdFor(distances: Float32Array, inside: readonly number[]): number {
  const sorted = Float32Array.from(inside, (pixel) => distances[pixel]!).sort();
  const at = (share: number) => sorted[Math.floor(share * (sorted.length - 1))]!;
  return Math.max(0.6 * leastContrast, 3 * at(0.4), Math.min(60, 0.25 * at(0.99)));
}

/** The largest part that is as broad as a tint, a frame or a line through the cell. */
function broadPart(parts: readonly Part[], side: number, margin: number): Part | undefined {
  return parts
    .filter((part) => {
      const [width, height] = [part.right - part.left, part.bottom - part.top];
      if (Math.min(width, height) > 0.8 * side) return true;
      if (!touches(part, side, margin) || depthOf(part, side, margin) < 0.2 * side) return false;
      return part.pixels.length > 0.1 * side ** 2 || Math.max(width, height) > 0.8 * side;
    })
    .sort((one, other) => other.pixels.length - one.pixels.length)[0];
}

/** The colour of a part that is one surface, or thin lines; undefined if it is several things at once. */
function surfaceOf(cell: RgbPicture, part: Part): Colour | undefined {
  const { colour, share } = commonColour(cell, part.pixels);
  const isThin = part.pixels.length < 0.25 * (part.right - part.left) * (part.bottom - part.top);
  return share > leastSurface || isThin ? colour : undefined;
}

function touches({ left, top, right, bottom }: Part, side: number, margin: number): boolean {
  return left <= margin || top <= margin || right >= side - margin || bottom >= side - margin;
}

/** How far it reaches into the cell from the edge that it keeps to most. */
function depthOf({ left, top, right, bottom }: Part, side: number, margin: number): number {
  return Math.min(right - margin, bottom - margin, side - margin - left, side - margin - top);
}

/** Not a speck, and not the rest of a line along an edge. */
function isMark(part: Part, side: number, margin: number): boolean {
  const longer = Math.max(part.right - part.left, part.bottom - part.top);
  if (longer < leastMark * side) return false;
  return !touches(part, side, margin) || (depthOf(part, side, margin) > 0.08 * side && longer < 0.8 * side);
}

/**
 * Digits of a row that blur has joined, each by itself: what is well inked falls apart into pieces beside each other, each
 * about as tall as the whole.
 */
function apart(distances: Float32Array, part: Part, side: number): readonly Part[] {
  if (part.right - part.left < 0.9 * (part.bottom - part.top)) return [part];
  const levels = new Float32Array(side * side);
  for (const pixel of part.pixels) levels[pixel] = distances[pixel]!;
  const fullest = [...part.pixels].map((pixel) => distances[pixel]!).sort((one, other) => other - one);
  const full = fullest[Math.floor(fullest.length / 10)]!;
  const pieces = partsOf(levels, side, 1, 0.6 * full)
    .filter(({ top, bottom }) => bottom - top > 0.6 * (part.bottom - part.top))
    .sort((one, other) => one.left - other.left);
  if (pieces.length < 2 || pieces.some(({ left }, index) => left < (pieces[index - 1]?.right ?? 0))) return [part];
  return pieces.map((piece, index) => {
    const from = index === 0 ? part.left : (pieces[index - 1]!.right + piece.left) / 2;
    const to = index === pieces.length - 1 ? part.right : (piece.right + pieces[index + 1]!.left) / 2;
    const pixels = part.pixels.filter((pixel) => pixel % side >= from && pixel % side < to);
    return { left: Math.ceil(from), right: Math.ceil(to), top: part.top, bottom: part.bottom, pixels };
  });
}

function markOf(cell: RgbPicture, distances: Float32Array, part: Part): InkMark | undefined {
  const side = cell.width;
  const byDistance = [...part.pixels].sort((a, b) => distances[b]! - distances[a]! || a - b);
  // Thin strokes are nowhere quite full; the fullest fifth of them is near to it.
  const fullest = byDistance.slice(0, Math.max(4, Math.round(byDistance.length / 5)));
  const contrast = fullest.reduce((sum, pixel) => sum + distances[pixel]!, 0) / fullest.length;
  if (contrast < leastContrast) return undefined;
  const coverage = new Float32Array(side * side);
  for (const pixel of part.pixels) coverage[pixel] = Math.min(1, distances[pixel]! / contrast);
  const across = extentOf(coverage, side, (along, other) => other * side + along);
  const down = extentOf(coverage, side, (along, other) => along * side + other);
  if (across === undefined || down === undefined) return undefined;
  const [left, right, top, bottom] = [across.from, across.to, down.from, down.to].map((at) => at / side);
  if (Math.max(right! - left!, bottom! - top!) < leastMark) return undefined;
  return {
    left: left!,
    right: right!,
    top: top!,
    bottom: bottom!,
    colour: meanColour(cell, fullest),
    contrast,
    coverage,
  };
}

/** Where the ink begins and ends along one direction, to parts of a pixel: where half a pixel of it would be covered. */
function extentOf(coverage: Float32Array, side: number, pixelAt: (along: number, other: number) => number) {
  const most = Array.from({ length: side }, (_, along) => {
    let highest = 0;
    for (let other = 0; other < side; other++) highest = Math.max(highest, coverage[pixelAt(along, other)]!);
    return highest;
  });
  const first = most.findIndex((each) => each >= 0.5);
  const last = most.findLastIndex((each) => each >= 0.5);
  if (first < 0) return undefined;
  // The middles of pixels lie at halves.
  const crossing = (full: number, beyond: number) =>
    (most[full]! - 0.5) / Math.max(1e-6, most[full]! - (most[beyond] ?? 0));
  return {
    from: first + 0.5 - Math.min(0.5, crossing(first, first - 1)),
    to: last + 0.5 + Math.min(0.5, crossing(last, last + 1)),
  };
}

function areaOf({ left, top, right, bottom }: InkMark): number {
  return (right - left) * (bottom - top);
}
