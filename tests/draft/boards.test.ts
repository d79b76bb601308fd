/** Drafts of boards with further rules, where a digit's places in a house clear more than the houses that hold them. */
import { describe, expect, it } from 'vitest';
import { startPosition } from '../../src/check/start-position.ts';
import { defaultCosts } from '../../src/commands/teaching-costs.ts';
import { draftOf } from '../../src/draft/draft.ts';
import { checkScene } from '../../src/lesson/check-scene.ts';
import { readScene } from '../../src/lesson/read-scene.ts';
import { planFor } from '../../src/plan/plan.ts';
import { times } from '../plan/times.ts';
import { phrasesIn } from './drafted.ts';

const boards = [
  ['anti-king', '..25.. .....4 ..1... .4.... ...... .....6'],
  ['diagonals', '4....3 .1.2.. 53.... ...... ...... ......'],
] as const;

describe.each(boards)('a draft of a board with the rule %s', (rule, givens) => {
  it.each(['en', 'de'])('holds, under names that fit (%s)', (language) => {
    const text = `proofreel: 1\npuzzle:\n  boxes: 2x3\n  rules: [${rule}]\n  givens: ${givens}\nsteps:\n  - {id: start, say: Look}\n`;
    const { puzzle } = readScene(text).scene!;
    const plan = planFor(startPosition(puzzle, true), { costs: defaultCosts(), keepGoing: times(150) });
    expect(plan.steps.map(({ name }) => name)).toContain('locked candidates');
    const draft = draftOf({
      plan,
      givens: puzzle.givens,
      taken: { text, puzzle: puzzle.span },
      phrases: phrasesIn(language),
      title: undefined,
    });
    const { scene, diagnostics } = readScene(draft.textWith(draft.steps));
    expect(diagnostics).toEqual([]);
    const checked = checkScene(scene!);
    expect(checked.steps.filter(({ sound }) => !sound).map(({ message }) => message)).toEqual([]);
    expect(checked.warnings).toEqual([]);
  });
});
