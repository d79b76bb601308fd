/**
 * How a claim without `show` draws itself: the beats that a teller would have written.
 *
 * First the ground (the cells that the argument speaks of), then the argument in its order, one set or link after
 * another over most of the time, then at three quarters of it what follows. Lists and cascades come at their own frames.
 */
import { type Candidate, countOf, membersOf } from '../grid/candidates.ts';
import { type Cell, candidateAt, cellOf, type Grid, type HouseShape } from '../grid/grid.ts';
import { printSet } from '../grid/notation/print.ts';
import type { ArgumentSet, CheckedStep } from '../check/verdict.ts';
import type { BeatMark, Group } from '../scene/scene.ts';
import { type Frame, frameAt } from '../timeline/film.ts';
import type { ScheduledStep } from '../timeline/schedule.ts';
import { drawableLinks } from './links.ts';
import { between, evenly, framesIn, type Pacing } from './pacing.ts';
import { markGroupOf, type ToldBeat } from './told-beat.ts';
import { listFrames, placedCandidate } from './told-conclusions.ts';

export interface DefaultTelling {
  readonly grid: Grid;
  readonly pacing: Pacing;
  readonly groups: readonly Group[];
  readonly draw: 'overlay' | 'writing' | 'board';
}

/** The beats of a step that has no `show`, in order of their frames. Its group is the one that bears the step's name, if there is one. */
export function defaultBeats(telling: DefaultTelling, checked: CheckedStep, times: ScheduledStep): ToldBeat[] {
  const beats = [
    ...claimBeats(telling, checked, times),
    ...(checked.step.fails ? [] : itemBeats(telling, checked, times)),
  ].sort((a, b) => a.from - b.from);
  const group = markGroupOf(telling.groups, checked.step.id);
  return beats.map(({ from, until, mark }, index): ToldBeat => {
    const later = beats.slice(index + 1).find((beat) => beat.from > from);
    return { from, room: later?.from ?? times.until, until, gone: undefined, group, keep: false, mark };
  });
}

interface PlainBeat {
  readonly from: Frame;
  readonly until: Frame | undefined;
  readonly mark: BeatMark;
}

function beat(from: Frame, mark: BeatMark, until?: Frame): PlainBeat {
  return { from, until, mark };
}

/** Parts of a claim's time: the argument has been drawn by the first, what follows begins at the second. */
const argumentDrawn = 0.7;
const conclusionDrawn = 0.75;

function claimBeats(telling: DefaultTelling, checked: CheckedStep, times: ScheduledStep): PlainBeat[] {
  const { grid, pacing } = telling;
  const { from, claimUntil: until } = times;
  const strokes = checked.step.fails ? setFills(grid, checked) : argumentMarks(grid, checked);
  const ground = groundMarks(grid, checked);
  const lead = ground.length === 0 ? 0 : Math.min(framesIn(pacing, 1), (until - from) * 0.15);
  const start = frameAt(from + lead);
  const apart = (between(from, until, argumentDrawn) - start) / Math.max(1, strokes.length);
  const frames = evenly(start, strokes.length, apart);
  return [
    ...ground.map((mark) => beat(from, mark)),
    ...strokes.map((mark, index) => beat(frames[index]!, mark)),
    ...conclusionMarks(checked).map((mark) => beat(between(from, until, conclusionDrawn), mark)),
  ];
}

/** What the eye is led to first: the cells of the sets; the house in which a digit has one place; a deadly pattern. */
function groundMarks(grid: Grid, checked: CheckedStep): BeatMark[] {
  const { sets } = checked.argument;
  const marks: BeatMark[] = [];
  const deadly = checked.step.deadly?.value;
  if (deadly?.kind === 'pattern') {
    const cells = [...new Set(deadly.parts.flatMap((part) => part.cells))].sort((a, b) => a - b);
    marks.push({ kind: 'outline', targets: [{ kind: 'cells', cells }] });
  }
  for (const set of sets) {
    const house = houseOfSet(grid, set);
    if (house !== undefined && countOf(set.members) === 1) marks.push({ kind: 'outline', targets: [{ kind: 'house', house }] });
  }
  const cells = cellsOf(grid, sets.flatMap((set) => membersOf(set.members)));
  if (cells.length > 0 && !checked.step.fails) marks.push({ kind: 'fill', targets: [{ kind: 'cells', cells }] });
  return marks;
}

/** The sets that are named or found, each circled, then the links; the sets of the links are drawn as the links. */
function argumentMarks(grid: Grid, checked: CheckedStep): BeatMark[] {
  const { step, argument } = checked;
  const named = new Set(step.from.map(({ value }) => printSet(grid, value)));
  const isCircled = ({ name }: ArgumentSet) => step.chains.length === 0 || named.has(name) || name.startsWith('deadly ');
  const circles = argument.sets
    .filter(isCircled)
    .map(({ members }): BeatMark => ({ kind: 'circle', targets: [{ kind: 'candidates', candidates: membersOf(members) }] }));
  return [...circles, ...linkMarks(checked)];
}

function linkMarks(checked: CheckedStep): BeatMark[] {
  const numbers = checked.step.chains.flatMap((chain, index) =>
    chain.value.links.map((_, link) => ({ chain: index + 1, first: link + 1, last: link + 1 })),
  );
  return numbers
    .filter((range) => drawableLinks(checked, [range]).length > 0)
    .map((range): BeatMark => ({ kind: 'link', links: [range] }));
}

