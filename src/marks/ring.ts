/**
 * A ring around a digit that has been written for a circled candidate. Each group has its own kind of ring in addition
 * to its colour, with a tinted disc inside.
 */
import { spokenCells } from '../grid/notation/spoken.ts';
import { each, type MarkPainting, none } from '../picture/painting.ts';
import { begun, circle } from '../picture/path.ts';
import { fillPaths, strokePaths, strokeWidth } from '../picture/pen.ts';
import { digitRingRadius, ringOf } from '../picture/ring-lines.ts';
import { middleOf } from '../picture/small-digits.ts';
import { type BoardStage, colourOf, type Standing } from '../picture/stage.ts';
import { inColour, type MarkWords, never } from './words.ts';

export const words = {
  clause: ([shape], manner) =>
    shape === undefined
      ? ''
      : `the ${shape.digit} in ${spokenCells(manner.grid, [shape.cell])} is circled${inColour(manner)}`,
  isClaim: false,
  areJoined: false,
  // It continues around a digit that is described as written.
  isNews: false,
  answers: never,
} satisfies MarkWords<'ring'>;

export const painting = {
  comesIn: (_, motion) => motion.circle,
  candidates: none,
  isRinged: false,
  covers: none,
  onBoard: { disc: each(paintDisc), ring: each(paintRing) },
  onFrame: {},
} satisfies MarkPainting<'ring'>;

function paintDisc(stage: BoardStage, { mark, ink }: Standing<'ring'>): void {
  if (mark.group === undefined) return;
  const centre = middleOf(stage.film.grid, mark.shape.cell);
  const alpha = stage.look.inks.disc * ink.progress * ink.alpha;
  fillPaths(stage, [circle(centre, digitRingRadius)], colourOf(stage, mark), alpha);
}

function paintRing(stage: BoardStage, { mark, ink }: Standing<'ring'>): void {
  const centre = middleOf(stage.film.grid, mark.shape.cell);
  const width = strokeWidth(stage, stage.look.strokes.circle);
  const ring = ringOf(mark.group?.index, centre, digitRingRadius, width);
  const paths = ring.paths.map((path) => begun(path, ink.progress));
  strokePaths(stage, paths, {
    colour: colourOf(stage, mark),
    width: width * ring.weight,
    alpha: ink.alpha,
    cased: true,
    cap: ring.cap,
  });
}
