/**
 * The tracks of a piece of a lesson: footage and sound from the piece's beginning on, its chapters, and the label of
 * its first frame.
 */
import type { RenderOptions } from '../output/render.ts';
import { add } from '../scene/fraction.ts';
import { framesOfLabel, labelOfFrames } from '../scene/timecode.ts';
import { printLabel } from '../scene/timecode-label.ts';
import { chaptersOf } from '../timeline/chapters.ts';
import { frameAt } from '../timeline/film.ts';
import { footageStart } from '../timeline/length.ts';
import { timeOfFrame } from '../timeline/seconds.ts';
import { pathBeside } from './beside-scene.ts';
import type { Lesson } from './lesson.ts';
import type { Piece } from './render-pieces.ts';

type Read = Extract<Lesson, { kind: 'lesson' }>;

/** `counted`: a timecode is wanted even if the scene gives none, counted from the film's beginning. */
export function tracksOf(
  { scene, schedule }: Read,
  path: string,
  piece: Piece,
  counted: boolean,
): Pick<RenderOptions, 'footage' | 'audio' | 'audioStart' | 'chapters' | 'timecode'> {
  const { footage, audio } = scene.video;
  const start = timeOfFrame(schedule.rate, piece.from);
  return {
    footage:
      footage === undefined
        ? undefined
        : { file: pathBeside(path, footage.file.value), start: add(footageStart(scene), start) },
    audio: audio === undefined ? undefined : pathBeside(path, audio.value),
    audioStart: start,
    chapters: chaptersOf(scene, schedule).flatMap(({ name, from, until }) => {
      const [first, end] = [Math.max(0, from - piece.from), Math.min(until, piece.until) - piece.from];
      return end > first ? [{ name, from: frameAt(first), until: frameAt(end) }] : [];
    }),
    timecode: timecodeOf({ scene, schedule }, piece, counted),
  };
}

function timecodeOf(
  { scene, schedule }: Pick<Read, 'scene' | 'schedule'>,
  { from }: Piece,
  counted: boolean,
): string | undefined {
  const { rate } = schedule;
  const label = scene.video.timecode?.value;
  if (label === undefined && !counted) return undefined;
  const first = label === undefined ? undefined : framesOfLabel(label, rate);
  const frames = (first?.ok === true ? first.frames : 0) + from;
  return printLabel(labelOfFrames(frames, rate, { dropFrame: label?.dropFrame ?? false }));
}
