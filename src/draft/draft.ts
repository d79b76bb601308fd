/**
 * A scene drafted from a plan.
 */
import type { Candidate } from '../grid/candidates.ts';
import { cellOf, type Digit, digitOf, type Grid } from '../grid/grid.ts';
import { printCell } from '../grid/notation/print.ts';
import type { Plan } from '../plan/plan.ts';
import type { Span } from '../scene/diagnostic.ts';
import type { DraftStep } from './draft-step.ts';
import { draftSteps, isGathered } from './draft-steps.ts';
import type { Phrases } from './phrases.ts';
import { puzzleOfScene, puzzleText, sceneText } from './scene-text.ts';
import { type Wording, wordingOf } from './wording.ts';

/** With more names than this, a title is not made of them. */
const mostNames = 3;

export interface DraftOf {
  readonly plan: Plan;
  readonly givens: readonly (Digit | undefined)[];
  /** The scene that the puzzle was taken from: its board may have regions, rules and a start. */
  readonly taken: { readonly text: string; readonly puzzle: Span } | undefined;
  readonly phrases: Phrases;
  /** If not given, one is made from the names of the arguments. */
  readonly title: string | undefined;
}

export interface Draft {
  readonly title: string;
  readonly steps: readonly DraftStep[];
  /** The scene's text, with these steps or with the same ones at other times. */
  readonly textWith: (steps: readonly DraftStep[], video?: readonly string[]) => string;
}

/** Drafts a scene from a plan that reaches the goal, or as far as it goes. */
export function draftOf({ plan, givens, taken, phrases, title: given }: DraftOf): Draft {
  const { grid } = plan.start;
  const wording = wordingOf(phrases, grid);
  const title = given ?? titleOf(plan, wording);
  return {
    title,
    steps: draftSteps(plan, wording),
    textWith: (steps, video = []) =>
      sceneText({
        title,
        remarks: remarksOn(plan),
        puzzle: taken === undefined ? puzzleText(grid, givens) : puzzleOfScene(taken.text, taken.puzzle),
        video: ['  draw: board', '  candidates: pencilled', ...video.map((line) => `  ${line}`), ''].join('\n'),
        steps,
      }),
  };
}

/** A scene without an argument: the puzzle, a title, and a first step to write. */
export function skeletonOf(grid: Grid, givens: readonly (Digit | undefined)[], title: string): string {
  const first: DraftStep = {
    id: 'opening',
    title: 'The board as it is given',
    say: 'Write here what you would say, and in further steps what you argue.',
    covers: [],
  };
  const video = '  draw: board\n  candidates: pencilled\n';
  return sceneText({ title, remarks: [], puzzle: puzzleText(grid, givens), video, steps: [first] });
}

/** What the plan is, for anyone who edits the draft. */
function remarksOn({ outcome, cost, steps, until, end }: Plan): readonly string[] {
  const count = steps.filter((step) => !isGathered(step)).length;
  const named = `${count} ${count === 1 ? 'argument' : 'arguments'}`;
  const least = {
    least: 'proved to be the least',
    found: 'the least that was found',
    stuck: 'no named argument leads further',
    unfinished: 'time ran out before the end',
  }[outcome];
  return [
    `A draft to edit: ${count === 0 ? 'singles only' : `${named} that cost ${cost} to teach, ${least}`}.`,
    ...(until === undefined ? [] : [`It goes as far as ${until.map((each) => printGoal(end.grid, each)).join(' ')}.`]),
    'No step has a time, so each lasts as long as its words take to say.',
  ];
}

function printGoal(grid: Grid, candidate: Candidate): string {
  return `${printCell(grid, cellOf(grid, candidate))}=${digitOf(grid, candidate)}`;
}

/** From the names of its arguments, the costliest ones if there are many. */
function titleOf(plan: Plan, wording: Wording): string {
  const costliest = plan.steps.filter((step) => !isGathered(step)).toSorted((a, b) => b.cost - a.cost);
  const kept = new Set([...new Set(costliest.map(({ name }) => name))].slice(0, mostNames));
  const inOrder = new Set(plan.steps.map(({ name }) => name).filter((name) => kept.has(name)));
  if (inOrder.size === 0) return wording.title('lesson-easy');
  return wording.title('lesson', { names: wording.all([...inOrder].map(wording.name)) });
}
