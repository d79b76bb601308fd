/**
 * What is mixed with the frames of a video: the footage under them, and a sound. The files are inspected before any
 * work, so that a refusal costs nothing.
 */
import { basename, resolve } from 'node:path';
import { add, compare, divide, type Fraction, fraction, subtract, zero } from '../../scene/fraction.ts';
import { printSeconds } from '../../timeline/seconds.ts';
import type { Container } from '../containers/track.ts';
import { cutOffAt, type Media, type MediaPicture, probeMedia } from '../ffmpeg/media.ts';
import type { Refusal } from '../machine/output-path.ts';
import type { Painter } from '../painters/painter.ts';
import type { Recording } from '../tracks/sound.ts';

export interface LayerWishes {
  readonly key: string | undefined;
  readonly footage: Recording | undefined;
  readonly audio: string | undefined;
  /** The time in `audio`, in seconds, that falls on the first frame. */
  readonly audioStart: Fraction | undefined;
}

/** Files by absolute path. */
export interface Layers {
  readonly kind: 'layers';
  readonly under: (Recording & { readonly picture: MediaPicture }) | undefined;
  /** `start` is the time in the sound that falls on the first frame. */
  readonly sound: Recording | undefined;
  /** What may surprise the user about the result, a sentence each. */
  readonly notices: readonly string[];
}

/**
 * Footage goes only under an .mp4: the other formats carry transparency, which is the reason to choose them. Under
 * opaque frames its picture cannot be seen, and only its sound is used.
 */
export async function layersOf(
  painter: Painter,
  container: Container,
  wishes: LayerWishes,
  signal: AbortSignal | undefined,
): Promise<Layers | Refusal> {
  const laid = wishes.key === undefined && container === 'mp4' ? wishes.footage : undefined;
  const footage = laid === undefined ? undefined : await footageLayers(painter, laid, signal);
  if (footage?.kind === 'refused') return footage;
  const narration =
    wishes.audio === undefined ? undefined : await narrationLayer(wishes.audio, wishes.audioStart ?? zero, signal);
  if (narration?.kind === 'refused') return narration;
  return {
    kind: 'layers',
    under: footage?.under,
    sound: narration?.sound ?? footage?.sound,
    notices: [...leftOut(container, wishes, laid), ...(footage?.notices ?? [])],
  };
}

async function footageLayers(
  painter: Painter,
  footage: Recording,
  signal: AbortSignal | undefined,
): Promise<Layers | Refusal> {
  const name = basename(footage.file);
  const media = await probeMedia(footage.file, signal);
  if (media.kind === 'unreadable') return refused(`the footage: ${media.message}`);
  const { picture, hasAudio } = media;
  if (picture === undefined) return refused(`the footage ${name} contains a sound but no picture`);
  if (media.durationSeconds !== undefined && compare(footage.start, media.durationSeconds) >= 0) {
    return refused(`the footage ${name} ends before the moment at which the video begins`);
  }
  if (painter.transparent && picture.hdr !== undefined) {
    return refused(
      `the footage ${name} has a high dynamic range (${picture.hdr}), and the video is BT.709, which does not: convert the footage to BT.709 first`,
    );
  }
  const cut = await cutOff(painter, footage, media, signal);
  if (cut !== undefined) return refused(`the footage ${name} ${cut}`);
  const from = { file: resolve(footage.file), start: footage.start };
  return {
    kind: 'layers',
    under: painter.transparent ? { ...from, picture } : undefined,
    sound: hasAudio ? from : undefined,
    notices: painter.transparent ? misfits(painter, footage, name, media, picture) : [],
  };
}

/** What is wrong with footage that ends before the time up to which it is needed and which its header promises. */
async function cutOff(
  painter: Painter,
  { file, start }: Recording,
  { durationSeconds: promised }: Media,
  signal: AbortSignal | undefined,
): Promise<string | undefined> {
  if (promised === undefined) return undefined;
  const needed = add(start, divide(fraction(painter.frameCount), painter.rate));
  const end = await cutOffAt(file, compare(promised, needed) < 0 ? promised : needed, signal);
  if (end === undefined) return undefined;
  return `is cut off: it should last ${printSeconds(promised)}, and ends at ${printSeconds(end)}; copy or record it again, or give the video a \`length\` that ends before`;
}

async function narrationLayer(
  file: string,
  start: Fraction,
  signal: AbortSignal | undefined,
): Promise<{ kind: 'narration'; sound: Recording } | Refusal> {
  const media = await probeMedia(file, signal);
  if (media.kind === 'unreadable') return refused(`the audio: ${media.message}`);
  if (!media.hasAudio) return refused(`the audio ${basename(file)} contains no sound`);
  return { kind: 'narration', sound: { file: resolve(file), start } };
}

function leftOut(container: Container, wishes: LayerWishes, laid: Recording | undefined): readonly string[] {
  if (wishes.footage === undefined || laid !== undefined) return [];
  const why =
    wishes.key === undefined ? `a .${container} keeps its transparency` : 'the key colour is under the frames';
  return [`${why}: the footage is not in it`];
}

function misfits(
  painter: Painter,
  footage: Recording,
  name: string,
  media: Media,
  picture: MediaPicture,
): readonly string[] {
  const notices: string[] = [];
  if (painter.width * picture.height !== painter.height * picture.width) {
    const sizes = `${picture.width}x${picture.height}, a different shape from the frame's ${painter.width}x${painter.height}`;
    notices.push(`the footage ${name} is ${sizes}: the rest of the frame is black`);
  }
  const end = divide(fraction(painter.frameCount), painter.rate);
  // Tolerating one frame: a file's own length is often slightly off.
  const needed = subtract(add(footage.start, end), divide(fraction(1n), painter.rate));
  if (media.durationSeconds !== undefined && compare(media.durationSeconds, needed) < 0) {
    notices.push(`the footage ${name} ends before the video does: its last picture is held`);
  }
  return notices;
}

function refused(message: string): Refusal {
  return { kind: 'refused', message };
}
