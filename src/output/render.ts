/**
 * A film becomes a file: the only entry point for videos and folders of frames.
 */
import type { Fraction } from '../scene/fraction.ts';
import type { Chapter } from '../timeline/chapters.ts';
import type { CodecName } from './codecs/codecs.ts';
import { layersOf } from './footage/layers.ts';
import { writeOverFootage } from './footage/over-footage.ts';
import { folderFault, writeFrameFolder } from './frames/frame-folder.ts';
import type { Refusal } from './machine/output-path.ts';
import { type Progress, type ProgressMeter, progressMeter, type Work } from './machine/progress-meter.ts';
import type { Painter } from './painters/painter.ts';
import { type Share, writeShare } from './parts/parts.ts';
import { segmentCache } from './segments/segment-cache.ts';
import { writeVideo } from './segments/segment-video.ts';
import { toolchainFingerprint } from './segments/toolchain-fingerprint.ts';
import { sourceFault, targetOf } from './target.ts';
import { hasTimecode } from './tracks/finish-video.ts';
import type { Recording } from './tracks/sound.ts';

export interface RenderOptions {
  /** `#rrggbb`: put under every frame, for editors that key out a colour. Takes precedence over footage. */
  readonly key?: string | undefined;
  /** A lossless .mov (qtrle instead of ProRes 4444). */
  readonly lossless?: boolean | undefined;
  /** A .mov of PNG pictures instead of ProRes 4444: also lossless. */
  readonly png?: boolean | undefined;
  /** A codec other than the file format's usual one: `av1` in an .mp4 or .webm, `hevc` in a .mov. */
  readonly codec?: CodecName | undefined;
  /** A more compatible .mp4: a hold is a group of the encoder's own pictures, repeated. */
  readonly compatible?: boolean | undefined;
  /** A folder of frames contains each picture once, and `holds.json` says on which frames it is shown. */
  readonly holds?: boolean | undefined;
  /** Put under the frames of an .mp4; a format with transparency keeps that instead. */
  readonly footage?: Recording | undefined;
  /** A sound file, cut at the video's end. Without it, footage under the frames keeps its own sound. */
  readonly audio?: string | undefined;
  /** The time in `audio`, in seconds, that falls on the first frame; zero if omitted. */
  readonly audioStart?: Fraction | undefined;
  /** In order of their first frames; a folder of frames carries none. */
  readonly chapters?: readonly Chapter[] | undefined;
  /**
   * The label of the first frame (`01:00:00:00`, `;` before the frames for drop-frame): the timecode track of a .mov.
   */
  readonly timecode?: string | undefined;
  /** The folder in which segments are kept from one render to the next (`cacheFolder()`); if omitted, none are kept. */
  readonly cache?: string | undefined;
  /** Only this share of the film, as a file that `joinParts` takes. */
  readonly part?: Share | undefined;
  /**
   * How many processes draw a video; by default two, if there are enough cores, the frames are not larger than
   * 2560x1440, and it is worth it.
   */
  readonly workers?: number | undefined;
  /** Called with the work to be done once it is known; not for a film over footage, where every frame is encoded. */
  readonly onStart?: ((work: Work) => void) | undefined;
  readonly onProgress?: ((progress: Progress) => void) | undefined;
  /** When aborted, everything is cleaned up and the result is `interrupted`. */
  readonly signal?: AbortSignal | undefined;
}

export type RenderResult =
  | {
      readonly kind: 'written';
      /** The file's or folder's absolute path. */
      readonly path: string;
      readonly frameCount: number;
      /** How many of the frames were drawn; the rest equal the previous frame. */
      readonly drawn: number;
      /** How many of the frames were kept from an earlier render. */
      readonly kept: number;
      /** What may surprise the user about the file, a sentence each. */
      readonly notices: readonly string[];
    }
  | Refusal
  | { readonly kind: 'interrupted' };

/**
 * Writes the film to `target`: `.mp4`, `.mov`, `.webm`, or a folder of PNG frames (`frames/`, or no ending). What
 * existed there is replaced once the new one is complete. Throws a `MachineFailure`; in every case, nothing
 * half-written and no child process is left.
 */
