/**
 * Setting words: fonts, widths, wrapping, and fitting into a box. Measured through the context that draws them.
 */
import type { Context2D } from './context.ts';

/** The height of a capital and of a figure as a part of the font size (IBM Plex Sans: 698 of 1000 units). */
export const capitalHeight = 0.698;

/** How a text is set. */
export interface Setting {
  readonly family: string;
  readonly weight: number;
  /** Font size in pixels. */
  readonly px: number;
}

/** A text broken into lines; lengths in frame pixels. */
export interface SetText {
  readonly lines: readonly string[];
  readonly setting: Setting;
  /** From one baseline to the next. */
  readonly leading: number;
  /** All lines together. */
  readonly height: number;
}

/** As a canvas takes it. */
export function fontOf(setting: Setting): string {
  return `${setting.weight} ${setting.px.toFixed(2)}px '${setting.family}'`;
}

/** The width of a text on one line, in frame pixels. */
export function widthOf(context: Context2D, text: string, setting: Setting): number {
  context.font = fontOf(setting);
  return context.measureText(text).width;
}

/** What a text must fit into; lengths in frame pixels. */
export interface Room {
  readonly width: number;
  readonly height: number;
  /** At full size; a smaller size may take more. */
  readonly lines: number;
  /** The smallest size as a part of the full one, before text is cut short. */
  readonly least: number;
}

/** The text at the largest size at which it fits; where the least size does not do, cut short with an ellipsis. */
export function fitText(context: Context2D, text: string, setting: Setting, room: Room): SetText {
  for (let part = 1; part >= room.least - 1e-9; part -= 0.05) {
    const tried = { ...setting, px: setting.px * part };
    const set = setLines(wrap(context, text, tried, room.width), tried);
    const allowed = part - 0.05 >= room.least ? Math.floor(room.lines / part + 1e-9) : Number.POSITIVE_INFINITY;
    if (set.lines.length <= allowed && set.height <= room.height && widest(context, set) <= room.width) return set;
  }
  const small = { ...setting, px: setting.px * room.least };
  const lines = wrap(context, text, small, room.width);
  const allowed = Math.max(1, Math.floor((room.height / small.px - capitalHeight - descent) / leading) + 1);
  const kept = lines.slice(0, allowed);
  if (lines.length > allowed) kept.push(`${kept.pop()} …`);
  return setLines(
    kept.map((each) => shorten(context, each, small, room.width)),
    small,
  );
}

/** The lines of a text that is broken between words only; a word wider than the room stands alone. */
export function wrap(context: Context2D, text: string, setting: Setting, width: number): string[] {
  const lines: string[] = [];
  let current = '';
  for (const word of text.split(/\s+/).filter((each) => each !== '')) {
    const longer = current === '' ? word : `${current} ${word}`;
    if (current !== '' && widthOf(context, longer, setting) > width) {
      lines.push(current);
      current = word;
    } else {
      current = longer;
    }
  }
  if (current !== '') lines.push(current);
  return lines;
}

/** Writes the lines, the first one's capitals ending at `top`. */
export function writeLines(
  context: Context2D,
  set: SetText,
  left: number,
  top: number,
  colour: string,
  alpha: number,
): void {
  context.font = fontOf(set.setting);
  context.textAlign = 'left';
  context.textBaseline = 'alphabetic';
  context.fillStyle = colour;
  context.globalAlpha = alpha;
  set.lines.forEach((text, index) => {
    context.fillText(text, left, top + set.setting.px * capitalHeight + index * set.leading);
  });
  context.globalAlpha = 1;
}

/** The width of the longest line. */
export function widest(context: Context2D, set: SetText): number {
  return Math.max(0, ...set.lines.map((text) => widthOf(context, text, set.setting)));
}

/** From baseline to baseline, and from the baseline to below the descenders, as parts of the font size. */
const leading = 1.24;
const descent = 0.24;

function setLines(lines: readonly string[], setting: Setting): SetText {
  const step = setting.px * leading;
  const height = lines.length === 0 ? 0 : (lines.length - 1) * step + setting.px * (capitalHeight + descent);
  return { lines, setting, leading: step, height };
}

function shorten(context: Context2D, text: string, setting: Setting, width: number): string {
  if (widthOf(context, text, setting) <= width) return text;
  const letters = [...text.replace(/ …$/, '')];
  while (letters.length > 1 && widthOf(context, `${letters.join('')}…`, setting) > width) letters.pop();
  return `${letters.join('')}…`;
}
