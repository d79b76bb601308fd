/**
 * One film rendered on several machines: each makes its share of the segments as a file; `join-parts.ts` joins them.
 */
import { createHash } from 'node:crypto';
import { createReadStream } from 'node:fs';
import { stat } from 'node:fs/promises';
import { basename, dirname, extname, join } from 'node:path';
import { writeAtomically } from '../machine/atomic-write.ts';
import { type Progress, type ProgressMeter, progressMeter, type Work } from '../machine/progress-meter.ts';
import { holdsOf } from '../painters/holds.ts';
import type { Painter } from '../painters/painter.ts';
import { filmSegments, pictureOf, segmentsInto, withStore } from '../segments/film-segments.ts';
import type { SegmentCache } from '../segments/segment-cache.ts';
import { picturesOf, type Segment } from '../segments/segments.ts';
import { toolchainFingerprint } from '../segments/toolchain-fingerprint.ts';
import type { FramesPlan, PicturePlan, VideoPlan } from '../segments/video-plan.ts';
import { workablePlan } from '../segments/workable-plan.ts';
import { writeSound } from '../tracks/finish-video.ts';
import { encodersFor, requireEncoders } from '../tracks/require-encoders.ts';
import { type PartHead, writePart } from './part-file.ts';

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

export interface WrittenShare {
  /** An absolute path. */
  readonly file: string;
  /** How far this share has come. */
  readonly meter: ProgressMeter;
  /** What may surprise the user, a sentence each. */
  readonly notices: readonly string[];
}

/** Writes this share of the film that `plan` describes. */
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
): Promise<WrittenShare> {
  const { signal, cache } = options;
  const video = plan.container === 'frames' ? undefined : plan;
  const sound = share.number === 1 ? video?.sound : undefined;
  if (video !== undefined) await requireEncoders(encodersFor(video.codec, video.container, sound !== undefined));
  const file = partName(plan, share);
  return writeAtomically(file, (temp) =>
    withStore(`${temp}-segments`, async (store) => {
      const { picture, notices } = await workablePlan(painter, plan, store, signal);
      const { segments } = filmSegments(painter, picture);
      const own = shareOf(segments, share);
      const frames = own.reduce((sum, { frameCount }) => sum + frameCount, 0);
      const meter = progressMeter(frames, options.onProgress, undefined, options.onStart);
      const head = await headOf(painter, plan, picture, share, segments);
      await segmentsInto(store, own, painter, picture, { meter, signal, cache });
      const files = own.map((segment) => ({ name: segment.digest, file: store.fileOf(segment) }));
      if (sound !== undefined && video !== undefined) {
        const cut = store.scratch();
        await writeSound(sound, video.container, painter, cut, signal);
        files.push({ name: 'sound', file: cut });
      }
      await writePart(temp, head, files);
      signal?.throwIfAborted();
      return { file, meter, notices };
    }),
  );
}

/** The different segments whose middles lie in the share, measured by the number of pictures to be drawn. */
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
  picture: PicturePlan,
  { number, of }: Share,
  segments: readonly Segment[],
): Promise<Omit<PartHead, 'proofreelPart' | 'contents'>> {
  const { width, height, rate, frameCount, alpha } = pictureOf(painter, picture);
  const video = plan.container === 'frames' ? undefined : plan;
  const film = {
    ...{ container: plan.container, codec: plan.codec, width, height, alpha, frameCount },
    rate: [String(rate.numerator), String(rate.denominator)] as [string, string],
    chapters: (video?.chapters ?? []).map(({ name, from, until }) => ({ name, from, until })),
    ...(video?.timecode === undefined ? {} : { timecode: video.timecode }),
    compatible: picture.compatible ?? false,
    holdPictures: segments[0]?.holdPictures ?? 1,
    hasSound: video?.sound !== undefined,
    segments: segments.map(
      ({ digest, moving, hold }) => [digest, moving.length, hold?.count ?? 0] as [string, number, number],
    ),
    ...(plan.container === 'frames' ? { frames: { once: plan.holds, holds: numberedHolds(painter) } } : {}),
  };
  const sound =
    video?.sound === undefined
      ? null
      : [await digestOf(video.sound.file), String(video.sound.start.numerator), String(video.sound.start.denominator)];
  const digest = createHash('sha256')
    .update(JSON.stringify([film, sound, await toolchainFingerprint(plan.codec)]))
    .digest('hex');
  return { number, of, film: digest, ...film };
}

/** For each hold, its number of frames and the number of its picture. */
function numberedHolds(painter: Painter): [number, number][] {
  const numbers = new Map<string, number>();
  return holdsOf(painter).map(({ count, digest }) => {
    const number = numbers.get(digest) ?? numbers.size;
    numbers.set(digest, number);
    return [count, number];
  });
}

/** A digest of a file's length and its first megabytes: a sound may be hours of footage. */
async function digestOf(file: string): Promise<string> {
  const hash = createHash('sha256').update(String((await stat(file)).size));
  for await (const block of createReadStream(file, { end: 8_000_000 })) hash.update(block as Buffer);
  return hash.digest('hex');
}
