/**
 * A circle round a candidate. Each group has its own kind of ring beside its colour: plain, double, dashed, notched,
 * beaded, cornered, with a tinted disc within. A circle without a group is a loop as a pencil draws it, its ends not
 * meeting, and nothing within.
 */

import type { Candidate } from '../grid/candidates.ts';
import { type MarkPainting, none } from '../picture/painting.ts';
import { begun } from '../picture/path.ts';
import { fillPaths, strokePaths, strokeWidth } from '../picture/pen.ts';
import { ringOf } from '../picture/ring-lines.ts';
import { roomFor, roundRoom, withinWalls } from '../picture/ring-room.ts';
import { pointOfCandidate } from '../picture/small-digits.ts';
import { type BoardStage, colourOf, type Standing } from '../picture/stage.ts';
import { areCandidates, inColour, type MarkWords } from './words.ts';

export const words = {
  clause: (shapes, manner) => {
    const candidates = shapes.map(({ candidate }) => candidate);
    return `${areCandidates(manner.grid, candidates)} circled${inColour(manner)}`;
  },
  areJoined: true,
  isNews: true,
  answers: ({ candidate }, isConcluded) => isConcluded(candidate),
} satisfies MarkWords<'circle'>;

export const painting = {
  comesIn: (_, motion) => motion.circle,
  candidates: ({ candidate }) => [candidate],
  isRinged: true,
  covers: none,
  onBoard: {
    disc: (stage, standing) => paintCircles(stage, standing, 'discs'),
    ring: (stage, standing) => paintCircles(stage, standing, 'rings'),
  },
  onFrame: {},
} satisfies MarkPainting<'circle'>;

/** The discs (under the digits) or the rings (over them). */
function paintCircles(stage: BoardStage, standing: readonly Standing<'circle'>[], part: 'discs' | 'rings'): void {
  const uncovered = new Map<Candidate, number>();
  const seen: (readonly [Standing, Candidate, number])[] = [];
  for (const one of [...standing].reverse()) {
    const { candidate } = one.mark.shape;
    const left = uncovered.get(candidate) ?? 1;
    seen.unshift([one, candidate, left]);
    uncovered.set(candidate, left * (1 - one.ink.progress * one.ink.alpha));
  }
  for (const [one, candidate, left] of seen) {
    if (left <= 0) continue;
    if (part === 'discs') paintDisc(stage, one, candidate, left);
    else paintRing(stage, one, candidate, left);
  }
}

function paintDisc(stage: BoardStage, { mark, ink }: Standing, candidate: Candidate, left: number): void {
  if (mark.group === undefined) return;
  const centre = pointOfCandidate(stage.film, candidate);
  const alpha = stage.look.inks.disc * ink.progress * ink.alpha * left;
  fillPaths(stage, [roundRoom(centre, roomFor(stage, candidate))], colourOf(stage, mark), alpha);
}

function paintRing(stage: BoardStage, { mark, ink }: Standing, candidate: Candidate, left: number): void {
  const centre = pointOfCandidate(stage.film, candidate);
  const width = strokeWidth(stage, stage.look.strokes.circle);
  const room = roomFor(stage, candidate);
  const ring = ringOf(mark.group?.index, centre, room.radius, width);
  const colour = colourOf(stage, mark);
  const alpha = ink.alpha * left;
  const paths = ring.paths.map((path) => begun(withinWalls(path, centre, room), ink.progress));
  strokePaths(stage, paths, { colour, width: width * ring.weight, alpha, cased: true, cap: ring.cap });
}
