/**
 * What a beat draws: its targets resolved in the board's state, each stroke with its first frame and the frame on which
 * what it is on has gone.
 */

import type { CheckedConclusion, CheckedStep } from '../check/verdict.ts';
import { Bug } from '../grid/bug.ts';
import { type Candidate, membersOf } from '../grid/candidates.ts';
import { type Cell, cellOf, digitOf } from '../grid/grid.ts';
import type { Target } from '../grid/terms.ts';
import { toNumber } from '../scene/fraction.ts';
import type { LinkRange, Sight } from '../scene/scene.ts';
import { type Frame, frameAt, type MarkShape } from '../timeline/film.ts';
import type { BoardState } from './board-state.ts';
import { breakingChoice } from './breaking-choice.ts';
import { drawableLinks } from './links.ts';
import { evenly, oneAfterAnother, type Pacing } from './pacing.ts';
import { linesOfSight } from './sights.ts';
import { candidatesOfTargets, cellsOfTargets, type TargetCell } from './targets.ts';
import type { ToldBeat } from './told-beat.ts';
import type { ToldConclusion } from './told-conclusions.ts';

export interface BeatContext {
  readonly board: BoardState;
  readonly pacing: Pacing;
  readonly draw: 'overlay' | 'writing' | 'board';
  readonly step: CheckedStep;
  /** The step's end. */
  readonly until: Frame;
  readonly told: readonly ToldConclusion[];
}

export interface Stroke {
  readonly shape: MarkShape;
  readonly from: Frame;
  /** The first frame on which what it is on is there no more; infinite where that stays. */
  readonly until: number;
}

const stays = Number.POSITIVE_INFINITY;

/** At most so long from one link to the next, in seconds: about as long as a sentence about it. */
const linkApartMost = 2.5;

/** The strokes of the beat, in the order in which they begin. */
export function strokesOf(context: BeatContext, beat: ToldBeat): Stroke[] {
  const { board } = context;
  const { mark, from } = beat;
  const standing = (shape: MarkShape): Stroke => ({ shape, from, until: stays });
  const cellsOf = (targets: readonly Target[]) => cellsOfTargets(board, targets, from).map(({ cell }) => cell);
  switch (mark.kind) {
    case 'fill':
      return fills(context, cellsOfTargets(board, mark.targets, from), from);
    case 'circle':
      return circles(context, candidatesOfTargets(board, mark.targets, from), beat);
    case 'link':
      return links(context, mark.links, beat);
    case 'strike':
    case 'place':
      // In a step that is meant to fail nothing is struck or placed: what breaks it is shown instead.
      return context.step.step.fails
        ? circles(context, breakingChoice(context.step), beat)
        : conclusions(context, beat);
    case 'outline':
      return mark.targets
        .map((target) => cellsOf([target]))
        .filter((cells) => cells.length > 0)
        .map((cells) => standing({ kind: 'outline', cells }));
    case 'label':
      return cellsOfTargets(board, [mark.target], from).map(({ cell, candidate }) => ({
        shape: { kind: 'label', cell, candidate, text: mark.text },
        from,
        until: lastOf(board, candidate),
      }));
    case 'note':
      return [standing({ kind: 'note', text: mark.text })];
    case 'ask':
      return [standing({ kind: 'ask', text: mark.text })];
    case 'focus': {
      const cells = cellsOf(mark.targets);
      return cells.length === 0 ? [] : [standing({ kind: 'focus', cells })];
    }
    case 'sight':
      return mark.sights.flatMap((sight) => lines(context, sight, from));
    case 'clear':
      return [];
    case 'sides':
    case 'suppose':
      throw new Bug(`step ${context.step.step.id}: a scene with "${mark.kind}" is refused when it is read`);
    default:
      return mark satisfies never;
  }
}

