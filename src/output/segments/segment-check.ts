/**
 * Segments checked with a decoder before they are kept: at each border the decoded picture must be the drawn one, and
 * not the one before or after; and a hold that is not encoded must show exactly the held picture.
 */
import { rm } from 'node:fs/promises';
import type { Codec, Encoded } from '../codecs/codec.ts';
import { type CodecName, codecs, firstContainer } from '../codecs/codecs.ts';
import { timescaleOf } from '../containers/timescale.ts';
import type { Sample } from '../containers/track.ts';
import { writeTrack } from '../containers/write-track.ts';
import { decode } from '../ffmpeg/ffmpeg.ts';
import { MachineFailure } from '../machine/machine-failure.ts';
import type { Painter } from '../painters/painter.ts';
import { canvasPixelFormat } from '../pixels/canvas.ts';
import { type PixelFormat, pictureBytes } from '../pixels/frame-source.ts';
import { type CoarsePicture, coarseOf, distanceOf, isNearerTo } from './coarse-picture.ts';
import { samplesOf } from './samples.ts';
import { packetPlaces } from './segment-file.ts';
import type { Segment } from './segments.ts';

/**
 * How much one block of 8 x 8 pixels, and a picture on average, may lose, in levels of 255; far above what they really
 * lose.
 */
const most = { block: 24, mean: 3 };

/** Frames of a hold that are checked: the keyframe, and some that follow it. */
const heldFrames = 4;

/** The pictures at and next to a segment's borders, by index in `picturesOf`, as drawn. */
export class Borders {
  readonly #wanted: ReadonlySet<number>;
  readonly #coarse = new Map<number, CoarsePicture>();
  readonly #format: PixelFormat;
  readonly #painter: Painter;

  constructor(segment: Segment, format: PixelFormat, painter: Painter) {
    const last = segment.moving.length - 1;
    this.#wanted = new Set([0, 1, last - 1, last, last + 1]);
    this.#format = format;
    this.#painter = painter;
  }

