/**
 * How much of the digits to be read the strokes of marks lie on. What is compared is a frame painted with its marks and
 * without them, digits and tints left out of both: what differs is the strokes' ink.
 */
import { createCanvas } from 'canvas';
import { drawingAt } from '../../src/frames/drawing.ts';
import { paint } from '../../src/frames/paint.ts';
import type { Candidate } from '../../src/grid/candidates.ts';
import { candidatesOfMark } from '../../src/marks/paintings.ts';
import { layoutOf } from '../../src/picture/layout.ts';
import { pointOfCandidate } from '../../src/picture/small-digits.ts';
import type { Look } from '../../src/scene/look.ts';
import type { Film, Frame } from '../../src/timeline/film.ts';

export interface Cover {
  readonly candidate: Candidate;
  /** The part of the digit's box that has a stroke's ink on it, 0 to 1. */
  readonly share: number;
}

/** Every small digit on screen that bears no mark itself (those that do are painted over the strokes), most covered first. */
export function coverOfSmallDigits(film: Film, look: Look, frame: Frame): Cover[] {
  const drawing = drawingAt(film, look, frame);
  const { place } = layoutOf(film, drawing.board);
  if (place === undefined) return [];
  const marked = new Set(drawing.marks.flatMap(({ index }) => candidatesOfMark(film.marks[index]!.shape)));
  const [inked, bare] = [pixelsOf(film, look, frame), pixelsOf({ ...film, marks: [] }, look, frame)];
  const covers = drawing.candidates.flatMap(({ index }): Cover[] => {
    const { candidate } = film.candidates[index]!;
    if (marked.has(candidate)) return [];
    const [x, y] = place.at(pointOfCandidate(film, candidate));
    const half = (look.type.candidate * place.cellPx) / 2;
    // A digit of IBM Plex Sans is about three quarters as wide as its capitals are high.
    const [left, right] = [Math.round(x - half * 0.75), Math.round(x + half * 0.75)];
    const [top, bottom] = [Math.round(y - half), Math.round(y + half)];
    let covered = 0;
    for (let row = top; row < bottom; row++) {
      for (let column = left; column < right; column++) {
        const at = (row * film.width + column) * 4;
        const isSame = [0, 1, 2].every((channel) => Math.abs(inked[at + channel]! - bare[at + channel]!) < 24);
        if (!isSame) covered++;
      }
    }
    return [{ candidate, share: covered / ((right - left) * (bottom - top)) }];
  });
  return covers.sort((a, b) => b.share - a.share);
}

function pixelsOf(film: Film, look: Look, frame: Frame): Uint8ClampedArray {
  const canvas = createCanvas(film.width, film.height);
  const context = canvas.getContext('2d');
  context.fillText = leaveOut;
  context.strokeText = leaveOut;
  const fill = context.fill.bind(context);
  context.fill = (rule) => {
    if (context.globalAlpha > tint) fill(rule as never);
  };
  paint(context, film, look, drawingAt(film, look, frame));
  return context.getImageData(0, 0, film.width, film.height).data;
}

/** Areas with less ink than this are tints, through which digits are read. */
const tint = 0.5;

function leaveOut(): void {
  // Nothing: words are not what is looked for.
}
