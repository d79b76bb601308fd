/** The program itself, on this machine: quiet where all is ready, plain where a person has to act. */
import { spawnSync } from 'node:child_process';
import { cpSync, mkdtempSync, rmSync, symlinkSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { expect, it } from 'vitest';

const root = join(dirname(fileURLToPath(import.meta.url)), '../..');
const program = join(root, 'src/setup/make-ready.mjs');

it('says nothing where nothing is missing', () => {
  const result = spawnSync(process.execPath, [program], { encoding: 'utf8' });
  expect({ status: result.status, stdout: result.stdout, stderr: result.stderr }).toEqual({
    status: 0,
    stdout: '',
    stderr: '',
  });
});

it('says what failed, with the last words of the command, where an installation fails', () => {
  // A copy without packages, and an npm that fails.
  const copy = mkdtempSync(join(tmpdir(), 'proofreel-ready-'));
  try {
    cpSync(join(root, 'src/setup'), join(copy, 'src/setup'), { recursive: true });
    cpSync(join(root, 'package.json'), join(copy, 'package.json'));
    cpSync(join(root, 'package-lock.json'), join(copy, 'package-lock.json'));
    symlinkSync('/bin/false', join(copy, 'npm'));
    const result = spawnSync(process.execPath, [join(copy, 'src/setup/make-ready.mjs')], {
      encoding: 'utf8',
      env: { PATH: copy },
    });
    expect(result.status).toBe(3);
    expect(result.stdout).toBe('');
    expect(result.stderr.split('\n').filter((line) => line !== '')).toEqual([
      'Installing the packages of package-lock.json with npm: about a minute.',
      'This failed (exit status 1): npm ci --ignore-scripts --no-audit --no-fund',
    ]);
  } finally {
    rmSync(copy, { recursive: true, force: true });
  }
});
