/**
 * Programs that some tests hold our files against, and which a machine need not have. CI has them; elsewhere such a test
 * is skipped, and its name says why.
 */
import { spawnSync } from 'node:child_process';
import { describe } from 'vitest';

export type Program = 'chromium' | 'soffice' | 'pdftotext' | 'pdffonts' | 'pdfinfo' | 'qpdf' | 'parallel';

const found = new Map<Program, boolean>();

function isThere(program: Program): boolean {
  const known = found.get(program) ?? spawnSync('sh', ['-c', `command -v ${program}`]).status === 0;
  found.set(program, known);
  return known;
}

/** A `describe` that is run where all of these programs are, and skipped with the reason in its name where one is not. */
export function describeWith(programs: readonly Program[], name: string, tests: () => void): void {
  const missing = programs.filter((program) => !isThere(program));
  if (missing.length === 0) describe(name, tests);
  else describe.skip(`${name} (skipped: this machine lacks ${missing.join(', ')})`, tests);
}
