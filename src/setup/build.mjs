/**
 * Compiles src/ to dist/, which the command `proofreel` runs. npm calls it after `npm ci` too (`prepare`).
 */
import { spawnSync } from 'node:child_process';
import { chmodSync, existsSync, rmSync } from 'node:fs';
import { createRequire } from 'node:module';
import { dirname, join, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';

const here = dirname(fileURLToPath(import.meta.url));
const root = resolve(here, '../..');

process.exitCode = build();

function build() {
  const compiler = findCompiler();
  if (compiler === undefined) {
    // `npm ci --omit=dev` brings no compiler: what was built before stays.
    process.stderr.write('dist/ was not built: the compiler is not installed (`npm ci` brings it).\n');
    return existsSync(join(root, 'dist/cli.js')) || process.env.npm_lifecycle_event === 'prepare' ? 0 : 3;
  }
  rmSync(join(root, 'dist'), { recursive: true, force: true });
  const result = spawnSync(process.execPath, [compiler, '-p', join(here, 'tsconfig.build.json')], { stdio: 'inherit' });
  if (result.status !== 0) return result.status ?? 3;
  chmodSync(join(root, 'dist/cli.js'), 0o755);
  return 0;
}

function findCompiler() {
  try {
    return createRequire(join(root, 'package.json')).resolve('typescript/bin/tsc');
  } catch {
    return undefined;
  }
}
