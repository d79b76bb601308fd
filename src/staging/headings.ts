/**
 * What the frame says about a step in words: its place among the steps, its title, its argument and, once they are
 * drawn, its conclusions.
 */

import type { CheckedStep } from '../check/verdict.ts';
import { membersOf } from '../grid/candidates.ts';
import type { Grid } from '../grid/grid.ts';
import { printConclusions } from '../grid/notation/print.ts';
import { asShown } from '../grid/notation/shown.ts';
import { type Film, frameAt, type Heading } from '../timeline/film.ts';
import type { ScheduledStep } from '../timeline/schedule.ts';
import { framesIn, type Pacing } from './pacing.ts';
import { enters, type StagedConclusion } from './staged-conclusions.ts';

/** A cascade's conclusions longer than this are counted rather than listed. */
const listLength = 60;

/**
 * The heading of a step: without its conclusions from the start, with them from the frame on which the last of them is
 * drawn, since nothing may be readable before it is presented. The two overlap by a fade, so that what they share does
 * not blink.
 */
export function headingsOf(
  { grid, pacing, count }: { readonly grid: Grid; readonly pacing: Pacing; readonly count: number },
  { step, sound }: CheckedStep,
  times: ScheduledStep,
  staged: readonly StagedConclusion[],
  number: number,
): Film['headings'] {
  if (times.from >= times.until) return [];
  const heading: Heading = {
    step: step.id,
    number,
    count,
    isFalseStep: step.fails && sound,
    title: step.title,
    argument: step.called ?? step.because?.written,
    conclusions: undefined,
  };
  const concluded = staged.filter(
    (each) => enters(each) && (each.checked.origin === 'so' || each.checked.origin === 'cascade'),
  );
  const drawnAt = frameAt(Math.max(0, ...concluded.map(({ from }) => from)));
  const whole = { ...heading, from: times.from, until: times.until };
  if (concluded.length === 0 || drawnAt >= times.until) return [whole];
  const conclusions = printed(grid, concluded);
  if (drawnAt <= times.from) return [{ ...whole, conclusions }];
  const overlap = frameAt(Math.min(drawnAt + framesIn(pacing, pacing.motion.fade), times.until));
  return [
    { ...whole, until: overlap },
    { ...whole, from: drawnAt, conclusions },
  ];
}

function printed(grid: Grid, staged: readonly StagedConclusion[]): string {
  const text = printedConclusions(grid, staged);
  return text.length <= listLength || staged.some(({ checked }) => checked.origin === 'so') ? text : counted(staged);
}

/** Removals combined if that is shorter (`r1c79≠7`), then placements and either/ors in their order. */
function printedConclusions(grid: Grid, staged: readonly StagedConclusion[]): string {
  const conclusions = staged.map(({ checked }) => checked.conclusion);
  return asShown(printConclusions(grid, conclusions).join(' '));
}

function counted(staged: readonly StagedConclusion[]): string {
  const removals = staged.filter(({ checked }) => checked.conclusion.kind === 'impossible').length;
  const digits = staged.filter(
    ({ checked: { conclusion } }) => conclusion.kind === 'one-of' && membersOf(conclusion.candidates).length === 1,
  ).length;
  const parts = [
    ...(digits === 0 ? [] : [digits === 1 ? '1 digit' : `${digits} digits`]),
    ...(removals === 0 ? [] : [removals === 1 ? '1 removal' : `${removals} removals`]),
  ];
  return parts.join(', ');
}
