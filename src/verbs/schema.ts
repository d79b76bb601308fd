import { flag } from './kinds.ts';
import { verb } from './verb.ts';

export const schema = verb({
  does: 'prints the JSON Schema of the scene language, with which an editor completes and checks a scene',
  usage: '[--report | --look | --costs | --plan | --alternatives | --phrases | --locate]',
  takes: {},
  options: {
    report: flag('the schema of the report of `check --json`'),
    look: flag('the schema of a look'),
    costs: flag('the schema of a table of teaching costs'),
    plan: flag('the schema of `plan --json`'),
    alternatives: flag('the schema of `alternatives --json`'),
    phrases: flag('the schema of a file of phrases, for `draft --language`'),
    locate: flag('the schema of `locate --json`'),
  },
  renamed: { ways: 'alternatives' },
  examples: ['proofreel schema > proofreel.schema.json'],
});
