/** Drafts of puzzles of our own, as the command makes them. */
import { readFileSync } from 'node:fs';
import { startPosition } from '../../src/check/start-position.ts';
import type { CheckedScene } from '../../src/check/verdict.ts';
import { defaultCosts } from '../../src/commands/teaching-costs.ts';
import { type Draft, draftOf } from '../../src/draft/draft.ts';
import { type Phrases, readPhrases } from '../../src/draft/phrases.ts';
import { gridOf } from '../../src/grid/grid.ts';
import { checkScene } from '../../src/lesson/check-scene.ts';
import { readScene } from '../../src/lesson/read-scene.ts';
import { type Plan, planFor } from '../../src/plan/plan.ts';
import { readBarePuzzle } from '../../src/scene/bare-puzzle.ts';
import type { Scene } from '../../src/scene/scene.ts';

const folder = new URL('../../assets/phrases/', import.meta.url);

export function phrasesIn(language: string): Phrases {
  const { phrases, diagnostics } = readPhrases(readFileSync(new URL(`${language}.yaml`, folder), 'utf8'));
  if (phrases === undefined) throw new Error(JSON.stringify(diagnostics));
  return phrases;
}

export interface Drafted {
  readonly plan: Plan;
  readonly draft: Draft;
  readonly text: string;
  readonly scene: Scene;
  readonly checked: CheckedScene;
}

/** `steps`: how often the planner may ask whether to go on, so that a test takes as long on any machine. */
export function drafted(symbols: string, { language = 'en', steps = 60 } = {}): Drafted {
  const { puzzle } = readBarePuzzle(symbols);
  if (puzzle === undefined) throw new Error(`no puzzle: ${symbols}`);
  let left = steps;
  const start = startPosition({ ...puzzle, start: [] }, true);
  const plan = planFor(start, { costs: defaultCosts(), keepGoing: () => --left > 0 });
  const { givens } = puzzle;
  const draft = draftOf({ plan, givens, taken: undefined, phrases: phrasesIn(language), title: undefined });
  const text = draft.textWith(draft.steps);
  const { scene, diagnostics } = readScene(text);
  if (scene === undefined) throw new Error(`${diagnostics.map(({ message }) => message).join('\n')}\n${text}`);
  return { plan, draft, text, scene, checked: checkScene(scene) };
}

export const board = gridOf('3x3');

/** What is wrong with the draft as a scene: nothing. */
export function faultsOf({ checked, scene, draft }: Drafted): string[] {
  const unsound = checked.steps.filter((step) => !step.sound).map(({ step, message }) => `${step.id}: ${message}`);
  const redundant = checked.steps
    .filter(({ verdict }) => verdict === 'redundant')
    .map(({ step }) => `${step.id} says nothing new`);
  const stale = checked.steps.filter((step) => step.stale.length > 0).map(({ step }) => `${step.id} is stale`);
  const loose = checked.warnings.map(({ code, message }) => `${code}: ${message}`);
  const wordless = scene.steps
    .filter((step) => step.say === undefined || step.title === undefined)
    .map(({ id }) => `${id} has no words`);
  const torn = draft.steps.filter(({ say, title }) =>
    /[{}]|undefined|\s{2}|^\s|\s[.,?;]|^\p{Ll}|\.\./u.test(`${say}\n${title}`.replace('\n', '|')),
  );
  return [
    ...unsound,
    ...redundant,
    ...stale,
    ...loose,
    ...wordless,
    ...torn.map(({ id, say, title }) => `${id}: ${title}: ${say}`),
  ];
}
