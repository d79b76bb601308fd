/**
 * What goes wrong with a machine while a user renders, each brought about for real: one plain sentence, the right exit
 * status, nothing half-written, no encoder left running, and the older file as it was.
 */
import { execFileSync, spawnSync } from 'node:child_process';
import { chmodSync, existsSync, readFileSync, writeFileSync } from 'node:fs';
import { afterAll, afterEach, describe, expect, it } from 'vitest';
import { hasProcesses, noProcesses } from '../processes.ts';
import { expectLosesEncoder, expectStopped, faultsFolder, root, start } from './faults.ts';

const faults = faultsFolder();
const { at, words } = faults;
afterAll(faults.remove);
afterEach(faults.expectNoPartFiles);

const environment = (more: Record<string, string> = {}) => ({ ...process.env, ...more });

it.skipIf(hasProcesses).each(noProcesses)('skipped: faults of a running render, for $why', () => undefined);

describe.skipIf(!hasProcesses)('a render under way', () => {
  it('is interrupted', async () => {
    const older = faults.older('a.mp4');
    const render = start(words('a.mp4'));
    await expectStopped(render, () => render.kill('SIGTERM'));
    older.expectWhole();
  });

  it('loses its encoder', async () => {
    const older = faults.older('a.mp4');
    await expectLosesEncoder(start(words('a.mp4')));
    older.expectWhole();
  });
});

describe('footage that is cut off in the middle', () => {
  it.each([
    { what: 'with its list of pictures first', flags: ['-movflags', '+faststart'] },
    { what: 'with its list of pictures last', flags: [] },
  ])('$what', ({ flags }) => {
    const source = ['-f', 'lavfi', '-i', 'testsrc2=s=320x180:r=30:d=8', '-pix_fmt', 'yuv420p'];
    const encoder = ['-c:v', 'libx264', '-preset', 'ultrafast', '-g', '30'];
    execFileSync('ffmpeg', ['-v', 'error', '-y', ...source, ...encoder, ...flags, at('take.mp4')]);
    const bytes = readFileSync(at('take.mp4'));
    writeFileSync(at('take.mp4'), bytes.subarray(0, bytes.length / 2));
    const scene = readFileSync(at('clear.yaml'), 'utf8');
    writeFileSync(
      at('over.yaml'),
      scene.replace(/length: \d+/, `length: 7, footage: ${at('take.mp4')}`).replace(/ {2}- \{id: s2[\s\S]*/, ''),
    );
    const older = faults.older('a.mp4');
    const ran = spawnSync(process.execPath, words('a.mp4', 'over.yaml'), { cwd: root, encoding: 'utf8' });
    // One that cannot be read at all is a fault of the scene, with its place.
    expect(ran.stderr).toMatch(
      /(^proofreel: the footage |over\.yaml:3:\d+: error media-not-read: )take\.mp4 is cut off: .*copy or record it again/m,
    );
    expect(ran.stderr).not.toMatch(/^\s+at .*[:(]\d+/m);
    expect(ran.status).toBe(2);
    older.expectWhole();
  });
});

describe('a machine that fails', () => {
  it('has an ffmpeg without the encoder: what is available instead is named', () => {
    const real = execFileSync('which', ['ffmpeg'], { encoding: 'utf8' }).trim();
    writeFileSync(
      at('ffmpeg-bare'),
      `#!/bin/sh\ncase "$*" in *-encoders*) ${real} "$@" | grep -v libx264;; *) exec ${real} "$@";; esac\n`,
    );
    chmodSync(at('ffmpeg-bare'), 0o755);
    const ran = spawnSync(process.execPath, words('bare.mp4', 'short.yaml'), {
      cwd: root,
      encoding: 'utf8',
      env: environment({ FFMPEG_PATH: at('ffmpeg-bare') }),
    });
    expect(ran.stderr).toMatch(
      /proofreel: this ffmpeg was built without libx264; with it you can write a \.mp4 with --codec av1, a \.mov, a \.mov with --lossless or --png, a \.mov with --codec hevc, a \.webm, a \.webm with --codec av1 or a folder of PNG frames, or install a full ffmpeg \(.*\)\n$/,
    );
    expect(ran.status).toBe(3);
    expect(existsSync(at('bare.mp4'))).toBe(false);
  });

  it('has an ffmpeg that does not run', () => {
    writeFileSync(at('ffmpeg-broken'), '#!/bin/sh\necho "error while loading shared libraries" >&2; exit 127\n');
    chmodSync(at('ffmpeg-broken'), 0o755);
    const ran = spawnSync(process.execPath, words('broken.mp4', 'short.yaml'), {
      cwd: root,
      encoding: 'utf8',
      env: environment({ FFMPEG_PATH: at('ffmpeg-broken') }),
    });
    expect(ran.stderr).toMatch(/proofreel: ffmpeg does not run .*; install a full ffmpeg .*\n$/);
    expect(ran.status).toBe(3);
  });

  it('has a folder that cannot be written to', () => {
    // Where nobody may write, not even root.
    const ran = spawnSync(
      process.execPath,
      words('/proc/proofreel.mp4', 'short.yaml').map((word) =>
        word === at('/proc/proofreel.mp4') ? '/proc/proofreel.mp4' : word,
      ),
      {
        cwd: root,
        encoding: 'utf8',
        env: environment(),
      },
    );
    expect(ran.stderr).toMatch(/proofreel: cannot write proofreel\.mp4: .*\n$/);
    expect(ran.status).toBe(3);
  });
});
