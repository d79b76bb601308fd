/**
 * The frames of a film as a container stores them: for each one its packet, whether it was encoded or stands for "as
 * the frame before".
 */
import type { Codec, Packet } from '../codecs/codec.ts';
import type { SegmentIndex } from './segment-file.ts';
import type { Segment } from './segments.ts';

/** One frame in its container. Lengths in bytes. */
export interface Sample {
  readonly key: boolean;
  readonly length: number;
  readonly alphaLength: number;
  /** Valid until the next is asked for. */
  packet(): Packet;
}

/** The pictures of a segment that must be key pictures, by their places in `picturesOf`. */
export function keysOf(segment: Segment, keyEvery: number): number[] {
  const keys: number[] = [];
  const last = segment.moving.length - 1;
  // Not the last one in motion: two key pictures in a row would have to be told apart (H.264, idr_pic_id).
  for (let at = 0; at <= last; at += keyEvery) if (at === 0 || at < last) keys.push(at);
  if (segment.still !== undefined) keys.push(segment.moving.length);
  return keys;
}

/** Frames of a still stretch at which a key picture stands again, of `count`; never the last alone (see above). */
export function isKeyAgain(frame: number, count: number, keyEvery: number): boolean {
  return frame % keyEvery === 0 && frame < count - 1;
}

/** The samples of one segment, in order, one for each frame. `read`: its packet of that place in `picturesOf`. */
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
  if (segment.still === undefined) return;
  if (segment.stillPictures > 1) {
    yield* repeated(segment, encoded);
    return;
  }
  const standing = encoded(segment.moving.length);
  let sinceKey = 0;
  for (let frame = 0; frame < segment.still.count; frame++) {
    if (frame === 0 || isKeyAgain(frame, segment.still.count, codec.keyEvery)) sinceKey = 0;
    const held = sinceKey === 0 ? undefined : codec.hold(index.config, sinceKey);
    sinceKey += 1;
    if (held === undefined) yield standing;
    else {
      yield {
        key: false,
        length: held.bytes.length,
        alphaLength: held.alpha?.length ?? 0,
        packet: () => held,
      };
    }
  }
}

/** A group of encoded pictures over and over; the one more comes where the last group would be a key picture alone. */
function* repeated({ moving, still, stillPictures }: Segment, encoded: (place: number) => Sample): Generator<Sample> {
  const group = stillPictures - 1;
  const count = still?.count ?? 0;
  for (let frame = 0; frame < count; frame++) {
    const isAlone = frame > 0 && frame % group === 0 && frame === count - 1;
    yield encoded(moving.length + (isAlone ? group : frame % group));
  }
}
