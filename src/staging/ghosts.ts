/**
 * Ghosts: what follows from a supposition, one candidate after another, until the clash; and the choice that breaks the
 * argument of a false step.
 */
import { playStep, suppositionsOf } from '../check/suppositions.ts';
import type { CheckedStep } from '../check/verdict.ts';
import { cellOf, type Grid } from '../grid/grid.ts';
import { add, divide, type Fraction, fraction, multiply } from '../scene/fraction.ts';
import type { Supposed } from '../scene/scene.ts';
import type { Frame, MarkShape } from '../timeline/film.ts';
import { earlierOf, nearestFrame } from '../timeline/seconds.ts';
import { breakingChoice, victimsOf } from './breaking-choice.ts';
import { evenly } from './pacing.ts';
import type { Drawable } from './strokes.ts';

/** A ghost or a clash, with its first frame and the frame on which its play-out is over. */
export interface GhostStroke {
  readonly shape: MarkShape;
  readonly from: Frame;
  readonly until: Frame;
}

export interface GhostTime {
  readonly from: Frame;
  /** When the last play-out is over. */
  readonly room: Frame;
  /** The most frames (a fraction) from one ghost to the next. */
  readonly mostApart: Fraction;
}

/**
 * The play-outs of a step's argument, each over its share of the time; the ghosts of one disappear before the next
 * begins.
 */
export function playedOut(grid: Grid, step: CheckedStep, supposed: Supposed, time: GhostTime): GhostStroke[] {
  const plays = suppositionsOf(grid, step, supposed).map((each) => shapesOf(grid, step, each));
  const count = plays.reduce((sum, shapes) => sum + shapes.length + restAfter, 0);
  let before = 0;
  return plays.flatMap((shapes) => {
    const share = divide(fraction(time.room - time.from), fraction(count));
    const at = (place: number) => nearestFrame(add(fraction(time.from), multiply(share, fraction(before + place))));
    const [from, until] = [at(0), at(shapes.length + restAfter)];
    const frames = evenly(from, shapes.length, earlierOf(time.mostApart, share));
    before += shapes.length + restAfter;
    return shapes.map((shape, index) => ({ shape, from: frames[index]!, until }));
  });
}

/** How long a finished play-out stays on screen, counted in ghosts. */
const restAfter = 2;

function shapesOf(grid: Grid, step: CheckedStep, supposition: Parameters<typeof playStep>[2]): MarkShape[] {
  const { ghosts, end } = playStep(grid, step, supposition);
  const shapes = ghosts
    .filter(({ candidates }) => candidates.length > 0)
    .map(({ candidates, isTrue }): MarkShape => ({ kind: 'ghost', candidates, isTrue }));
  return end.kind === 'clash' ? [...shapes, { kind: 'clash', between: end.between }] : shapes;
}

/** The label on what a false step does not prove. */
const doesNotFollow = 'does not follow';

/**
 * The choice that breaks the argument, each candidate as a ghost that is true, and a word at what does not follow; no word
 * in a step that is not sound, of which something may follow.
 */
export function breaking(
  grid: Grid,
  step: CheckedStep,
): { readonly ghosts: readonly Drawable[]; readonly words: readonly MarkShape[] } {
  const victims = step.sound ? victimsOf(step) : [];
  return {
    ghosts: breakingChoice(step).map((candidate) => ({
      shape: { kind: 'ghost', candidates: [candidate], isTrue: true },
      on: [candidate],
    })),
    words: victims.map((candidate) => ({
      kind: 'label',
      cell: cellOf(grid, candidate),
      candidate,
      text: doesNotFollow,
    })),
  };
}
