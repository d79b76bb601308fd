/**
 * Segments put one after the other in a container, without being encoded again.
 */
import { CannotHold, type Codec } from '../codecs/codec.ts';
import { writeMov } from '../containers/mov.ts';
import type { Track } from '../containers/track.ts';
import { writeWebm } from '../containers/webm.ts';
import type { Container } from '../target.ts';
import { type Sample, samplesOf } from './samples.ts';
import { PacketReader, type SegmentIndex } from './segment-file.ts';
import type { SegmentStore } from './segment-store.ts';
import type { Segment } from './segments.ts';

export type JoinedFilm = Omit<Track, 'config' | 'samples'> & { readonly container: Container };

/** Writes `file`. Throws `CannotHold` where the segments are not of one kind. */
export async function joinSegments(
  file: string,
  { container, ...film }: JoinedFilm,
  codec: Codec,
  segments: readonly Segment[],
  indices: readonly SegmentIndex[],
  store: SegmentStore,
  signal: AbortSignal | undefined,
): Promise<void> {
  const config = indices[0]?.config ?? new Uint8Array();
  if (indices.some((index) => Buffer.compare(index.config, config) !== 0)) {
    throw new CannotHold('the segments of the film cannot be joined');
  }
  const reader = new PacketReader();
  const track: Track = {
    ...film,
    config,
    samples: function* (): Generator<Sample> {
      for (let at = 0; at < segments.length; at++) {
        const [segment, index] = [segments[at]!, indices[at]!];
        const read = (place: number) => reader.read(store.fileOf(segment), index.packets[place]!);
        yield* samplesOf(segment, index, codec, read);
      }
    },
  };
  try {
    if (container === 'webm') await writeWebm(file, track, signal);
    else await writeMov(file, track, container, signal);
  } finally {
    reader.close();
  }
}
