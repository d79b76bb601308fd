/**
 * The tag of a false step, so that nobody takes it for an argument: light on dark, or dark on light, the inverse of all
 * other words.
 */
import { fillShape } from './card.ts';
import { rectangle, roundCorners } from './path.ts';
import type { Stage } from './stage.ts';
import { fitText, type SetText, widest, writeLines } from './type.ts';

const words = 'False step: this does not follow';

/** The tag's words, set, and the padding on each side of them, in frame pixels. */
export interface FalseStepTag {
  readonly set: SetText;
  readonly pad: number;
}

/** No wider than `width`, in frame pixels; `scale` is that of the words around it. */
export function falseStepTag({ context, look, unit }: Stage, width: number, scale: number): FalseStepTag {
  const px = look.type.bodyPx * 0.9 * unit * scale;
  const pad = px * 0.36;
  const setting = { family: look.type.family, weight: 700, px };
  const room = { width: width - 2 * pad, height: 2 * px, lines: 1, least: 0.4 };
  return { set: fitText(context, words, setting, room), pad };
}

export function paintFalseStepTag(
  stage: Stage,
  { set, pad }: FalseStepTag,
  left: number,
  top: number,
  alpha: number,
): void {
  const { colours } = stage.look;
  const right = left + widest(stage.context, set) + 2 * pad;
  const body = rectangle(left, top, right, top + set.height + 2 * pad);
  fillShape(stage, roundCorners(body, pad * 0.7), colours.text, alpha);
  // The capitals' middle in the ground's middle: only a few descenders extend below the line.
  writeLines(stage.context, set, left + pad, top + pad * 1.15, colours.card, alpha);
}
