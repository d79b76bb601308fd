/**
 * The sentence that is being said, at the end of the words' room; over a recording on its own card.
 */
import { paintCard } from './card.ts';
import type { Stage } from './stage.ts';
import { fitText, widest, writeLines } from './type.ts';

/** Its last line ends where its box ends. */
export function paintSaid(stage: Stage): void {
  const { film, look, unit, context } = stage;
  const box = stage.layout.said;
  if (box === undefined) return;
  const isBare = film.draw === 'board';
  const pad = isBare ? 0 : Math.min(20 * unit, (box.bottom - box.top) * 0.12);
  const setting = { family: look.type.family, weight: 400, px: look.type.notePx * 0.86 * unit, notation: true };
  for (const { index, alpha, progress } of stage.drawing.said) {
    const text = film.said[index]?.text;
    if (text === undefined) continue;
    const room = {
      width: Math.min(box.right - box.left, 1100 * unit) - 2 * pad,
      height: box.bottom - box.top - 2 * pad,
      lines: 3,
      least: 0.45,
    };
    const set = fitText(context, text, setting, room);
    const top = box.bottom - set.height - 2 * pad;
    const right = box.left + (set.rightAt ?? widest(context, set)) + 2 * pad;
    if (!isBare) paintCard(stage, { ...box, top, right }, alpha * progress);
    writeLines(context, set, box.left + pad, top + pad, look.colours.text, alpha * progress);
  }
}
