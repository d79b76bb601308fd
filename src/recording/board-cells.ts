/**
 * The cells of a board's picture, each as a picture of its own.
 */
import type { RgbPicture } from './picture.ts';

/** Pixels of a cell as it is read: shapes are learnt from cells of this size. */
export const readSide = 60;

/** One cell of a board's picture; column and row from 0. */
export function cellOfBoard(board: RgbPicture, column: number, row: number, side: number): RgbPicture {
  const rgb = new Uint8Array(3 * side * side);
  for (let y = 0; y < side; y++) {
    const from = 3 * ((row * side + y) * board.width + column * side);
    rgb.set(board.rgb.subarray(from, from + 3 * side), 3 * y * side);
  }
  return { width: side, height: side, rgb };
}
