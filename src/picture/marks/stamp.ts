/**
 * The stamp on every frame of a step that is not proved: a band across the whole frame, slanted, in black and white,
 * for vermilion is kept for removals. What is under it stays to be seen above and below.
 */
import type { Stage, Standing } from '../stage.ts';
import { fitText, widthOf } from '../type.ts';

const words = 'NOT PROVED';

/** The band with its words, over everything. */
export function paintStamp(stage: Stage, { mark }: Standing): void {
  if (mark.shape.kind !== 'stamp') return;
  const { context, film, look, unit } = stage;
  const dark = look.colours.casing;
  const light = look.colours.casingLight;
  const slant = -0.14;
  const across = Math.hypot(film.width, film.height);
  const half = 92 * unit;
  context.save();
  context.transform(
    Math.cos(slant),
    Math.sin(slant),
    -Math.sin(slant),
    Math.cos(slant),
    film.width / 2,
    film.height * 0.44,
  );
  context.globalAlpha = 0.9;
  context.fillStyle = dark;
  context.fillRect(-across, -half, 2 * across, 2 * half);
  context.fillStyle = light;
  for (const edge of [-half + 8 * unit, half - 22 * unit]) {
    for (let x = -across; x < across; x += 56 * unit) barrier(stage, x, edge, 28 * unit, 14 * unit);
  }
  context.globalAlpha = 1;
  const setting = { family: look.type.family, weight: 700, px: 86 * unit };
  const wide = Math.min(film.width * 0.9, widthOf(context, words, setting));
  context.textAlign = 'center';
  context.textBaseline = 'alphabetic';
  const room = { width: film.width * 0.86, height: 60 * unit, lines: 1, least: 0.6 };
  const small = fitText(context, mark.shape.text, { ...setting, weight: 500, px: 34 * unit }, room);
  const px = (setting.px * wide) / widthOf(context, words, setting);
  context.font = `700 ${px.toFixed(2)}px '${look.type.family}'`;
  context.fillText(words, 0, 14 * unit);
  context.font = `500 ${small.setting.px.toFixed(2)}px '${look.type.family}'`;
  const [line] = small.lines;
  if (line !== undefined) context.fillText(line, 0, 56 * unit);
  context.restore();
}

/** One slanted bar of the band's edge. */
function barrier({ context }: Stage, x: number, y: number, width: number, height: number): void {
  context.beginPath();
  context.moveTo(x + height, y);
  context.lineTo(x + height + width, y);
  context.lineTo(x + width, y + height);
  context.lineTo(x, y + height);
  context.closePath();
  context.fill('nonzero');
}
