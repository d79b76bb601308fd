/**
 * The report of `check --json`: stable, versioned, with a published JSON Schema that comes from this definition.
 * Candidates, sets and conclusions are written as in a scene, one cell each, sorted by row, column, digit.
 */
import { z } from 'zod';

/** `spent`: redundant, known before the step. */
const verdict = z.enum(['false', 'unproved', 'proved', 'spent']);
const verdictOfStep = z.enum(['false', 'unproved', 'proved', 'spent', 'none']);
const words = z.array(z.string());

const name = z.object({
  given: z.string().describe('The name as the scene writes it.'),
  judged: z.enum(['fits', 'misnamed', 'not judged']),
  fits: words.describe('The names that fit, from most special to most general.'),
});

const argument = z.object({
  found: z.boolean().describe('Whether the tool looked for the argument because the step gives none.'),
  sets: words.describe('At least one candidate of each set is true: "7c5", "r1c3", "step towers", "deadly 12r34c58".'),
  others: z
    .number()
    .int()
    .optional()
    .describe('How many other arguments of that name would have served, if one was found.'),
});

const conclusion = z.object({
  text: z.string().describe('"r1c7<>7", "r8c4=8" or "either 7r1c5 7r2c8".'),
  verdict,
  restsOn: words.describe('Failed steps: if they held, this conclusion would be proved.'),
  cases: z.number().int().describe('How many cases the search went through; 0 if everything follows by forcing.'),
  counterexample: words
    .optional()
    .describe('One candidate from every set, free of conflicts, in which the conclusion is wrong.'),
  message: z.string().describe('Why it is not proved; empty if it is.'),
  argument: argument.optional(),
  name: name.optional(),
});

const link = z.object({
  chain: z.number().int().describe('Counted from 1.'),
  from: z.string(),
  to: z.string(),
  kind: z.enum(['strong', 'weak']),
  holds: z.boolean(),
  brokenBy: words,
});

const fix = z.object({
  conclusions: words.describe('The conclusions that it fixes; empty if it fixes a link.'),
  add: words.describe('Sets to add to `from`.'),
  remove: words.describe('Candidates to remove first.'),
  steps: words.describe(
    'Steps that do so, ready to paste before this one; or one that proves the conclusion separately.',
  ),
  after: z
    .string()
    .optional()
    .describe('The later conclusion of the cascade behind which the conclusion must be moved.'),
  because: words
    .optional()
    .describe('Names that fit the step once these are removed, if that is no longer the name it gives.'),
});

const step = z.object({
  id: z.string(),
  line: z.number().int(),
  verdict: verdictOfStep,
  sound: z.boolean().describe('Covers verdict, links, name and `fails`.'),
  assumesOneSolution: z.boolean(),
  inheritsOneSolution: z.boolean().describe('It rests on an earlier step that assumes one solution.'),
  name: name.optional(),
  argument,
  links: z.array(link).describe('All links of all chains, in order.'),
  conclusions: z.array(conclusion),
  unneeded: words.describe('Sets that can all be left out together.'),
  missed: words.describe('Removals that the argument also proves; given for steps that only remove.'),
  stale: words.describe('Candidates that `pencil` or `only` lists but that are already impossible.'),
  message: z.string(),
  faults: z
    .array(z.object({ code: z.string(), message: z.string() }))
    .describe('What is wrong with the step as a whole, beside the verdicts of its conclusions and links.'),
  advice: words.describe('Remarks for the author: many cases, a simpler argument, a placement long open.'),
  mends: z.array(fix).describe('What would fix the step; searched for in the first unsound steps.'),
});

const fault = z.object({
  line: z.number().int(),
  column: z.number().int(),
  code: z.string(),
  message: z.string(),
});

export const reportDefinition = z.object({
  report: z.literal(1).describe('The version of this report.'),
  scene: z.string().describe('The path as given.'),
  sound: z.boolean(),
  puzzle: z.object({
    solutions: z.union([z.literal(0), z.literal(1), z.literal(2)]).describe('2: two or more.'),
    takenAsRead: words.describe('What `puzzle.start` placed and removed.'),
  }),
  errors: z.array(fault).describe('With any, the scene is unusable and `steps` is empty.'),
  summary: z.object({
    steps: z.number().int(),
    toMend: words.describe('The steps to fix; empty exactly if the scene is sound.'),
    restOnThem: z.number().int().describe('How many unsound steps merely rest on those.'),
  }),
  steps: z.array(step),
  warnings: z.array(fault),
});

export type Report = z.infer<typeof reportDefinition>;
export type ReportedStep = Report['steps'][number];

/** The report's JSON Schema, draft 2020-12. Further keys may be added: readers ignore unknown ones. */
export function reportSchema(): object {
  const schema = z.toJSONSchema(reportDefinition, { io: 'input' });
  return { ...schema, title: 'proofreel report', description: 'What `proofreel check SCENE --json` prints.' };
}
