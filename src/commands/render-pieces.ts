/**
 * The pieces of a lesson that a call asks for: the whole film, some of its steps, or each step separately.
 */
import { nearestWords } from '../scene/nearest-word.ts';
import type { Schedule, ScheduledStep } from '../timeline/schedule.ts';
import { wholeFrames } from '../timeline/seconds.ts';
import { UsageError } from '../verbs/usage-error.ts';
import type { RenderPlan } from './render-call.ts';

/** Frames `from` to `until` of the film, `until` not included. */
export interface Piece {
  /** The step's id, if each step is a piece. */
  readonly step: string | undefined;
  readonly from: number;
  readonly until: number;
}

/** `passed`: steps that are on no frame, and therefore have no piece. */
export function piecesOf(
  schedule: Schedule,
  plan: RenderPlan,
): { readonly pieces: readonly Piece[]; readonly passed: readonly string[] } {
  const steps = plan.steps === undefined ? schedule.steps : stepsOf(schedule.steps, plan.steps);
  if (!plan.byStep) {
    const from = plan.steps === undefined ? 0 : (steps[0]?.from ?? 0);
    const until = plan.steps === undefined ? schedule.frameCount : (steps.at(-1)?.until ?? 0);
    if (until <= from && plan.steps !== undefined) throw new UsageError(onNoFrame(steps));
    return { pieces: [{ step: undefined, from, until }], passed: [] };
  }
  const handle = wholeFrames(schedule.rate, plan.handles);
  const seen = steps.filter(({ from, until }) => until > from);
  if (seen.length === 0) throw new UsageError(onNoFrame(steps));
  const pieces = seen.map(({ id, from, until }) => ({
    step: id,
    from: Math.max(0, from - handle),
    until: Math.min(schedule.frameCount, until + handle),
  }));
  return { pieces, passed: steps.filter(({ from, until }) => until <= from).map(({ id }) => id) };
}

function stepsOf(
  steps: readonly ScheduledStep[],
  { first, last }: NonNullable<RenderPlan['steps']>,
): readonly ScheduledStep[] {
  const [from, to] = [placeOf(steps, first), last === undefined ? steps.length - 1 : placeOf(steps, last)];
  if (to < from)
    throw new UsageError(`--steps ${first}..${last}: ${last} comes before ${first}; write ${last}..${first}`);
  return steps.slice(from, to + 1);
}

function placeOf(steps: readonly ScheduledStep[], id: string): number {
  const place = steps.findIndex((step) => step.id === id);
  if (place >= 0) return place;
  const ids = steps.map((step) => step.id);
  const [nearest] = nearestWords(id, ids);
  throw new UsageError(
    `the scene has no step ${id}${nearest === undefined ? `; its steps are ${ids.join(', ')}` : `; did you mean ${nearest}?`}`,
  );
}

function onNoFrame(steps: readonly ScheduledStep[]): string {
  const [one, ...more] = steps.map(({ id }) => id);
  return more.length === 0
    ? `the step ${one} is on no frame; give it time`
    : `the steps ${[one, ...more].join(', ')} are on no frame; give them time`;
}
