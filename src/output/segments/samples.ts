/**
 * The frames of a film as a container stores them: for each one its packet, either encoded or meaning "as the previous
 * frame".
 */
import type { Codec } from '../codecs/codec.ts';
import type { Packet, Sample } from '../containers/track.ts';
import type { SegmentIndex } from './segment-file.ts';
import type { Segment } from './segments.ts';

/** The pictures of a segment that must be keyframes, by index in `picturesOf`. */
export function keysOf(segment: Segment, keyEvery: number): number[] {
  const keys: number[] = [];
  const last = segment.moving.length - 1;
  // Not the last one in motion: two keyframes in a row would have to be distinguished (H.264, idr_pic_id).
  for (let at = 0; at <= last; at += keyEvery) if (at === 0 || at < last) keys.push(at);
  if (segment.hold !== undefined) keys.push(segment.moving.length);
  return keys;
}

/** Whether a frame of a hold of `count` is a keyframe again; never the last (see above). */
export function isKeyAgain(frame: number, count: number, keyEvery: number): boolean {
  return frame % keyEvery === 0 && frame < count - 1;
}

/** The samples of one segment, in order, one for each frame. `read` returns its packet by index in `picturesOf`. */
export function* samplesOf(
  segment: Segment,
  index: SegmentIndex,
  codec: Codec,
  read: (place: number) => Packet,
): Generator<Sample> {
  const encoded = (place: number): Sample => {
    const { key, length, alphaLength } = index.packets[place]!;
    return { key, length, alphaLength, packet: () => read(place) };
  };
  for (let at = 0; at < segment.moving.length; at++) yield encoded(at);
  if (segment.hold === undefined) return;
  if (segment.holdPictures > 1) {
    yield* repeated(segment, encoded);
    return;
  }
  const key = encoded(segment.moving.length);
  let sinceKey = 0;
  for (let frame = 0; frame < segment.hold.count; frame++) {
    if (frame === 0 || isKeyAgain(frame, segment.hold.count, codec.keyEvery)) sinceKey = 0;
    const repeat = sinceKey === 0 ? undefined : codec.repeat(index.config, sinceKey);
    sinceKey += 1;
    if (repeat === undefined) yield key;
    else {
      yield {
        key: false,
        length: repeat.bytes.length,
        alphaLength: repeat.alpha?.length ?? 0,
        packet: () => repeat,
      };
    }
  }
}

/** A group of encoded pictures, repeated; the extra picture is used if the last group would be just a keyframe. */
function* repeated({ moving, hold, holdPictures }: Segment, encoded: (place: number) => Sample): Generator<Sample> {
  const group = holdPictures - 1;
  const count = hold?.count ?? 0;
  for (let frame = 0; frame < count; frame++) {
    const isAlone = frame > 0 && frame % group === 0 && frame === count - 1;
    yield encoded(moving.length + (isAlone ? group : frame % group));
  }
}
