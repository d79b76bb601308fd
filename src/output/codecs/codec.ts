/**
 * What the engine needs to know about a way to compress pictures: a record for each, and the codec made from it for one
 * film.
 */
import type { Fraction } from '../../scene/fraction.ts';
import type { Holders, Packet } from '../containers/track.ts';
import type { PixelFormat } from '../pixels/frame-source.ts';

/** Everything about a way to compress pictures; `codecs.ts` has the list. */
export interface CodecRecord {
  /** As it is called in a sentence: `AV1`. */
  readonly title: string;
  /** The option that selects it; undefined if the file name's extension does. */
  readonly option: string | undefined;
  /** ffmpeg's encoder; undefined if we compress the pictures ourselves. */
  readonly encoder: string | undefined;
  /** ffmpeg's decoder for checking the output; undefined: ffmpeg's default. */
  readonly decoder: string | undefined;
  /** The containers that can hold it. Its pictures are checked in the first of them. */
  readonly holders: Holders;
  readonly carriesAlpha: boolean;
  /** Whether it needs an even width and height. */
  readonly evenSides: boolean;
  /** The codec for one film. */
  make(film: CodecFilm): Codec;
}

/** What a codec has to know about a film. */
export interface CodecFilm {
  /** In pixels. */
  readonly width: number;
  readonly height: number;
  readonly rate: Fraction;
  /** Every pixel is opaque. */
  readonly opaque: boolean;
  /** An .mp4 in which all pictures are the encoder's own. */
  readonly compatible: boolean;
}

/** Pictures as they come out of the encoder, one packet each. */
export interface Encoded {
  /** What a decoder must know before the first packet; the same for all segments of a film. */
  readonly config: Uint8Array;
  readonly packets: readonly Packet[];
}

/**
 * Pictures to be compressed, in order; formats of four bytes per pixel are aligned to four. A picture stays valid until
 * the second one after it is requested.
 */
export interface Work {
  readonly pictures: Iterator<Uint8Array>;
  readonly count: number;
  /** The ones that must not depend on any other, in order; the first is always among them. */
  readonly keys: readonly number[];
  /** The keys with which a segment begins: its packets come out as if it were compressed separately. */
  readonly starts: readonly number[];
  /** A scratch file: it may be written and is deleted. */
  readonly scratch: string;
  readonly signal: AbortSignal | undefined;
}

export interface Codec {
  /** How pictures are passed to `encode`. */
  readonly format: PixelFormat | 'png';
  /** Everything apart from the pictures that decides the bytes of the packets. */
  readonly recipe: string;
  /**
   * How many times a held picture is encoded: once, and then repeated; or as a group from one keyframe to the next,
   * which is repeated, plus one more for when the last group would be just a keyframe.
   */
  readonly holdPictures: number;
  /** The most frames from one keyframe to the next. */
  readonly keyEvery: number;
  /** The most that one picture takes in motion, in bytes per pixel: for estimating memory. */
  readonly bytesPerPixel: number;
  /** Whether `encode` takes several segments in one call. */
  readonly takesSeveral: boolean;
  /** Roughly, for a picture drawn and compressed on one core: for estimating how long a render takes. Set by hand. */
  readonly secondsPerMegapixel: number;
  /** Whether every decoder outputs a picture for the packet that says "as the previous frame". */
  readonly repeatIsDecoded: boolean;
  /** ffmpeg's filters from a decoded picture back to the form passed to `encode`. */
  readonly asDrawn: readonly string[];
  encode(work: Work): Promise<Encoded>;
  /**
   * Whether this encoder's pictures can be followed by `repeat`, according to the `config` of any of them; undefined if
   * they always can. If they cannot, the film is compressed the compatible way.
   */
  readonly canRepeat?: (config: Uint8Array) => boolean;
  /**
   * The packet that says "as the previous frame", `number` frames after the last keyframe (1 for the first); undefined
   * if the keyframe itself is repeated.
   */
  repeat(config: Uint8Array, number: number): Packet | undefined;
}

/** How many pictures may be compressed in one run, which limits the memory used. */
export function mostPictures({ bytesPerPixel }: Codec, width: number, height: number): number {
  return Math.max(16, Math.min(240, Math.floor((64 * 1024 * 1024) / (bytesPerPixel * width * height))));
}

/** Width and height in pixels. */
export interface Size {
  readonly width: number;
  readonly height: number;
}

/**
 * With larger frames, one segment is made at a time, by one process and one ffmpeg: at 3840x2160 these take 350 and 150
 * MB, and a render must stay below 600.
 */
export function isLarge({ width, height }: Size): boolean {
  return width * height > 2560 * 1440;
}
