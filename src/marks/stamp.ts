/**
 * The stamp on every frame of a step that is not proved: a barred edge around the whole frame, and a sign that says so
 * away from the argument. Black and white, because vermilion is reserved for removals.
 */

import type { Box } from '../picture/board-place.ts';
import { fillShape } from '../picture/card.ts';
import { each, type MarkPainting, none } from '../picture/painting.ts';
import { rectangle, roundCorners } from '../picture/path.ts';
import type { Stage, Standing } from '../picture/stage.ts';
import { layoutBesides, stampBox } from '../picture/stamp-place.ts';
import { capitalHeight, fitText, widthOf, writeLines } from '../picture/type.ts';
import { type MarkWords, never, oneLine } from './words.ts';

export const words = {
  clause: ([shape]) => `a stamp says that this is not proved: ${oneLine(shape?.text ?? '')}`,
  isClaim: false,
  areJoined: false,
  // What is not proved is said with the step's name.
  isNews: false,
  answers: never,
} satisfies MarkWords<'stamp'>;

export const painting = {
  // No frame of its step may pass for a sound one.
  comesIn: () => 0,
  candidates: none,
  isRinged: false,
  covers: () => 'board',
  onBoard: {},
  onFrame: { sign: each(paintStamp) },
} satisfies MarkPainting<'stamp'>;

const sign = 'NOT PROVED';

/** The stage with the room that a stamp on it leaves for other words. */
export function stageBesidesStamp(stage: Stage): Stage {
  const stamp = stage.standing.find(({ mark }) => mark.shape.kind === 'stamp');
  if (stamp === undefined) return stage;
  return { ...stage, layout: layoutBesides(stage.layout, stampBox(stage, stamp), stage.unit) };
}

/** The edge and the sign, over everything. */
function paintStamp(stage: Stage, standing: Standing<'stamp'>): void {
  const { mark } = standing;
  const { film, unit } = stage;
  const edge = 20 * unit;
  bars(stage, { left: 0, top: 0, right: film.width, bottom: edge });
  bars(stage, { left: 0, top: film.height - edge, right: film.width, bottom: film.height });
  bars(stage, { left: 0, top: 0, right: edge, bottom: film.height });
  bars(stage, { left: film.width - edge, top: 0, right: film.width, bottom: film.height });
  paintSign(stage, stampBox(stage, standing), mark.shape.text);
}

function paintSign(stage: Stage, box: Box, reason: string): void {
  const { context, look, unit } = stage;
  const { casing, casingLight } = look.colours;
  const scale = Math.min(1, (box.bottom - box.top) / (236 * unit)) * unit;
  const pad = 24 * scale;
  fillShape(stage, roundCorners(rectangle(box.left, box.top, box.right, box.bottom), 14 * unit), casing, 0.94);
  bars(stage, {
    ...box,
    left: box.left + pad,
    right: box.right - pad,
    top: box.top + 12 * scale,
    bottom: box.top + 26 * scale,
  });
  const width = box.right - box.left - 2 * pad;
  const setting = { family: look.type.family, weight: 700, px: 80 * scale };
  const px = setting.px * Math.min(1, width / widthOf(context, sign, setting));
  const top = box.top + 48 * scale;
  const large = { lines: [sign], setting: { ...setting, px }, leading: px, height: px };
  writeLines(context, large, box.left + pad, top, casingLight, 1);
  const below = top + px * capitalHeight + 24 * scale;
  const room = { width, height: box.bottom - below - 14 * scale, lines: 2, least: 0.55 };
  const small = fitText(context, reason, { ...setting, weight: 500, px: 36 * scale }, room);
  writeLines(context, small, box.left + pad, below, casingLight, 1);
}

/** Slanted bars, white on black, along the longer side of a strip. */
function bars({ context, look, unit }: Stage, { left, top, right, bottom }: Box): void {
  const [wide, high] = [right - left, bottom - top];
  const thick = Math.min(wide, high);
  const pitch = 56 * unit;
  context.save();
  context.fillStyle = look.colours.casing;
  context.fillRect(left, top, wide, high);
  context.fillStyle = look.colours.casingLight;
  for (let at = 0; at + pitch / 2 + thick <= Math.max(wide, high); at += pitch) {
    const along = (distance: number, across: number) =>
      wide > high ? ([left + distance, top + across] as const) : ([left + across, top + distance] as const);
    context.beginPath();
    context.moveTo(...along(at + thick, 0));
    context.lineTo(...along(at + thick + pitch / 2, 0));
    context.lineTo(...along(at + pitch / 2, thick));
    context.lineTo(...along(at, thick));
    context.closePath();
    context.fill('nonzero');
  }
  context.restore();
}
