/**
 * Which part of a frame differs from the previous frame: found by comparing pixels, so that painters need not predict
 * it.
 */

/** Pixels from `left` to `right` and from `top` to `bottom`, `right` and `bottom` not included. */
export interface Region {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

/** In whole pixels; all four numbers even, as 4:2:0 needs them. */
export interface Box {
  readonly left: number;
  readonly top: number;
  readonly width: number;
  readonly height: number;
}

/** How many rows are compared together; even, as rows share their chroma in pairs. */
const step = 8;

/** Regions that together contain every difference, from top to bottom. `now` and `before`: four bytes a pixel. */
export function changedRegions(now: Uint8Array, before: Uint8Array, width: number, height: number): Region[] {
  const bands: { top: number; bottom: number }[] = [];
  const [here, there] = [bufferOf(now), bufferOf(before)];
  for (let top = 0; top < height; top += step) {
    const bottom = Math.min(height, top + step);
    const [from, until] = [top * width * 4, bottom * width * 4];
    if (here.compare(there, from, until, from, until) === 0) continue;
    const last = bands.at(-1);
    if (last?.bottom === top) last.bottom = bottom;
    else bands.push({ top, bottom });
  }
  const [pixels, others] = [wordsOf(now), wordsOf(before)];
  return bands.map(({ top, bottom }) => {
    let [left, right] = [width, 0];
    for (let row = top; row < bottom; row++) {
      const start = row * width;
      let column = 0;
      while (column < left && pixels[start + column] === others[start + column]) column += 1;
      left = column;
      column = width;
      while (column > right && pixels[start + column - 1] === others[start + column - 1]) column -= 1;
      right = column;
    }
    return { left, right, top, bottom };
  });
}

function bufferOf(bytes: Uint8Array): Buffer {
  return Buffer.from(bytes.buffer, bytes.byteOffset, bytes.byteLength);
}

function wordsOf(bytes: Uint8Array): Uint32Array {
  return new Uint32Array(bytes.buffer, bytes.byteOffset, bytes.byteLength / 4);
}
