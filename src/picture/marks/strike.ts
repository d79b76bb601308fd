/**
 * A removal: a slash across the small digit on a tinted disc, in the one colour that nothing else has. It falls from left to right,
 * against the slant that 1, 2, 4 and 7 have in common, so that it lies along no stroke of a digit.
 */
import type { Point } from '../../scene/scene.ts';
import { ringRadius } from '../node-shape.ts';
import { begun, circle, line } from '../path.ts';
import { fillPaths, strokePaths, strokeWidth } from '../pen.ts';
import { pointOfCandidate } from '../small-digits.ts';
import type { BoardStage, Standing } from '../stage.ts';

/** Flatter than a diagonal, so that the slashes of small digits that stand aslant do not run into one. */
const slope = 0.56;

export function paintStrike(stage: BoardStage, { mark, ink }: Standing, part: 'disc' | 'slash'): void {
  if (mark.shape.kind !== 'strike') return;
  const { look } = stage;
  const [x, y] = pointOfCandidate(stage.film, mark.shape.candidate);
  if (part === 'disc') {
    const disc = circle([x, y], ringRadius(stage));
    fillPaths(stage, [disc], look.colours.removal, look.inks.disc * ink.progress * ink.alpha);
    return;
  }
  const reach = look.type.candidate * look.type.emphasis * 0.7;
  const [from, to]: [Point, Point] = [
    [x - reach, y - reach * slope],
    [x + reach, y + reach * slope],
  ];
  strokePaths(stage, [begun(line(from, to), ink.progress)], {
    colour: look.colours.removal,
    width: strokeWidth(stage, look.strokes.strike),
    alpha: ink.alpha,
    cased: true,
  });
}
