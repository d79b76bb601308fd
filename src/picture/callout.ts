/**
 * Notes and questions: a card next to the board. A note has a bar in its group's colour along its side; a question has
 * a question mark instead of the bar.
 */
import type { Mark } from '../timeline/film.ts';
import { type PlannedCallout, planCallouts, sideWidth } from './callout-plan.ts';
import { paintCard } from './card.ts';
import { colourOf, type Stage, type Standing } from './stage.ts';
import { capitalHeight, writeLines } from './type.ts';

/** Paints these callouts, each at its place among all that are on screen. */
export function paintCallouts(stage: Stage, standing: readonly Standing<'note' | 'ask'>[]): void {
  if (standing.length === 0) return;
  const own = new Set<Mark>(standing.map(({ mark }) => mark));
  const planned = planCallouts(stage);
  const inks = new Map(stage.standing.map(({ mark, ink }) => [mark, ink]));
  const shown = planned.flatMap((callout) => {
    const ink = inks.get(callout.mark);
    return ink === undefined ? [] : [{ ...callout, alpha: ink.alpha * ink.progress, index: ink.index }];
  });
  for (const callout of shown) {
    const isHidden = shown.some((other) => other.slot === callout.slot && other.index > callout.index);
    if (!isHidden && own.has(callout.mark)) paintCallout(stage, callout, callout.alpha);
  }
}

function paintCallout(stage: Stage, { mark, kind, set, box, pad }: PlannedCallout, alpha: number): void {
  const { context, look, unit } = stage;
  paintCard(stage, box, alpha);
  const side = sideWidth(stage, kind);
  const isMirrored = set.rightAt !== undefined;
  context.globalAlpha = alpha;
  context.fillStyle = colourOf(stage, mark);
  if (kind === 'ask') {
    const px = Math.min(look.type.notePx * 1.9 * unit, (box.bottom - box.top) * 0.8);
    context.font = `700 ${px.toFixed(2)}px '${look.type.family}'`;
    context.textAlign = 'center';
    context.textBaseline = 'alphabetic';
    const middle = pad + (side - pad) / 2;
    const x = isMirrored ? box.right - middle : box.left + middle;
    context.fillText('?', x, (box.top + box.bottom + px * capitalHeight) / 2);
  } else {
    const left = isMirrored ? box.right - pad * 0.7 - 8 * unit : box.left + pad * 0.7;
    context.fillRect(left, box.top + pad, 8 * unit, box.bottom - box.top - 2 * pad);
  }
  context.globalAlpha = 1;
  writeLines(context, set, box.left + pad + (isMirrored ? 0 : side), box.top + pad, look.colours.text, alpha);
}
