/**
 * `proofreel schema`: the JSON Schemas of the project's formats.
 */
import { phrasesSchema } from '../draft/phrases.ts';
import { planSchema, waysSchema } from '../report/plan-report.ts';
import { reportSchema } from '../report/report.ts';
import { lookSchema } from '../scene/read-look.ts';
import { sceneSchema } from '../scene/schema.ts';
import { teachingCostsSchema } from '../scene/teaching-costs.ts';
import { exitStatus } from '../verbs.ts';
import { BadCall } from './bad-call.ts';
import type { Terminal } from './terminal.ts';

export interface SchemaCall {
  readonly report?: boolean;
  readonly look?: boolean;
  readonly costs?: boolean;
  readonly plan?: boolean;
  readonly ways?: boolean;
  readonly phrases?: boolean;
}

const schemas: Readonly<Record<keyof SchemaCall, () => object>> = {
  report: reportSchema,
  look: lookSchema,
  costs: teachingCostsSchema,
  plan: planSchema,
  ways: waysSchema,
  phrases: phrasesSchema,
};

export async function schema(call: SchemaCall, terminal: Terminal): Promise<number> {
  const asked = (Object.keys(schemas) as (keyof SchemaCall)[]).filter((each) => call[each] === true);
  const [first, second] = asked;
  if (first !== undefined && second !== undefined)
    throw new BadCall(`--${first} and --${second} are two schemas; ask for one at a time`);
  const chosen = first === undefined ? sceneSchema() : schemas[first]();
  terminal.out(`${JSON.stringify(chosen, undefined, 2)}\n`);
  return exitStatus.sound;
}
