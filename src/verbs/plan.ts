import { audience } from './audience.ts';
import { defaulting, flag, out, seconds } from './kinds.ts';
import { puzzleGiven, until } from './puzzle-given.ts';
import { verb } from './verb.ts';

export const plan = verb({
  does: 'finds the path of least teaching cost from a puzzle to its solution: the fewest and simplest arguments that solve it',
  usage: 'PUZZLE',
  takes: { given: puzzleGiven },
  options: {
    out: out('draw which argument depends on which as a picture, an .svg'),
    tree: flag('print that as text, instead of the steps'),
    json: flag('print the plan as JSON (its schema: `proofreel schema --plan`)'),
    until: until('plan'),
    ...audience,
    seconds: defaulting(seconds('the time limit of the search'), 10),
  },
  examples: [
    'proofreel plan scenes/lamp-room.yaml',
    'proofreel plan puzzle.txt --know upto:xy-chain --without uniqueness',
    'proofreel plan puzzle.txt --tree -o tree.svg',
  ],
});
