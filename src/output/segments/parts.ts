/**
 * One film rendered on several machines: each makes its share of the segments as a file; `join-parts.ts` joins them.
 */
import { createHash } from 'node:crypto';
import { createReadStream } from 'node:fs';
import { stat } from 'node:fs/promises';
import { basename, dirname, extname, join } from 'node:path';
import { codecOf } from '../codecs/codecs.ts';
import { requireEncoders } from '../ffmpeg.ts';
import { writeSound } from '../finish-video.ts';
import type { Painter } from '../painters/painter.ts';
import { type Progress, progressMeter, type Work } from '../progress.ts';
import { sounds } from '../sound.ts';
import type { FramesPlan, VideoPlan } from '../video-plan.ts';
import { writeWholeFile } from '../whole-file.ts';
import { makerOf } from './maker.ts';
import { type PartHead, writePart } from './part-file.ts';
import type { SegmentCache } from './segment-cache.ts';
import { filmSegments, kindOf, pictureOf, withSegments } from './segment-video.ts';
import { picturesOf, type Segment } from './segments.ts';
import { stretchesOf } from './stretches.ts';

/** `number` of `of`, both from 1. */
export interface Share {
  readonly number: number;
  readonly of: number;
}

/** `lesson.mp4` as `lesson-2-of-8.part`; numbers have as many digits as the last, so that they sort. */
export function partName(
  { file, container }: Pick<VideoPlan | FramesPlan, 'file' | 'container'>,
  { number, of }: Share,
) {
  const ending = container === 'frames' ? '' : extname(file);
  const digits = String(of).length;
  return join(dirname(file), `${basename(file, ending)}-${String(number).padStart(digits, '0')}-of-${of}.part`);
}

/** Writes the share of the film that `plan` would be the whole of. */
export async function writeShare(
  painter: Painter,
  plan: VideoPlan | FramesPlan,
  share: Share,
  options: {
    readonly onStart: ((work: Work) => void) | undefined;
    readonly onProgress: ((progress: Progress) => void) | undefined;
    readonly signal: AbortSignal | undefined;
    readonly cache: SegmentCache | undefined;
  },
) {
  const { signal } = options;
  const codec = codecOf(plan.codec, painter, kindOf(painter, plan));
  const sound = plan.container !== 'frames' && share.number === 1 ? plan.sound : undefined;
  if (plan.container !== 'frames')
    await requireEncoders([
      ...(codec.encoder === undefined ? [] : [codec.encoder]),
      ...(sound === undefined ? [] : [sounds[plan.container].encoder]),
    ]);
  const segments = filmSegments(painter, codec, plan.key);
  const own = shareOf(segments, share);
  const frames = own.reduce((sum, { frameCount }) => sum + frameCount, 0);
  const meter = progressMeter(frames, options.onProgress, undefined, options.onStart);
  const file = partName(plan, share);
  const head = await headOf(painter, plan, share, segments);
  await writeWholeFile(file, async (part) => {
    await withSegments(
      `${part}-segments`,
      own,
      painter,
      plan,
      { meter, signal, cache: options.cache },
      async (store) => {
        const files = own.map((segment) => ({ name: segment.digest, file: store.fileOf(segment) }));
        if (sound !== undefined && plan.container !== 'frames') {
          const cut = store.scratch();
          await writeSound(sound, plan.container, painter, cut, signal);
          files.push({ name: 'sound', file: cut });
        }
        await writePart(part, head, files);
        signal?.throwIfAborted();
      },
    );
  });
  return { file, meter };
}

/** The different segments whose middles lie in the share, by the number of pictures to be drawn. */
export function shareOf(segments: readonly Segment[], { number, of }: Share): readonly Segment[] {
  const different = [...new Map(segments.map((segment) => [segment.digest, segment])).values()];
  const costs = different.map((segment) => picturesOf(segment).length);
  const all = costs.reduce((sum, cost) => sum + cost, 0);
  let before = 0;
  return different.filter((_, index) => {
    const middle = before + costs[index]! / 2;
    before += costs[index]!;
    return Math.min(of, Math.floor((middle * of) / all) + 1) === number;
  });
}

async function headOf(
  painter: Painter,
  plan: VideoPlan | FramesPlan,
  { number, of }: Share,
  segments: readonly Segment[],
): Promise<Omit<PartHead, 'proofreelPart' | 'holds'>> {
  const { width, height, rate, frameCount, alpha } = pictureOf(painter, plan);
  const video = plan.container === 'frames' ? undefined : plan;
  const film = {
    ...{ container: plan.container, codec: plan.codec, width, height, alpha, frameCount },
    rate: [String(rate.numerator), String(rate.denominator)] as [string, string],
    chapters: (video?.chapters ?? []).map(({ name, from, until }) => ({ name, from, until })),
    ...(video?.timecode === undefined ? {} : { timecode: video.timecode }),
    compatible: video?.compatible ?? false,
    stillPictures: segments[0]?.stillPictures ?? 1,
    hasSound: video?.sound !== undefined,
    segments: segments.map(
      ({ digest, moving, still }) => [digest, moving.length, still?.count ?? 0] as [string, number, number],
    ),
    ...(plan.container === 'frames' ? { frames: { holds: plan.holds, stretches: numberedStretches(painter) } } : {}),
  };
  const sound =
    video?.sound === undefined
      ? null
      : [await digestOf(video.sound.file), String(video.sound.start.numerator), String(video.sound.start.denominator)];
  const digest = createHash('sha256')
    .update(JSON.stringify([film, sound, await makerOf(plan.codec)]))
    .digest('hex');
  return { number, of, film: digest, ...film };
}

/** The frames of each stretch, and the number of its picture. */
function numberedStretches(painter: Painter): [number, number][] {
  const numbers = new Map<string, number>();
  return stretchesOf(painter).map(({ count, digest }) => {
    const number = numbers.get(digest) ?? numbers.size;
    numbers.set(digest, number);
    return [count, number];
  });
}

/** Of a file's length and its first megabytes: a sound may be that of hours of footage. */
async function digestOf(file: string): Promise<string> {
  const hash = createHash('sha256').update(String((await stat(file)).size));
  for await (const block of createReadStream(file, { end: 8_000_000 })) hash.update(block as Buffer);
  return hash.digest('hex');
}
