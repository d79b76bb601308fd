/**
 * A placement: a frame that closes in from the edge of the cell. With `overlay` it says which cell; with `writing` and
 * `board` the digit is written within it.
 */
import { begun, rectangle, roundCorners } from '../path.ts';
import { casingWidth, fillPaths, strokePaths, strokeWidth } from '../pen.ts';
import { cornerOf } from '../small-digits.ts';
import type { BoardStage, Standing } from '../stage.ts';

/** The tint under the digits, or the frame over them. */
export function paintPlacement(stage: BoardStage, { mark, ink }: Standing, part: 'tint' | 'frame'): void {
  if (mark.shape.kind !== 'place') return;
  const { look } = stage;
  const [x, y] = cornerOf(stage.film.grid, mark.shape.cell);
  const width = strokeWidth(stage, look.strokes.outline);
  const inset = width / 2 + casingWidth(stage) + look.strokes.houseLine / 2 + 0.02;
  const frame = roundCorners(rectangle(x + inset, y + inset, x + 1 - inset, y + 1 - inset), look.strokes.cornerRadius);
  const colour = mark.group === undefined ? look.colours.placement : look.colours.groups[mark.group.colour];
  if (part === 'tint') fillPaths(stage, [frame], colour, look.inks.fill * 0.6 * ink.progress * ink.alpha);
  else strokePaths(stage, [begun(frame, ink.progress)], { colour, width, alpha: ink.alpha, cased: true });
}
