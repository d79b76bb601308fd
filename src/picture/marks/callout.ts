/**
 * Notes and questions: a card beside the board. A note has a bar in its group's colour along its side; a question has
 * a question mark in place of the bar.
 */
import type { Box } from '../board-place.ts';
import { paintCard } from '../card.ts';
import { colourOf, type Stage, type Standing } from '../stage.ts';
import { fitText, type SetText, writeLines } from '../type.ts';

interface Callout {
  readonly standing: Standing;
  readonly set: SetText;
  readonly box: Box;
}

/** The callouts on screen; returns how high the frame is still free above them (or, with callouts at the top, from where on). */
export function paintCallouts(stage: Stage): Box {
  const { callout: room, calloutAt } = stage.layout;
  const callouts = placeCallouts(stage);
  for (const callout of callouts) paintCallout(stage, callout);
  if (callouts.length === 0) return room;
  const gap = 24 * stage.unit;
  return calloutAt === 'bottom'
    ? { ...room, bottom: Math.min(...callouts.map(({ box }) => box.top)) - gap }
    : { ...room, top: Math.max(...callouts.map(({ box }) => box.bottom)) + gap };
}

/** The latest callout lies next to the edge of the room, those before it further in; what finds no room is left out. */
function placeCallouts(stage: Stage): Callout[] {
  const { callout: room, calloutAt } = stage.layout;
  const { look, unit, context } = stage;
  const pad = 28 * unit;
  const gap = 20 * unit;
  const callouts: Callout[] = [];
  let taken = 0;
  const talking = stage.standing.filter(({ mark }) => mark.shape.kind === 'note' || mark.shape.kind === 'ask');
  for (const standing of [...talking].reverse()) {
    const { shape } = standing.mark;
    if (shape.kind !== 'note' && shape.kind !== 'ask') continue;
    const setting = { family: look.type.family, weight: 500, px: look.type.notePx * unit };
    const bar = sideWidth(stage, shape.kind);
    const width = Math.min(room.right - room.left, 900 * unit);
    const height = room.bottom - room.top - taken - 2 * pad;
    if (height < setting.px) break;
    const set = fitText(context, shape.text, setting, { width: width - 2 * pad - bar, height, lines: 2, least: 0.6 });
    const full = set.height + 2 * pad;
    const top = calloutAt === 'bottom' ? room.bottom - taken - full : room.top + taken;
    callouts.push({ standing, set, box: { left: room.left, right: room.left + width, top, bottom: top + full } });
    taken += full + gap;
  }
  return callouts;
}

function paintCallout(stage: Stage, { standing, set, box }: Callout): void {
  const { context, look, unit } = stage;
  const { mark, ink } = standing;
  const alpha = ink.alpha * ink.progress;
  const pad = 28 * unit;
  paintCard(stage, box, alpha);
  const colour = mark.group === undefined ? look.colours.plain : colourOf(stage, mark);
  const side = sideWidth(stage, mark.shape.kind === 'ask' ? 'ask' : 'note');
  context.globalAlpha = alpha;
  context.fillStyle = colour;
  if (mark.shape.kind === 'ask') {
    context.font = `700 ${(look.type.notePx * 1.9 * unit).toFixed(2)}px '${look.type.family}'`;
    context.textAlign = 'center';
    context.fillText(
      '?',
      box.left + pad + (side - pad) / 2,
      (box.top + box.bottom) / 2 + look.type.notePx * 0.66 * unit,
    );
  } else {
    context.fillRect(box.left + pad * 0.7, box.top + pad, 8 * unit, box.bottom - box.top - 2 * pad);
  }
  context.globalAlpha = 1;
  writeLines(context, set, box.left + pad + side, box.top + pad, look.colours.text, alpha);
}

function sideWidth(stage: Stage, kind: 'note' | 'ask'): number {
  return (kind === 'ask' ? 84 : 16) * stage.unit;
}
