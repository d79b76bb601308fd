/**
 * Whether this machine's encoder writes pictures that we can continue without it. An x264 with an unusual configuration
 * may not; then all pictures are its own, the compatible way.
 */
import type { Codec } from '../codecs/codec.ts';
import { codecOf } from '../codecs/codecs.ts';
import type { Painter } from '../painters/painter.ts';
import { pictureBytes } from '../pixels/frame-source.ts';
import { kindOf } from './film-segments.ts';
import type { SegmentStore } from './segment-store.ts';
import type { PicturePlan } from './video-plan.ts';

export interface WorkablePlan {
  readonly picture: PicturePlan;
  /** What may surprise the user, a sentence each. */
  readonly notices: readonly string[];
}

/**
 * The plan as it can be carried out. One empty picture is compressed to find out: the answer is the same for all
 * pictures, so every machine that makes parts of a film, and every process, comes to the same result.
 */
export async function workablePlan(
  painter: Painter,
  { codec: name, key, compatible }: PicturePlan,
  store: Pick<SegmentStore, 'scratch'>,
  signal: AbortSignal | undefined,
): Promise<WorkablePlan> {
  const picture = { codec: name, key, compatible };
  const codec = codecOf(name, painter, kindOf(painter, picture));
  if (codec.canRepeat === undefined || codec.canRepeat(await configOf(codec, painter, store.scratch(), signal))) {
    return { picture, notices: [] };
  }
  return { picture: { ...picture, compatible: true }, notices: [switchedNotice] };
}

const switchedNotice =
  'the file is made as with --compatible, since this encoder writes its pictures in a way that cannot be continued without it';

async function configOf(
  codec: Codec,
  { width, height }: Painter,
  scratch: string,
  signal: AbortSignal | undefined,
): Promise<Uint8Array> {
  const bytes = codec.format === 'png' ? 0 : pictureBytes(codec.format, width, height);
  const pictures = [new Uint8Array(bytes)].values();
  return (await codec.encode({ pictures, count: 1, keys: [0], starts: [0], scratch, signal })).config;
}
