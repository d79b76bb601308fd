/**
 * The language of scenes: every key, what it contains and what it is for. The reader checks a file against this
 * definition, and the JSON Schema for editors is made from it, so that the two cannot diverge.
 */
import { boardRules, boxShapes } from '../grid/grid.ts';
import type { BeatDefinition } from './beats.ts';
import type { ReadOf } from './definition.ts';
import { readConclusions } from './language-argument.ts';
import { stepDefinition } from './language-step.ts';
import { choice, name, notation, onOrOff, sentence } from './language-values.ts';
import { versionDefinition, videoDefinition } from './language-video.ts';
import { number } from './numbers.ts';
import { groupColours } from './scene.ts';
import { entriesOf, keys, listOf, optional } from './structures.ts';

/** The version of the language that this reader knows. */
export const languageVersion = '1';

export const puzzleDefinition = keys('the puzzle', 'What is on the board.', {
  setter: optional(name('The credit shown with the puzzle.')),
  boxes: optional(
    choice(boxShapes, 'Rows x columns of one box; 3x3 by default.', {
      '3x2': 'a 6x6 puzzle has boxes of 2 rows x 3 columns here: 2x3',
      '4x2': 'an 8x8 puzzle has boxes of 2 rows x 4 columns here: 2x4',
    }),
  ),
  regions: optional(
    notation(
      'Regions of any shape instead of boxes: a drawing of the board, one letter a cell, 4x4 to 9x9; spaces, line breaks and | - + are ignored.',
      [],
    ),
  ),
  rules: optional(
    listOf(
      choice(boardRules, 'diagonals: each main diagonal holds every digit; the others keep equal digits a move apart.'),
      'Rules beyond rows, columns and boxes.',
    ),
  ),
  givens: notation('One symbol a cell; . 0 _ are blank; spaces, line breaks and | - + are ignored.', []),
  start: optional(
    keys('the start', 'The video begins in mid-solve; taken as read.', {
      placed: optional(notation('Digits placed at the start.', ['r1c1=4 r1c2=7'], readConclusions)),
      removed: optional(notation('Candidates removed at the start.', ['r4c5<>39'], readConclusions)),
    }),
  ),
  uniqueness: optional(
    choice(['allowed', 'barred'], 'barred: no step may assume that the puzzle has one solution; allowed by default.'),
  ),
});

/** A puzzle as written. */
export type PuzzleMap = ReadOf<typeof puzzleDefinition>;

const groups = entriesOf(
  choice(groupColours, 'A colour of the look.', {
    vermilion: 'vermilion is kept for removals, so that a cross is never taken for a group',
  }),
  "This scene's colour groups: a name and a colour.",
);

/** The groups as written. */
export type GroupEntries = ReadOf<typeof groups>;

const versions = entriesOf(
  versionDefinition,
  'Other frames for the same lesson, each under its name: render --as NAME.',
);

/** The versions as written. */
export type VersionEntries = ReadOf<typeof versions>;

const advice = keys('the advice', 'What `check` remarks on in addition to proving; it changes no verdict.', {
  simpler: optional(onOrOff('A simpler named argument gives the same conclusions; on by default.')),
  open: optional(onOrOff('A placement was open several steps earlier; on by default.')),
  cases: optional(
    number('A proof that needs more cases than this gets a warning; 12 by default.', ['12'], {
      least: 0,
      most: 1_000_000,
    }),
  ),
});

/** The advice as written. */
export type AdviceMap = ReadOf<typeof advice>;

/** A whole scene, whose steps show these beats. */
export const sceneDefinition = (beat: BeatDefinition) =>
  keys('a scene', 'A lesson in number-placement logic: what is argued, and what is shown when.', {
    proofreel: choice([languageVersion], 'The version of this language: 1.'),
    title: optional(sentence('The title of the lesson.')),
    puzzle: puzzleDefinition,
    video: optional(videoDefinition),
    versions: optional(versions),
    look: optional(name('A file with colours, stroke widths, fonts and motion.')),
    groups: optional(groups),
    advice: optional(advice),
    steps: listOf(stepDefinition(beat), 'The steps, in their order.'),
  });

/** A scene as written. */
export type SceneMap = ReadOf<ReturnType<typeof sceneDefinition>>;
