/**
 * `proofreel schema`: the JSON Schemas of the project's formats.
 */
import { reportSchema } from '../report/report.ts';
import { lookSchema } from '../scene/read-look.ts';
import { sceneSchema } from '../scene/schema.ts';
import { exitStatus } from '../verbs.ts';
import { BadCall } from './bad-call.ts';
import type { Terminal } from './terminal.ts';

export async function schema(
  options: { readonly report?: boolean; readonly look?: boolean },
  terminal: Terminal,
): Promise<number> {
  if (options.report === true && options.look === true)
    throw new BadCall('--report and --look are two schemas; ask for one at a time');
  const chosen = options.report === true ? reportSchema() : options.look === true ? lookSchema() : sceneSchema();
  terminal.out(`${JSON.stringify(chosen, undefined, 2)}\n`);
  return exitStatus.sound;
}
