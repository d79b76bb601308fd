/**
 * Segments put one after the other into a container, without re-encoding.
 */
import type { Codec } from '../codecs/codec.ts';
import { type CodecName, codecs } from '../codecs/codecs.ts';
import type { Container, Sample, Track } from '../containers/track.ts';
import { writeTrack } from '../containers/write-track.ts';
import { MachineFailure } from '../machine/machine-failure.ts';
import { samplesOf } from './samples.ts';
import { PacketReader, type SegmentIndex } from './segment-file.ts';
import type { SegmentStore } from './segment-store.ts';
import type { Segment } from './segments.ts';

export type JoinedFilm = Omit<Track, 'config' | 'samples'> & {
  readonly container: Container;
  readonly codec: CodecName;
};

/** Writes `file`. Throws a `MachineFailure` if the segments were not encoded the same way. */
export async function joinSegments(
  file: string,
  { container, codec: name, ...film }: JoinedFilm,
  codec: Codec,
  segments: readonly Segment[],
  indices: readonly SegmentIndex[],
  store: SegmentStore,
  signal: AbortSignal | undefined,
): Promise<void> {
  const config = indices[0]?.config ?? new Uint8Array();
  if (indices.some((index) => Buffer.compare(index.config, config) !== 0)) {
    throw new MachineFailure(
      'the encoder described its pictures in two ways within one film, so that they cannot be joined',
    );
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
    await writeTrack(file, container, codecs[name].holders, track, signal);
  } finally {
    reader.close();
  }
}
