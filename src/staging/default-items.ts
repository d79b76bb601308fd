/**
 * How lists and cascades draw themselves in a step without `show`, each item at its own frame.
 */

import type { CheckedStep } from '../check/verdict.ts';
import { candidateAt, cellOf, type Grid } from '../grid/grid.ts';
import { fraction } from '../scene/fraction.ts';
import { type Frame, frameAt } from '../timeline/film.ts';
import type { ScheduledStep } from '../timeline/schedule.ts';
import { itemArgumentMarks } from './default-argument.ts';
import { between, framesIn, type Pacing } from './pacing.ts';
import type { StagedMark } from './staged-beat.ts';
import { listFrames, placedCandidate } from './staged-conclusions.ts';

/** A mark with its first frame; `until` if it ends before the step does. */
export interface PlainBeat {
  readonly from: Frame;
  readonly until?: Frame | undefined;
  readonly mark: StagedMark;
}

export interface ItemStaging {
  readonly grid: Grid;
  readonly pacing: Pacing;
  readonly draw: 'overlay' | 'writing' | 'board';
}

/** The beats of a step's lists and cascade. Over a recording, lists draw nothing. */
export function itemBeats(staging: ItemStaging, checked: CheckedStep, times: ScheduledStep): PlainBeat[] {
  const cascade = cascadeBeats(staging, checked, times);
  if (staging.draw === 'overlay') return cascade;
  return [...onlyBeats(staging, checked, times), ...pencilBeats(staging, checked, times), ...cascade];
}

/** The house, and a circle on each place of the digit in it. */
function onlyBeats({ grid }: ItemStaging, { step }: CheckedStep, times: ScheduledStep): PlainBeat[] {
  return step.only.flatMap(({ places }, item) => {
    const from = times.only[item] ?? times.from;
    return places.flatMap(({ digit, house, cells }): PlainBeat[] => {
      const candidates = cells.map((cell) => candidateAt(grid, cell, digit));
      return [
        { from, mark: { kind: 'outline', targets: [{ kind: 'house', house }] } },
        { from, mark: { kind: 'circle', targets: [{ kind: 'candidates', candidates }] } },
      ];
    });
  });
}

/** Each cell tinted as its list is written. */
function pencilBeats({ pacing }: ItemStaging, checked: CheckedStep, times: ScheduledStep): PlainBeat[] {
  return checked.step.pencil.flatMap(({ lists }, item) => {
    const frames = listFrames(pacing, checked, times, item);
    return lists.map(
      ({ cell }, index): PlainBeat => ({
        from: frames[index]!,
        mark: { kind: 'fill', targets: [{ kind: 'cells', cells: [cell] }] },
      }),
    );
  });
}

/**
 * Each digit with a mark around its cell for about a second; each removal struck, at the latest until the cascade
 * continues, since what comes next may rest on it.
 */
function cascadeBeats(staging: ItemStaging, checked: CheckedStep, times: ScheduledStep): PlainBeat[] {
  const { grid, pacing, draw } = staging;
  const frames = times.cascade.flat();
  const staged = checked.conclusions.filter(({ origin }) => origin === 'cascade');
  const { strike, strikeHold } = pacing.motion;
  return staged.flatMap((each, index): PlainBeat[] => {
    const from = frames[index];
    if (from === undefined || each.verdict === 'redundant') return [];
    const until = Math.min(from + framesIn(pacing, strike) + framesIn(pacing, strikeHold), times.until);
    const reasons = reasonBeats(staging, checked, times, each, from);
    const placed = placedCandidate(each);
    if (placed !== undefined) {
      return [...reasons, { from, until: frameAt(until), mark: { kind: 'place', cells: [cellOf(grid, placed)] } }];
    }
    if (each.conclusion.kind !== 'impossible') return [];
    const next = frames.slice(index + 1).find((frame) => frame > from) ?? times.until;
    return [
      ...reasons,
      {
        from,
        until: draw === 'overlay' ? undefined : frameAt(Math.min(until, next)),
        mark: { kind: 'strike', candidates: [each.conclusion.candidate], gone: undefined },
      },
    ];
  });
}

/**
 * The argument of an item that brings its own (`from`, `chain`, `because`): all of it together, in the second half of
 * the time since the previous digit or removal, so that it can be seen before what follows from it comes; it stays as
 * long as the last of those.
 */
function reasonBeats(
  { grid, pacing }: ItemStaging,
  { step, conclusions }: CheckedStep,
  times: ScheduledStep,
  each: CheckedStep['conclusions'][number],
  drawnAt: Frame,
): PlainBeat[] {
  const item = step.cascade[each.item];
  if (item === undefined || each.argument === undefined || each.verdict !== 'proved') return [];
  if (item.from.length === 0 && item.chains.length === 0 && item.because === undefined) return [];
  const isFirst = conclusions.find(({ origin, item: other }) => origin === 'cascade' && other === each.item) === each;
  if (!isFirst) return [];
  const before = [times.claimUntil, ...times.cascade.flat()].filter((frame) => frame < drawnAt);
  const from = Math.max(
    between(frameAt(Math.max(times.from, ...before)), drawnAt, fraction(1, 2)),
    drawnAt - framesIn(pacing, 3),
  );
  const { strike, strikeHold } = pacing.motion;
  const last = Math.max(drawnAt, ...(times.cascade[each.item] ?? []));
  const until = frameAt(Math.min(last + framesIn(pacing, strike) + framesIn(pacing, strikeHold), times.until));
  return itemArgumentMarks(grid, each.argument).map((mark) => ({ from: frameAt(from), until, mark }));
}
