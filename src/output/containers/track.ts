/**
 * What a container has to know of a film's picture track.
 */
import type { Fraction } from '../../scene/fraction.ts';

export const containers = ['mp4', 'mov', 'webm'] as const;

export type Container = (typeof containers)[number];

/** One compressed picture. */
export interface Packet {
  readonly bytes: Uint8Array;
  /** Whether it can be decoded without any other. */
  readonly key: boolean;
  /** Its transparency, where that is compressed apart (VP9). */
  readonly alpha?: Uint8Array | undefined;
}

/** One frame in its container. Lengths in bytes. */
export interface Sample {
  readonly key: boolean;
  readonly length: number;
  readonly alphaLength: number;
  /** Valid until the next is asked for. */
  packet(): Packet;
}

export interface Track {
  /** What a decoder must know before the first packet. */
  readonly config: Uint8Array;
  readonly width: number;
  readonly height: number;
  readonly rate: Fraction;
  readonly alpha: boolean;
  readonly frameCount: number;
  /** The frames in order; asked for twice, since a file begins with a table of what follows. */
  readonly samples: () => Iterable<Sample>;
}

/** How a .mp4 or .mov names a kind of pictures. */
export interface MovEntry {
  /** Four letters, the sample entry: `avc1`. */
  readonly entry: string;
  /** In words, at most 31 letters. */
  readonly compressor: string;
  /** The box that holds `config` (`avcC`); undefined where a decoder need know nothing. */
  readonly configBox: string | undefined;
  /** Whether it carries luma and colour differences. The others carry red, green and blue as they are. */
  readonly isLuma: boolean;
}

/** How a .webm names a kind of pictures. */
export interface WebmEntry {
  /** `V_VP9`. */
  readonly codecId: string;
  /** Whether `config` is written as the track's CodecPrivate. */
  readonly hasConfig: boolean;
}

/** The containers that can hold a kind of pictures, and what each calls it. */
export interface Holders {
  readonly mp4?: MovEntry;
  readonly mov?: MovEntry;
  readonly webm?: WebmEntry;
}
