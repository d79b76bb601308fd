/**
 * Ghosts: what would be true if something were. True: a dashed ring around the small digit, or around the whole node.
 * Not true: a thin bar below each digit of the node.
 */

import type { Candidate } from '../grid/candidates.ts';
import { type NodeShape, nodeShape, outlineOf, ringRadius } from '../picture/node-shape.ts';
import { each, type MarkPainting, none } from '../picture/painting.ts';
import { begun, begunDashes, dashes, line, type Path } from '../picture/path.ts';
import { fillPaths, strokePaths, strokeWidth } from '../picture/pen.ts';
import { roomFor, roundRoom } from '../picture/ring-room.ts';
import { pointOfCandidate } from '../picture/small-digits.ts';
import { type BoardStage, colourOf, type Standing } from '../picture/stage.ts';
import { always, areCandidates, type MarkWords } from './words.ts';

export const words = {
  clause: (shapes, { grid }) => {
    const states = shapes.map(
      ({ candidates, isTrue }) => `${areCandidates(grid, candidates)} ${isTrue ? 'true' : 'not true'}`,
    );
    return `supposed, in ghost ink: ${states.join(', ')}`;
  },
  isClaim: false,
  areJoined: true,
  isNews: true,
  answers: always,
} satisfies MarkWords<'ghost'>;

export const painting = {
  comesIn: (_, motion) => motion.circle,
  candidates: ({ candidates }) => candidates,
  isRinged: true,
  covers: none,
  onBoard: { line: each(paintGhost) },
  onFrame: {},
} satisfies MarkPainting<'ghost'>;

/** Parts of a cell, and of full ink. */
const ghostStroke = 0.034;
const ghostInk = 0.85;
const ghostTint = 0.1;

function paintGhost(stage: BoardStage, { mark, ink }: Standing<'ghost'>): void {
  const { candidates, isTrue } = mark.shape;
  const [first] = candidates;
  if (first === undefined) return;
  const colour = colourOf(stage, mark);
  const stroke = {
    colour,
    width: strokeWidth(stage, ghostStroke),
    alpha: ghostInk * ink.alpha,
    cased: true,
    cap: 'butt',
  } as const;
  const outline =
    candidates.length > 1
      ? outlineOf(ghostShape(stage, candidates))
      : [roundRoom(pointOfCandidate(stage.film, first), { ...roomFor(stage, first), radius: ghostRadius(stage) })];
  if (isTrue) {
    fillPaths(stage, outline, colour, ghostTint * ink.progress * ink.alpha);
    strokePaths(
      stage,
      outline.flatMap((path) => begunDashes(path, 0.11, 0.085, ink.progress)),
      stroke,
    );
    return;
  }
  if (candidates.length > 1) {
    const dots = outline.flatMap((path) => dashes(path, 0.035, 0.085));
    strokePaths(stage, dots, { ...stroke, width: stroke.width * 0.7, alpha: stroke.alpha * ink.progress });
  }
  strokePaths(
    stage,
    candidates.map((candidate) => begun(barBeneath(stage, candidate), ink.progress)),
    stroke,
  );
}

/** Inside the cell even at its lower edge. */
function barBeneath(stage: BoardStage, candidate: Candidate): Path {
  const [x, y] = pointOfCandidate(stage.film, candidate);
  const half = ghostRadius(stage) * 0.66;
  const under = y + ringRadius(stage) * 0.88;
  return line([x - half, under], [x + half, under]);
}

/** The dashed line around a supposed node. */
export function ghostShape(stage: BoardStage, candidates: readonly Candidate[]): NodeShape {
  return nodeShape(stage.film, ghostRadius(stage), candidates, [...stage.rooms.keys()]);
}

/** Wide enough to go around a circle, even if small digits are close by: its dashes must be recognisable. */
function ghostRadius(stage: BoardStage): number {
  return ringRadius(stage) * 1.12;
}
