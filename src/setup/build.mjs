/**
 * Compiles src/ to dist/, which the command `proofreel` runs. npm calls it too (`prepare`): after `npm ci`, and before
 * it first runs or links the command; then an up-to-date build is kept.
 */
import { spawnSync } from 'node:child_process';
import { chmodSync, existsSync, readdirSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { dirname, join, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';

const here = dirname(fileURLToPath(import.meta.url));
const root = resolve(here, '../..');
/** Written last, so that it is younger than the sources exactly if dist/ was made from them. */
const stamp = join(root, 'dist/.built');

process.exitCode = build(process.env.npm_lifecycle_event === 'prepare');

function build(isPrepare) {
  if (isPrepare && isUpToDate()) return 0;
  const compiler = findCompiler();
  if (compiler === undefined) {
    // `npm ci --omit=dev` installs no compiler: the previous build stays.
    process.stderr.write('dist/ was not built: the compiler is not installed (`npm ci` installs it).\n');
    return isPrepare ? 0 : 3;
  }
  rmSync(join(root, 'dist'), { recursive: true, force: true });
  // What runs in a browser is compiled separately, since it has different globals.
  for (const project of ['tsconfig.build.json', 'tsconfig.player.json']) {
    const result = spawnSync(process.execPath, [compiler, '-p', join(here, project)], { stdio: 'inherit' });
    if (result.status !== 0) return result.status ?? 3;
  }
  chmodSync(join(root, 'dist/cli.js'), 0o755);
  writeFileSync(stamp, '');
  return 0;
}

function isUpToDate() {
  if (!existsSync(stamp)) return false;
  const built = statSync(stamp).mtimeMs;
  const sources = readdirSync(join(root, 'src'), { recursive: true, encoding: 'utf8' }).map((name) =>
    join('src', name),
  );
  return [...sources, 'tsconfig.json', 'package-lock.json'].every(
    (file) => statSync(join(root, file)).mtimeMs <= built,
  );
}

function findCompiler() {
  try {
    return createRequire(join(root, 'package.json')).resolve('typescript/bin/tsc');
  } catch {
    return undefined;
  }
}
