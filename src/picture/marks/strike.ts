/**
 * A removal: a slash across the small digit on a tinted disc, in the one colour that nothing else has. It falls from
 * left to right, against the slant that 1, 2, 4 and 7 have in common, so that it lies along no stroke of a digit;
 * where it crosses the digit it is as clear as glass.
 */
import { ringRadius } from '../node-shape.ts';
import { circle, cut, length, line } from '../path.ts';
import { fillPaths, strokePaths, strokeWidth } from '../pen.ts';
import { pointOfCandidate } from '../small-digits.ts';
import type { BoardStage, Standing } from '../stage.ts';

/** How much of the slash, in cells, lets the digit show through. */
const glass = 0.24;

/** Flatter than a diagonal, so that the slashes of small digits that stand aslant do not run into one. */
const slope = 0.56;

/** The disc under the digit, or the slash over it. */
export function paintStrike(stage: BoardStage, { mark, ink }: Standing, part: 'disc' | 'slash'): void {
  if (mark.shape.kind !== 'strike') return;
  const { look } = stage;
  const [x, y] = pointOfCandidate(stage.film, mark.shape.candidate);
  if (part === 'disc') {
    const disc = circle([x, y], ringRadius(stage));
    fillPaths(stage, [disc], look.colours.removal, look.inks.disc * ink.progress * ink.alpha);
    return;
  }
  const reach = look.type.candidate * look.type.emphasis * 0.72;
  const slash = line([x - reach, y - reach * slope], [x + reach, y + reach * slope]);
  const long = length(slash);
  const drawn = long * ink.progress;
  const width = strokeWidth(stage, look.strokes.strike);
  const stroke = { colour: look.colours.removal, width, alpha: ink.alpha };
  const before = (long - glass) / 2;
  const ends = [cut(slash, 0, Math.min(drawn, before))];
  if (drawn > long - before) ends.push(cut(slash, long - before, drawn));
  if (drawn > before) {
    const middle = cut(slash, before, Math.min(drawn, long - before));
    strokePaths(stage, [middle], { ...stroke, alpha: ink.alpha * 0.5, cased: false, cap: 'butt' });
  }
  strokePaths(stage, ends, { ...stroke, cased: true });
}
