/**
 * A .webm with one picture track (Matroska, RFC 9559; WebM container guidelines). Its times are whole milliseconds.
 */
import { type Fraction, fraction, multiply, nearest } from '../../scene/fraction.ts';
import { element, float, idBytes, ids, lengthBytes, letters, whole } from './ebml.ts';
import type { Sample, Track, WebmEntry } from './track.ts';
import { writeStream } from './write-stream.ts';

/** Some frames from a keyframe on; a block's time can be up to 32 s after its cluster's. */
interface Cluster {
  readonly time: number;
  readonly from: number;
  until: number;
  /** Bytes of its content. */
  length: number;
}

export async function writeWebm(
  file: string,
  track: Track,
  entry: WebmEntry,
  signal: AbortSignal | undefined,
): Promise<void> {
  const clusters = clustersOf(track);
  const head = headOf();
  const lengths = clusters.map(({ length }) => idBytes(ids.cluster).length + lengthBytes(length).length + length);
  const [info, tracks] = [infoOf(track), tracksOf(track, entry)];
  // The seek head and the cues have the same length whatever their values.
  const before = (start: number): readonly Buffer[] => {
    const cuesAt = seekHeadOf(0, 0, 0).length + info.length + tracks.length;
    const infoAt = cuesAt - info.length - tracks.length;
    return [seekHeadOf(infoAt, infoAt + info.length, cuesAt), info, tracks, cuesOf(clusters, lengths, start)];
  };
  const size = (parts: readonly Uint8Array[]): number => parts.reduce((sum, part) => sum + part.length, 0);
  const tables = before(size(before(0)));
  const all = size(tables) + lengths.reduce((sum, length) => sum + length, 0);
  const start = Buffer.concat([head, idBytes(ids.segment), lengthBytes(all), ...tables]);
  await writeStream(file, parts(start, track, clusters), signal);
}

function* parts(start: Uint8Array, track: Track, clusters: readonly Cluster[]): Generator<Uint8Array> {
  yield start;
  const samples = track.samples()[Symbol.iterator]();
  for (const cluster of clusters) {
    yield Buffer.concat([idBytes(ids.cluster), lengthBytes(cluster.length), whole(ids.timestamp, cluster.time, 8)]);
    for (let frame = cluster.from; frame < cluster.until; frame++) {
      const next = samples.next();
      if (next.done === true) return;
      yield blockOf(next.value, millisecond(frame, track.rate) - cluster.time);
    }
  }
}

function clustersOf({ samples, rate }: Track): Cluster[] {
  const clusters: Cluster[] = [];
  let frame = 0;
  for (const sample of samples()) {
    const time = millisecond(frame, rate);
    const last = clusters.at(-1);
    const isOver = last === undefined || time - last.time > 30_000 || (sample.key && time - last.time > 1_000);
    if (isOver) clusters.push({ time, from: frame, until: frame, length: whole(ids.timestamp, time, 8).length });
    const cluster = clusters.at(-1)!;
    cluster.length += blockLength(sample);
    cluster.until = ++frame;
  }
  return clusters;
}

/** The time of a frame, to the nearest millisecond. */
function millisecond(frame: number, rate: Fraction): number {
  return Number(nearest(multiply(fraction(frame), fraction(1000n * rate.denominator, rate.numerator))));
}

function blockOf(sample: Sample, time: number): Buffer {
  const { bytes, alpha, key } = sample.packet();
  const head = Buffer.of(0x81, (time >> 8) & 255, time & 255, alpha === undefined && key ? 0x80 : 0);
  if (alpha === undefined) return element(ids.simpleBlock, head, bytes);
  return element(
    ids.blockGroup,
    element(ids.block, head, bytes),
    element(ids.blockAdditions, element(ids.blockMore, whole(ids.blockAddId, 1), element(ids.blockAdditional, alpha))),
    // This does not say where the previous frame is, only that it is needed.
    ...(key ? [] : [element(ids.referenceBlock, Buffer.of(0xff))]),
  );
}

function blockLength({ length, alphaLength, key }: Sample): number {
  const around = (content: number, id: number): number => idBytes(id).length + lengthBytes(content).length + content;
  if (alphaLength === 0) return around(4 + length, ids.simpleBlock);
  const more = around(around(1, ids.blockAddId) + around(alphaLength, ids.blockAdditional), ids.blockMore);
  const group =
    around(4 + length, ids.block) + around(more, ids.blockAdditions) + (key ? 0 : around(1, ids.referenceBlock));
  return around(group, ids.blockGroup);
}

function headOf(): Buffer {
  return element(
    ids.ebml,
    letters(ids.docType, 'webm'),
    whole(ids.docTypeVersion, 4),
    whole(ids.docTypeReadVersion, 2),
  );
}

function infoOf({ frameCount, rate }: Track): Buffer {
  return element(
    ids.info,
    whole(ids.timestampScale, 1_000_000),
    letters(ids.muxingApp, 'proofreel'),
    letters(ids.writingApp, 'proofreel'),
    float(ids.duration, millisecond(frameCount, rate)),
  );
}

function tracksOf({ width, height, rate, alpha, config }: Track, { codecId, hasConfig }: WebmEntry): Buffer {
  const nanoseconds = Number(nearest(fraction(1_000_000_000n * rate.denominator, rate.numerator)));
  // Ids by RFC 9559 and ITU-T H.273: BT.709 in limited range.
  const colour = element(ids.colour, ...[ids.matrix, ids.transfer, ids.primaries, ids.range].map((id) => whole(id, 1)));
  return element(
    ids.tracks,
    element(
      ids.trackEntry,
      whole(ids.trackNumber, 1),
      whole(ids.trackUid, 1),
      whole(ids.trackType, 1),
      whole(ids.flagLacing, 0),
      letters(ids.codecId, codecId),
      ...(hasConfig ? [element(ids.codecPrivate, config)] : []),
      whole(ids.defaultDuration, nanoseconds),
      ...(alpha ? [whole(ids.maxBlockAdditionId, 1)] : []),
      element(
        ids.video,
        whole(ids.pixelWidth, width),
        whole(ids.pixelHeight, height),
        whole(ids.flagInterlaced, 2),
        ...(alpha ? [whole(ids.alphaMode, 1)] : []),
        colour,
      ),
    ),
  );
}

function seekHeadOf(info: number, tracks: number, cues: number): Buffer {
  const places: readonly (readonly [number, number])[] = [
    [ids.info, info],
    [ids.tracks, tracks],
    [ids.cues, cues],
  ];
  return element(
    ids.seekHead,
    ...places.map(([id, at]) => element(ids.seek, element(ids.seekId, idBytes(id)), whole(ids.seekPosition, at, 8))),
  );
}

/** `start`: the position of the first cluster, from the beginning of the segment's content. */
function cuesOf(clusters: readonly Cluster[], lengths: readonly number[], start: number): Buffer {
  let at = start;
  const points = clusters.map(({ time }, index) => {
    const point = element(
      ids.cuePoint,
      whole(ids.cueTime, time, 8),
      element(ids.cueTrackPositions, whole(ids.cueTrack, 1), whole(ids.cueClusterPosition, at, 8)),
    );
    at += lengths[index]!;
    return point;
  });
  return element(ids.cues, ...points);
}
