/**
 * Drawing on the board: lines, areas and words given in cells, mapped to the board's place on the frame.
 */
import type { Point } from '../scene/scene.ts';
import { stretchAt } from './board-place.ts';
import { casingOf } from './colour.ts';
import type { Context2D } from './context.ts';
import type { Path } from './path.ts';
import type { BoardStage } from './stage.ts';
import { strokeOutline } from './stroke-outline.ts';
import { capitalHeight, fontOf } from './type.ts';

/** How a line is drawn. */
export interface Stroke {
  readonly colour: string;
  /** In cells. */
  readonly width: number;
  readonly alpha: number;
  /** Whether a line of opposite luminance runs along both sides. */
  readonly cased: boolean;
  /** `round` by default. */
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

/** Fills the areas; points in an even number of them stay empty. */
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

/** A digit or a word on the board. */
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

/**
 * Digits or words, each centred on its point, following the board's perspective. Those of one size and weight are
 * best given together: node-canvas takes as long to set a font as to draw with it.
 */
export function writeWords(stage: BoardStage, words: readonly Word[]): void {
  const { context, look, place } = stage;
  let font = '';
  let widths = new Map<string, number>();
  context.textAlign = 'left';
  context.textBaseline = 'alphabetic';
  for (const word of words) {
    const px = (word.height * place.cellPx) / capitalHeight;
    const needed = fontOf({ family: look.type.family, weight: word.weight, px });
    if (needed !== font) {
      context.font = needed;
      font = needed;
      widths = new Map();
    }
    // Measured without a transform: under one that stretches, node-canvas (3.2) measures and spaces letters wrongly.
    const widthOfText = (text: string): number => {
      const known = widths.get(text) ?? context.measureText(text).width;
      widths.set(text, known);
      return known;
    };
    writeWord(stage, word, px, widthOfText);
  }
  context.globalAlpha = 1;
}

function writeWord(stage: BoardStage, word: Word, px: number, widthOfText: (text: string) => number): void {
  const { context, look, place } = stage;
  const [x, y] = place.at(word.at);
  const baseline = (px * capitalHeight) / 2;
  const left = -widthOfText(word.text) / 2;
  context.globalAlpha = word.alpha;
  context.fillStyle = word.colour;
  if (place.flat && word.casing === 0) {
    context.fillText(word.text, x + left, y + baseline);
    return;
  }
  const letters = place.flat ? [word.text] : [...word.text];
  const lefts = letters.map((_, index) => left + (index === 0 ? 0 : widthOfText(letters.slice(0, index).join(''))));
  // The font has the size of the board's middle; the transform does the rest.
  const [a, b, c, d] = place.flat ? [1, 0, 0, 1] : stretchAt(place, word.at).map((each) => each / place.cellPx);
  context.save();
  context.transform(a!, b!, c!, d!, x, y);
  if (word.casing > 0) {
    context.strokeStyle = casingOf(look.colours, word.colour);
    context.lineWidth = 2 * word.casing * place.cellPx;
    context.lineJoin = 'round';
    letters.forEach((letter, index) => {
      context.strokeText(letter, lefts[index]!, baseline);
    });
  }
  letters.forEach((letter, index) => {
    context.fillText(letter, lefts[index]!, baseline);
  });
  context.restore();
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
