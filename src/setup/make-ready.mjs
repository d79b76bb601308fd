/**
 * Makes this machine ready to run the project, and says what it does. Silent if nothing is missing.
 * It runs before every command of package.json that needs packages or programs; it needs neither itself.
 *
 * Exit status 0: ready. 3: a person has to install something first, or an installation failed.
 */
import { spawnSync } from 'node:child_process';
import { existsSync, realpathSync } from 'node:fs';
import { dirname, join, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import { gatherFacts } from './facts.mjs';
import { nextStep } from './next-step.mjs';

const root = resolve(dirname(fileURLToPath(import.meta.url)), '../..');

process.exitCode = makeReady();

function makeReady() {
  const tried = [];
  for (;;) {
    const step = nextStep(gatherFacts(root, tried));
    if (step.kind === 'ready') {
      if (tried.includes('modules')) buildCommand();
      if (tried.length > 0) say('Ready.');
      return 0;
    }
    if (step.kind === 'stop') {
      for (const line of step.says) say(line);
      return 3;
    }
    say(step.says);
    const failure = carryOut(step);
    // A first attempt at canvas may fail because system packages are missing: the next step installs them.
    if (failure !== undefined && !(step.kind === 'canvas' && !tried.includes('system'))) {
      say(failure);
      return 3;
    }
    tried.push(step.kind);
  }
}

/** What went wrong, with the end of the command's output; undefined if it succeeded. */
function carryOut(step) {
  switch (step.kind) {
    case 'modules':
      // Scripts are left out here so that a canvas that cannot be compiled yet does not undo the whole installation.
      return npm(['ci', '--ignore-scripts', '--no-audit', '--no-fund']);
    case 'canvas':
      return npm(['rebuild', 'canvas']);
    case 'system':
      return (
        run('apt-get', ['-q', '-o', 'DPkg::Lock::Timeout=300', 'update']) ??
        run('apt-get', [
          '-q',
          '-y',
          '-o',
          'DPkg::Lock::Timeout=300',
          'install',
          '--no-install-recommends',
          ...step.packages,
        ])
      );
  }
}

/** `dist/`, which the command `proofreel` runs; demo and tests run from source and do not need it. */
function buildCommand() {
  const failure = run(process.execPath, [join(root, 'src/setup/build.mjs')]);
  if (failure !== undefined) say(`${failure}\nThe command \`proofreel\` was not built; demo and tests run anyway.`);
}

function npm(args) {
  const own = process.env.npm_execpath;
  if (own?.endsWith('npm-cli.js')) return run(process.execPath, [own, ...args]);
  return process.platform === 'win32' ? run(`npm ${args.join(' ')}`, [], { shell: true }) : run('npm', args);
}

function run(command, args, options = {}) {
  const env = { ...process.env, DEBIAN_FRONTEND: 'noninteractive', ...nodeHeaders() };
  const result = spawnSync(command, args, {
    cwd: root,
    env,
    stdio: ['ignore', 'pipe', 'pipe'],
    encoding: 'utf8',
    maxBuffer: 1 << 28,
    ...options,
  });
  if (result.error === undefined && result.status === 0) return undefined;
  const why =
    result.error?.message ?? (result.signal === null ? `exit status ${result.status}` : `signal ${result.signal}`);
  const lastWords = `${result.stdout ?? ''}${result.stderr ?? ''}`.trimEnd().split('\n').slice(-25).join('\n');
  return `${lastWords}\nThis failed (${why}): ${[command, ...args].join(' ')}`;
}

/** Compiling needs Node's headers; if they are next to Node itself, they need not be downloaded. */
function nodeHeaders() {
  const prefix = dirname(dirname(realpathSync(process.execPath)));
  return existsSync(join(prefix, 'include/node/node_api.h')) ? { npm_config_nodedir: prefix } : {};
}

function say(line) {
  process.stderr.write(`${line}\n`);
}
