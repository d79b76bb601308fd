/**
 * What goes wrong with a machine while a user renders, each brought about for real: one plain sentence, the right exit
 * status, nothing half-written, no encoder left running, and the older file as it was.
 */
import { execFileSync, spawnSync } from 'node:child_process';
import {
  chmodSync,
  existsSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, afterEach, describe, expect, it } from 'vitest';

const root = fileURLToPath(new URL('../..', import.meta.url));
const folder = mkdtempSync(join(tmpdir(), 'proofreel-faults-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));
const at = (name: string): string => join(folder, name);

writeFileSync(
  at('long.yaml'),
  `proofreel: 1
puzzle: {boxes: 2x2, givens: 1... ..1. .1.4 ..2.}
video: {size: 1280x720, rate: 60, length: 1:00, draw: board}
steps:
  - {id: first, at: 0, from: 2r3, so: r3c1=2}
${Array.from({ length: 50 }, (_, step) => `  - {id: s${step}, at: ${step + 4}, show: [{outline: b${(step % 4) + 1}}, {fill: b${((step + 1) % 4) + 1}}]}`).join('\n')}
`,
);
writeFileSync(
  at('short.yaml'),
  readFileSync(at('long.yaml'), 'utf8')
    .replace('length: 1:00', 'length: 4')
    .replace(/ {2}- \{id: s[\s\S]*/, ''),
);

const words = (out: string, scene = 'long.yaml'): string[] => [
  ...['--import', 'tsx', 'src/cli.ts', 'render', at(scene), '-o', at(out), '--no-cache', '--quiet'],
];
const environment = (more: Record<string, string> = {}) => ({ ...process.env, ...more });

afterEach(() => {
  expect(readdirSync(folder).filter((name) => name.startsWith('.'))).toEqual([]);
});

describe('a machine that fails', () => {
  it('has an ffmpeg without the encoder: what can be had instead is named', () => {
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
      /proofreel: this ffmpeg was built without libx264; with it you can write a \.mov, a \.mov with --lossless, a \.webm or a folder of PNG frames, or install a full ffmpeg \(.*\)\n$/,
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
    mkdirSync(at('a-folder'));
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
