/**
 * The picture on a slide: only the board, square, upright and complete, whatever the video shows. The slide has the
 * words, so the film of the pictures has none.
 */
import type { CheckedScene } from '../check/verdict.ts';
import { filmOf } from '../film/film-of.ts';
import { drawingAt } from '../frames/drawing.ts';
import type { Drawing, Inked } from '../picture/ink.ts';
import { coordinateBand } from '../picture/room-for-words.ts';
import type { Look } from '../scene/look.ts';
import type { Scene, Video } from '../scene/scene.ts';
import { type Film, type Frame, frameAt, type Mark, type Shown } from '../timeline/film.ts';
import type { Schedule } from '../timeline/schedule.ts';
import { framesLasting } from '../timeline/seconds.ts';
import { pictureSide } from './picture-side.ts';

/** Free space on every side of the board, for lines on its edge. */
const leastMargin = 22;

export interface SlideFilms {
  /** What is drawn: the board and the marks on it. */
  readonly picture: Film;
  /** What is said: headings, and the marks that are words. */
  readonly shown: Film;
}

/** The films from which slides are made; frames are those of the video. */
export function slideFilms(checked: CheckedScene, schedule: Schedule, look: Look): SlideFilms {
  const { scene } = checked;
  const shown = filmOf({ ...checked, scene: onBoard(scene) }, { ...schedule, board: [square(scene)] }, look);
  const picture: Film = {
    ...shown,
    title: undefined,
    credit: undefined,
    headings: [],
    said: [],
    camera: undefined,
    marks: shown.marks.filter((mark) => !isWords(mark)),
  };
  return { picture, shown };
}

/** Notes and questions are next to the picture. */
export function isWords({ shape }: Mark): boolean {
  return shape.kind === 'note' || shape.kind === 'ask';
}

function onBoard(scene: Scene): Scene {
  const { video } = scene;
  const drawn: Video = { ...video, width: pictureSide, height: pictureSide, draw: 'board', board: [] };
  // Such a recording shows no small digits: here, too, only those that the lesson writes.
  const bare: Video = video.small === 'whole' ? { ...drawn, small: '123', candidates: 'pencilled' } : drawn;
  return { ...scene, video: bare };
}

function square({ puzzle, video }: Scene): Schedule['board'][number] {
  const { size } = puzzle.grid;
  const free = pictureSide - 2 * leastMargin;
  // Rows and columns are numbered at the left and above.
  const cell = Math.floor(free / (size + (video.coordinates ? coordinateBand : 0)));
  const band = video.coordinates ? cell * coordinateBand : 0;
  const margin = (pictureSide - band - cell * size) / 2 + band;
  return { from: frameAt(0), shape: { kind: 'square', left: margin, top: margin, side: cell * size } };
}

/**
 * The drawing of a frame as if nothing moved: what has begun to come is shown completely, what has begun to go is not
 * shown. Marks that are `hidden` are left out.
 */
export function standingAt(
  film: Film,
  look: Look,
  frame: Frame,
  hidden: (mark: Mark) => boolean = () => false,
): Drawing {
  const drawing = drawingAt(film, look, frame);
  const fade = framesLasting(film.rate, look.motion.fade);
  const whole = <T extends Shown>(inked: readonly Inked[], things: readonly T[], isKept: (thing: T) => boolean) =>
    inked.flatMap(({ index }): Inked[] => {
      const thing = things[index];
      if (thing === undefined || !isKept(thing)) return [];
      const isGoing = thing.until < film.frameCount && thing.until - frame <= fade && thing.from < frame - fade;
      return isGoing ? [] : [{ index, progress: 1, alpha: 1 }];
    });
  const always = () => true;
  return {
    ...drawing,
    headings: whole(drawing.headings, film.headings, always),
    // A written digit stays.
    written: drawing.written.map(({ index }) => ({ index, progress: 1, alpha: 1 })),
    // A fading small digit is still shown: an empty cell would suggest a written digit.
    candidates: drawing.candidates.map(({ index }) => ({ index, progress: 1, alpha: 1 })),
    marks: whole(drawing.marks, film.marks, (mark) => !hidden(mark)),
  };
}
