/**
 * Drawing on the board: lines, areas and words given in cells, laid on the frame where the board lies.
 */
import type { Point } from '../scene/scene.ts';
import { stretchAt } from './board-place.ts';
import { casingOf } from './colour.ts';
import type { Context2D } from './context.ts';
import type { Path } from './path.ts';
import type { BoardStage } from './stage.ts';
import { strokeOutline } from './stroke-outline.ts';
import { capitalHeight } from './type.ts';

export interface Stroke {
  readonly colour: string;
  /** In cells. */
  readonly width: number;
  readonly alpha: number;
  /** Whether a line of opposite luminance runs along both sides. */
  readonly cased: boolean;
  /** `round` unless said otherwise. */
  readonly cap?: 'butt' | 'round';
}

/** A stroke's width in cells, never thinner than the look allows. */
export function strokeWidth(stage: BoardStage, part: number): number {
  return Math.max(part, (stage.look.strokes.leastPx * stage.unit) / stage.place.cellPx);
}

/** The width of one side of a casing, in cells. */
export function casingWidth(stage: BoardStage): number {
  return Math.max(stage.look.strokes.casing, (1.5 * stage.unit) / stage.place.cellPx);
}

/** Draws the lines with one stroke; where they cross one another there is no seam. */
export function strokePaths(stage: BoardStage, paths: readonly Path[], stroke: Stroke): void {
  if (stroke.cased) {
    const colour = casingOf(stage.look.colours, stroke.colour);
    lay(stage, paths, { ...stroke, colour, width: stroke.width + 2 * casingWidth(stage) });
  }
  lay(stage, paths, stroke);
}

/** Fills the areas; what lies in an even number of them stays free. */
export function fillPaths(stage: BoardStage, paths: readonly Path[], colour: string, alpha: number): void {
  const { context } = stage;
  context.globalAlpha = alpha;
  context.fillStyle = colour;
  trace(
    context,
    paths.map((path) => ({ ...path, points: path.points.map(stage.place.at) })),
  );
  context.fill('evenodd');
  context.globalAlpha = 1;
}

export interface Word {
  readonly text: string;
  /** The middle of the capitals, in cells. */
  readonly at: Point;
  /** Of a capital, in cells. */
  readonly height: number;
  readonly weight: number;
  readonly colour: string;
  readonly alpha: number;
  /** In cells; 0 for none. */
  readonly casing: number;
}

/** A digit or word, centred on its point, lying on the board as it is filmed. */
export function writeWord(stage: BoardStage, word: Word): void {
  const { context, look, place } = stage;
  const [x, y] = place.at(word.at);
  // The font is set at the size it has on the frame and then stretched by what the board does beyond that,
  // so that hinting and rounding fit the frame.
  const px = (word.height * place.cellPx) / capitalHeight;
  const [a, b, c, d] = stretchAt(place, word.at).map((each) => each / place.cellPx) as [number, number, number, number];
  context.save();
  context.font = `${word.weight} ${px.toFixed(2)}px '${look.type.family}'`;
  context.textAlign = 'left';
  context.textBaseline = 'alphabetic';
  // Measured before the transform: under one that stretches, node-canvas (3.2) measures and spaces letters wrongly.
  const letters = spacedLetters(context, word.text, place.flat);
  context.transform(a, b, c, d, x, y);
  const baseline = (px * capitalHeight) / 2;
  context.globalAlpha = word.alpha;
  if (word.casing > 0) {
    context.strokeStyle = casingOf(look.colours, word.colour);
    context.lineWidth = 2 * word.casing * place.cellPx;
    context.lineJoin = 'round';
    for (const letter of letters) context.strokeText(letter.text, letter.left, baseline);
  }
  context.fillStyle = word.colour;
  for (const letter of letters) context.fillText(letter.text, letter.left, baseline);
  context.restore();
}

/** The word as one piece, or letter by letter; `left` is counted from the word's middle. */
function spacedLetters(context: Context2D, text: string, whole: boolean): { text: string; left: number }[] {
  const middle = context.measureText(text).width / 2;
  if (whole) return [{ text, left: -middle }];
  const letters = [...text];
  return letters.map((letter, index) => {
    const before = letters.slice(0, index).join('');
    return { text: letter, left: (before === '' ? 0 : context.measureText(before).width) - middle };
  });
}

function lay(stage: BoardStage, paths: readonly Path[], stroke: Stroke): void {
  const { context, place } = stage;
  context.globalAlpha = stroke.alpha;
  if (place.flat) {
    context.strokeStyle = stroke.colour;
    context.lineWidth = stroke.width * place.cellPx;
    context.lineCap = stroke.cap ?? 'round';
    context.lineJoin = 'round';
    trace(
      context,
      paths.map((path) => ({ ...path, points: path.points.map(place.at) })),
    );
    context.stroke();
  } else {
    context.fillStyle = stroke.colour;
    const outlines = paths.flatMap((path) => strokeOutline(path, stroke.width / 2, stroke.cap ?? 'round'));
    trace(
      context,
      outlines.map((path) => ({ ...path, points: path.points.map(place.at) })),
    );
    context.fill('nonzero');
  }
  context.globalAlpha = 1;
}

function trace(context: Context2D, paths: readonly Path[]): void {
  context.beginPath();
  for (const path of paths) {
    const [first, ...others] = path.points;
    if (first === undefined) continue;
    context.moveTo(first[0], first[1]);
    for (const [x, y] of others) context.lineTo(x, y);
    // A line of one point gets a second, so that round caps make a dot of it.
    if (others.length === 0) context.lineTo(first[0], first[1]);
    if (path.closed) context.closePath();
  }
}
