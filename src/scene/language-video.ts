/**
 * The keys of `video` and of `versions`: the frame, what is under the marks, and where the board is on it.
 */
import type { ReadOf } from './definition.ts';
import type { Faults } from './faults.ts';
import { type FrameSize, readRate, readSize, readTimecode } from './frame.ts';
import { fixedTime, placementTime } from './language-times.ts';
import { choice, measure, name, onOrOff, type TextOf } from './language-values.ts';
import { type Range, readNumber } from './numbers.ts';
import { either, keys, listOf, marked, optional } from './structures.ts';

interface FrameNeeds {
  readonly frame: FrameSize;
  readonly faults: Faults;
}

/** A number of pixels, whose range depends on the frame. */
function pixels(description: string, range: (frame: FrameSize) => Range): TextOf<number, FrameNeeds> {
  return measure(description, ['60'], (node, { frame, faults }, named) =>
    readNumber(node, { ...range(frame), what: named, faults }),
  );
}

/** On or near the frame: a board may extend beyond its edges. */
const nearFrame = ({ width, height }: FrameSize): Range => {
  const most = 2 * Math.max(width, height);
  return { least: -most, most };
};

const coordinate = measure('x and y, in pixels.', ['60'], (node, { frame, faults }: FrameNeeds) =>
  readNumber(node, { ...nearFrame(frame), what: 'a corner', faults }),
);

/** By mark: the keys of a place of the board. */
const places = {
  square: {
    left: pixels("The left edge of the grid's outer square, in pixels.", nearFrame),
    top: pixels("The top edge of the grid's outer square, in pixels.", nearFrame),
    side: pixels("The side of the grid's outer square, in pixels.", ({ width, height }) => ({
      least: 16,
      most: 4 * Math.max(width, height),
    })),
  },
  corners: {
    corners: listOf(
      listOf(coordinate, 'A corner: [x, y].'),
      'The four corners, clockwise from the top left, for a board filmed at an angle.',
    ),
  },
  hidden: { hidden: choice(['true'], 'true: the board is not visible.') },
};

const placeDescriptions = { square: 'A square.', corners: 'Four corners.', hidden: 'A cutaway.' };

const placement = marked(
  places,
  { at: optional(placementTime()) },
  { title: 'a place of the board', descriptionOf: (mark) => placeDescriptions[mark] },
);

const board = (description: string) => either([placement, listOf(placement)], description);

const camera = keys('the camera', 'Where the face camera goes: a place on the frame that is kept free.', {
  left: pixels('Its left edge, in pixels.', ({ width }) => ({ least: 0, most: width })),
  top: pixels('Its top edge, in pixels.', ({ height }) => ({ least: 0, most: height })),
  width: pixels('Its width, in pixels.', ({ width }) => ({ least: 16, most: width })),
  height: pixels('Its height, in pixels.', ({ height }) => ({ least: 16, most: height })),
});

export const videoDefinition = keys('the video', 'Size, rate, and what is under the marks.', {
  size: optional(measure('Width x height in pixels, both even; 1920x1080 by default.', ['1920x1080'], readSize)),
  rate: optional(
    measure(
      'Frames a second: 24, 25, 30, 50, 60, or an exact fraction; 30 by default.',
      ['25', '30000/1001'],
      readRate,
    ),
  ),
  length: optional(fixedTime('How long the video is.')),
  timecode: optional(measure('The label of the first frame; timecodes count from it.', ['01:00:00:00'], readTimecode)),
  board: optional(
    board("Where the grid's outer square is on the frame; a list, each with at, for a board that moves."),
  ),
  small: optional(choice(['123', '789', 'whole'], 'Where candidates are in a cell of the board; 123 by default.')),
  draw: optional(
    choice(
      ['overlay', 'writing', 'board'],
      'overlay: only annotations, over a recording; writing: digits and candidates too; board: everything. By default overlay where there is footage or a place for the board, else board.',
    ),
  ),
  candidates: optional(choice(['all', 'pencilled', 'none'], 'Which candidates are drawn; all by default.')),
  coordinates: optional(onOrOff("The numbers of rows and columns at the board's edges; off by default.")),
  subtitles: optional(onOrOff('Each sentence on the frame while it is spoken; off by default.')),
  camera: optional(camera),
  narration: optional(name('WebVTT or SRT, or JSON [{word, start, end}]: the times of cues and words.')),
  audio: optional(name('Sound laid under the video.')),
  footage: optional(
    either(
      [
        name('A film laid under the annotations.'),
        keys('the footage', 'A film, and where it starts.', {
          file: name('The file of the film.'),
          start: optional(fixedTime("The moment of the footage that coincides with the video's first frame.")),
        }),
      ],
      'A film laid under the annotations.',
    ),
  ),
});

export const versionDefinition = keys('a version', 'Another frame for the same lesson.', {
  size: measure('Width x height in pixels.', ['1080x1920'], readSize),
  board: optional(board('Where the board is on this frame; without it the tool lays the frame out itself.')),
  coordinates: optional(onOrOff('As under video, which it follows by default.')),
  subtitles: optional(onOrOff('As under video, which it follows by default.')),
  camera: optional(camera),
});

/** A video as written. */
export type VideoMap = ReadOf<typeof videoDefinition>;

/** The board of a video or a version as written. */
export type BoardPlaces = ReadOf<ReturnType<typeof board>>;

/** One place of the board as written. */
export type PlaceMap = ReadOf<typeof placement>;

/** A camera as written. */
export type CameraMap = ReadOf<typeof camera>;
