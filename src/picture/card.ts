/**
 * Cards: the background of words on a recording, and of callouts.
 */
import type { Box } from './board-place.ts';
import { type Path, rectangle, roundCorners } from './path.ts';
import type { Stage } from './stage.ts';

/** A rounded card in frame pixels. */
export function paintCard(stage: Stage, box: Box, alpha: number): void {
  fillShape(
    stage,
    roundCorners(rectangle(box.left, box.top, box.right, box.bottom), 14 * stage.unit),
    stage.look.colours.card,
    alpha,
  );
}

/** An area in frame pixels. */
export function fillShape(stage: Stage, path: Path, colour: string, alpha: number): void {
  const { context } = stage;
  const [first, ...others] = path.points;
  if (first === undefined) return;
  context.globalAlpha = alpha;
  context.fillStyle = colour;
  context.beginPath();
  context.moveTo(first[0], first[1]);
  for (const [x, y] of others) context.lineTo(x, y);
  context.closePath();
  context.fill('nonzero');
  context.globalAlpha = 1;
}
