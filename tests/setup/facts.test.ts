/** What is looked up on a machine, tried on machines made for the purpose. */
import { chmodSync, mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { delimiter, dirname, join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { familyOf, missingPrograms, modulesAgainstLock } from '../../src/setup/facts.mjs';

let folder: string;
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'proofreel-facts-'));
});
afterEach(() => {
  rmSync(folder, { recursive: true, force: true });
});

function write(file: string, text: string): void {
  mkdirSync(dirname(join(folder, file)), { recursive: true });
  writeFileSync(join(folder, file), text);
}

describe('node_modules against package-lock.json', () => {
  interface Entry {
    readonly version: string;
    readonly integrity?: string;
    readonly optional?: boolean;
  }
  type Packages = Readonly<Record<string, Entry>>;
  const wanted: Packages = {
    '': { version: '0.1.0' },
    'node_modules/ink': { version: '1.2.3', integrity: 'sha512-a' },
    'node_modules/paper-for-another-machine': { version: '4.0.0', optional: true },
  };
  const ink = { 'node_modules/ink': { version: '1.2.3', integrity: 'sha512-a' } };

  const rows: readonly (readonly [name: string, installed: Packages | undefined, expected: string])[] = [
    ['nothing installed', undefined, 'missing'],
    ['the same packages; an optional one is absent', ink, 'in step'],
    ['another version', { 'node_modules/ink': { version: '1.2.4', integrity: 'sha512-a' } }, 'out of step'],
    ['another content', { 'node_modules/ink': { version: '1.2.3', integrity: 'sha512-b' } }, 'out of step'],
    ['one is missing', {}, 'out of step'],
    [
      'an optional one in another version',
      { ...ink, 'node_modules/paper-for-another-machine': { version: '3.0.0' } },
      'out of step',
    ],
  ];
  it.each(rows)('%s', (_name, installed, expected) => {
    write('package-lock.json', JSON.stringify({ packages: wanted }));
    write('node_modules/ink/package.json', '{}');
    if (installed !== undefined) write('node_modules/.package-lock.json', JSON.stringify({ packages: installed }));
    expect(modulesAgainstLock(folder)).toBe(expected);
  });

  it('is out of step where a folder was removed by hand', () => {
    write('package-lock.json', JSON.stringify({ packages: wanted }));
    write('node_modules/.package-lock.json', JSON.stringify({ packages: ink }));
    expect(modulesAgainstLock(folder)).toBe('out of step');
  });

  it('is out of step where the record was cut short', () => {
    write('package-lock.json', JSON.stringify({ packages: wanted }));
    write('node_modules/.package-lock.json', '{"packages": {"node_mod');
    expect(modulesAgainstLock(folder)).toBe('out of step');
  });
});

describe('programs on the PATH', () => {
  it('finds a program in any folder, and only a program', () => {
    write('first/readme', 'text');
    write('first/ffprobe', 'text');
    write('second/ffmpeg', '#!/bin/sh');
    chmodSync(join(folder, 'first/ffprobe'), 0o644);
    chmodSync(join(folder, 'second/ffmpeg'), 0o755);
    const PATH = ['first', 'second', 'absent'].map((name) => join(folder, name)).join(delimiter);
    expect(missingPrograms(['ffmpeg', 'ffprobe'], { PATH }, 'linux')).toEqual(['ffprobe']);
    expect(missingPrograms(['ffmpeg', 'ffprobe'], {}, 'linux')).toEqual(['ffmpeg', 'ffprobe']);
  });

  it('takes one that is named outright, if it is a program', () => {
    write('elsewhere/my-ffmpeg', '#!/bin/sh');
    chmodSync(join(folder, 'elsewhere/my-ffmpeg'), 0o755);
    const environment = { FFMPEG_PATH: join(folder, 'elsewhere/my-ffmpeg'), FFPROBE_PATH: join(folder, 'nowhere') };
    expect(missingPrograms(['ffmpeg', 'ffprobe'], environment, 'linux')).toEqual(['ffprobe']);
  });

  it('looks for the endings of Windows there', () => {
    write('tools/ffmpeg.exe', '');
    chmodSync(join(folder, 'tools/ffmpeg.exe'), 0o755);
    expect(missingPrograms(['ffmpeg', 'ffprobe'], { PATH: join(folder, 'tools') }, 'win32')).toEqual(['ffprobe']);
  });
});

describe('the kind of machine', () => {
  // ID and ID_LIKE as os-release(5) of freedesktop.org describes them.
  const rows: readonly (readonly [platform: NodeJS.Platform, osRelease: string, expected: string])[] = [
    ['linux', 'PRETTY_NAME="Debian GNU/Linux 12 (bookworm)"\nID=debian\n', 'debian'],
    ['linux', 'ID=ubuntu\nID_LIKE=debian\n', 'debian'],
    ['linux', 'ID=linuxmint\nID_LIKE="ubuntu debian"\n', 'debian'],
    ['linux', 'ID=fedora\nVERSION_ID=42\n', 'fedora'],
    ['linux', 'ID="rocky"\nID_LIKE="rhel centos fedora"\n', 'fedora'],
    ['linux', 'ID=alpine\n', 'other'],
    ['linux', '', 'other'],
    ['darwin', '', 'macos'],
    ['win32', '', 'windows'],
    ['freebsd', 'ID=freebsd\n', 'other'],
  ];
  it.each(rows)('%s %j: %s', (platform, osRelease, expected) => {
    expect(familyOf(platform, osRelease)).toBe(expected);
  });
});
