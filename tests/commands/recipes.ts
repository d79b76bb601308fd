/**
 * The recipes for a render on several machines, as they stand in README.md, and what is needed to follow them to the
 * letter: a folder like a fresh checkout, and `npx proofreel` that runs our source.
 */
import { execFileSync } from 'node:child_process';
import { chmodSync, cpSync, mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { parse } from 'yaml';
import { z } from 'zod';

const root = fileURLToPath(new URL('../..', import.meta.url));

/** The first block of that language in the section on several machines. */
export function recipe(language: 'sh' | 'yaml'): string {
  const readme = readFileSync(join(root, 'README.md'), 'utf8');
  const section = /^### On several machines\n(.*?)^### /ms.exec(readme)?.[1] ?? '';
  const block = new RegExp(`^\`\`\`${language}\\n(.*?)^\`\`\`$`, 'ms').exec(section)?.[1];
  if (block === undefined) throw new Error(`README.md has no ${language} for several machines`);
  return block;
}

/** What a workflow has in place of a machine's number. */
export const matrixPart = /\$\{\{ matrix\.part \}\}/;

const step = z.union([
  z.strictObject({ run: z.string() }),
  z.strictObject({ uses: z.string(), with: z.record(z.string(), z.unknown()).optional() }),
]);
const job = z.strictObject({
  'runs-on': z.string(),
  needs: z.string().optional(),
  strategy: z.strictObject({ matrix: z.strictObject({ part: z.array(z.number()) }) }).optional(),
  steps: z.array(step),
});
/** As far as the recipe makes use of the workflow syntax of GitHub Actions. */
const workflowShape = z.strictObject({
  name: z.string(),
  on: z.literal('workflow_dispatch'),
  jobs: z.strictObject({ part: job, join: job }),
});
export type Job = z.infer<typeof job>;

export function workflow() {
  return workflowShape.parse(parse(recipe('yaml')));
}

const lesson = `proofreel: 1
puzzle: {boxes: 2x2, givens: 1... ..1. .1.4 ..2.}
video: {size: 320x180, rate: 30, length: 8, draw: board}
steps:
  - {id: first, at: 0, from: 2r3, so: r3c1=2, chapter: First}
  - {id: second, at: 2, show: [{outline: b1}]}
  - {id: third, at: 4, show: [{outline: b2}], chapter: Then}
  - {id: fourth, at: 6, show: [{outline: b4}]}
`;

export interface Machines {
  readonly at: (name: string) => string;
  /** A folder of its own with the lesson in it, as a runner has after its checkout. */
  readonly checkout: (name: string) => string;
  /** Runs shell lines in such a folder, and stops at the first that fails. */
  readonly run: (folder: string, lines: string) => void;
  readonly remove: () => void;
}

export function machines(): Machines {
  const folder = mkdtempSync(join(tmpdir(), 'proofreel-recipes-'));
  const at = (name: string): string => join(folder, name);
  mkdirSync(at('bin'));
  // The translator by its own place, for a bare name is looked for from the folder in which the call is made.
  const call = `'${process.execPath}' --import '${import.meta.resolve('tsx')}' '${join(root, 'src/cli.ts')}'`;
  writeFileSync(at('bin/npx'), `#!/bin/sh\n[ "$1" = proofreel ] || exit 1\nshift\nexec ${call} "$@"\n`);
  chmodSync(at('bin/npx'), 0o755);
  return {
    at,
    checkout(name) {
      mkdirSync(at(name));
      writeFileSync(join(at(name), 'lesson.yaml'), lesson);
      return at(name);
    },
    run(cwd, lines) {
      const env = { ...process.env, PATH: `${at('bin')}:${process.env.PATH}`, HOME: folder };
      execFileSync('sh', ['-ec', lines], { cwd, env, stdio: ['ignore', 'pipe', 'pipe'] });
    },
    remove: () => rmSync(folder, { recursive: true, force: true }),
  };
}

/** Copies the files of a folder whose names fit a pattern with `*`; their names. */
export function take(from: string, pattern: string, to: string): readonly string[] {
  const fits = new RegExp(`^${pattern.split('*').map(escaped).join('.*')}$`);
  const names = readdirSync(from).filter((name) => fits.test(name));
  mkdirSync(to, { recursive: true });
  for (const name of names) cpSync(join(from, name), join(to, name), { recursive: true });
  return names;
}

const escaped = (text: string): string => text.replace(/[.*+?^${}()|[\]\\]/g, '\\$&');