  see(place: number, bytes: Uint8Array): void {
    if (!this.#wanted.has(place)) return;
    this.#coarse.set(place, coarseOf(bytes, this.#format, this.#painter.width, this.#painter.height));
  }

  at(place: number): CoarsePicture | undefined {
    return this.#coarse.get(place);
  }
}

export interface Checked {
  readonly painter: Painter;
  readonly codec: Codec;
  readonly name: CodecName;
  readonly alpha: boolean;
  /** A scratch file: it may be written and is deleted. */
  readonly scratch: string;
  readonly signal: AbortSignal | undefined;
}

/** A segment as encoded, and as drawn; without `borders` it is not checked. */
export interface Look {
  readonly segment: Segment;
  readonly encoded: Encoded;
  readonly borders: Borders | undefined;
}

/** Checks some segments in one run of the decoder. Throws a `MachineFailure` if a picture is not the drawn one. */
export async function checkSegments(looks: readonly Look[], checked: Checked): Promise<void> {
  const { painter, codec, name, alpha, scratch, signal } = checked;
  const { holders, decoder } = codecs[name];
  const container = firstContainer(name);
  const { format } = codec;
  if (format === 'png') return; // The canvas's own bytes, not from an encoder.
  const excerpts = looks.map((look) => excerptOf(look, codec));
  // If each picture is independent, only the wanted ones are decoded.
  const alone = isIndependent(codec);
  const starts = running(excerpts.map((excerpt) => (alone ? excerpt.frames.length : excerpt.frameCount)));
  const track = {
    ...{ config: looks[0]?.encoded.config ?? new Uint8Array(), alpha, frameCount: starts.sum },
    ...{ width: painter.width, height: painter.height, rate: painter.rate },
    samples: function* (): Generator<Sample> {
      for (const { short, frames, look } of excerpts) {
        const { encoded } = look;
        const all = samplesOf(short, packetPlaces(encoded), codec, (at) => encoded.packets[at]!);
        if (alone) yield* [...all].filter((_, frame) => frames.includes(frame));
        else yield* all;
      }
    },
  };
  // By its time if a decoder may drop pictures; a .mov counts in fractions of a frame.
  const isFrame = (frame: number): string =>
    !codec.repeatIsDecoded ? `eq(pts,${frame * timescaleOf(painter.rate).each})` : `eq(n,${frame})`;
  const wanted = excerpts.flatMap(({ frames }, at) => frames.map((frame) => isFrame(starts.at[at]! + frame)));
  const select = alone ? [] : [`select='${wanted.join('+')}'`];
  try {
    await writeTrack(scratch, container, holders, track, signal);
    const seen: CoarsePicture[] = [];
    await decode(
      {
        file: scratch,
        decoder,
        filter: [...select, 'setpts=N/FRAME_RATE/TB', ...codec.asDrawn].join(','),
        pixelFormat: format === 'opaque' ? canvasPixelFormat : format,
        frameBytes: pictureBytes(format, painter.width, painter.height),
      },
      (bytes) => seen.push(coarseOf(bytes, format, painter.width, painter.height)),
      signal,
    );
    if (seen.length !== wanted.length) {
      throw new MachineFailure(`only ${seen.length} of the ${wanted.length} pictures checked can be decoded`);
    }
    let at = 0;
    for (const excerpt of excerpts) {
      judge(excerpt, seen.slice(at, at + excerpt.frames.length));
      at += excerpt.frames.length;
    }
  } finally {
    await rm(scratch, { force: true });
  }
}

/** The part of a segment that is decoded, and which of its frames are checked. */
interface Excerpt {
  readonly look: Look;
  readonly short: Segment;
  readonly frameCount: number;
  readonly frames: readonly number[];
}

function excerptOf(look: Look, codec: Codec): Excerpt {
  const { segment } = look;
  // If a decoder may output no picture for a packet that says "as before", none is checked.
  // If each picture is independent, a held one is the same bytes again.
  const checkedOfHold = !codec.repeatIsDecoded || isIndependent(codec) ? 1 : heldFrames;
  const held = segment.hold === undefined ? 0 : Math.min(segment.hold.count, checkedOfHold);
  const frameCount = segment.moving.length + held;
  const short = segment.hold === undefined ? segment : { ...segment, hold: { ...segment.hold, count: held } };
  const last = segment.moving.length - 1;
  const lastNew = codec.repeatIsDecoded ? last : segment.moving.indexOf(segment.moving[last] ?? 0);
  const frames = [...new Set([0, Math.max(0, lastNew), ...(held === 0 ? [] : [last + 1, frameCount - 1])])];
  return { look, short, frameCount, frames };
}

/** Whether each picture can be decoded independently. */
function isIndependent(codec: Codec): boolean {
  return codec.keyEvery === Number.POSITIVE_INFINITY;
}

/** Where each begins when they are put one after the other, and where they end. */
function running(lengths: readonly number[]): { readonly at: readonly number[]; readonly sum: number } {
  let sum = 0;
  const at = lengths.map((length) => {
    sum += length;
    return sum - length;
  });
  return { at, sum };
}

function judge({ look, short, frames }: Excerpt, seen: readonly CoarsePicture[]): void {
  const { borders, segment } = look;
  if (borders === undefined) return;
  const hold = segment.moving.length;
  frames.forEach((frame, index) => {
    // A hold is one picture, of any length.
    const place = short.hold !== undefined && frame > hold ? hold : frame;
    const own = borders.at(place);
    const picture = seen[index]!;
    if (own === undefined) return;
    const off = distanceOf(picture, own);
    const others = [borders.at(place - 1), borders.at(place + 1)];
    const isOwn = others.every((other) => other === undefined || isNearerTo(picture, own, other));
    // The encoder refines the pictures of its own group one after the other.
    const isHeld =
      place === frame || segment.holdPictures > 1 || distanceOf(picture, seen[frames.indexOf(hold)]!).most === 0;
    if (isOwn && isHeld && off.most <= most.block && off.mean <= most.mean) return;
    throw new MachineFailure(
      `the encoder's picture of frame ${segment.from + frame} is not the one that was drawn (it is off by ${off.mean.toFixed(2)} of 255, at most ${off.most.toFixed(0)})`,
    );
  });
}
