/** The tool's own table of teaching costs. */
import { readFileSync } from 'node:fs';
import { readTeachingCosts } from '../../src/scene/teaching-costs.ts';
import type { TeachingCosts } from '../../src/techniques/teaching.ts';

export const costs: TeachingCosts = read();

function read(): TeachingCosts {
  const text = readFileSync(new URL('../../assets/teaching-costs.yaml', import.meta.url), 'utf8');
  const { costs: table, diagnostics } = readTeachingCosts(text);
  if (table === undefined) throw new Error(`the table of costs has faults: ${JSON.stringify(diagnostics)}`);
  return table;
}
