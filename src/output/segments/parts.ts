/**
 * One film rendered on several machines: each makes its share of the segments, and one joins them, without the scene
 * and without encoding anything.
 */
import { createHash } from 'node:crypto';
import { createReadStream, existsSync } from 'node:fs';
import { mkdir, rm, stat } from 'node:fs/promises';
import { basename, dirname, extname, join, resolve } from 'node:path';
import { fraction } from '../../scene/fraction.ts';
import { frameAt } from '../../timeline/film.ts';
import { codecOf } from '../codecs/codecs.ts';
import { requireEncoders } from '../ffmpeg.ts';
import { finishVideo, isFinished, writeSound } from '../finish-video.ts';
import { MachineFailure } from '../machine-failure.ts';
import type { Painter } from '../painters/painter.ts';
import { type Progress, progressMeter, type Work } from '../progress.ts';
import { sounds } from '../sound.ts';
import { pathFault, type Refusal } from '../target.ts';
import type { VideoPlan } from '../video-plan.ts';
import { writeWholeFile } from '../whole-file.ts';
import { requireFrames } from '../whole-video.ts';
import { joinSegments } from './join-segments.ts';
import { makerOf } from './maker.ts';
import { type PartHead, readPart, takeOut, writePart } from './part-file.ts';
import type { SegmentCache } from './segment-cache.ts';
import { isUntouched, readSegment, type SegmentIndex } from './segment-file.ts';
import { folderStore } from './segment-store.ts';
import { filmSegments, kindOf, pictureOf, withSegments } from './segment-video.ts';
import { picturesOf, type Segment } from './segments.ts';

/** `number` of `of`, both from 1. */
export interface Share {
  readonly number: number;
  readonly of: number;
}

/** `lesson.mp4` as `lesson-2-of-8.part`; numbers have as many digits as the last, so that they sort. */
export function partName(file: string, { number, of }: Share): string {
  const ending = extname(file);
  const digits = String(of).length;
  return join(dirname(file), `${basename(file, ending)}-${String(number).padStart(digits, '0')}-of-${of}.part`);
}

