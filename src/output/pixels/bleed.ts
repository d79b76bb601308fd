/**
 * Colour extended slightly into invisible pixels.
 *
 * With alpha 0 a pixel may have any colour. Black is a bad choice: a decoder smooths chroma across the edge of a
 * stroke, and a lossy encoder smears luma, so that dark and grey would creep into the visible side. With the stroke's
 * own colour extended over the edge, a composited VP9 picture is within 8 of 255 of the drawn one in all but 0.2 % of
 * the samples of a page of strokes and words, instead of 2.5 %; ffmpeg's own conversion leaves 12 %.
 */

/**
 * Works on planes Y, Cb, Cr, A (yuva420p). `blockLuma` has, for each chroma sample, the luma of its visible pixels, and
 * 0 if there are none. Such a block takes the luma and chroma of a visible block that it touches, if there is one. Done
 * for the rows of blocks from `from` to `until`.
 */
export function bleed(
  planes: Uint8Array,
  blockLuma: Uint8Array,
  width: number,
  height: number,
  from: number,
  until: number,
): void {
  const columnCount = Math.ceil(width / 2);
  const rowCount = Math.ceil(height / 2);
  const cb = width * height;
  const cr = cb + blockLuma.length;
  const isBare = (row: number): boolean => row < 0 || row >= rowCount || rowIsBare(blockLuma, row, columnCount);
  for (let row = from; row < until; row++) {
    // Most of an overlay has nothing to extend.
    if (isBare(row - 1) && isBare(row) && isBare(row + 1)) continue;
    for (let column = 0; column < columnCount; column++) {
      const block = row * columnCount + column;
      if (blockLuma[block] !== 0) continue;
      const neighbour = visibleNeighbour(blockLuma, row, column, rowCount, columnCount);
      if (neighbour === undefined) continue;
      planes[cb + block] = planes[cb + neighbour]!;
      planes[cr + block] = planes[cr + neighbour]!;
      const luma = blockLuma[neighbour]!;
      for (let y = 2 * row; y < Math.min(height, 2 * row + 2); y++) {
        planes.fill(luma, y * width + 2 * column, y * width + Math.min(width, 2 * column + 2));
      }
    }
  }
}

function rowIsBare(blockLuma: Uint8Array, row: number, columnCount: number): boolean {
  const end = (row + 1) * columnCount;
  for (let block = row * columnCount; block < end; block++) {
    if (blockLuma[block] !== 0) return false;
  }
  return true;
}

function visibleNeighbour(
  blockLuma: Uint8Array,
  row: number,
  column: number,
  rowCount: number,
  columnCount: number,
): number | undefined {
  const [right, bottom] = [Math.min(columnCount - 1, column + 1), Math.min(rowCount - 1, row + 1)];
  for (let y = Math.max(0, row - 1); y <= bottom; y++) {
    for (let x = Math.max(0, column - 1); x <= right; x++) {
      if (blockLuma[y * columnCount + x] !== 0) return y * columnCount + x;
    }
  }
  return undefined;
}
