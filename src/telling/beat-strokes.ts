/**
 * What a beat draws: its targets resolved in the board's state, each stroke with its first frame and the frame on which
 * what it is on has gone.
 */

import { sidesOf } from '../check/sides.ts';
import type { CheckedConclusion, CheckedLink, CheckedStep } from '../check/verdict.ts';
import { type Candidate, membersOf } from '../grid/candidates.ts';
import { type Cell, cellOf, digitOf } from '../grid/grid.ts';
import type { Target } from '../grid/terms.ts';
import { toNumber } from '../scene/fraction.ts';
import type { BeatMark, Group, LinkRange, Sight, Supposed } from '../scene/scene.ts';
import { type Frame, frameAt, type MarkGroup, type MarkShape } from '../timeline/film.ts';
import type { BoardState } from './board-state.ts';
import { breaking, playedOut } from './ghosts.ts';
import { drawableLinks } from './links.ts';
import { evenly, oneAfterAnother, type Pacing } from './pacing.ts';
import { linesOfSight } from './sights.ts';
import { candidatesOfTargets, cellsOfTargets, type TargetCell } from './targets.ts';
import { markGroupOf, sideGroups, type ToldBeat } from './told-beat.ts';
import type { ToldConclusion } from './told-conclusions.ts';

export interface BeatContext {
  readonly board: BoardState;
  readonly pacing: Pacing;
  readonly draw: 'overlay' | 'writing' | 'board';
  /** Of the scene. */
  readonly groups: readonly Group[];
  readonly step: CheckedStep;
  /** The step's end. */
  readonly until: Frame;
  readonly told: readonly ToldConclusion[];
  /** Whether the beat's step has drawn this in the beat's colour already, and it stands when the beat begins. */
  readonly stands: (shape: MarkShape) => boolean;
}

