/**
 * What stands in a board's cells, as a small picture of their middles: the same board is known again by it after it has
 * moved, and a place one cell off, where the lines fit as well, is told from the right one.
 */
import type { Corners } from './corners.ts';
import type { GreyPicture } from './picture.ts';
import { rectified } from './rectify.ts';

/** By cell, the levels of its middle against its ground, 6 x 6 each; neither lines nor tints are in it. */
export type BoardContent = Float64Array;

const cellPx = 8;
const inner = cellPx - 2;

export function contentOf(picture: GreyPicture, size: number, corners: Corners): BoardContent {
  const { levels, width } = rectified(picture, corners, size * cellPx);
  const content = new Float64Array(size * size * inner * inner);
  for (let cell = 0; cell < size * size; cell++) {
    const first = (Math.floor(cell / size) * cellPx + 1) * width + (cell % size) * cellPx + 1;
    const middle = content.subarray(cell * inner * inner, (cell + 1) * inner * inner);
    for (let y = 0; y < inner; y++)
      for (let x = 0; x < inner; x++) middle[y * inner + x] = levels[first + y * width + x]!;
    // The ground is what most of the cell is.
    const ground = Float64Array.from(middle).sort()[middle.length >> 1]!;
    for (let index = 0; index < middle.length; index++) middle[index]! -= ground;
  }
  return content;
}

/** From -1 to 1, the correlation of both; 1 where one of them is all but plain, so that nothing can be told. */
export function likeness(one: BoardContent, other: BoardContent): number {
  const [meanOne, meanOther] = [mean(one), mean(other)];
  let [both, ofOne, ofOther] = [0, 0, 0];
  for (let index = 0; index < one.length; index++) {
    const [a, b] = [one[index]! - meanOne, other[index]! - meanOther];
    both += a * b;
    ofOne += a * a;
    ofOther += b * b;
  }
  const plain = 4 * one.length;
  return ofOne < plain || ofOther < plain ? 1 : both / Math.sqrt(ofOne * ofOther);
}

function mean(levels: Float64Array): number {
  return levels.reduce((sum, level) => sum + level, 0) / levels.length;
}
