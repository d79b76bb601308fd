/**
 * The language of scenes: every key, what it holds and what it is for. The reader checks a file against this definition,
 * and the JSON Schema for editors is made from it, so that the two cannot part ways.
 */
import { z } from 'zod';
import { boardRules, boxShapes } from '../grid/grid.ts';
import { stepDefinition } from './language-step.ts';
import { beatTime, fixedTime } from './language-times.ts';
import { choice, keys, listOf, measure, name, notation, sentence } from './language-values.ts';
import { groupColours } from './scene.ts';

/** The version of the language that this reader knows. */
export const languageVersion = '1';

const puzzle = keys('the puzzle', 'What is on the board.', {
  setter: name('The credit shown with the puzzle.').optional(),
  boxes: choice(boxShapes, 'Rows x columns of one box; 3x3 by default.', {
    '3x2': 'a 6x6 puzzle has boxes of 2 rows x 3 columns here: 2x3',
    '4x2': 'an 8x8 puzzle has boxes of 2 rows x 4 columns here: 2x4',
  }).optional(),
  regions: notation(
    'Regions of any shape in place of boxes: a drawing of the board, one letter a cell, 4x4 to 9x9; blanks, line breaks and | - + are ignored.',
    [],
  ).optional(),
  rules: listOf(
    choice(boardRules, 'diagonals: each main diagonal holds every digit; the others keep equal digits a move apart.'),
  )
    .meta({ description: 'Rules beyond rows, columns and boxes.' })
    .optional(),
  givens: notation('One symbol a cell; . 0 _ are blank; blanks, line breaks and | - + are ignored.', []),
  start: keys('the start', 'The video begins in mid-solve; taken as read.', {
    placed: notation('Digits that stand at the start.', ['r1c1=4 r1c2=7']).optional(),
    removed: notation('Candidates that are gone at the start.', ['r4c5<>39']).optional(),
  }).optional(),
  uniqueness: choice(
    ['allowed', 'barred'],
    'barred: no step may assume that the puzzle has one solution; allowed by default.',
  ).optional(),
});

const pixels = (description: string) => measure(description, ['60']);
const corner = listOf(pixels('x and y, in pixels.')).meta({ description: 'A corner: [x, y].' });

const square = {
  left: pixels("The left edge of the grid's outer square, in pixels."),
  top: pixels("The top edge of the grid's outer square, in pixels."),
  side: pixels("The side of the grid's outer square, in pixels."),
};
const corners = {
  corners: listOf(corner).meta({
    description: 'The four corners, clockwise from the top left, for a board filmed at an angle.',
  }),
};
const hidden = { hidden: choice(['true'], 'true: the board is not to be seen.') };

const placements = z.union([
  keys('a place of the board', 'A square.', { ...square, at: beatTime().optional() }),
  keys('a place of the board', 'Four corners.', { ...corners, at: beatTime().optional() }),
  keys('a place of the board', 'A cutaway.', { ...hidden, at: beatTime().optional() }),
]);

const camera = keys('the camera', 'A place on the frame that is left free, in pixels.', {
  left: pixels('Its left edge, in pixels.'),
  top: pixels('Its top edge, in pixels.'),
  width: pixels('Its width, in pixels.'),
  height: pixels('Its height, in pixels.'),
})
  .meta({ description: 'Where the face camera goes: a place on the frame that is left free.' })
  .optional();
const onOff = ['on', 'off'] as const;

const video = keys('the video', 'Size, rate, and what lies under the marks.', {
  size: measure('Width x height in pixels, both even; 1920x1080 by default.', ['1920x1080']).optional(),
  rate: measure('Frames a second: 24, 25, 30, 50, 60, or an exact fraction; 30 by default.', [
    '25',
    '30000/1001',
  ]).optional(),
  length: fixedTime('How long the video is.').optional(),
  timecode: measure('What the first frame is called; timecodes count from it.', ['01:00:00:00']).optional(),
  board: z
    .union([placements, listOf(placements)])
    .meta({
      description: "Where the grid's outer square lies on the frame; a list, each with at, for a board that moves.",
    })
    .optional(),
  small: choice(['123', '789', 'whole'], 'Where candidates stand in a cell of the board; 123 by default.').optional(),
  draw: choice(
    ['overlay', 'writing', 'board'],
    'overlay: annotations alone, over a recording; writing: digits and candidates too; board: everything. By default overlay where there is footage or a place for the board, else board.',
  ).optional(),
  candidates: choice(['all', 'pencilled', 'none'], 'Which candidates are drawn; all by default.').optional(),
  coordinates: choice(onOff, "The numbers of rows and columns at the board's edges; off by default.").optional(),
  said: choice(onOff, 'The sentence being said, in words on the frame; off by default.').optional(),
  camera,
  narration: name('WebVTT or SRT, or JSON [{word, start, end}]: the times of cues and words.').optional(),
  audio: name('Sound laid under the video.').optional(),
  footage: z
    .union([
      name('A film laid under the annotations.'),
      keys('the footage', 'A film, and where it starts.', {
        file: name('The file of the film.'),
        start: fixedTime("The moment of the footage that falls on the video's first frame.").optional(),
      }),
    ])
    .meta({ description: 'A film laid under the annotations.' })
    .optional(),
});

const version = keys('a version', 'Another frame for the same telling.', {
  size: measure('Width x height in pixels.', ['1080x1920']),
  board: z
    .union([placements, listOf(placements)])
    .meta({ description: 'Where the board lies on this frame; without it the tool lays the frame out itself.' })
    .optional(),
  coordinates: choice(onOff, "As under video; the video's own where it is not said.").optional(),
  said: choice(onOff, "As under video; the video's own where it is not said.").optional(),
  camera,
});

/** A whole scene. */
export const sceneDefinition = keys(
  'a scene',
  'A lesson in number-placement logic: what is argued, and what is shown when.',
  {
    proofreel: choice([languageVersion], 'The version of this language: 1.'),
    title: sentence('The title of the lesson.').optional(),
    puzzle,
    video: video.optional(),
    versions: z
      .record(z.string(), version)
      .meta({ description: 'Other frames for the same telling, each under its name: render --as NAME.' })
      .optional(),
    look: name('A file with colours, stroke widths, fonts and motion.').optional(),
    groups: z
      .record(
        z.string(),
        choice(groupColours, 'A colour of the look.', {
          vermilion: 'vermilion is kept for removals, so that a cross is never taken for a group',
        }),
      )
      .meta({ description: "This scene's colour groups: a name and a colour." })
      .optional(),
    advice: keys('the advice', 'What `check` remarks besides proving; it changes no verdict.', {
      simpler: choice(['on', 'off'], 'A simpler named argument gives the same conclusions; on by default.').optional(),
      open: choice(['on', 'off'], 'A placement was open several steps earlier; on by default.').optional(),
      cases: measure('A proof that needs more cases than this gets a warning; 12 by default.', ['12']).optional(),
    }).optional(),
    steps: listOf(stepDefinition).meta({ description: 'The steps, in their order.' }),
  },
);
