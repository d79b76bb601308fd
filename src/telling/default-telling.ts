/**
 * How a step without `show` draws itself: the beats that a teller would have written.
 *
 * First the ground (the cells that the argument speaks of), then the argument in its order, one set or link after
 * another over most of the time, then at three quarters of it what follows. Lists and cascades come at their own frames.
 */

import type { ArgumentSet, CheckedStep } from '../check/verdict.ts';
import { type Candidate, countOf, membersOf } from '../grid/candidates.ts';
import { type Cell, cellOf, type Grid, type HouseShape } from '../grid/grid.ts';
import { printSet } from '../grid/notation/print.ts';
import type { BeatMark, Group, Step } from '../scene/scene.ts';
import { frameAt } from '../timeline/film.ts';
import type { ScheduledStep } from '../timeline/schedule.ts';
import { itemBeats, type PlainBeat } from './default-items.ts';
import { drawableLinks } from './links.ts';
import { between, evenly, framesIn, type Pacing } from './pacing.ts';
import { markGroupOf, type ToldBeat } from './told-beat.ts';
import { placedCandidate } from './told-conclusions.ts';

export interface DefaultTelling {
  readonly grid: Grid;
  readonly pacing: Pacing;
  readonly groups: readonly Group[];
  readonly draw: 'overlay' | 'writing' | 'board';
}

/** The beats of a step that has no `show`, in order. Its group is the one that bears the step's name, if there is one. */
export function defaultBeats(telling: DefaultTelling, checked: CheckedStep, times: ScheduledStep): ToldBeat[] {
  const items = checked.step.fails ? [] : itemBeats(telling, checked, times);
  const beats = [...claimBeats(telling, checked, times), ...items].sort((a, b) => a.from - b.from);
  const group = markGroupOf(telling.groups, checked.step.id);
  return beats.map(({ from, until, mark }, index): ToldBeat => {
    const later = beats.slice(index + 1).find((beat) => beat.from > from);
    return { from, room: later?.from ?? times.until, until, gone: undefined, group, keep: false, mark };
  });
}

/** Parts of a claim's time: by the first all of the argument is drawn, at the second begins what follows from it. */
const argumentDrawn = 0.7;
const conclusionDrawn = 0.75;

function claimBeats({ grid, pacing }: DefaultTelling, checked: CheckedStep, times: ScheduledStep): PlainBeat[] {
  const { from, claimUntil: until } = times;
  const ground = groundMarks(grid, checked);
  const strokes = argumentMarks(grid, checked);
  const lead = ground.length === 0 ? 0 : Math.min(framesIn(pacing, 1), (until - from) * 0.15);
  const start = frameAt(from + lead);
  const apart = (between(from, until, argumentDrawn) - start) / Math.max(1, strokes.length);
  const frames = evenly(start, strokes.length, apart);
  const follows = between(from, until, conclusionDrawn);
  return [
    ...ground.map((mark) => ({ from, mark })),
    ...strokes.map((mark, index) => ({ from: frames[index]!, mark })),
    ...conclusionMarks(grid, checked).map((mark) => ({ from: follows, mark })),
  ];
}

/** What the eye is led to first: a deadly pattern; the house in which a digit has one place; the cells of the sets. */
function groundMarks(grid: Grid, { step, argument }: CheckedStep): BeatMark[] {
  const deadly = step.deadly?.value;
  const pattern = deadly?.kind === 'pattern' ? deadly.parts.flatMap((part) => part.cells) : [];
  const houses = argument.sets.flatMap((set) => (countOf(set.members) === 1 ? (houseOfSet(grid, set) ?? []) : []));
  // In a step that is meant to fail the sets that are named are tinted one after another instead.
  const tinted = argument.sets.filter((set) => !step.fails || isOfLinks(grid, step, set));
  const cells = cellsOf(
    grid,
    tinted.flatMap((set) => membersOf(set.members)),
  );
  return [
    ...(pattern.length === 0 ? [] : [outlined(ascending(pattern))]),
    ...houses.map((house): BeatMark => ({ kind: 'outline', targets: [{ kind: 'house', house }] })),
    ...filled(cells),
  ];
}

/**
 * The sets that are named or found, each circled, then the links; the sets of the links are drawn as the links.
 * In a step that is meant to fail the sets are tinted, so that circles are left for the choice that breaks it.
 */
function argumentMarks(grid: Grid, checked: CheckedStep): BeatMark[] {
  const { step, argument } = checked;
  const sets = argument.sets
    .filter((set) => !isOfLinks(grid, step, set))
    .flatMap((set) => (step.fails ? filled(cellsOf(grid, membersOf(set.members))) : circled(membersOf(set.members))));
  return [...sets, ...linkMarks(checked)];
}

/** Whether the set is there for a link of the step's chains, and so drawn as that link. */
function isOfLinks(grid: Grid, step: Step, { name }: ArgumentSet): boolean {
  if (step.chains.length === 0 || name.startsWith('deadly ')) return false;
  return !step.from.some(({ value }) => printSet(grid, value) === name);
}

/** One beat for each link that may be drawn. */
function linkMarks(checked: CheckedStep): BeatMark[] {
  const ranges = checked.step.chains.flatMap((chain, index) =>
    chain.value.links.map((_, link) => ({ chain: index + 1, first: link + 1, last: link + 1 })),
  );
  return ranges
    .filter((range) => drawableLinks(checked, [range]).length > 0)
    .map((range): BeatMark => ({ kind: 'link', links: [range] }));
}

/** What `so` concludes: strikes, placements, and circles on an either/or; or the choice that breaks the argument. */
function conclusionMarks(grid: Grid, checked: CheckedStep): BeatMark[] {
  // In a step that is meant to fail this beat shows what breaks it instead.
  if (checked.step.fails) return [{ kind: 'strike', candidates: 'all', gone: undefined }];
  const concluded = checked.conclusions.filter(({ origin, verdict }) => origin === 'so' && verdict !== 'spent');
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

function circled(candidates: readonly Candidate[]): BeatMark[] {
  return candidates.length === 0 ? [] : [{ kind: 'circle', targets: [{ kind: 'candidates', candidates }] }];
}

function filled(cells: readonly Cell[]): BeatMark[] {
  return cells.length === 0 ? [] : [{ kind: 'fill', targets: [{ kind: 'cells', cells }] }];
}

function outlined(cells: readonly Cell[]): BeatMark {
  return { kind: 'outline', targets: [{ kind: 'cells', cells }] };
}

/** The house of a set that is named by a digit and a house (`7c5`); undefined for any other. */
function houseOfSet(grid: Grid, { name }: ArgumentSet): HouseShape | undefined {
  const match = /^\d+([rcbd]\d+)$/.exec(name);
  return grid.houses.find((house) => house.name === match?.[1]);
}

function cellsOf(grid: Grid, candidates: readonly Candidate[]): Cell[] {
  return ascending(candidates.map((candidate) => cellOf(grid, candidate)));
}

function ascending(cells: readonly Cell[]): Cell[] {
  return [...new Set(cells)].sort((a, b) => a - b);
}
