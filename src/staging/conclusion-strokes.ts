/**
 * What a step concludes: strikes and placements, or, in a step that is meant to fail, what breaks it.
 */
import type { CheckedConclusion } from '../check/verdict.ts';
import { type Candidate, membersOf } from '../grid/candidates.ts';
import { cellOf, digitOf } from '../grid/grid.ts';
import { breaking } from './ghosts.ts';
import { oneAfterAnother } from './pacing.ts';
import type { StagedBeat } from './staged-beat.ts';
import { type BeatContext, type Stroke, spread, stays } from './strokes.ts';

/**
 * What a beat that strikes or places draws. In a step that is meant to fail nothing is struck or placed: what breaks it
 * is shown instead.
 */
export function conclusionStrokes(context: BeatContext, beat: StagedBeat): Stroke[] {
  return context.step.step.fails ? trap(context, beat) : conclusions(context, beat);
}

/** Strikes and placements: what the step concludes and this beat is the first to draw. */
function conclusions(context: BeatContext, beat: StagedBeat): Stroke[] {
  const { grid } = context.board;
  return context.staged.flatMap(({ checked, drawn }): Stroke[] => {
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

/** What breaks an argument that is meant to fail, and then the words. */
function trap(context: BeatContext, { from, room }: StagedBeat): Stroke[] {
  const { board, step, pacing } = context;
  const { ghosts, words } = breaking(board.grid, step);
  const strokes = spread(context, ghosts, from, (count) => oneAfterAnother(pacing, { from, until: room }, count));
  const last = strokes.at(-1)?.from ?? from;
  return [...strokes, ...words.map((shape) => ({ shape, from: last, until: stays }))];
}

/**
 * A strike goes with its candidate; one that is not proved stays, as the candidate does. Over a recording, which goes on
 * showing the candidate for as long as it likes, it stays until its `gone` or the end of its step, or is kept, until a
 * digit covers the place.
 */
function endOfStrike(
  { board, draw, until }: BeatContext,
  beat: StagedBeat,
  { verdict }: CheckedConclusion,
  candidate: Candidate,
): number {
  if (verdict !== 'proved') return stays;
  if (draw !== 'overlay') return board.showsUntil(candidate);
  const wanted = beat.keep ? stays : (beat.gone ?? beat.until ?? until);
  return Math.min(wanted, board.shutOutFrom(candidate));
}
