/**
 * The report of `plan --json` and of `ways --json`: stable, with published JSON Schemas that come from these
 * definitions. Candidates, sets and conclusions are written as in a scene, one cell each.
 */
import { z } from 'zod';

const words = z.array(z.string());
const numbers = z.array(z.number().int());

const argument = {
  sets: words.describe('At least one candidate of each set is true: "7c5", "r1c3", "deadly 12r34c58".'),
  chain: z.string().optional().describe('The same as a chain, if it is presented as one.'),
  deadly: z
    .string()
    .optional()
    .describe('The pattern that would have a twin, if it rests on the puzzle having one solution.'),
};

const step = z.object({
  number: z.number().int().describe('Counted from 1.'),
  name: z.string(),
  cost: z.number().describe('By the table of teaching costs; 0 for a free one.'),
  ...argument,
  conclusions: words.describe('Those that the path needs: "r1c7<>7", "r8c4=8".'),
  restsOn: numbers.describe('The earlier steps that made its sets what they are.'),
  opens: numbers.describe('The later steps that rest on it.'),
});

const plan = z.object({
  plan: z.literal(1),
  puzzle: z.string().describe('As given on the command line.'),
  outcome: z
    .enum(['least', 'found', 'stuck', 'unfinished'])
    .describe(
      'least: no path costs less, in the sense of `proof`. found: the best path found; `proof` says why it is not proved. stuck: no argument leads on from `end`. unfinished: time ran out before the goal.',
    ),
  cost: z.number().describe('The total cost of the steps.'),
  proof: z
    .string()
    .describe('One sentence: what is proved about the cost, and what the proof assumes; or why nothing is proved.'),
  atLeast: z.number().describe('No path to the goal costs less, as far as was proved.'),
  until: words.optional().describe('The goal, if it is not the whole board.'),
  hard: z.number().int().describe('How many steps are not free.'),
  steps: z.array(step),
  end: z
    .object({ placed: words, removed: words })
    .describe('Where the path ends, as `start` of a scene takes it; nothing is removed if the board is full.'),
});

const way = z.object({
  name: z.string(),
  otherNames: words.describe('Costlier names in the table that fit the same argument.'),
  cost: z.number(),
  ...argument,
  proves: words.describe('Of the conclusions asked for.'),
  alsoRemoves: words.describe('What else the same argument proves.'),
});

const ways = z.object({
  ways: z.literal(1),
  scene: z.string().describe('The scene or the puzzle, as given.'),
  step: z.string().optional(),
  conclusions: words.describe('What is to be proved; empty if everything was asked for.'),
  finished: z.boolean().describe('Whether all names of the table were searched before time ran out.'),
  found: z.array(way).describe('Those that prove all the conclusions first, the simplest first.'),
});

export type PlanReport = z.infer<typeof plan>;
export type ReportedPlanStep = z.infer<typeof step>;
export type WaysReport = z.infer<typeof ways>;
export type ReportedWay = z.infer<typeof way>;

/** JSON Schema of draft 2020-12. */
export function planSchema(): object {
  return { ...z.toJSONSchema(plan, { target: 'draft-2020-12' }), title: 'A plan by proofreel' };
}

/** JSON Schema of draft 2020-12. */
export function waysSchema(): object {
  return { ...z.toJSONSchema(ways, { target: 'draft-2020-12' }), title: 'Ways to a conclusion by proofreel' };
}
