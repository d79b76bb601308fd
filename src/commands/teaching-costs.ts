/**
 * The table of teaching costs that a call uses: the built-in one, or a user's file.
 */
import { existsSync, readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { Bug } from '../grid/bug.ts';
import { printDiagnostic } from '../scene/locate.ts';
import { readTeachingCosts } from '../scene/teaching-costs.ts';
import type { TeachingCosts } from '../techniques/teaching.ts';
import { readText } from './read-text.ts';
import type { Terminal } from './terminal.ts';

/** The built-in table, `assets/teaching-costs.yaml`. */
export function defaultCosts(): TeachingCosts {
  const { costs } = readTeachingCosts(readFileSync(ownTable(), 'utf8'));
  if (costs === undefined) throw new Bug('assets/teaching-costs.yaml can be read');
  return costs;
}

/** The table of this file, or the built-in one; undefined if the file has faults, which have then been printed. */
export function costsFrom(path: string | undefined, terminal: Terminal): TeachingCosts | undefined {
  if (path === undefined) return defaultCosts();
  const text = readText(path, 'table of costs');
  const { costs, diagnostics } = readTeachingCosts(text);
  for (const each of diagnostics) terminal.err(`${printDiagnostic(path, text, each)}\n`);
  return costs;
}

/** Next to `src` or `dist`, depending on where this module was loaded from. */
function ownTable(): string {
  for (let folder = dirname(fileURLToPath(import.meta.url)); ; ) {
    const file = join(folder, 'assets', 'teaching-costs.yaml');
    if (existsSync(file)) return file;
    const parent = dirname(folder);
    if (parent === folder) throw new Bug('assets/teaching-costs.yaml is next to the program');
    folder = parent;
  }
}
