/**
 * What stands in a board's cells, as a small picture of their middles: the same board is known again by it after it has
 * moved, and a place one cell off, where the lines fit as well, is told from the right one.
 */
import type { Corners } from './corners.ts';
import type { GreyPicture } from './picture.ts';
import { rectified } from './rectify.ts';

/** Levels of the middles of cells, 4 x 4 each; the lines are left out. */
export type BoardContent = Float64Array;

const cellPx = 6;

export function contentOf(picture: GreyPicture, size: number, corners: Corners): BoardContent {
  const { levels, width } = rectified(picture, corners, size * cellPx);
  const content = new Float64Array(size * size * (cellPx - 2) ** 2);
  let at = 0;
  for (let y = 0; y < width; y++) {
    if (y % cellPx === 0 || y % cellPx === cellPx - 1) continue;
    for (let x = 0; x < width; x++) {
      if (x % cellPx === 0 || x % cellPx === cellPx - 1) continue;
      content[at] = levels[y * width + x]!;
      at += 1;
    }
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
