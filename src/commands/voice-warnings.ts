/**
 * Where a lesson's voice says something else than is claimed and shown: warnings for the report.
 */
import { filmOf } from '../film/film-of.ts';
import { defaultLook } from '../picture/default-look.ts';
import type { Diagnostic } from '../scene/diagnostic.ts';
import { spokenFaults } from '../voice/spoken-faults.ts';
import type { Lesson } from './lesson.ts';

/** In the order in which they are spoken; no look bears on it. */
export function voiceWarnings({
  checked,
  schedule,
  narration,
}: Extract<Lesson, { kind: 'lesson' }>): readonly Diagnostic[] {
  return spokenFaults(checked, schedule, filmOf(checked, schedule, defaultLook), narration);
}