/** One fill for all cells that stand equally long. */
function fills({ board }: BeatContext, targets: readonly TargetCell[], from: Frame): Stroke[] {
  const byEnd = new Map<number, Cell[]>();
  for (const { cell, candidate } of targets) {
    const until = lastOf(board, candidate);
    byEnd.set(until, [...(byEnd.get(until) ?? []), cell]);
  }
  return [...byEnd].map(([until, cells]) => ({ shape: { kind: 'fill', cells }, from, until }));
}

function circles({ board, pacing }: BeatContext, candidates: readonly Candidate[], { from, room }: ToldBeat): Stroke[] {
  const frames = oneAfterAnother(pacing, { from, until: room }, candidates.length);
  return candidates.map((candidate, index) => ({
    shape: { kind: 'circle', candidate },
    from: frames[index]!,
    until: board.showsUntil(candidate),
  }));
}

/** The links one after another over the time that the beat has; each goes when an end of it goes. */
function links({ board, pacing, step }: BeatContext, named: 'all' | readonly LinkRange[], beat: ToldBeat): Stroke[] {
  const drawable = drawableLinks(step, named);
  const most = linkApartMost * toNumber(pacing.rate);
  const apart = Math.min(most, ((beat.room - beat.from) * 0.85) / Math.max(1, drawable.length));
  const frames = evenly(beat.from, drawable.length, apart);
  return drawable.flatMap(({ kind, fromCandidates, toCandidates }, index): Stroke[] => {
    const first = frames[index]!;
    const [from, to] = [fromCandidates, toCandidates].map((end) =>
      end.filter((candidate) => board.showsUntil(candidate) > first),
    );
    if (from === undefined || to === undefined || from.length === 0 || to.length === 0) return [];
    const until = Math.min(...[...from, ...to].map((candidate) => board.showsUntil(candidate)));
    return [{ shape: { kind: 'link', link: kind, from, to }, from: first, until }];
  });
}

/** Strikes and placements: what the step concludes and this beat is the first to draw. */
function conclusions(context: BeatContext, beat: ToldBeat): Stroke[] {
  const { grid } = context.board;
  return context.told.flatMap(({ checked, drawn }): Stroke[] => {
    if (drawn?.beat !== beat) return [];
    const { from } = drawn;
    if (checked.conclusion.kind === 'one-of') {
      return membersOf(checked.conclusion.candidates).map((candidate) => ({
        shape: { kind: 'place', cell: cellOf(grid, candidate), digit: digitOf(grid, candidate) },
        from,
        until: stays,
      }));
    }
    const { candidate } = checked.conclusion;
    return [{ shape: { kind: 'strike', candidate }, from, until: endOfStrike(context, beat, checked, candidate) }];
  });
}

/**
 * A strike goes with its candidate; one that is not proved stays, as the candidate does. Over a recording, which goes on
 * showing the candidate for as long as it likes, it stays until its `gone` or the end of its step, or is kept, until a
 * digit covers the place.
 */
function endOfStrike(
  { board, draw, until }: BeatContext,
  beat: ToldBeat,
  { verdict }: CheckedConclusion,
  candidate: Candidate,
): number {
  if (verdict !== 'proved') return stays;
  if (draw !== 'overlay') return board.showsUntil(candidate);
  const wanted = beat.keep ? stays : (beat.gone ?? beat.until ?? until);
  return Math.min(wanted, board.shutOutFrom(candidate));
}

/** Lines from a digit that stands by then; they begin when it does. */
function lines({ board }: BeatContext, sight: Sight, from: Frame): Stroke[] {
  const standing = board.digitOf(sight.cell);
  if (standing === undefined || (sight.digit !== undefined && sight.digit !== standing.digit)) return [];
  const first = frameAt(Math.max(from, standing.from));
  const isOpen = (cell: Cell) => (board.digitOf(cell)?.from ?? stays) > first;
  return linesOfSight(board.grid, sight, isOpen).map((shape) => ({ shape, from: first, until: stays }));
}

function lastOf(board: BoardState, candidate: Candidate | undefined): number {
  return candidate === undefined ? stays : board.showsUntil(candidate);
}
