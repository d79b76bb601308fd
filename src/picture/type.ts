/**
 * Setting words: fonts, widths, wrapping, and fitting into a box. Measured through the context that draws them. Letters
 * that the typeface does not have come from the fonts of the system.
 */
import type { Context2D } from './context.ts';
import { cutSmall, isRightToLeft, type Piece, piecesOf } from './line-breaks.ts';
import { runsOf } from './notation-runs.ts';
import { rectangle, roundCorners } from './path.ts';

/** The height of a capital and of a figure as a fraction of the font size (IBM Plex Sans: 698 of 1000 units). */
export const capitalHeight = 0.698;

/** How a text is set. */
export interface Setting {
  readonly family: string;
  readonly weight: number;
  /** Font size in pixels. */
  readonly px: number;
  /** Whether cells, candidates and links in it are set as notation: bolder, on their own tint. */
  readonly notation?: boolean;
}

/** A text broken into lines; lengths in frame pixels. */
export interface SetText {
  readonly lines: readonly string[];
  readonly setting: Setting;
  /** From one baseline to the next. */
  readonly leading: number;
  /** From the top to the first baseline; that of Latin capitals if it is not given. */
  readonly ascent?: number;
  /** All lines together. */
  readonly height: number;
  /** For lines set flush right, as right-to-left text is: their right edge, measured from the room's left. */
  readonly rightAt?: number;
}

/** As a canvas takes it. */
export function fontOf(setting: Setting): string {
  return `${setting.weight} ${setting.px.toFixed(2)}px '${setting.family}'`;
}

/** The width of a text on one line, in frame pixels. */
export function widthOf(context: Context2D, text: string, setting: Setting): number {
  if (setting.notation !== true || isRightToLeft(text)) {
    return measured(context, text, fontOf(setting));
  }
  return partsOf(context, text, setting).reduce((sum, { width }) => sum + width, 0);
}

/**
 * A text is measured once for each canvas: a film sets the same words on every frame, and measuring is most of that.
 */
function measured(context: Context2D, text: string, font: string): number {
  context.font = font;
  const widths = widthsOn.get(context) ?? new Map<string, number>();
  widthsOn.set(context, widths);
  const key = `${font}\n${text}`;
  const width = widths.get(key) ?? context.measureText(text).width;
  if (widths.size > mostWidths) widths.clear();
  widths.set(key, width);
  return width;
}

const widthsOn = new WeakMap<Context2D, Map<string, number>>();
/** Of a film of hours, so that memory does not grow with it. */
const mostWidths = 10_000;

/** What a text must fit into; lengths in frame pixels. */
export interface Room {
  readonly width: number;
  readonly height: number;
  /** At full size; a smaller size may take more. */
  readonly lines: number;
  /** The smallest size as a part of the full one, before text is shortened. */
  readonly least: number;
}

/**
 * The text at the largest size at which it fits; if the smallest size is not enough, words wider than the room are
 * broken, and text that is too long is shortened with an ellipsis.
 */
export function fitText(context: Context2D, text: string, setting: Setting, room: Room): SetText {
  const direction = isRightToLeft(text) ? { rightAt: room.width } : {};
  // Measured once, at full size: widths scale with the size, and the result is measured again before it is used.
  const measured = measuredPieces(context, piecesOf(text), setting);
  for (let part = 1; part >= room.least - 1e-9; part -= 0.05) {
    const tried = { ...setting, px: setting.px * part };
    const lines = linesOf(measured, room.width / part);
    const allowed = part - 0.05 >= room.least ? Math.floor(room.lines / part + 1e-9) : Number.POSITIVE_INFINITY;
    const set = setLines(lines, tried);
    if (lines.length <= allowed && set.height <= room.height && widest(context, set) <= room.width)
      return { ...set, ...direction };
  }
  const small = { ...setting, px: setting.px * room.least };
  const fits = (piece: string) => widthOf(context, piece, small) <= room.width;
  const pieces = piecesOf(text).flatMap((piece) => (fits(piece.text) ? [piece] : cutSmall(piece, fits)));
  const lines = linesOf(measuredPieces(context, pieces, small), room.width);
  const { ascent, descent, leading } = spacingOf(text);
  const allowed = Math.max(1, Math.floor((room.height / small.px - ascent - descent) / leading) + 1);
  const kept = lines.slice(0, allowed);
  if (lines.length > allowed) kept.push(`${kept.pop()} …`);
  const set = setLines(
    kept.map((each) => shorten(context, each, small, room.width)),
    small,
  );
  return { ...set, ...direction };
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
  const isReversed = isRightToLeft(set.lines.join(' '));
  context.textBaseline = 'alphabetic';
  context.fillStyle = colour;
  context.globalAlpha = alpha;
  set.lines.forEach((text, index) => {
    const baseline = top + (set.ascent ?? set.setting.px * capitalHeight) + index * set.leading;
    if (set.rightAt === undefined) writeLine(context, text, set.setting, left, baseline, alpha);
    else writeFromRight(context, { text, setting: set.setting, isReversed }, left + set.rightAt, baseline);
  });
  context.globalAlpha = 1;
}

/** The width of the longest line. */
export function widest(context: Context2D, set: SetText): number {
  return Math.max(0, ...set.lines.map((text) => widthOf(context, text, set.setting)));
}

