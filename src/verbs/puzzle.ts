import type { BoxShape } from '../grid/grid.ts';
import { symmetries } from '../puzzles/symmetry.ts';
import { audience } from './audience.ts';
import { choice, defaulting, flag, option, out, text, wholeNumber } from './kinds.ts';
import { UsageError } from './usage-error.ts';
import { verb } from './verb.ts';

export const puzzle = verb({
  does: 'makes a new puzzle whose least plan needs exactly these arguments, the same for the same seed',
  usage: '[--needs NAMES]',
  takes: {},
  options: {
    out: out('write a scene to start from (.yaml) instead of the symbols'),
    needs: text('<names>', 'the hard arguments, separated by commas: skyscraper,xy-chain'),
    rest: defaulting(
      choice('<kind>', ['singles', 'locked'], 'what else may be needed: singles, or locked candidates too (locked)'),
      'singles',
    ),
    symmetry: defaulting(
      choice('<kind>', symmetries, 'the pattern of the givens: rotational, diagonal, mirror, none'),
      'none',
    ),
    size: defaulting(option('<cells>', 'cells across: 4, 6, 8 or 9', readSize), '3x3', '9'),
    minimal: flag('only puzzles whose every given is needed'),
    seed: wholeNumber(
      '<number>',
      { least: 0, most: 2 ** 32 - 1 },
      'the seed of the puzzles (default: from the clock, and printed)',
    ),
    count: defaulting(wholeNumber('<number>', { least: 1, most: 1000 }, 'how many puzzles, one per line'), 1),
    ...audience,
    seconds: defaulting(wholeNumber('<number>', { least: 1, most: 86_400 }, 'give up after this long'), 60),
  },
  examples: [
    'proofreel puzzle --needs skyscraper --symmetry rotational --seed 7',
    'proofreel puzzle --needs naked-pair,x-wing --rest locked -o lesson.yaml',
    'proofreel puzzle --size 6 --count 10',
  ],
});

/** The box shape as written, by the number of cells across the board. */
const shapes: ReadonlyMap<string, BoxShape> = new Map([
  ['4', '2x2'],
  ['6', '2x3'],
  ['8', '2x4'],
  ['9', '3x3'],
]);

function readSize(text: string, option: string): BoxShape {
  const shape = shapes.get(text);
  if (shape === undefined) throw new UsageError(`${option} ${text}: boards are 4, 6, 8 or 9 cells across`);
  return shape;
}
