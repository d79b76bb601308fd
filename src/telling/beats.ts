/**
 * A beat becomes marks: its targets resolved in the board's state, each mark with the frames from which and until which
 * it stands. A mark ends with its step (or lives on with `keep`), and before that with the candidate that it is on.
 */
import { Bug } from '../grid/bug.ts';
import { type Candidate, membersOf } from '../grid/candidates.ts';
import { cellOf, digitOf } from '../grid/grid.ts';
import type { CheckedConclusion, CheckedStep } from '../check/verdict.ts';
import { toNumber } from '../scene/fraction.ts';
import type { Group } from '../scene/scene.ts';
import { type Frame, frameAt, type MarkShape } from '../timeline/film.ts';
import type { BoardState } from './board-state.ts';
import { drawableLinks } from './links.ts';
import type { MarkList } from './mark-list.ts';
import { evenly, oneAfterAnother, type Pacing } from './pacing.ts';
import { linesOfSight } from './sights.ts';
import { candidatesOfTargets, cellsOfTargets, type TargetCell } from './targets.ts';
import type { ToldBeat } from './told-beat.ts';
import type { ToldConclusion } from './told-conclusions.ts';

export interface Drawing {
  readonly board: BoardState;
  readonly pacing: Pacing;
  readonly frameCount: number;
  readonly groups: readonly Group[];
  readonly draw: 'overlay' | 'writing' | 'board';
  readonly marks: MarkList;
}

export interface StepDrawing extends Drawing {
  readonly step: CheckedStep;
  readonly until: Frame;
  readonly told: readonly ToldConclusion[];
}

/** At most so long from one link to the next, in seconds: about as long as a sentence about it. */
const linkApartMost = 2.5;

/** Draws the beat into the list of marks. */
export function drawBeat(drawing: StepDrawing, beat: ToldBeat): void {
  const { board, pacing, marks } = drawing;
  const { mark, from } = beat;
  const add = (shape: MarkShape, first: Frame = from, last: number = Number.POSITIVE_INFINITY) =>
    marks.add({
      from: first,
      until: frameAt(Math.min(last, endOf(drawing, beat, shape))),
      step: drawing.step.step.id,
      group: beat.group,
      shape,
    });
  switch (mark.kind) {
    case 'fill':
      return drawFills(drawing, beat, add);
    case 'circle': {
      const candidates = candidatesOfTargets(board, mark.targets, from);
      const frames = oneAfterAnother(pacing, from, candidates.length);
      candidates.forEach((candidate, index) => {
        add({ kind: 'circle', candidate }, frames[index], board.showsUntil(candidate));
      });
      return;
    }
    case 'link':
      return drawLinks(drawing, beat, add);
    case 'strike':
    case 'place':
      return drawConclusions(drawing, beat, add);
    case 'outline':
      for (const target of mark.targets) {
        const cells = cellsOfTargets(board, [target], from).map(({ cell }) => cell);
        if (cells.length > 0) add({ kind: 'outline', cells });
      }
      return;
    case 'label':
      for (const { cell, candidate } of cellsOfTargets(board, [mark.target], from)) {
        add({ kind: 'label', cell, candidate, text: mark.text }, from, lastOf(board, candidate));
      }
      return;
    case 'note':
      return add({ kind: 'note', text: mark.text });
    case 'ask':
      return add({ kind: 'ask', text: mark.text });
    case 'focus':
      marks.end(from, ({ shape }) => shape.kind === 'focus');
      return add({ kind: 'focus', cells: cellsOfTargets(board, mark.targets, from).map(({ cell }) => cell) });
    case 'sight':
      return drawSights(drawing, beat, add);
    case 'clear':
      return clear(drawing, beat);
    case 'sides':
    case 'suppose':
      throw new Bug(`step ${drawing.step.step.id}: a scene with "${mark.kind}" is refused when it is read`);
    default:
      return mark satisfies never;
  }
}

type Add = (shape: MarkShape, first?: Frame, last?: number) => void;

/** The first frame on which a mark of this beat stands no more, whatever becomes of its candidate. */
function endOf({ step, until, frameCount, draw }: StepDrawing, beat: ToldBeat, shape: MarkShape): number {
  const isClaim = shape.kind === 'link' || shape.kind === 'strike' || shape.kind === 'place';
  // A claim of a step that is not sound must not outlive the stamp.
  if (beat.keep && (step.sound || !isClaim)) return frameCount;
  if (beat.gone !== undefined && draw === 'overlay' && step.sound) return beat.gone;
  return Math.min(beat.until ?? until, until);
}

