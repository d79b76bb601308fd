/**
 * From colours multiplied by alpha, as a canvas stores them, to straight ones, as files carry them.
 *
 * The canvas library's own `getImageData` does the same, but rounds down, so that all semi-transparent colours come out
 * a little darker; this rounds to the nearest. It is also slower on frames that are mostly empty.
 */

/** Where the four channels of a pixel are within its four bytes. */
export interface ByteOrder {
  readonly red: number;
  readonly green: number;
  readonly blue: number;
  readonly alpha: number;
}

/**
 * R, G, B, A with straight alpha, four bytes a pixel, from `pixels`, multiplied by alpha in the order `order`. A pixel
 * of alpha 0 is all zeros. A value of 110 with alpha 128 was 110 * 255 / 128 = 219.1, so 219.
 */
export function straighten(pixels: Uint8Array, order: ByteOrder): Uint8Array {
  const straight = new Uint8Array(pixels.length);
  straightenInto(straight, pixels, order, 0, pixels.length / 4);
  return straight;
}

/** The same for the pixels from `from` to `until`, written into `straight`. */
export function straightenInto(
  straight: Uint8Array,
  pixels: Uint8Array,
  order: ByteOrder,
  from: number,
  until: number,
): void {
  const { red, green, blue, alpha } = order;
  const words = new Uint32Array(pixels.buffer, pixels.byteOffset, pixels.length / 4);
  straight.fill(0, 4 * from, 4 * until);
  for (let pixel = from; pixel < until; pixel++) {
    if (words[pixel] === 0) continue;
    const at = pixel * 4;
    const a = pixels[at + alpha]!;
    // Storing truncates, so adding a half rounds to the nearest. Opaque pixels come out unchanged.
    const scale = 255 / a;
    straight[at] = pixels[at + red]! * scale + 0.5;
    straight[at + 1] = pixels[at + green]! * scale + 0.5;
    straight[at + 2] = pixels[at + blue]! * scale + 0.5;
    straight[at + 3] = a;
  }
}
