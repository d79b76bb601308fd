/**
 * Times, by their place in a scene: how they are described to an editor, and how they are read.
 */

import type { ReadTime } from './anchor.ts';
import type { AbsoluteTime } from './anchor-absolute.ts';
import { type Time, timeKinds } from './anchors.ts';
import { measure, type TextOf, type TextReader } from './language-values.ts';
import type { Context } from './reading.ts';
import type { Located } from './scene.ts';
import { readFixedTime, readTime, type TimeForms } from './time.ts';
import { spanIn } from './yaml-tree.ts';

type TimeNeeds = Pick<Context, 'rate' | 'faults'>;

const forms = timeKinds.flatMap(({ samples }) => samples);
const fixedForms = timeKinds.flatMap(({ dependsOn, samples }) => (dependsOn.length === 0 ? samples : []));

/** When a step begins. The first one has nothing before it to count from. */
export const stepTime = (): TextOf<Located<Time>, TimeNeeds & { readonly isFirst: boolean }> =>
  measure(
    'When the step begins: a time from the start of the video (12.5, 1:02), a timecode (01:00:02:12), +seconds after the start of the step before, cue NAME, or words "as said".',
    forms,
    (node, needs) => timeAs(needs.isFirst ? 'unanchored' : 'any')(node, needs, ''),
  );

export const stepEnd = (): TextOf<Located<Time>, TimeNeeds> =>
  measure(
    'When the step ends, +seconds counted from its own start; without it the step lasts until the next one.',
    forms,
    timeAs('any'),
  );

const whenShown =
  'When it is shown: a time from the start of the video (12.5, 1:02), a timecode (01:00:02:12), +seconds after the start of the step, cue NAME, or words "as said".';

/** When a part of a step is shown. */
export const beatTime = (): TextOf<Located<Time>, TimeNeeds> => measure(whenShown, forms, timeAs('any'));

/** When the board is in a place: there is no previous step to count from. */
export const placementTime = (): TextOf<Located<Time>, TimeNeeds> => measure(whenShown, forms, timeAs('unanchored'));

/** A time that depends on nothing else. */
export const fixedTime = (description: string): TextOf<Located<AbsoluteTime>, TimeNeeds> =>
  measure(description, fixedForms, (node, { rate, faults }) => located(node, readFixedTime(node.text, rate), faults));

function timeAs(allowed: TimeForms): TextReader<Located<Time>, TimeNeeds> {
  return (node, { rate, faults }) => located(node, readTime(node.text, { rate, forms: allowed }), faults);
}

function located<T>(
  node: Parameters<TextReader<T, unknown>>[0],
  reading: ReadTime<T>,
  faults: Context['faults'],
): Located<T> | undefined {
  if (reading.ok) return { value: reading.time, span: node.span };
  const { code, at, length, message } = reading.fault;
  faults.error(code, spanIn(node, at, at + Math.max(1, length)), message);
  return undefined;
}
