/**
 * Joining the parts of a render, made on several machines, into its video or folder of frames, without the scene and
 * without drawing or encoding anything.
 */
import { existsSync } from 'node:fs';
import { basename, extname, join, resolve } from 'node:path';
import { fraction } from '../../scene/fraction.ts';
import { frameAt } from '../../timeline/film.ts';
import { codecOf } from '../codecs/codecs.ts';
import type { Container } from '../containers/track.ts';
import { requireFrames } from '../ffmpeg/require-frames.ts';
import { fillFolder, folderFault } from '../frames/frame-folder.ts';
import { writeAtomically, writeFolderAtomically } from '../machine/atomic-write.ts';
import { MachineFailure } from '../machine/machine-failure.ts';
import { pathFault, type Refusal } from '../machine/output-path.ts';
import type { Hold } from '../painters/holds.ts';
import type { Painter } from '../painters/painter.ts';
import { withStore } from '../segments/film-segments.ts';
import { joinSegments } from '../segments/join-segments.ts';
import { isUntouched, readSegment, type SegmentIndex } from '../segments/segment-file.ts';
import type { SegmentStore } from '../segments/segment-store.ts';
import { picturesOf, type Segment } from '../segments/segments.ts';
import { finishVideo, isFinished } from '../tracks/finish-video.ts';
import { requireEncoders } from '../tracks/require-encoders.ts';
import { type PartHead, readPart, takeOut } from './part-file.ts';

export type JoinResult =
  | { readonly kind: 'written'; readonly path: string; readonly frameCount: number; readonly parts: number }
  | Refusal;

interface Part {
  readonly path: string;
  readonly head: PartHead;
  /** Where in the file its contents begin. */
  readonly start: number;
}

/** Joins all parts of a film into `name`. Throws a `MachineFailure`, or the signal's reason. */
export async function joinParts(parts: readonly string[], name: string, signal?: AbortSignal): Promise<JoinResult> {
  const read: Part[] = [];
  for (const path of parts) {
    if (!existsSync(path)) return refused(`there is no part ${path}`);
    const found = await readPart(path);
    if (found === undefined) return refused(`${basename(path)} is not a complete part of a render`);
    read.push({ path, ...found });
  }
  const path = resolve(name);
  const fault = faultOf(read, name) ?? pathFault(path);
  if (fault !== undefined) return refused(fault);
  const { head } = read[0]!;
  if (head.container === 'frames') {
    const message = await folderFault(path);
    if (message !== undefined) return refused(message);
    await writeFolderAtomically(path, (temp) => joinFrames(temp, read, head, signal));
  } else {
    const { container } = head;
    await requireEncoders([]);
    await writeAtomically(path, (temp) => joinVideo(temp, read, { ...head, container }, signal));
  }
  return { kind: 'written', path, frameCount: head.frameCount, parts: read.length };
}

type VideoHead = PartHead & { readonly container: Container };

async function joinVideo(
  temp: string,
  parts: readonly Part[],
  head: VideoHead,
  signal: AbortSignal | undefined,
): Promise<void> {
  const film = { ...sizeOf(head), container: head.container, codec: head.codec, alpha: head.alpha };
  await withParts(`${temp}-segments`, parts, head, signal, async ({ segments, indices, store, sound }) => {
    const codec = codecOf(head.codec, film, { opaque: !head.alpha, compatible: head.compatible });
    const tracks = {
      sound: head.hasSound ? { file: sound, start: fraction(0n), encoded: true } : undefined,
      chapters: head.chapters.map(({ name, from, until }) => ({ name, from: frameAt(from), until: frameAt(until) })),
      timecode: head.timecode,
    };
    const pictures = isFinished(tracks) ? temp : store.scratch();
    await joinSegments(pictures, film, codec, segments, indices, store, signal);
    if (pictures !== temp) await finishVideo(pictures, tracks, head.container, film, temp, signal);
    await requireFrames(temp, film, signal);
    signal?.throwIfAborted();
  });
}

