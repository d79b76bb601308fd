/**
 * Whether a film flashes: its frames are drawn small, and only where so many things come and go that they might.
 */
import { createCanvas } from 'canvas';
import { drawingAt } from '../../frames/drawing.ts';
import { paint } from '../../frames/paint.ts';
import { type Run, runsOf } from '../../frames/runs.ts';
import { luminance } from '../../picture/colour.ts';
import { flashMeter, screen } from '../../picture/flashes.ts';
import type { Look } from '../../scene/look.ts';
import { type Film, type Frame, frameAt } from '../../timeline/film.ts';
import { scaledFilm } from '../painters/scaled-film.ts';
import { registerFonts } from '../pixels/canvas.ts';
import { busySpans, type Counted, type Span } from './busy-spans.ts';

/** Screen pixels to one that is drawn. */
const scale = 8;

/**
 * The first frame of each span in which the film flashes more than three times a second. A film that lies over a
 * recording is measured over black and over white, as what lies under it is not known here. `counted`: see `busySpans`.
 */
export function flashesOf(film: Film, look: Look, counted: Counted = 'all'): Frame[] {
  const perSecond = Number(film.rate.numerator) / Number(film.rate.denominator);
  const grounds = film.draw === 'board' ? [undefined] : ['#000000', '#ffffff'];
  const small = smallFilm(film);
  const found: Frame[] = [];
  const spans = busySpans(film, look, counted);
  const runs = spans.length === 0 ? [] : runsOf(film, look);
  for (const span of spans) {
    const frames = differentFrames(runs, span);
    const starts = grounds.flatMap((ground) => firstFlash(small, look, frames, ground, perSecond) ?? []);
    if (starts.length > 0) found.push(frameAt(Math.min(...starts)));
  }
  return found;
}

function firstFlash(
  film: Film,
  look: Look,
  frames: readonly number[],
  ground: string | undefined,
  perSecond: number,
): Frame | undefined {
  registerFonts();
  const context = createCanvas(film.width, film.height).getContext('2d');
  const onScreen = Math.max(film.width / screen.width, film.height / screen.height);
  const meter = flashMeter(film.width, film.height, 1 / onScreen, perSecond);
  for (const frame of frames) {
    paint(context, film, look, drawingAt(film, look, frameAt(frame)));
    if (ground !== undefined) {
      context.globalCompositeOperation = 'destination-over';
      context.fillStyle = ground;
      context.fillRect(0, 0, film.width, film.height);
      context.globalCompositeOperation = 'source-over';
    }
    if (meter.see(frame, luminances(context.getImageData(0, 0, film.width, film.height).data))) return frameAt(frame);
  }
  return undefined;
}

/** The frames of the span that are not as the one before. */
function differentFrames(runs: readonly Run[], [from, until]: Span): readonly number[] {
  return runs.flatMap((run) => {
    const [first, end] = [Math.max(from, run.from), Math.min(until, run.until)];
    if (first >= end) return [];
    return run.kind === 'still' ? [first] : Array.from({ length: end - first }, (_, index) => first + index);
  });
}

/** The film on a frame of so few pixels that drawing it costs little. */
function smallFilm(film: Film): Film {
  return scaledFilm(film, Math.min(screen.width / film.width, screen.height / film.height) / scale, { even: false });
}

function luminances(pixels: Uint8ClampedArray): Float32Array {
  const all = new Float32Array(pixels.length / 4);
  for (let at = 0; at < all.length; at++) {
    const [red, green, blue] = [pixels[at * 4]!, pixels[at * 4 + 1]!, pixels[at * 4 + 2]!];
    all[at] = 0.2126 * linear[red]! + 0.7152 * linear[green]! + 0.0722 * linear[blue]!;
  }
  return all;
}

/** Of each value of a channel of sRGB, as WCAG has it: a grey's luminance is its channel made linear. */
const linear = Float32Array.from({ length: 256 }, (_, value) => {
  const hex = value.toString(16).padStart(2, '0');
  return luminance(`#${hex}${hex}${hex}`);
});