/** In a step that is meant to fail the sets are tinted, so that circles are left for the choice that breaks it. */
function setFills(grid: Grid, checked: CheckedStep): BeatMark[] {
  const fills = checked.argument.sets.map(
    ({ members }): BeatMark => ({ kind: 'fill', targets: [{ kind: 'cells', cells: cellsOf(grid, membersOf(members)) }] }),
  );
  return [...fills, ...linkMarks(checked)];
}

function conclusionMarks(checked: CheckedStep): BeatMark[] {
  const concluded = checked.conclusions.filter(({ origin, verdict }) => origin === 'so' && verdict !== 'spent');
  if (checked.step.fails) return breakingMarks(checked);
  const removed = concluded.flatMap(({ conclusion }) => (conclusion.kind === 'impossible' ? [conclusion.candidate] : []));
  const marks: BeatMark[] = [];
  if (removed.length > 0) marks.push({ kind: 'strike', candidates: removed, gone: undefined });
  if (concluded.some((each) => placedCandidate(each) !== undefined)) marks.push({ kind: 'place', cells: 'all' });
  for (const { conclusion, verdict } of concluded) {
    if (conclusion.kind === 'impossible' || verdict !== 'proved') continue;
    const candidates = membersOf(conclusion.candidates);
    if (candidates.length > 1) marks.push({ kind: 'circle', targets: [{ kind: 'candidates', candidates }] });
  }
  return marks;
}

/** The choice that agrees with the argument and not with the conclusion; where there is none, what breaks the links. */
function breakingMarks(checked: CheckedStep): BeatMark[] {
  const escaped = checked.conclusions.find(({ counterexample }) => counterexample !== undefined);
  const candidates = new Set<Candidate>(escaped?.counterexample ?? checked.links.flatMap((link) => link.brokenBy));
  if (escaped?.conclusion.kind === 'impossible') candidates.add(escaped.conclusion.candidate);
  const circled = [...candidates].sort((a, b) => a - b);
  return circled.length === 0 ? [] : [{ kind: 'circle', targets: [{ kind: 'candidates', candidates: circled }] }];
}

/** Lists and cascades. Over a recording, lists prove and draw nothing. */
function itemBeats(telling: DefaultTelling, checked: CheckedStep, times: ScheduledStep): PlainBeat[] {
  const lists = telling.draw === 'overlay' ? [] : [...onlyBeats(telling, checked, times), ...pencilBeats(telling, checked, times)];
  return [...lists, ...cascadeBeats(telling, checked, times)];
}

/** The house, and a circle on each place that the digit has in it. */
function onlyBeats({ grid }: DefaultTelling, { step }: CheckedStep, times: ScheduledStep): PlainBeat[] {
  return step.only.flatMap(({ places }, item) => {
    const from = times.only[item] ?? times.from;
    return places.flatMap(({ digit, house, cells }) => {
      const candidates = cells.map((cell) => candidateAt(grid, cell, digit));
      return [
        beat(from, { kind: 'outline', targets: [{ kind: 'house', house }] }),
        beat(from, { kind: 'circle', targets: [{ kind: 'candidates', candidates }] }),
      ];
    });
  });
}

/** Each cell tinted as its list is written. */
function pencilBeats({ pacing }: DefaultTelling, checked: CheckedStep, times: ScheduledStep): PlainBeat[] {
  return checked.step.pencil.flatMap(({ lists }, item) => {
    const frames = listFrames(pacing, checked, times, item);
    return lists.map(({ cell }, index) => beat(frames[index]!, { kind: 'fill', targets: [{ kind: 'cells', cells: [cell] }] }));
  });
}

/**
 * Each digit with a mark about its cell for as long as a strike stands, each removal struck until the cascade goes on
 * (what comes next may rest on it).
 */
function cascadeBeats({ grid, pacing }: DefaultTelling, checked: CheckedStep, times: ScheduledStep): PlainBeat[] {
  const frames = times.cascade.flat();
  const told = checked.conclusions.filter(({ origin }) => origin === 'cascade');
  const stays = framesIn(pacing, pacing.motion.strike + pacing.motion.strikeHold);
  return told.flatMap((each, index): PlainBeat[] => {
    const from = frames[index];
    if (from === undefined || each.verdict === 'spent') return [];
    const until = frameAt(Math.min(from + stays, times.until));
    const placed = placedCandidate(each);
    if (placed !== undefined) return [beat(from, { kind: 'place', cells: [cellOf(grid, placed)] }, until)];
    if (each.conclusion.kind !== 'impossible') return [];
    const next = frames.slice(index + 1).find((frame) => frame > from) ?? times.until;
    return [beat(from, { kind: 'strike', candidates: [each.conclusion.candidate], gone: undefined }, frameAt(Math.min(until, next)))];
  });
}

/** The house of a set that is named by a digit and a house (`7c5`); undefined for any other. */
function houseOfSet(grid: Grid, { name }: ArgumentSet): HouseShape | undefined {
  const match = /^\d+([rcb]\d+)$/.exec(name);
  return grid.houses.find((house) => house.name === match?.[1]);
}

function cellsOf(grid: Grid, candidates: readonly Candidate[]): Cell[] {
  return [...new Set(candidates.map((candidate) => cellOf(grid, candidate)))].sort((a, b) => a - b);
}
