/**
 * One picture in QuickTime Animation compression: a header that says which lines follow, then each line as codes of one
 * byte. 1 to 127: that many pixels follow; -2 to -128: the next pixel that many times; 0: the next byte minus one is a
 * number of pixels to skip; -1: the end of the line.
 */

export interface PictureShape {
  readonly width: number;
  readonly height: number;
  /** Which of a pixel's four bytes are written, in order. */
  readonly order: readonly number[];
}

const mostCopied = 127;
const mostRepeated = 128;
const mostSkipped = 254;
const endOfLine = 255;

/** `pixels` and `before`: four bytes each, rows from the top; without `before` the whole picture is written. */
export function animationPicture(
  pixels: Uint32Array,
  before: Uint32Array | undefined,
  shape: PictureShape,
): Uint8Array {
  const { width, height } = shape;
  const isSame = before === undefined ? () => false : sameLines(pixels, before, width);
  let first = 0;
  while (first < height && isSame(first)) first += 1;
  let until = height;
  while (until > first && isSame(until - 1)) until -= 1;
  if (first >= until) return Uint8Array.of(0, 0, 0, 7, 0, 0, 0);
  const out = new Output(15 + (until - first) * (width * (shape.order.length + 1) + 8));
  const isWhole = first === 0 && until === height;
  out.short(0); // The length, which is known only at the end.
  out.short(0);
  out.short(isWhole ? 0 : 8);
  if (!isWhole) for (const value of [first, 0, until - first, 0]) out.short(value);
  const bytes = new Uint8Array(pixels.buffer, pixels.byteOffset, pixels.byteLength);
  for (let line = first; line < until; line++) {
    if (isSame(line)) out.pair(1, endOfLine);
    else writeLine(out, pixels, bytes, before, line * width, width, shape.order);
  }
  out.byte(0); // No more lines.
  return out.done();
}

/** Compares memory, which is many times as fast as pixel by pixel. */
function sameLines(pixels: Uint32Array, before: Uint32Array, width: number): (line: number) => boolean {
  const [now, then] = [bufferOf(pixels), bufferOf(before)];
  return (line) => {
    const [from, until] = [line * width * 4, (line + 1) * width * 4];
    return now.compare(then, from, until, from, until) === 0;
  };
}

function writeLine(
  out: Output,
  pixels: Uint32Array,
  bytes: Uint8Array,
  before: Uint32Array | undefined,
  start: number,
  width: number,
  order: readonly number[],
): void {
  const end = start + width;
  const skippable = (from: number): number => {
    let at = from;
    if (before !== undefined) while (at < end && pixels[at] === before[at]) at += 1;
    return at - from;
  };
  const repeats = (from: number): number => {
    const most = Math.min(end, from + mostRepeated);
    let at = from + 1;
    while (at < most && pixels[at] === pixels[from]) at += 1;
    return at - from;
  };
  const pixel = (at: number): void => {
    for (const part of order) out.byte(bytes[4 * at + part]!);
  };
  const first = skippable(start);
  let at = start + first;
  out.byte(Math.min(first, mostSkipped) + 1);
  for (let rest = first - mostSkipped; rest > 0; rest -= mostSkipped) out.pair(0, Math.min(rest, mostSkipped) + 1);
  while (at < end) {
    const skipped = skippable(at);
    if (at + skipped === end) break;
    if (skipped >= 2) {
      for (let rest = skipped; rest > 0; rest -= mostSkipped) out.pair(0, Math.min(rest, mostSkipped) + 1);
      at += skipped;
      continue;
    }
    const repeated = repeats(at);
    if (repeated >= 2) {
      out.byte(256 - repeated);
      pixel(at);
      at += repeated;
      continue;
    }
    let until = at + 1;
    while (until < end && until - at < mostCopied && repeats(until) < 2 && skippable(until) < 2) until += 1;
    out.byte(until - at);
    for (; at < until; at++) pixel(at);
  }
  out.byte(endOfLine);
}

function bufferOf(words: Uint32Array): Buffer {
  return Buffer.from(words.buffer, words.byteOffset, words.byteLength);
}

/** Where a picture is assembled before its length is known: one buffer for all, as large as the pixels. */
let room = new Uint8Array(0);

class Output {
  readonly #bytes: Uint8Array;
  #at = 0;

  constructor(most: number) {
    if (room.length < most) room = new Uint8Array(most);
    this.#bytes = room;
  }

  byte(value: number): void {
    this.#bytes[this.#at++] = value;
  }

  pair(first: number, second: number): void {
    this.#bytes[this.#at++] = first;
    this.#bytes[this.#at++] = second;
  }

  short(value: number): void {
    this.pair(value >> 8, value & 255);
  }

  done(): Uint8Array {
    new DataView(this.#bytes.buffer).setUint32(0, this.#at);
    return this.#bytes.slice(0, this.#at);
  }
}
