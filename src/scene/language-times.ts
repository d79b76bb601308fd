/**
 * How times are described to an editor, by where they stand.
 */
import { measure } from './language-values.ts';

const forms = ['12.5', '1:02', '01:00:02:12', '+1.5', 'cue intro', 'cue intro +0.5', 'words "either here or here"'];

export const stepTime = () =>
  measure(
    'When the step begins: a time from the start of the video (12.5, 1:02), a timecode (01:00:02:12), +seconds after the start of the step before, cue NAME, or words "as said".',
    forms,
  );

export const stepEnd = () =>
  measure(
    'When the step ends, +seconds counted from its own start; without it the step lasts until the next one.',
    forms,
  );

export const beatTime = () =>
  measure(
    'When it is shown: a time from the start of the video (12.5, 1:02), a timecode (01:00:02:12), +seconds after the start of the step, cue NAME, or words "as said".',
    forms,
  );

export const fixedTime = (description: string) => measure(description, ['12.5', '1:02', '01:00:02:12']);
