/**
 * Whether a film flashes: its frames are drawn small, and only where enough things come and go that it might.
 */
import { type Run, runsOf } from '../../frames/runs.ts';
import { luminance as luminanceOf } from '../../picture/colour.ts';
import { flashMeter, screen } from '../../picture/flashes.ts';
import type { Look } from '../../scene/look.ts';
import { type Film, type Frame, frameAt } from '../../timeline/film.ts';
import { filmPainter } from '../painters/film-painter.ts';
import { scaledFilm } from '../painters/scaled-film.ts';
import { canvasOrder, frameCanvas } from '../pixels/canvas.ts';
import type { Region } from '../pixels/regions.ts';
import { runningPictures } from '../pixels/running-pictures.ts';
import { busySpans, type Counted, type Span } from './busy-spans.ts';

/** Screen pixels per drawn pixel, in each direction. */
const scale = 8;

/**
 * The first frame of each span in which the film flashes more than three times a second. A film over a recording is
 * measured over black and over white, as the recording is not known here. `counted`: see `busySpans`.
 */
export function flashesOf(film: Film, look: Look, counted: Counted = 'all'): Frame[] {
  const spans = busySpans(film, look, counted);
  if (spans.length === 0) return [];
  const small = smallFilm(film);
  const onScreen = Math.max(small.width / screen.width, small.height / screen.height);
  const perSecond = Number(film.rate.numerator) / Number(film.rate.denominator);
  const see = luminances(small, look);
  const runs = runsOf(film, look);
  return spans.flatMap((span): Frame[] => {
    const meters = groundsOf(film).map(() => flashMeter(small.width, small.height, 1 / onScreen, perSecond));
    const flash = differentFrames(runs, span).find((frame) => {
      const seen = see(frame);
      return meters.map((meter, index) => meter.see(frame, seen[index]!)).includes(true);
    });
    return flash === undefined ? [] : [frameAt(flash)];
  });
}

/** The greys, 0 to 255, over which the film is measured. */
function groundsOf(film: Film): readonly number[] {
  return film.draw === 'board' ? [0] : [0, 255];
}

/** Draws a frame each time: its luminance over each ground, by pixel, good until the next. */
function luminances(film: Film, look: Look): (frame: number) => readonly Float32Array[] {
  const draw = runningPictures(filmPainter(film, look), frameCanvas(film.width, film.height, undefined));
  const measured = groundsOf(film).map((ground) => ({
    ground,
    luminance: new Float32Array(film.width * film.height),
  }));
  return (frame) => {
    const { pixels, regions } = draw(frame);
    for (const { ground, luminance } of measured) {
      for (const region of regions) measure(pixels, film.width, region, ground, luminance);
    }
    return measured.map(({ luminance }) => luminance);
  };
}

/** The frames of the span that differ from the previous one. */
function differentFrames(runs: readonly Run[], [from, until]: Span): readonly number[] {
  return runs.flatMap((run) => {
    const [first, end] = [Math.max(from, run.from), Math.min(until, run.until)];
    if (first >= end) return [];
    return run.kind === 'still' ? [first] : Array.from({ length: end - first }, (_, index) => first + index);
  });
}

/** The film on a frame with so few pixels that drawing it is fast. */
function smallFilm(film: Film): Film {
  return scaledFilm(film, Math.min(screen.width / film.width, screen.height / film.height) / scale, { even: false });
}

/**
 * Writes the luminance of a region's pixels over a grey ground into `luminance`. The pixels are multiplied by alpha: a
 * ground adds what alpha leaves of it.
 */
function measure(pixels: Uint8Array, width: number, region: Region, ground: number, luminance: Float32Array): void {
  for (let y = region.top; y < region.bottom; y++) {
    for (let at = y * width + region.left; at < y * width + region.right; at++) {
      const under = ground === 0 ? 0 : Math.round((ground * (255 - pixels[4 * at + canvasOrder.alpha]!)) / 255);
      const light = (channel: number): number => linear[pixels[4 * at + channel]! + under]!;
      luminance[at] =
        0.2126 * light(canvasOrder.red) + 0.7152 * light(canvasOrder.green) + 0.0722 * light(canvasOrder.blue);
    }
  }
}

/** For each sRGB channel value, as in WCAG: a grey's luminance is its linear channel value. */
const linear = Float32Array.from({ length: 256 }, (_, value) => {
  const hex = value.toString(16).padStart(2, '0');
  return luminanceOf(`#${hex}${hex}${hex}`);
});
