/**
 * What a container has to know of a film's picture track.
 */
import type { Fraction } from '../../scene/fraction.ts';
import type { Sample } from '../segments/samples.ts';

export type TrackCodec = 'h264' | 'prores' | 'qtrle' | 'png' | 'vp9';

export interface Track {
  readonly codec: TrackCodec;
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
