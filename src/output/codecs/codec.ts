/**
 * What the engine needs to know of a way to compress pictures.
 */
import type { PixelFormat } from '../pixels/frame-source.ts';

/** One compressed picture. */
export interface Packet {
  readonly bytes: Uint8Array;
  /** Whether it can be decoded without any other. */
  readonly key: boolean;
  /** Its transparency, where that is compressed apart (VP9). */
  readonly alpha?: Uint8Array | undefined;
}

/** Pictures as they come out of the encoder, one packet each. */
export interface Encoded {
  /** What a decoder must know before the first packet; the same for all segments of a film. */
  readonly config: Uint8Array;
  readonly packets: readonly Packet[];
}

/** Pictures to be compressed, in order; four bytes a pixel lie at a multiple of four. A picture is good until the second after it is asked for. */
export interface Work {
  readonly pictures: Iterator<Uint8Array>;
  readonly count: number;
  /** Of these the ones that must not lean on any other, in order; the first is always among them. */
  readonly keys: readonly number[];
  /** Of the keys those with which a segment begins: its packets come out as if it were compressed alone. */
  readonly starts: readonly number[];
  /** A file that may be written and is thrown away. */
  readonly scratch: string;
  readonly signal: AbortSignal | undefined;
}

export interface Codec {
  /** ffmpeg's encoder; undefined where we compress the pictures ourselves. */
  readonly encoder: string | undefined;
  /** How pictures are handed to `encode`. */
  readonly format: PixelFormat | 'png';
  /** Everything that decides the bytes of the packets besides the pictures. */
  readonly recipe: string;
  /**
   * How many times a picture that stands is encoded: once, and then held; or a group from one key picture to the next,
   * which is repeated, and one more for where the last group would be a key picture alone.
   */
  readonly stillPictures: number;
  /** A key picture at least every so many frames. */
  readonly keyEvery: number;
  /** What one picture takes in motion at most, in bytes for each pixel: for reckoning with memory. */
  readonly bytesPerPixel: number;
  /** Whether `encode` takes several segments at once. */
  readonly takesSeveral: boolean;
  /** Roughly, for a picture drawn and compressed on one core: to foretell how long a render takes. Set by hand. */
  readonly secondsPerMegapixel: number;
  encode(work: Work): Promise<Encoded>;
  /**
   * The packet that says "as the frame before", `number` frames after the last key picture (1 for the first);
   * undefined where the key picture itself is repeated. Throws `CannotHold` where this encoder's pictures cannot be held.
   */
  hold(config: Uint8Array, number: number): Packet | undefined;
}

/** How many pictures may be compressed at once: what is held in memory follows from it. */
export function mostPictures({ bytesPerPixel }: Codec, width: number, height: number): number {
  return Math.max(16, Math.min(240, Math.floor((64 * 1024 * 1024) / (bytesPerPixel * width * height))));
}

/** Width and height in pixels. */
export interface Size {
  readonly width: number;
  readonly height: number;
}

/**
 * Of larger frames one segment is made at a time, by one process and one ffmpeg: at 3840x2160 they take 350 and 150 MB,
 * and a render is to stay below 600.
 */
export function isLarge({ width, height }: Size): boolean {
  return width * height > 2560 * 1440;
}

/** What an encoder made cannot be continued without it: the film is then encoded frame by frame. */
export class CannotHold extends Error {}
