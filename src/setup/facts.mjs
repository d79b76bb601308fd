/**
 * What this machine has: looked up at each call, quickly, and without changing anything.
 */
import { accessSync, constants, existsSync, readFileSync, statSync } from 'node:fs';
import { createRequire } from 'node:module';
import { delimiter, join } from 'node:path';

/**
 * @param {string} root the project's folder
 * @param {readonly import('./next-step.d.mts').Action[]} tried
 * @returns {import('./next-step.d.mts').Facts}
 */
export function gatherFacts(root, tried) {
  const modules = modulesAgainstLock(root);
  return {
    nodeVersion: process.versions.node,
    family: familyOf(process.platform, readIfThere('/etc/os-release')),
    root: process.getuid?.() === 0,
    missingPrograms: missingPrograms(['ffmpeg', 'ffprobe'], process.env, process.platform),
    modules,
    canvasLoads: modules === 'in step' && canvasLoads(root),
    tried,
  };
}

/**
 * Compares npm's own record of what it installed (node_modules/.package-lock.json) with package-lock.json: every
 * package must exist, in the same version. An optional one may be absent, since most of them are for other kinds of
 * machine.
 */
export function modulesAgainstLock(root) {
  const record = readIfThere(join(root, 'node_modules', '.package-lock.json'));
  if (record === '') return 'missing';
  const installed = packagesOf(record);
  const wanted = packagesOf(readFileSync(join(root, 'package-lock.json'), 'utf8'));
  for (const [folder, entry] of Object.entries(wanted)) {
    if (folder === '') continue;
    const found = installed[folder];
    if (found === undefined && entry.optional === true) continue;
    if (found?.version !== entry.version || found?.integrity !== entry.integrity) return 'out of step';
    if (!existsSync(join(root, folder, 'package.json'))) return 'out of step';
  }
  return 'in step';
}

function packagesOf(lockText) {
  try {
    return JSON.parse(lockText).packages ?? {};
  } catch {
    // A broken record counts as missing: npm rewrites it.
    return {};
  }
}

/**
 * Those of `names` that are neither programs in a folder of PATH nor named explicitly (`FFMPEG_PATH`, `FFPROBE_PATH`).
 * Looking is faster than starting each.
 */
export function missingPrograms(names, environment, platform) {
  const ending = platform === 'win32' ? '.exe' : '';
  const folders = (environment.PATH ?? '').split(delimiter).filter((folder) => folder !== '');
  return names.filter((name) => {
    const named = environment[`${name.toUpperCase()}_PATH`];
    if (named !== undefined && isProgram(named)) return false;
    return !folders.some((folder) => isProgram(join(folder, name + ending)));
  });
}

function isProgram(file) {
  try {
    accessSync(file, constants.X_OK);
    return statSync(file).isFile();
  } catch {
    return false;
  }
}

/** Which instructions fit this machine. `osRelease`: the text of /etc/os-release (freedesktop.org), or empty. */
export function familyOf(platform, osRelease) {
  if (platform === 'darwin') return 'macos';
  if (platform === 'win32') return 'windows';
  const names = [...osRelease.matchAll(/^(?:ID|ID_LIKE)=(.*)$/gm)].flatMap((line) =>
    (line[1] ?? '').replaceAll(/["']/g, '').split(/\s+/),
  );
  if (names.includes('debian') || names.includes('ubuntu')) return 'debian';
  if (names.includes('fedora') || names.includes('rhel')) return 'fedora';
  return 'other';
}

/** Loads it in this process: a tenth of the time that a separate process would take. */
function canvasLoads(root) {
  try {
    createRequire(join(root, 'package.json'))('canvas');
    return true;
  } catch {
    // npm says why it does not load when it is rebuilt.
    return false;
  }
}

function readIfThere(file) {
  return existsSync(file) ? readFileSync(file, 'utf8') : '';
}