/** Writes the share of the film that `plan` would be the whole of. */
export async function writeShare(
  painter: Painter,
  plan: VideoPlan,
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
  const hasSound = plan.sound !== undefined && share.number === 1;
  await requireEncoders([
    ...(codec.encoder === undefined ? [] : [codec.encoder]),
    ...(hasSound ? [sounds[plan.container].encoder] : []),
  ]);
  const segments = filmSegments(painter, codec, plan.key);
  const own = shareOf(segments, share);
  const frames = own.reduce((sum, { frameCount }) => sum + frameCount, 0);
  const meter = progressMeter(frames, options.onProgress, undefined, options.onStart);
  const file = partName(plan.file, share);
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
        if (hasSound) {
          const sound = store.scratch();
          await writeSound(plan.sound, plan.container, painter, sound, signal);
          files.push({ name: 'sound', file: sound });
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
  plan: VideoPlan,
  { number, of }: Share,
  segments: readonly Segment[],
): Promise<Omit<PartHead, 'proofreelPart' | 'holds'>> {
  const { width, height, rate, frameCount, alpha } = pictureOf(painter, plan);
  const film = {
    ...{ container: plan.container, codec: plan.codec, width, height, alpha, frameCount },
    rate: [String(rate.numerator), String(rate.denominator)] as [string, string],
    chapters: plan.chapters.map(({ name, from, until }) => ({ name, from, until })),
    ...(plan.timecode === undefined ? {} : { timecode: plan.timecode }),
    compatible: plan.compatible ?? false,
    stillPictures: segments[0]?.stillPictures ?? 1,
    hasSound: plan.sound !== undefined,
    segments: segments.map(
      ({ digest, moving, still }) => [digest, moving.length, still?.count ?? 0] as [string, number, number],
    ),
  };
  const sound =
    plan.sound === undefined
      ? null
      : [await digestOf(plan.sound.file), String(plan.sound.start.numerator), String(plan.sound.start.denominator)];
  const digest = createHash('sha256')
    .update(JSON.stringify([film, sound, await makerOf()]))
    .digest('hex');
  return { number, of, film: digest, ...film };
}

/** Of a file's length and its first megabytes: a sound may be that of hours of footage. */
async function digestOf(file: string): Promise<string> {
  const hash = createHash('sha256').update(String((await stat(file)).size));
  for await (const block of createReadStream(file, { end: 8_000_000 })) hash.update(block as Buffer);
  return hash.digest('hex');
}

export type JoinResult =
  | { readonly kind: 'written'; readonly path: string; readonly frameCount: number; readonly parts: number }
  | Refusal;

/** Joins all parts of a film into `name`. Throws a `MachineFailure`, or the signal's reason. */
export async function joinParts(parts: readonly string[], name: string, signal?: AbortSignal): Promise<JoinResult> {
  const read: { readonly path: string; readonly head: PartHead; readonly start: number }[] = [];
  for (const path of parts) {
    if (!existsSync(path)) return refused(`there is no part ${path}`);
    const found = await readPart(path);
    if (found === undefined) return refused(`${basename(path)} is no whole part of a render`);
    read.push({ path, ...found });
  }
  const fault = faultOf(read, name) ?? pathFault(resolve(name));
  if (fault !== undefined) return refused(fault);
  const { head } = read[0]!;
  const film = {
    container: head.container,
    codec: head.codec,
    ...{ width: head.width, height: head.height, alpha: head.alpha, frameCount: head.frameCount },
    rate: fraction(BigInt(head.rate[0]), BigInt(head.rate[1])),
  };
  const segments = segmentsIn(head);
  const path = resolve(name);
  await requireEncoders([]);
  await writeWholeFile(path, async (part) => {
    const folder = `${part}-segments`;
    const store = folderStore(folder);
    const sound = store.scratch();
    try {
      await mkdir(folder);
      for (const one of read) {
        signal?.throwIfAborted();
        await takeOut(one.path, one, (kept) => (kept === 'sound' ? sound : join(folder, `${kept}.segment`)));
      }
      const indices = await indicesOf(segments, store.fileOf);
      const codec = codecOf(head.codec, film, { opaque: !head.alpha, compatible: head.compatible });
      const tracks = {
        sound: head.hasSound ? { file: sound, start: fraction(0n), encoded: true } : undefined,
        chapters: head.chapters.map((chapter) => ({
          ...chapter,
          from: frameAt(chapter.from),
          until: frameAt(chapter.until),
        })),
        timecode: head.timecode,
      };
      const picture = isFinished(tracks) ? part : store.scratch();
      await joinSegments(picture, film, codec, segments, indices, store, signal);
      if (picture !== part) await finishVideo(picture, tracks, head.container, film, part, signal);
      await requireFrames(part, film, signal);
      signal?.throwIfAborted();
    } finally {
      await rm(folder, { recursive: true, force: true });
    }
  });
  return { kind: 'written', path, frameCount: head.frameCount, parts: read.length };
}

/** Why these are not the parts of one film, each once; undefined where they are. */
function faultOf(
  parts: readonly { readonly path: string; readonly head: PartHead }[],
  name: string,
): string | undefined {
  const [first, ...others] = parts;
  if (first === undefined) return 'no parts are named';
  const { of, film, container } = first.head;
  const foreign = others.find(({ head }) => head.film !== film || head.of !== of);
  if (foreign !== undefined) {
    const why =
      foreign.head.of === of
        ? 'they were made from different scenes or looks, or by different versions of proofreel, ffmpeg or Node'
        : `one is of ${of} parts, the other of ${foreign.head.of}`;
    return `${basename(first.path)} and ${basename(foreign.path)} are not parts of one render: ${why}`;
  }
  const twice = parts.find(({ head }, index) => parts.findIndex((one) => one.head.number === head.number) < index);
  if (twice !== undefined) return `part ${twice.head.number} of ${of} is named twice`;
  const missing = Array.from({ length: of }, (_, index) => index + 1).filter(
    (number) => !parts.some(({ head }) => head.number === number),
  );
  if (missing.length > 0) return `of ${of} parts ${missing.join(', ')} ${missing.length === 1 ? 'is' : 'are'} missing`;
  if (extname(name).toLowerCase() === `.${container}`) return undefined;
  return `these are the parts of a .${container}; name the result so, not '${basename(name)}'`;
}

function segmentsIn(head: PartHead): readonly Segment[] {
  let from = 0;
  return head.segments.map(([digest, moving, stands]) => {
    const segment: Segment = {
      digest,
      from,
      frameCount: moving + stands,
      moving: new Array<number>(moving).fill(from),
      still: stands === 0 ? undefined : { frame: from + moving, count: stands },
      stillPictures: head.stillPictures,
    };
    from += moving + stands;
    return segment;
  });
}

async function indicesOf(
  segments: readonly Segment[],
  fileOf: (segment: Segment) => string,
): Promise<readonly SegmentIndex[]> {
  const known = new Map<string, SegmentIndex>();
  for (const segment of segments) {
    if (known.has(segment.digest)) continue;
    const file = fileOf(segment);
    const index = await readSegment(file, picturesOf(segment).length);
    if (index === undefined || !(await isUntouched(file)))
      throw new MachineFailure('a part is damaged: what it holds is not what was written; copy or render it again');
    known.set(segment.digest, index);
  }
  return segments.map(({ digest }) => known.get(digest)!);
}

function refused(message: string): Refusal {
  return { kind: 'refused', message };
}
