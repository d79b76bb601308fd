/**
 * From what was proved, and when it is presented, to what is shown: every mark as candidates, cells and frames.
 *
 * What is drawn is what is proved. A conclusion that is redundant is not drawn; one that is not proved is drawn under a
 * stamp that covers its whole step, and changes nothing on the board; a false step changes nothing either.
 */

import type { CheckedScene, CheckedStep } from '../check/verdict.ts';
import { Bug } from '../grid/bug.ts';
import type { Look } from '../scene/look.ts';
import { boardStateOf } from '../staging/board-state.ts';
import { defaultBeats } from '../staging/default-beats.ts';
import { headingsOf } from '../staging/headings.ts';
import type { Pacing } from '../staging/pacing.ts';
import { everySmallDigit, shownCandidates, smallDigitFrom, smallDigitsOf } from '../staging/small-digits-shown.ts';
import { beatsOfShow, type StagedBeat } from '../staging/staged-beat.ts';
import { type StagedConclusion, stagedConclusions } from '../staging/staged-conclusions.ts';
import { stampText } from '../staging/stamp.ts';
import { type Film, frameAt } from '../timeline/film.ts';
import type { Schedule, ScheduledStep } from '../timeline/schedule.ts';
import { drawBeat } from './beats.ts';
import { markList } from './mark-list.ts';
import { withMarkedDigits } from './marked-digits.ts';

/**
 * The film of a checked scene. It also draws an unsound scene, each unsound step under its stamp: the caller decides
 * whether such a film may be made. A pure function.
 */
export function filmOf(checked: CheckedScene, schedule: Schedule, look: Look): Film {
  const { scene } = checked;
  const { puzzle, video, groups } = scene;
  const { grid } = puzzle;
  const { rate, frameCount } = schedule;
  const pacing: Pacing = { rate, motion: look.motion };
  const timed = timedSteps(checked, schedule);
  const small = smallDigitsOf(video.candidates, grid, pacing, timed);
  const staging = { grid, pacing, groups, draw: video.draw, smallDigitFrom: smallDigitFrom.bind(undefined, small) };

  const steps = timed.map(({ checked: step, times }): StagedStep => {
    const beats =
      step.step.show === undefined ? defaultBeats(staging, step, times) : beatsOfShow(step.step, times, groups);
    return { checked: step, times, beats, staged: stagedConclusions(staging, step, times, beats) };
  });
  const board = boardStateOf(
    scene,
    steps.flatMap(({ staged }) => staged),
  );

  const marks = markList();
  for (const { checked: step, times, beats, staged } of steps) {
    const drawing = { board, pacing, frameCount, groups, draw: video.draw, marks, step, until: times.until, staged };
    for (const beat of beats) drawBeat(drawing, beat);
    const text = stampText(step);
    const { from, until } = times;
    if (text !== undefined)
      marks.add({ from, until, step: step.step.id, group: undefined, shape: { kind: 'stamp', text } });
  }
  const isRecorded = video.draw === 'overlay';
  const drawn = marks.finished(frameCount);
  const digits = isRecorded ? [] : shownCandidates(small, board, frameCount);
  return {
    grid,
    width: video.width,
    height: video.height,
    rate,
    frameCount,
    draw: video.draw,
    small: video.small,
    board: schedule.board,
    coordinates: video.coordinates,
    camera: video.camera,
    title: scene.title,
    credit: puzzle.setter,
    standing: board.standing,
    written: isRecorded ? [] : writtenDigits(board.written, frameCount),
    candidates: isRecorded || video.candidates === 'all' ? digits : withMarkedDigits(digits, drawn, board),
    recorded: isRecorded && video.small !== 'whole' ? shownCandidates(everySmallDigit, board, frameCount) : [],
    headings: steps.flatMap(({ checked: step, times, staged }, index) =>
      headingsOf({ grid, pacing, count: steps.length }, step, times, staged, index + 1),
    ),
    said: video.subtitles ? schedule.said : [],
    marks: drawn,
  };
}

interface StagedStep {
  readonly checked: CheckedStep;
  readonly times: ScheduledStep;
  readonly beats: readonly StagedBeat[];
  readonly staged: readonly StagedConclusion[];
}

function timedSteps(
  checked: CheckedScene,
  schedule: Schedule,
): { readonly checked: CheckedStep; readonly times: ScheduledStep }[] {
  return checked.steps.map((step, index) => {
    const times = schedule.steps[index];
    if (times?.id !== step.step.id) throw new Bug(`the schedule has no times for step ${step.step.id}`);
    return { checked: step, times };
  });
}

function writtenDigits(written: ReturnType<typeof boardStateOf>['written'], frameCount: number): Film['written'] {
  return written.filter(({ from }) => from < frameCount).map((digit) => ({ ...digit, until: frameAt(frameCount) }));
}
