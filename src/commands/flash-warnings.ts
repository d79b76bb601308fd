/**
 * Whether the planned picture of a lesson flashes: warnings for the report. If nothing large comes and goes fast
 * enough, nothing is read or drawn, and the canvas is not even loaded.
 */
import { filmOf } from '../film/film-of.ts';
import { busySpans } from '../output/flashes/busy-spans.ts';
import { defaultLook } from '../picture/default-look.ts';
import type { Diagnostic } from '../scene/diagnostic.ts';
import type { Look } from '../scene/look.ts';
import { readLook } from '../scene/read-look.ts';
import type { Film, Frame } from '../timeline/film.ts';
import { printFrame } from '../timeline/seconds.ts';
import { timeWarning } from '../timeline/time-faults.ts';
import { UsageError } from '../verbs/usage-error.ts';
import { pathBeside } from './beside-scene.ts';
import type { Lesson } from './lesson.ts';
import { readTextBeside } from './read-text.ts';

/** The flashing described in WCAG 2.2, 2.3.1, in words; `at` is a printed time. */
export function flashesInWords(at: string): string {
  return `the picture flashes more than three times within the second before ${at}, over more than a quarter of the area in view (WCAG 2.2, 2.3.1); make what comes and goes there take more time`;
}

/** One warning for each span, at the step in which it is found. */
export async function flashWarnings(path: string, lesson: Extract<Lesson, { kind: 'lesson' }>): Promise<Diagnostic[]> {
  const look = lookFor(path, lesson.scene.look?.value);
  const film = filmOf(lesson.checked, lesson.schedule, look);
  if (busySpans(film, look, 'areas').length === 0) return [];
  const { flashesOf } = await import('../output/flashes/film-flashes.ts');
  return flashesOf(film, look, 'areas').map((frame) =>
    timeWarning('flashes', spanAt(lesson, film, frame), flashesInWords(printFrame(film.rate, frame))),
  );
}

/** A missing or faulty look is left for `render` to report. */
function lookFor(path: string, inScene: string | undefined): Look {
  if (inScene === undefined) return defaultLook;
  try {
    return readLook(readTextBeside(pathBeside(path, inScene), 'look'), defaultLook).look ?? defaultLook;
  } catch (failure) {
    if (failure instanceof UsageError) return defaultLook;
    throw failure;
  }
}

function spanAt(
  { scene, schedule }: Extract<Lesson, { kind: 'lesson' }>,
  film: Film,
  frame: Frame,
): Diagnostic['span'] {
  const within = schedule.steps.findLastIndex((step) => step.from <= Math.min(frame, film.frameCount - 1));
  return scene.steps[Math.max(0, within)]!.idSpan;
}
