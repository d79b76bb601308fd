/**
 * Connected parts of a picture: pixels above a threshold that touch at a side or a corner.
 */

/** Pixels `left` to `right` and `top` to `bottom`, the ends not included. */
export interface Part {
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
  readonly pixels: readonly number[];
}

/** The parts of a square picture of `side` x `side`, pixels within `margin` of its edges left out; by their first pixel. */
export function partsOf(levels: Float32Array, side: number, margin: number, threshold: number): readonly Part[] {
  const isOpen = new Uint8Array(side * side);
  for (let row = margin; row < side - margin; row++)
    for (let column = margin; column < side - margin; column++)
      if (levels[row * side + column]! > threshold) isOpen[row * side + column] = 1;
  const parts: Part[] = [];
  for (let first = 0; first < isOpen.length; first++)
    if (isOpen[first] === 1) parts.push(partFrom(first, isOpen, side));
  return parts;
}

/** The part that holds this pixel; its pixels are closed in `isOpen`, of which the outermost row is closed already. */
function partFrom(first: number, isOpen: Uint8Array, side: number): Part {
  const pixels = [first];
  isOpen[first] = 0;
  let [left, right, top, bottom] = [side, 0, side, 0];
  for (let index = 0; index < pixels.length; index++) {
    const pixel = pixels[index]!;
    const [column, row] = [pixel % side, Math.floor(pixel / side)];
    left = Math.min(left, column);
    right = Math.max(right, column + 1);
    top = Math.min(top, row);
    bottom = Math.max(bottom, row + 1);
    for (const neighbour of [
      pixel - side - 1,
      pixel - side,
      pixel - side + 1,
      pixel - 1,
      pixel + 1,
      pixel + side - 1,
      pixel + side,
      pixel + side + 1,
    ]) {
      if (isOpen[neighbour] !== 1) continue;
      isOpen[neighbour] = 0;
      pixels.push(neighbour);
    }
  }
  return { left, right, top, bottom, pixels };
}
