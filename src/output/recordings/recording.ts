/**
 * A recording of a solve, or one picture of it, opened: what it is, or why it cannot be read.
 */
import { basename, resolve } from 'node:path';
import { compare, type Fraction, toNumber, zero } from '../../scene/fraction.ts';
import { cutOffAt, type MediaPicture, probeMedia } from '../ffmpeg/media.ts';

export interface Recording {
  /** An absolute path. */
  readonly file: string;
  /** As it is to be seen. */
  readonly picture: MediaPicture;
  /** Undefined for a single picture, and where the file does not say. */
  readonly duration: Fraction | undefined;
  /** Whether it is one picture, such as a .png. */
  readonly isStill: boolean;
}

export type OpenedRecording =
  | { readonly kind: 'opened'; readonly recording: Recording }
  /** A sentence with the file's name, and what to do. */
  | { readonly kind: 'refused'; readonly message: string };

/** Reads the file's head alone, and looks whether its end is there. Throws a `MachineFailure` where there is no ffprobe. */
export async function openRecording(file: string, signal?: AbortSignal): Promise<OpenedRecording> {
  const media = await probeMedia(file, signal);
  if (media.kind === 'unreadable') return { kind: 'refused', message: media.message };
  const name = basename(file);
  const { picture, durationSeconds, isStill } = media;
  if (picture === undefined)
    return { kind: 'refused', message: `${name} holds sound alone; name a recording that shows the board` };
  if (picture.hdr !== undefined) {
    const message = `${name} has a high dynamic range (${picture.hdr}), in which levels mean something else; convert it to BT.709 first`;
    return { kind: 'refused', message };
  }
  const path = resolve(file);
  const promised = isStill ? undefined : durationSeconds;
  const end = promised === undefined ? undefined : await cutOffAt(path, promised, signal);
  if (promised !== undefined && end !== undefined) {
    const there = compare(end, zero) === 0 ? 'holds no picture that can be read' : `ends after ${seconds(end)} s`;
    const message = `${name} is cut short: it ${there}, and its head promises ${seconds(promised)} s; copy or record it again`;
    return { kind: 'refused', message };
  }
  return { kind: 'opened', recording: { file: path, picture, duration: promised, isStill } };
}

function seconds(time: Fraction): string {
  return toNumber(time).toFixed(1);
}
