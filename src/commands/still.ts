/**
 * `proofreel still`: one frame of the film.
 */

import type { CheckedStep } from '../check/verdict.ts';
import { lastFullFrame } from '../film/last-full-frame.ts';
import { asShown } from '../grid/notation/shown.ts';
import type { Painter } from '../output/painters/painter.ts';
import { writeStill } from '../output/still.ts';
import { nearestWords } from '../scene/nearest-word.ts';
import { readFixedTime } from '../scene/time.ts';
import { anywhere, clockOf, momentOf } from '../timeline/clock.ts';
import type { Frame } from '../timeline/film.ts';
import { printFrame } from '../timeline/seconds.ts';
import { exitStatus } from '../verbs/exit-status.ts';
import type { still as verb } from '../verbs/still.ts';
import { UsageError } from '../verbs/usage-error.ts';
import type { CallOf } from '../verbs/verb.ts';
import { type OpenFilm, openFilm } from './open-film.ts';
import type { Terminal } from './terminal.ts';
import { thumbnailFilm, thumbnailPainter, thumbnailWords } from './thumbnail.ts';

export async function still(call: CallOf<typeof verb>, terminal: Terminal): Promise<number> {
  if (call.step !== undefined && call.at !== undefined)
    throw new UsageError('both --step and --at are given; leave one of them out');
  if (call.step === undefined && call.at === undefined)
    throw new UsageError('still needs one of --step ID and --at TIME');
  if (call.thumbnail && call.as !== undefined)
    throw new UsageError('a thumbnail has its own frame size, 1280x720; leave --as out');
  if (!call.thumbnail && call.title !== undefined) throw new UsageError('--title is the large title of a --thumbnail');
  const asked = await openFilm(call.scene, call, terminal);
  if (asked === undefined) return exitStatus.unusable;
  const opened = call.thumbnail ? withFilm(asked) : asked;
  const frame = call.step === undefined ? frameOfTime(opened, call.at ?? '') : frameOfStep(opened, call.step);
  const step = stepAt(opened, frame);
  if (step !== undefined && !step.sound && !call.stamp) {
    terminal.err(`proofreel: step ${step.step.id} is not sound: ${asShown(step.message)}\n`);
    terminal.err('proofreel: not drawn; fix it, or add --stamp to see it stamped\n');
    return exitStatus.unsound;
  }
  const painter = call.thumbnail ? thumbnailOf(opened, step, call.title) : opened.painter;
  const result = await writeStill(painter, frame, call.out);
  if (result.kind === 'refused') throw new UsageError(result.message);
  terminal.err(`${result.path}: frame ${frame}\n`);
  return exitStatus.sound;
}

/** The same with the film of a thumbnail, whose marks may be on other frames than those over a recording. */
function withFilm(opened: OpenFilm): OpenFilm {
  const { lesson, look } = opened;
  return { ...opened, film: thumbnailFilm(lesson.checked, lesson.schedule, look) };
}

function thumbnailOf(
  { film, look, lesson }: OpenFilm,
  step: CheckedStep | undefined,
  title: string | undefined,
): Painter {
  const words = thumbnailWords(lesson.scene, step, title);
  if (words !== undefined) return thumbnailPainter(film, look, words);
  throw new UsageError('neither the step nor the scene has a title; give one with --title');
}

function frameOfStep({ lesson, film, look }: OpenFilm, id: string): Frame {
  const ids = lesson.scene.steps.map((step) => step.id);
  if (!ids.includes(id)) {
    const [nearest] = nearestWords(id, ids);
    throw new UsageError(
      `the scene has no step ${id}${nearest === undefined ? `; its steps are ${ids.join(', ')}` : `; did you mean ${nearest}?`}`,
    );
  }
  const times = lesson.schedule.steps.find((step) => step.id === id);
  if (times !== undefined && times.from >= times.until) {
    const when = printFrame(lesson.scene.video.rate, times.from);
    throw new UsageError(`step ${id} is on no frame: it begins and ends at ${when}; give it time, or use --at`);
  }
  return lastFullFrame(film, id, look);
}

function frameOfTime({ lesson, film }: OpenFilm, text: string): Frame {
  const { rate } = lesson.scene.video;
  const read = readFixedTime(text, rate);
  if (!read.ok) throw new UsageError(`--at ${text}: ${read.fault.message}`);
  const found = momentOf(clockOf(lesson.scene, undefined), read.time, anywhere);
  if (!found.ok)
    throw new UsageError(`--at ${text}: ${found.fault?.message ?? 'it cannot be counted from the first frame'}`);
  const { frame } = found.moment;
  if (frame >= film.frameCount) {
    throw new UsageError(`--at ${text} is past the end: the video lasts until ${printFrame(rate, film.frameCount)}`);
  }
  return frame;
}

/** The step that is shown at this frame: the last to have begun. */
function stepAt({ lesson }: OpenFilm, frame: Frame): CheckedStep | undefined {
  const index = lesson.schedule.steps.findLastIndex((step) => step.from <= frame && frame < step.until);
  return lesson.checked.steps[index];
}
