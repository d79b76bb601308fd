/**
 * `proofreel schema`: the JSON Schemas of the project's formats.
 */
import { phrasesSchema } from '../draft/phrases.ts';
import { sceneSchema } from '../lesson/read-scene.ts';
import { locateSchema } from '../report/locate-report.ts';
import { planSchema, waysSchema } from '../report/plan-report.ts';
import { reportSchema } from '../report/report.ts';
import { lookSchema } from '../scene/read-look.ts';
import { teachingCostsSchema } from '../scene/teaching-costs.ts';
import { exitStatus } from '../verbs/exit-status.ts';
import type { schema as verb } from '../verbs/schema.ts';
import { UsageError } from '../verbs/usage-error.ts';
import type { CallOf } from '../verbs/verb.ts';
import type { Terminal } from './terminal.ts';

type Call = CallOf<typeof verb>;

const schemas: Readonly<Record<keyof Call, () => object>> = {
  report: reportSchema,
  look: lookSchema,
  costs: teachingCostsSchema,
  plan: planSchema,
  alternatives: waysSchema,
  phrases: phrasesSchema,
  locate: locateSchema,
};

export async function schema(call: Call, terminal: Terminal): Promise<number> {
  const wanted = new Set(Object.entries(call).flatMap(([word, isWritten]) => (isWritten ? [word] : [])));
  const [first, second] = Object.entries(schemas).filter(([word]) => wanted.has(word));
  if (first !== undefined && second !== undefined)
    throw new UsageError(`--${first[0]} and --${second[0]} are two schemas; ask for one at a time`);
  const chosen = first === undefined ? sceneSchema() : first[1]();
  terminal.out(`${JSON.stringify(chosen, undefined, 2)}\n`);
  return exitStatus.sound;
}
