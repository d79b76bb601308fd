/**
 * Raw frames with times of their own, as a Matroska stream (RFC 9559, codec V_UNCOMPRESSED): a picture held for a
 * minute goes down the pipe once.
 *
 * One tick of the stream is a millisecond according to its header but represents one frame, so that times are whole
 * numbers; `timesOfFrames` converts them back to seconds.
 */
import type { Fraction } from '../../scene/fraction.ts';
import { element, idBytes, ids, letters, whole } from '../containers/ebml.ts';

/** The stream's beginning, for frames of that size in yuva420p. */
export function streamHead(width: number, height: number): Buffer {
  const head = element(
    ids.ebml,
    letters(ids.docType, 'matroska'),
    whole(ids.docTypeVersion, 4),
    whole(ids.docTypeReadVersion, 2),
  );
  const video = element(
    ids.video,
    whole(ids.pixelWidth, width),
    whole(ids.pixelHeight, height),
    element(ids.colourSpace, yuva420p),
  );
  const track = element(
    ids.trackEntry,
    whole(ids.trackNumber, 1),
    whole(ids.trackUid, 1),
    whole(ids.trackType, 1),
    letters(ids.codecId, 'V_UNCOMPRESSED'),
    video,
  );
  const info = element(ids.info, whole(ids.timestampScale, 1_000_000));
  return Buffer.concat([head, idBytes(ids.segment), unknownLength, info, element(ids.tracks, track)]);
}

/** `bytes` (yuva420p) as the picture from frame `frame` on. Frames come in ascending order. */
export function streamFrame(frame: number, bytes: Uint8Array): Buffer {
  return element(ids.cluster, whole(ids.timestamp, frame), element(ids.simpleBlock, keyframeOfTrackOne, bytes));
}

/** The filter after the stream's input: from ticks to times at `rate`, each at or just before its frame's. */
export function timesOfFrames(rate: Fraction): string {
  return `setpts='round(PTS*TB*1000)*${rate.denominator}/${rate.numerator}/TB'`;
}

/** The input options for the stream. */
export const streamOptions: readonly string[] = ['-f', 'matroska'];

/** A segment that is still being written: RFC 8794, 6.2. */
const unknownLength = Buffer.from('01ffffffffffffff', 'hex');

/** ffmpeg's code for planes of Y, Cb, Cr and alpha (libavcodec/raw.c): `Y4`, 11, 8 bits per sample. */
const yuva420p = Buffer.from([0x59, 0x34, 11, 8]);

/** Track 1, no time after the cluster's, "keyframe". */
const keyframeOfTrackOne = Buffer.from([0x81, 0, 0, 0x80]);