export interface Stroke {
  readonly shape: MarkShape;
  readonly from: Frame;
  /** Where it is not the beat's own. */
  readonly group?: MarkGroup;
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
      return arrows(context, mark.links, from, (count) => evenly(from, count, 0));
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

/** One after another, so that the first begins with the beat; those that stand already are not drawn again. */
function circles(context: BeatContext, candidates: readonly Candidate[], { from, room }: ToldBeat): Stroke[] {
  const shapes = candidates.map((candidate): MarkShape => ({ kind: 'circle', candidate }));
  const strokes = spread(context, shapes, from, (count) =>
    oneAfterAnother(context.pacing, { from, until: room }, count),
  );
  return [...strokes, ...strokes.flatMap((stroke) => ringAfter(context, stroke))];
}

/**
 * Where the step writes the digit of what its `show` has circled, the ring goes round that digit until the step ends. A
 * step that tells itself circles the place to find it, and the frame of the placement then says enough.
 */
function ringAfter(context: BeatContext, { shape, from, group }: Stroke): Stroke[] {
  if (shape.kind !== 'circle' || context.step.step.show === undefined) return [];
  const written = writtenBy(context, shape.candidate);
  if (written === undefined || written.from <= from) return [];
  const { cell, digit } = written;
  const ring = { shape: { kind: 'ring', cell, digit }, from: written.from, until: context.until } as const;
  return [group === undefined ? ring : { ...ring, group }];
}

/** The digit that the step itself writes for the candidate. */
function writtenBy({ board, step }: BeatContext, candidate: Candidate) {
  const cell = cellOf(board.grid, candidate);
  const digit = board.digitOf(cell);
  const isOwn = digit?.step === step.step.id && digit.digit === digitOf(board.grid, candidate);
  return isOwn ? { cell, digit: digit.digit, from: frameAt(digit.from) } : undefined;
}

/** The cluster of the candidate, its own side first, each side in its own colour. */
function sides(context: BeatContext, mark: Extract<BeatMark, { kind: 'sides' }>, beat: ToldBeat): Stroke[] {
  const { board, groups, step } = context;
  const found = sidesOf(board.grid, step.argument.sets, mark.candidate.value);
  if (found === undefined) return [];
  const [own, other] = mark.groups?.map((name) => markGroupOf(groups, name)) ?? [];
  const [first, second] = sideGroups(groups);
  const placed = [
    ...found.own.map((candidate) => ({ candidate, group: own ?? first })),
    ...found.other.map((candidate) => ({ candidate, group: other ?? second })),
  ].filter(({ candidate }) => board.showsUntil(candidate) > beat.from);
  const frames = oneAfterAnother(context.pacing, { from: beat.from, until: beat.room }, placed.length);
  const strokes = placed.map(
    ({ candidate, group }, index): Stroke => ({
      shape: { kind: 'circle', candidate },
      from: frames[index] ?? beat.from,
      until: board.showsUntil(candidate),
      group,
    }),
  );
  return [...strokes, ...strokes.flatMap((stroke) => ringAfter(context, stroke))];
}

/**
 * The proof played out over the time that the beat has; then the ghosts go, whatever is kept. It is over when the first
 * of the step's conclusions takes effect, for then what was supposed may be gone.
 */
function ghosts(context: BeatContext, supposed: Supposed, { from, room: atMost }: ToldBeat): Stroke[] {
  const { board, pacing, step, told } = context;
  const room = frameAt(Math.min(atMost, ...told.filter((each) => each.from > from).map((each) => each.from)));
  const mostApart = linkApartMost * toNumber(pacing.rate);
  return playedOut(board.grid, step, supposed, { from, room, mostApart }).map(({ shape, from: first, until }) => ({
    shape,
    from: first,
    until: Math.min(until, ...candidatesOf(shape).map((candidate) => board.showsUntil(candidate))),
  }));
}

/** What breaks an argument that is meant to fail, and then the words. */
function trap(context: BeatContext, { from, room }: ToldBeat): Stroke[] {
  const { board, step, pacing } = context;
  const { ghosts, words } = breaking(board.grid, step);
  const strokes = spread(context, ghosts, from, (count) => oneAfterAnother(pacing, { from, until: room }, count));
  const last = strokes.at(-1)?.from ?? from;
  return [...strokes, ...words.map((shape) => ({ shape, from: last, until: stays }))];
}

/** The links one after another over the time that the beat has; each goes when an end of it goes. */
function links(context: BeatContext, named: 'all' | readonly LinkRange[], { from, room }: ToldBeat): Stroke[] {
  const { pacing, step } = context;
  const most = linkApartMost * toNumber(pacing.rate);
  const apart = (count: number) => Math.min(most, ((room - from) * 0.85) / Math.max(1, count));
  return arrows(context, drawableLinks(step, named), from, (count) => evenly(from, count, apart(count)));
}

/** What of the links has both ends on the board, on the frames that there are for so many. */
function arrows(
  context: BeatContext,
  named: readonly CheckedLink[],
  from: Frame,
  framesFor: (count: number) => readonly Frame[],
): Stroke[] {
  const { board } = context;
  const standing = (candidates: readonly Candidate[]) =>
    candidates.filter((candidate) => board.showsUntil(candidate) > from);
  const shapes = named
    .map((link) => ({
      kind: 'link' as const,
      link: link.kind,
      from: standing(link.fromCandidates),
      to: standing(link.toCandidates),
    }))
    .filter((link) => link.from.length > 0 && link.to.length > 0);
  return spread(context, shapes, from, framesFor);
}

/** Lines to what is removed, one after another; each goes when an end of it goes. */
function reaches(
  context: BeatContext,
  lines: readonly { readonly from: Candidate; readonly to: Candidate }[],
  { from, room }: ToldBeat,
): Stroke[] {
  const shapes = lines.map((line) => ({ kind: 'reach' as const, ...line }));
  return spread(context, shapes, from, (count) => oneAfterAnother(context.pacing, { from, until: room }, count));
}

/** What stands already from the beat's frame on, all else in order on the frames that there are for so many. */
function spread(
  context: BeatContext,
  shapes: readonly MarkShape[],
  from: Frame,
  framesFor: (count: number) => readonly Frame[],
): Stroke[] {
  const { board } = context;
  // A link stays with the digit that is written for its end, as long as its other end stands.
  const lasts = (shape: MarkShape, candidate: Candidate) =>
    shape.kind === 'link' && writtenBy(context, candidate) !== undefined ? context.until : board.showsUntil(candidate);
  const fresh = shapes.filter((shape) => !context.stands(shape));
  const frames = framesFor(fresh.length);
  return shapes.map((shape): Stroke => {
    const first = frames[fresh.indexOf(shape)] ?? from;
    const until = Math.min(...candidatesOf(shape).map((candidate) => lasts(shape, candidate)));
    return { shape, from: first, until };
  });
}

function candidatesOf(shape: MarkShape): readonly Candidate[] {
  if (shape.kind === 'circle') return [shape.candidate];
  if (shape.kind === 'ghost') return shape.candidates;
  if (shape.kind === 'clash') return shape.between.flat();
  if (shape.kind === 'reach') return [shape.from, shape.to];
  return shape.kind === 'link' ? [...shape.from, ...shape.to] : [];
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
