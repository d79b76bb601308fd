/**
 * What a beat draws: its targets resolved in the board's state, each stroke with its first frame and the frame on which
 * what it is on has gone.
 */

import type { Candidate } from '../grid/candidates.ts';
import type { Cell } from '../grid/grid.ts';
import type { Target } from '../grid/terms.ts';
import { zero } from '../scene/fraction.ts';
import type { Sight, Supposed } from '../scene/scene.ts';
import { type Frame, frameAt, type MarkShape } from '../timeline/film.ts';
import type { BoardState } from './board-state.ts';
import { conclusions, trap } from './conclusion-strokes.ts';
import { playedOut } from './ghosts.ts';
import { arrows, linkApartMost, links, reaches } from './link-strokes.ts';
import { evenly, exactFramesIn } from './pacing.ts';
import { circles, sides } from './ring-strokes.ts';
import { linesOfSight } from './sights.ts';
import { type BeatContext, candidatesOf, type Stroke, stays } from './strokes.ts';
import { candidatesOfTargets, cellsOfTargets, type TargetCell } from './targets.ts';
import type { ToldBeat } from './told-beat.ts';

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
      return context.step.step.fails ? trap(context, beat) : conclusions(context, beat);
    case 'outline':
      return mark.targets
        .map((target) => cellsOf([target]))
        .filter((cells) => cells.length > 0)
        .map((cells) => standing({ kind: 'outline', cells }));
    case 'house':
      return [standing({ kind: 'outline', cells: mark.house.cells, line: mark.line })];
    case 'reach':
      return reaches(context, mark.reaches, beat);
    case 'opens':
      return mark.candidates.map((candidate) => ({
        shape: { kind: 'opens', candidate },
        from,
        until: board.openUntil(candidate),
      }));
    case 'arrows':
      return arrows(context, mark.links, from, (count) => evenly(from, count, zero));
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
      return sides(context, mark, beat);
    case 'suppose':
      return ghosts(context, mark.suppose, beat);
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

/**
 * The proof played out over the time that the beat has; then the ghosts go, whatever is kept. It is over when the first
 * of the step's conclusions takes effect, for then what was supposed may be gone.
 */
function ghosts(context: BeatContext, supposed: Supposed, { from, room: atMost }: ToldBeat): Stroke[] {
  const { board, pacing, step, told } = context;
  const room = frameAt(Math.min(atMost, ...told.filter((each) => each.from > from).map((each) => each.from)));
  const mostApart = exactFramesIn(pacing, linkApartMost);
  return playedOut(board.grid, step, supposed, { from, room, mostApart }).map(({ shape, from: first, until }) => ({
    shape,
    from: first,
    until: Math.min(until, ...candidatesOf(shape).map((candidate) => board.showsUntil(candidate))),
  }));
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
