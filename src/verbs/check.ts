import { file, flag, one, text } from './kinds.ts';
import { verb } from './verb.ts';

export const check = verb({
  does: 'proves every step, or says exactly why one fails',
  usage: 'SCENE [--json]',
  takes: { scene: one('SCENE', 'the scene file (YAML)') },
  options: {
    json: flag('print the report as JSON (its schema: `proofreel schema --report`)'),
    fix: file('write a copy of the scene with its unsound steps fixed, each fix marked by a comment'),
    spellOut: file('write a copy of the scene with each `so: all` replaced by the list it stands for'),
    cnf: text('<folder>', 'write a DIMACS CNF file for each conclusion, for any SAT solver to check'),
  },
  renamed: { mend: 'fix' },
  examples: ['proofreel check scenes/lamp-room.yaml', 'proofreel check scenes/lamp-room.yaml --json > report.json'],
});
