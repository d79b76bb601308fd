import { audience } from './audience.ts';
import { defaulting, flag, one, option, seconds, text } from './kinds.ts';
import { UsageError } from './usage-error.ts';
import { verb } from './verb.ts';

export const alternatives = verb({
  does: 'lists every other named argument for the conclusions of a step, simplest first, with what else each proves',
  usage: 'SCENE --step ID',
  takes: { given: one('SCENE', 'the scene file (YAML), or a puzzle as `plan` takes it') },
  options: {
    step: text('<id>', 'the step of the scene'),
    at: option(
      '<position>',
      "for a puzzle: what has been done so far, such as 'r1c1=4 r4c5<>39'; `singles` for all that singles give",
      readPosition,
    ),
    so: text('<conclusions>', 'what to prove (default: all of the step, or whatever the position offers)'),
    json: flag('print the alternatives as JSON (its schema: `proofreel schema --alternatives`)'),
    ...audience,
    seconds: defaulting(seconds('the time limit of the search'), 10),
  },
  examples: [
    'proofreel alternatives scenes/lamp-room.yaml --step kite',
    "proofreel alternatives puzzle.txt --at singles --so 'r1c7<>7'",
  ],
});

/** Whether everything that singles give is done, and what else is, as conclusions in notation: possibly none. */
export interface AskedPosition {
  readonly afterSingles: boolean;
  readonly conclusions: string;
}

/** `singles`, `singles, r4c5<>39`, `r1c1=4`. */
function readPosition(text: string, option: string): AskedPosition {
  if (/^\s*free\b/i.test(text)) throw new UsageError(`${option} free is now ${option} singles`);
  const conclusions = text.replace(/^\s*singles\b\s*,?/i, '');
  return { afterSingles: conclusions !== text, conclusions: conclusions.trim() };
}