function lastOf(board: BoardState, candidate: Candidate | undefined): number {
  return candidate === undefined ? Number.POSITIVE_INFINITY : board.showsUntil(candidate);
}

/** One mark for all cells that stand equally long. */
function drawFills({ board }: StepDrawing, { mark, from }: ToldBeat, add: Add): void {
  if (mark.kind !== 'fill') return;
  const byEnd = new Map<number, TargetCell[]>();
  for (const cell of cellsOfTargets(board, mark.targets, from)) {
    const last = lastOf(board, cell.candidate);
    byEnd.set(last, [...(byEnd.get(last) ?? []), cell]);
  }
  for (const [last, cells] of byEnd) add({ kind: 'fill', cells: cells.map(({ cell }) => cell) }, from, last);
}

/** The links one after another over the time that the beat has; each goes when an end of it goes. */
function drawLinks({ board, pacing, step }: StepDrawing, { mark, from, room }: ToldBeat, add: Add): void {
  if (mark.kind !== 'link') return;
  const links = drawableLinks(step, mark.links);
  const most = linkApartMost * toNumber(pacing.rate);
  const apart = Math.min(most, ((room - from) * 0.85) / Math.max(1, links.length));
  const frames = evenly(from, links.length, apart);
  links.forEach((link, index) => {
    const first = frames[index]!;
    const stands = (candidate: Candidate) => board.showsUntil(candidate) > first;
    const [near, far] = [link.fromCandidates.filter(stands), link.toCandidates.filter(stands)];
    if (near.length === 0 || far.length === 0) return;
    const last = Math.min(...[...near, ...far].map((candidate) => board.showsUntil(candidate)));
    add({ kind: 'link', link: link.kind, from: near, to: far }, first, last);
  });
}

/** Strikes and placements: what the step concludes and this beat is the first to draw. */
function drawConclusions(drawing: StepDrawing, beat: ToldBeat, add: Add): void {
  const { board } = drawing;
  for (const { checked, drawn } of drawing.told) {
    if (drawn?.beat !== beat) continue;
    if (checked.conclusion.kind === 'one-of') {
      for (const candidate of membersOf(checked.conclusion.candidates)) {
        add({ kind: 'place', cell: cellOf(board.grid, candidate), digit: digitOf(board.grid, candidate) }, drawn.from);
      }
      continue;
    }
    const { candidate } = checked.conclusion;
    add({ kind: 'strike', candidate }, drawn.from, endOfStrike(drawing, beat, checked, candidate));
  }
}

/**
 * A strike goes with its candidate; one that is not proved stays, as the candidate does. Over a recording, which goes on
 * showing the candidate for as long as it likes, a strike stays until its `gone` or the end of its step, or is kept, until a digit covers it.
 */
function endOfStrike({ board, draw, until }: StepDrawing, beat: ToldBeat, { verdict }: CheckedConclusion, candidate: Candidate): number {
  if (verdict !== 'proved') return Number.POSITIVE_INFINITY;
  if (draw !== 'overlay') return board.showsUntil(candidate);
  const wanted = beat.keep ? Number.POSITIVE_INFINITY : (beat.gone ?? beat.until ?? until);
  return Math.min(wanted, board.shutOutFrom(candidate));
}

/** Lines from a digit that stands by then; they begin when it does. */
function drawSights({ board }: StepDrawing, { mark, from }: ToldBeat, add: Add): void {
  if (mark.kind !== 'sight') return;
  for (const sight of mark.sights) {
    const standing = board.digitOf(sight.cell);
    if (standing === undefined || (sight.digit !== undefined && sight.digit !== standing.digit)) continue;
    const first = frameAt(Math.max(from, standing.from));
    const isOpen = (cell: typeof sight.cell) => (board.digitOf(cell)?.from ?? Number.POSITIVE_INFINITY) > first;
    for (const line of linesOfSight(board.grid, sight, isOpen)) add(line, first);
  }
}

function clear({ marks, groups }: StepDrawing, { mark, from }: ToldBeat): void {
  if (mark.kind !== 'clear') return;
  const { what } = mark;
  marks.end(from, ({ step, group, shape }) => {
    if (shape.kind === 'stamp') return false;
    if (what === 'all' || what.includes(step)) return true;
    const name = group === undefined ? undefined : groups[group.index]?.name;
    return name !== undefined && what.includes(name);
  });
}
