/**
 * Over a recording: the step's title on a card, and the tag of a false step.
 */
import type { Box } from './board-place.ts';
import { paintCard } from './card.ts';
import { falseStepTag, paintFalseStepTag } from './false-step-tag.ts';
import type { Stage } from './stage.ts';
import { fitText, widest, writeLines } from './type.ts';

/** At the top of the box. */
export function paintTitleCard(stage: Stage, box: Box): void {
  const { look, unit, film, context } = stage;
  const pad = 24 * unit;
  for (const { index, alpha, progress } of stage.drawing.headings) {
    const heading = film.headings[index];
    if (heading === undefined || (heading.title === undefined && !heading.isFalseStep)) continue;
    const ink = alpha * progress;
    const width = Math.min(box.right - box.left, 900 * unit) - 2 * pad;
    const setting = { family: look.type.family, weight: 600, px: look.type.titlePx * unit };
    const tag = heading.isFalseStep ? falseStepTag(stage, width, 1) : undefined;
    const tagHeight = tag === undefined ? 0 : tag.set.height + 2 * tag.pad;
    const gap = tag === undefined || heading.title === undefined ? 0 : 18 * unit;
    const height = box.bottom - box.top - 2 * pad - tagHeight - gap;
    if (height < (heading.title === undefined ? 0 : setting.px)) continue;
    const room = { width, height, lines: 2, least: 0.6 };
    const fitted = fitText(context, heading.title ?? '', setting, room);
    const titleWidth = widest(context, fitted);
    // The card is as wide as its words, also where they begin at its right.
    const set = fitted.rightAt === undefined ? fitted : { ...fitted, rightAt: titleWidth };
    const inner = Math.max(titleWidth, tag === undefined ? 0 : widest(context, tag.set) + 2 * tag.pad);
    const bottom = box.top + tagHeight + gap + set.height + 2 * pad;
    paintCard(stage, { left: box.left, top: box.top, right: box.left + inner + 2 * pad, bottom }, ink);
    if (tag !== undefined) paintFalseStepTag(stage, tag, box.left + pad, box.top + pad, ink);
    writeLines(context, set, box.left + pad, box.top + pad + tagHeight + gap, look.colours.text, ink);
  }
}
