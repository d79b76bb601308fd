/**
 * How a step without `show` draws itself: the beats that an author would have written.
 *
 * First the ground (the cells and houses that the argument is about); then the argument in its order, one set or link
 * after another; then what it says (this end or that end), from where each removal is seen, what follows, and what that
 * opens. Lists and cascades come at their own frames.
 */

import type { CheckedStep } from '../check/verdict.ts';
import { membersOf } from '../grid/candidates.ts';
import type { Grid } from '../grid/grid.ts';
import { divide, fraction } from '../scene/fraction.ts';
import type { Group } from '../scene/scene.ts';
import type { Frame } from '../timeline/film.ts';
import type { ScheduledStep } from '../timeline/schedule.ts';
import { argumentStrokes, circled, groundMarks, reachStrokes, sayingMarks } from './default-argument.ts';
import { itemBeats, type PlainBeat } from './default-items.ts';
import { openedBy } from './opened.ts';
import { between, claimPhases, evenly, type Pacing } from './pacing.ts';
import { cellsOf } from './set-houses.ts';
import { markGroupOf, type StagedBeat, type StagedMark } from './staged-beat.ts';
import { placedCandidate } from './staged-conclusions.ts';

export interface DefaultStaging {
  readonly grid: Grid;
  readonly pacing: Pacing;
  readonly groups: readonly Group[];
  readonly draw: 'overlay' | 'writing' | 'board';
}

/** The beats of a step that has no `show`, in order. Its group is the one with the step's name, if there is one. */
export function defaultBeats(staging: DefaultStaging, checked: CheckedStep, times: ScheduledStep): StagedBeat[] {
  const items = checked.step.fails ? [] : itemBeats(staging, checked, times);
  const beats = [...claimBeats(staging, checked, times), ...items].sort((a, b) => a.from - b.from);
  const group = markGroupOf(staging.groups, checked.step.id);
  return beats.map(({ from, until, mark }, index): StagedBeat => {
    const later = beats.slice(index + 1).find((beat) => beat.from > from);
    return { from, room: later?.from ?? times.until, until, gone: undefined, group, keep: false, mark };
  });
}

/** With more lines than this, those to one removal disappear before those to the next come. */
const mostReaches = 8;

function claimBeats({ grid, pacing }: DefaultStaging, checked: CheckedStep, times: ScheduledStep): PlainBeat[] {
  const { from, claimUntil: until } = times;
  const ground = groundMarks(grid, checked);
  const strokes = argumentStrokes(grid, checked);
  const saying = sayingMarks(checked);
  const reach = reachStrokes(grid, checked);
  const phases = claimPhases(
    pacing,
    { from, until },
    {
      hasGround: ground.length > 0,
      strokes: strokes.length,
      explains: saying.length + reach.length > 0,
    },
  );
  const frames = evenly(phases.argument, strokes.length, phases.apart);
  const reachApart = divide(fraction(phases.follows - phases.reach), fraction(Math.max(1, reach.length)));
  const reachFrames = evenly(phases.reach, reach.length, reachApart);
  const lines = reach.flat().reduce((sum, mark) => sum + (mark.kind === 'reach' ? mark.reaches.length : 0), 0);
  const at = (beatFrom: Frame, marks: readonly StagedMark[], beatUntil?: Frame): PlainBeat[] =>
    marks.map((mark) => ({ from: beatFrom, until: beatUntil, mark }));
  return [
    ...at(from, ground),
    ...strokes.flatMap((marks, index) => at(frames[index]!, marks)),
    ...at(phases.says, saying),
    ...reach.flatMap((marks, index) =>
      at(reachFrames[index]!, marks, lines > mostReaches ? reachFrames[index + 1] : undefined),
    ),
    ...at(phases.follows, conclusionMarks(grid, checked)),
    ...at(between(phases.follows, until, fraction(1, 2)), openMarks(grid, checked)),
  ];
}

function openMarks(grid: Grid, checked: CheckedStep): StagedMark[] {
  const candidates = openedBy(grid, checked);
  return candidates.length === 0 ? [] : [{ kind: 'opens', candidates }];
}

/** What `so` concludes: strikes, placements, and circles on an either/or; or the choice that breaks the argument. */
function conclusionMarks(grid: Grid, checked: CheckedStep): StagedMark[] {
  // In a false step, this beat shows what breaks it instead.
  if (checked.step.fails) return [{ kind: 'strike', candidates: 'all', gone: undefined }];
  const concluded = checked.conclusions.filter(({ origin, verdict }) => origin === 'so' && verdict !== 'redundant');
  const removed = concluded.flatMap(({ conclusion }) => (conclusion.kind === 'impossible' ? conclusion.candidate : []));
  const placed = concluded.flatMap((each) => placedCandidate(each) ?? []);
  const eithers = concluded.filter((each) => each.verdict === 'proved' && placedCandidate(each) === undefined);
  return [
    ...(removed.length === 0 ? [] : [{ kind: 'strike', candidates: removed, gone: undefined } as const]),
    ...(placed.length === 0 ? [] : [{ kind: 'place', cells: cellsOf(grid, placed) } as const]),
    ...eithers.flatMap(({ conclusion }) =>
      conclusion.kind === 'one-of' ? circled(membersOf(conclusion.candidates)) : [],
    ),
  ];
}
