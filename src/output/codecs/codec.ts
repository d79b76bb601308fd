/**
 * What the engine needs to know of a way to compress pictures: a record for each, and what becomes of it for one film.
 */
import type { Fraction } from '../../scene/fraction.ts';
import type { Holders, Packet } from '../containers/track.ts';
import type { PixelFormat } from '../pixels/frame-source.ts';

/** All that is to be said of a way to compress pictures; `codecs.ts` has the list. */
export interface CodecRecord {
  /** As it is called in a sentence: `AV1`. */
  readonly title: string;
  /** The option by which it is asked for; undefined where the name's ending asks for it. */
  readonly option: string | undefined;
  /** ffmpeg's encoder; undefined where we compress the pictures ourselves. */
  readonly encoder: string | undefined;
  /** ffmpeg's decoder for looking at what came out; undefined: the one that it takes by itself. */
  readonly decoder: string | undefined;
  /** The containers that hold it. Its pictures are looked at in the first of them. */
  readonly holders: Holders;
  readonly carriesAlpha: boolean;
  /** Whether it needs an even width and height. */
  readonly evenSides: boolean;
  /** The codec for one film. */
  make(film: CodecFilm): Codec;
}

/** What a codec has to know of a film. */
export interface CodecFilm {
  /** In pixels. */
  readonly width: number;
  readonly height: number;
  readonly rate: Fraction;
  /** No pixel lets anything through. */
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
  /** How pictures are handed to `encode`. */
  readonly format: PixelFormat | 'png';
  /** Everything that decides the bytes of the packets besides the pictures. */
  readonly recipe: string;
  /**
   * How many times a picture that is held is encoded: once, and then repeated; or a group from one keyframe to the next,
   * which is repeated, and one more for where the last group would be a keyframe alone.
   */
  readonly holdPictures: number;
  /** A keyframe at least every so many frames. */
  readonly keyEvery: number;
  /** What one picture takes in motion at most, in bytes for each pixel: for reckoning with memory. */
  readonly bytesPerPixel: number;
  /** Whether `encode` takes several segments at once. */
  readonly takesSeveral: boolean;
  /** Roughly, for a picture drawn and compressed on one core: to foretell how long a render takes. Set by hand. */
  readonly secondsPerMegapixel: number;
  /** Whether every decoder gives a picture for the packet that says "as the frame before". */
  readonly repeatIsDecoded: boolean;
  /** ffmpeg's filters from a decoded picture to one as it was handed to `encode`. */
  readonly asDrawn: readonly string[];
  encode(work: Work): Promise<Encoded>;
  /**
   * Whether this encoder's pictures can be followed by `repeat`, as `config` of any of them says; undefined where they
   * always can. Where they cannot, the film is compressed the compatible way.
   */
  readonly canRepeat?: (config: Uint8Array) => boolean;
  /**
   * The packet that says "as the frame before", `number` frames after the last keyframe (1 for the first); undefined
   * where the keyframe itself is repeated.
   */
  repeat(config: Uint8Array, number: number): Packet | undefined;
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