async function joinFrames(
  temp: string,
  parts: readonly Part[],
  head: PartHead,
  signal: AbortSignal | undefined,
): Promise<void> {
  const film = { ...sizeOf(head), holds: holdsIn(head), once: head.frames?.once ?? false };
  await withParts(`${temp}-segments`, parts, head, signal, async (made) => {
    await fillFolder(temp, film, made, signal);
    signal?.throwIfAborted();
  });
}

function sizeOf({
  width,
  height,
  rate,
  frameCount,
}: PartHead): Pick<Painter, 'width' | 'height' | 'rate' | 'frameCount'> {
  return { width, height, rate: fraction(BigInt(rate[0]), BigInt(rate[1])), frameCount };
}

/** Extracts the contents of the parts, runs `work` on them, and removes them. */
async function withParts(
  folder: string,
  parts: readonly Part[],
  head: PartHead,
  signal: AbortSignal | undefined,
  work: (held: {
    readonly segments: readonly Segment[];
    readonly indices: readonly SegmentIndex[];
    readonly store: SegmentStore;
    readonly sound: string;
  }) => Promise<void>,
): Promise<void> {
  const segments = segmentsIn(head);
  await withStore(folder, async (store) => {
    const sound = store.scratch();
    for (const one of parts) {
      signal?.throwIfAborted();
      await takeOut(one.path, one, (kept) => (kept === 'sound' ? sound : join(folder, `${kept}.segment`)));
    }
    await work({ segments, indices: await indicesOf(segments, store.fileOf), store, sound });
  });
}

/** Why these are not all the parts of one film, each once; undefined if they are. */
function faultOf(parts: readonly Part[], name: string): string | undefined {
  const [first, ...others] = parts;
  if (first === undefined) return 'no parts are named';
  const { of, film, container } = first.head;
  const foreign = others.find(({ head }) => head.film !== film || head.of !== of);
  if (foreign !== undefined) {
    const why =
      foreign.head.of === of
        ? 'they were made from different scenes or looks, with different options, or by different versions of proofreel, ffmpeg or Node'
        : `one is of ${of} parts, the other of ${foreign.head.of}`;
    return `${basename(first.path)} and ${basename(foreign.path)} are not parts of one render: ${why}`;
  }
  const twice = parts.find(({ head }, index) => parts.findIndex((one) => one.head.number === head.number) < index);
  if (twice !== undefined) return `part ${twice.head.number} of ${of} is named twice`;
  const missing = Array.from({ length: of }, (_, index) => index + 1).filter(
    (number) => !parts.some(({ head }) => head.number === number),
  );
  if (missing.length > 0) return `of ${of} parts ${missing.join(', ')} ${missing.length === 1 ? 'is' : 'are'} missing`;
  const ending = extname(name).toLowerCase();
  if (container === 'frames') {
    if (/[/\\]$/.test(name) || ending === '') return undefined;
    return `these are the parts of a folder of PNG frames; name a folder, '${basename(name, extname(name))}/'`;
  }
  if (ending === `.${container}`) return undefined;
  return `these are the parts of a .${container}; name the result accordingly, not '${basename(name)}'`;
}

function segmentsIn(head: PartHead): readonly Segment[] {
  let from = 0;
  return head.segments.map(([digest, moving, held]) => {
    const segment: Segment = {
      digest,
      from,
      frameCount: moving + held,
      moving: new Array<number>(moving).fill(from),
      hold: held === 0 ? undefined : { frame: from + moving, count: held },
      holdPictures: head.holdPictures,
    };
    from += moving + held;
    return segment;
  });
}

function holdsIn({ frames }: PartHead): readonly Hold[] {
  let from = 0;
  return (frames?.holds ?? []).map(([count, picture]) => {
    const hold = { from, count, digest: String(picture) };
    from += count;
    return hold;
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
      throw new MachineFailure('a part is damaged: its contents are not what was written; copy or render it again');
    known.set(segment.digest, index);
  }
  return segments.map(({ digest }) => known.get(digest)!);
}

function refused(message: string): Refusal {
  return { kind: 'refused', message };
}
