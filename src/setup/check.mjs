/**
 * `npm run check`: all checks except the tests. All parts run, even after a failure; findings are printed with their
 * part.
 *
 * Exit status 0: all ok. 1: something failed.
 */
import { spawnSync } from 'node:child_process';
import { existsSync } from 'node:fs';
import { createRequire } from 'node:module';
import { dirname, join, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';

const root = resolve(dirname(fileURLToPath(import.meta.url)), '../..');
const require = createRequire(join(root, 'package.json'));

/** Each with its program from node_modules; `wrong` says what is wrong with an output despite exit status 0. */
const parts = [
  { name: 'types', program: programOf('typescript', 'tsc'), args: ['-p', '.', '--pretty', 'false'] },
  {
    name: 'types of the player',
    program: programOf('typescript', 'tsc'),
    args: ['-p', 'src/player', '--pretty', 'false'],
  },
  {
    name: 'lint and format',
    program: programOf('@biomejs/biome', 'biome'),
    args: ['check', '--error-on-warnings', '--max-diagnostics=40'],
  },
  {
    name: 'import directions',
    program: programOf('dependency-cruiser', 'depcruise'),
    args: ['src', 'tests', '--config', '.dependency-cruiser.cjs', '--cache', '--cache-strategy', 'content'],
    // It reports no faults for a tree that it could not read.
    wrong: (output) => (/\b[1-9]\d* modules\b/.test(output) ? undefined : 'It read no module at all.'),
  },
  { name: 'generated files', program: programOf('tsx', 'tsx'), args: ['src/setup/generate.ts', '--check'] },
];

let failed = 0;
for (const { name, program, args, wrong } of parts) {
  const began = performance.now();
  const result = spawnSync(process.execPath, [program, ...args], { cwd: root, encoding: 'utf8', maxBuffer: 1 << 28 });
  const output = `${result.stdout ?? ''}${result.stderr ?? ''}`.trim();
  const seconds = ((performance.now() - began) / 1000).toFixed(1);
  const fault =
    result.status === 0 ? wrong?.(output) : output || String(result.error ?? `exit status ${result.status}`);
  if (fault === undefined) {
    console.log(`${name}: ok (${seconds} s)`);
  } else {
    failed += 1;
    console.log(`${name}: failed (${seconds} s)\n${fault}\n`);
  }
}
process.exitCode = failed === 0 ? 0 : 1;

/** The file that a package names as its program. */
function programOf(packageName, name) {
  const folder = join(root, 'node_modules', packageName);
  const bin = require(join(folder, 'package.json')).bin;
  const file = join(folder, typeof bin === 'string' ? bin : bin[name]);
  if (!existsSync(file)) throw new Error(`${packageName} has no program ${file}`);
  return file;
}