/** On both sides of a cell or candidate, and the corner of its tint, as fractions of the font size. */
const notationPad = 0.11;
const notationCorner = 0.16;
const notationTint = 0.1;

interface Part {
  readonly text: string;
  readonly isNotation: boolean;
  readonly setting: Setting;
  readonly width: number;
}

function partsOf(context: Context2D, text: string, setting: Setting): Part[] {
  const { notation: _, ...plain } = setting;
  return runsOf(text).map(({ text: part, isNotation }) => {
    const own = isNotation ? { ...plain, weight: Math.min(700, setting.weight + 100) } : plain;
    const width = widthOf(context, part, own) + (isNotation ? 2 * notationPad * setting.px : 0);
    return { text: part, isNotation, setting: own, width };
  });
}

function writeLine(context: Context2D, text: string, setting: Setting, left: number, y: number, alpha: number): void {
  context.textAlign = 'left';
  if (setting.notation !== true) {
    context.font = fontOf(setting);
    context.fillText(text, left, y);
    return;
  }
  const { px } = setting;
  let x = left;
  for (const part of partsOf(context, text, setting)) {
    if (part.isNotation) {
      const body = rectangle(x, y - px * (capitalHeight + 0.15), x + part.width, y + px * 0.17);
      context.globalAlpha = alpha * notationTint;
      context.beginPath();
      roundCorners(body, notationCorner * px).points.forEach(([pointX, pointY], index) => {
        if (index === 0) context.moveTo(pointX, pointY);
        else context.lineTo(pointX, pointY);
      });
      context.closePath();
      context.fill('nonzero');
      context.globalAlpha = alpha;
    }
    context.font = fontOf(part.setting);
    context.fillText(part.text, part.isNotation ? x + notationPad * px : x, y);
    x += part.width;
  }
}

const rightToLeftIsolate = '\u2067';
const leftToRightIsolate = '\u2066';
const endOfIsolate = '\u2069';

/** Each line declares its own direction, and notation keeps its own direction (Unicode Annex #9, isolates). */
function writeFromRight(
  context: Context2D,
  { text, setting, isReversed }: { readonly text: string; readonly setting: Setting; readonly isReversed: boolean },
  right: number,
  y: number,
): void {
  context.textAlign = 'right';
  context.font = fontOf(setting);
  const isolated = (part: string, mark: string) => `${mark}${part}${endOfIsolate}`;
  const directed = runsOf(text).map((run) => (run.isNotation ? isolated(run.text, leftToRightIsolate) : run.text));
  const mark = isReversed ? rightToLeftIsolate : leftToRightIsolate;
  context.fillText(isolated(directed.join(''), mark), right, y);
}

interface MeasuredPiece extends Piece {
  readonly width: number;
  /** The width of the space before it. */
  readonly gap: number;
}

function measuredPieces(context: Context2D, pieces: readonly Piece[], setting: Setting): MeasuredPiece[] {
  // A lone space may be measured as zero.
  const blank = widthOf(context, 'n n', setting) - widthOf(context, 'nn', setting);
  return pieces.map((piece) => ({
    ...piece,
    width: widthOf(context, piece.text, setting),
    gap: piece.isSpaced ? blank : 0,
  }));
}

/** A piece wider than the room gets its own line. */
function linesOf(pieces: readonly MeasuredPiece[], width: number): string[] {
  const lines: string[] = [];
  let [current, used] = ['', 0];
  for (const piece of pieces) {
    if (current !== '' && used + piece.gap + piece.width > width) {
      lines.push(current);
      [current, used] = [piece.text, piece.width];
    } else if (current === '') {
      [current, used] = [piece.text, piece.width];
    } else {
      [current, used] = [`${current}${piece.isSpaced ? ' ' : ''}${piece.text}`, used + piece.gap + piece.width];
    }
  }
  if (current !== '') lines.push(current);
  return lines;
}

function setLines(lines: readonly string[], setting: Setting): SetText {
  const { ascent, descent, leading } = spacingOf(lines.join(' '));
  const step = setting.px * leading;
  const height = lines.length === 0 ? 0 : (lines.length - 1) * step + setting.px * (ascent + descent);
  return { lines, setting, leading: step, ascent: ascent * setting.px, height };
}

/** From the top to the first baseline, below the last one, and between, as fractions of the font size. */
function spacingOf(text: string) {
  return highScript.test(text) ? highSpacing : usualSpacing;
}

const usualSpacing = { ascent: capitalHeight, descent: 0.24, leading: 1.24 };
/** Arabic, Indic and East Asian letters are taller and reach lower than Latin ones. */
const highSpacing = { ascent: 0.95, descent: 0.42, leading: 1.55 };
const highScript =
  /[^\p{Script=Latin}\p{Script=Greek}\p{Script=Cyrillic}\p{Script=Hebrew}\p{Script=Common}\p{Script=Inherited}]/u;

function shorten(context: Context2D, text: string, setting: Setting, width: number): string {
  if (widthOf(context, text, setting) <= width) return text;
  const letters = [...text.replace(/ …$/, '')];
  let [low, high] = [1, letters.length];
  while (low < high) {
    const middle = Math.ceil((low + high) / 2);
    if (widthOf(context, `${letters.slice(0, middle).join('')}…`, setting) > width) high = middle - 1;
    else low = middle;
  }
  return `${letters.slice(0, low).join('')}…`;
}
