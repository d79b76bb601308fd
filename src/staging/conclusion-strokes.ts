/**
 * What a step concludes: strikes and placements or, in a false step, what breaks it.
 */
import type { CheckedConclusion } from '../check/verdict.ts';
import { type Candidate, membersOf } from '../grid/candidates.ts';
import { cellOf, digitOf } from '../grid/grid.ts';
import { breaking } from './ghosts.ts';
import { oneAfterAnother } from './pacing.ts';
import type { StagedBeat } from './staged-beat.ts';
import { type BeatContext, type Stroke, spread, stays } from './strokes.ts';

/**
 * What a beat that strikes or places draws. In a false step nothing is struck or placed: what breaks it is shown
 * instead.
 */
export function conclusionStrokes(context: BeatContext, beat: StagedBeat): Stroke[] {
  return context.step.step.fails ? falseStep(context, beat) : conclusions(context, beat);
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

/** What breaks the argument of a false step, and then the words. */
function falseStep(context: BeatContext, { from, room }: StagedBeat): Stroke[] {
  const { board, step, pacing } = context;
  const { ghosts, words } = breaking(board.grid, step);
  const strokes = spread(context, ghosts, from, (count) => oneAfterAnother(pacing, { from, until: room }, count));
  const last = strokes.at(-1)?.from ?? from;
  return [...strokes, ...words.map((shape) => ({ shape, from: last, until: stays }))];
}

/**
 * A strike disappears with its candidate; an unproved one stays, as the candidate does. Over a recording, which may go
 * on showing the candidate, it stays until its `gone` or the end of its step or, if it is kept, until a digit covers
 * the place.
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
