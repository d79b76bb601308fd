/**
 * The film and the words of a thumbnail: the whole board, whatever the video shows, with only the small digits that
 * matter.
 */
import type { CheckedScene, CheckedStep } from '../check/verdict.ts';
import { filmOf } from '../film/film-of.ts';
import { digestOf, drawingAt } from '../frames/drawing.ts';
import { paintThumbnail, type ThumbnailWords, thumbnailBoard, thumbnailSize } from '../frames/thumbnail.ts';
import type { Painter } from '../output/painters/painter.ts';
import type { Look } from '../scene/look.ts';
import type { Scene } from '../scene/scene.ts';
import { type Film, frameAt } from '../timeline/film.ts';
import type { Schedule } from '../timeline/schedule.ts';

/** The film of the scene on the frame of a thumbnail; its frames are those of the video. */
export function thumbnailFilm(checked: CheckedScene, schedule: Schedule, look: Look): Film {
  const { scene } = checked;
  const { video, puzzle } = scene;
  const drawn: Scene = {
    ...scene,
    video: {
      ...video,
      ...thumbnailSize,
      draw: 'board',
      small: video.small === '789' ? '789' : '123',
      candidates: 'none',
    },
  };
  const board = [{ from: frameAt(0), shape: thumbnailBoard(puzzle.grid.size) }];
  const film = filmOf({ ...checked, scene: drawn }, { ...schedule, board }, look);
  const marks = film.marks.filter(({ shape }) => shape.kind !== 'note' && shape.kind !== 'ask');
  return { ...film, marks, title: undefined, credit: undefined };
}

/** `title` replaces the step's own. */
export function thumbnailWords(
  { title: lesson }: Scene,
  step: CheckedStep | undefined,
  title: string | undefined,
): ThumbnailWords | undefined {
  const argument = step?.step.called ?? step?.step.because?.written;
  const large = title ?? step?.step.title ?? lesson ?? argument;
  if (large === undefined) return undefined;
  return {
    title: oneLine(large),
    lesson:
      lesson === undefined || title !== undefined || oneLine(lesson) === oneLine(large) ? undefined : oneLine(lesson),
    argument: argument === undefined || argument === large ? undefined : oneLine(argument),
  };
}

/** The film and the words as a picture. */
export function thumbnailPainter(whole: Film, look: Look, words: ThumbnailWords): Painter {
  const film: Film = { ...whole, headings: [] };
  return {
    width: film.width,
    height: film.height,
    rate: film.rate,
    frameCount: film.frameCount,
    transparent: false,
    digestAt: (frame) => digestOf(drawingAt(film, look, frameAt(frame))),
    paint: (context, frame) => paintThumbnail(context, film, look, drawingAt(film, look, frameAt(frame)), words),
  };
}

function oneLine(text: string): string {
  return text.replace(/\s+/g, ' ').trim();
}