export async function renderFilm(painter: Painter, target: string, options: RenderOptions = {}): Promise<RenderResult> {
  const { signal } = options;
  try {
    signal?.throwIfAborted();
    return await render(painter, target, options);
  } catch (error) {
    if (signal?.aborted === true) return { kind: 'interrupted' };
    throw error;
  }
}

async function render(painter: Painter, name: string, options: RenderOptions): Promise<RenderResult> {
  const { key, lossless = false, png = false, codec, footage, signal } = options;
  const target = targetOf(name, painter, { key, lossless, png, codec, footage: footage !== undefined });
  if (target.kind === 'refused') return target;
  const overwritten = sourceFault(target, { footage: footage?.file, audio: options.audio });
  if (overwritten !== undefined) return { kind: 'refused', message: overwritten };
  if (options.holds === true && target.kind !== 'frames') {
    return {
      kind: 'refused',
      message: `--holds is for a folder of PNG frames; a ${target.container} contains every frame anyway`,
    };
  }
  if (options.compatible === true && !(target.kind === 'video' && target.codec === 'h264')) {
    return { kind: 'refused', message: '--compatible is for an .mp4; the other formats do not need it' };
  }
  const meter = progressMeter(painter.frameCount, options.onProgress, undefined, options.onStart);
  if (target.kind === 'frames') return renderFrames(painter, target.folder, options, meter);
  const { audio, audioStart, chapters = [] } = options;
  const layers = await layersOf(painter, target.container, { key, footage, audio, audioStart }, signal);
  if (layers.kind === 'refused') return layers;
  const { under, sound } = layers;
  const wanted = target.container === 'mov' ? options.timecode : undefined;
  const timecode = hasTimecode(painter.rate) ? wanted : undefined;
  const cache =
    options.cache === undefined ? undefined : segmentCache(options.cache, await toolchainFingerprint(target.codec));
  const notices = [...layers.notices, ...(timecode === wanted ? [] : [noTimecode])];
  if (options.part !== undefined) {
    if (under !== undefined) return { kind: 'refused', message: overFootageInParts };
    const plan = { ...target, key, sound, chapters, timecode, compatible: options.compatible };
    const { onStart, onProgress } = options;
    const share = await writeShare(painter, plan, options.part, { onStart, onProgress, signal, cache });
    return written(share.file, share.meter, [...notices, ...share.notices]);
  }
  if (under !== undefined) await writeOverFootage(painter, { ...target, under, sound, chapters }, { meter, signal });
  else
    notices.push(
      ...(await writeVideo(
        painter,
        { ...target, key, sound, chapters, timecode, compatible: options.compatible },
        { meter, signal, cache, workers: options.workers },
      )),
    );
  return written(target.file, meter, notices);
}

async function renderFrames(
  painter: Painter,
  folder: string,
  { key, holds = false, part, audio, workers, signal, onStart, onProgress, ...options }: RenderOptions,
  meter: ProgressMeter,
): Promise<RenderResult> {
  const notices = audio === undefined ? [] : ['a folder of frames carries no sound'];
  const plan = { file: folder, container: 'frames', codec: 'png', key, holds } as const;
  const cache =
    options.cache === undefined ? undefined : segmentCache(options.cache, await toolchainFingerprint('png'));
  if (part !== undefined) {
    const share = await writeShare(painter, plan, part, { onStart, onProgress, signal, cache });
    return written(share.file, share.meter, notices);
  }
  const message = await folderFault(folder);
  if (message !== undefined) return { kind: 'refused', message };
  await writeFrameFolder(painter, plan, { meter, signal, cache, workers });
  return written(folder, meter, notices);
}

const noTimecode =
  'the .mov has no timecode track: timecode counts 24, 25, 30, 48, 50 or 60 frames a second, and this film has another rate';

const overFootageInParts =
  'a video over footage cannot be made in parts: each of its pictures depends on those before; make parts of only the marks, as a .mov or .webm';

function written(path: string, meter: ProgressMeter, notices: readonly string[]): RenderResult {
  return { kind: 'written', path, frameCount: meter.done, drawn: meter.drawn, kept: meter.kept, notices };
}
