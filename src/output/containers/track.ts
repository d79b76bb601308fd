/**
 * What a container has to know about a film's picture track.
 */
import type { Fraction } from '../../scene/fraction.ts';

export const containers = ['mp4', 'mov', 'webm'] as const;

export type Container = (typeof containers)[number];

/** One compressed picture. */
export interface Packet {
  readonly bytes: Uint8Array;
  /** Whether it can be decoded without any other. */
  readonly key: boolean;
  /** Its transparency, if that is compressed separately (VP9). */
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
  /** The frames in order; iterated twice, since a file begins with a table of what follows. */
  readonly samples: () => Iterable<Sample>;
}

/** How a .mp4 or .mov names a picture format. */
export interface MovEntry {
  /** Four letters, the sample entry: `avc1`. */
  readonly entry: string;
  /** As words, at most 31 characters. */
  readonly compressor: string;
  /** The box that contains `config` (`avcC`); undefined if a decoder needs none. */
  readonly configBox: string | undefined;
  /** Whether it carries luma and colour differences. The others carry plain red, green and blue. */
  readonly isLuma: boolean;
}

/** How a .webm names a picture format. */
export interface WebmEntry {
  /** `V_VP9`. */
  readonly codecId: string;
  /** Whether `config` is written as the track's CodecPrivate. */
  readonly hasConfig: boolean;
}

/** The containers that can hold a picture format, and what each calls it. */
export interface Holders {
  readonly mp4?: MovEntry;
  readonly mov?: MovEntry;
  readonly webm?: WebmEntry;
}
