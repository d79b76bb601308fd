/**
 * What is left behind when something goes wrong: nothing half-written, no process, the older file as it was; and one
 * sentence that says what happened.
 */
import { execFileSync } from 'node:child_process';
import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { afterAll, afterEach, describe, expect, it, vi } from 'vitest';
import { probeMedia } from '../../src/output/ffmpeg/media.ts';
import { MachineFailure } from '../../src/output/machine/machine-failure.ts';
import type { Painter } from '../../src/output/painters/painter.ts';
import { renderFilm } from '../../src/output/render.ts';
import { writeStill } from '../../src/output/still.ts';
import { requireEncoders } from '../../src/output/tracks/require-encoders.ts';
import { canMount, mount, noMount, unmount } from '../disks.ts';
import { encodersOf, hasProcesses } from '../processes.ts';
import { probeVideo, scratchFolder } from './outside.ts';
import { squarePainter, walkingSquare } from './square-painter.ts';

const scratch = scratchFolder();
afterAll(scratch.remove);
afterEach(() => {
  vi.unstubAllEnvs();
  if (hasProcesses) expect(encodersOf(process.pid), 'encoders still running').toEqual([]);
});

const squares = walkingSquare(3, [220, 40, 40, 255]);
const opaque = (frameCount: number) => squarePainter({ frameCount, ground: [20, 40, 60], squares });
const targets = ['a.mp4', 'a.mov', 'a.webm', 'frames/'];
const videos = targets.slice(0, 3);
const howToGet = 'install a full ffmpeg (Debian and Ubuntu: apt-get install ffmpeg; macOS: brew install ffmpeg)';

describe('without ffmpeg', () => {
  it.each(videos)('%s: says how to get it', async (name) => {
    vi.stubEnv('PATH', scratch.at('no-programs'));
    await expect(renderFilm(opaque(3), scratch.at(name))).rejects.toThrow(
      new MachineFailure(`ffmpeg is not installed; ${howToGet}`),
    );
    expect(scratch.list()).toEqual([]);
  });

  it('but for ffprobe: likewise', async () => {
    const ffmpeg = execFileSync('which', ['ffmpeg'], { encoding: 'utf8' }).trim();
    vi.stubEnv('FFMPEG_PATH', ffmpeg);
    vi.stubEnv('PATH', scratch.at('no-programs'));
    await expect(renderFilm(opaque(3), scratch.at('a.mp4'))).rejects.toThrow(
      new MachineFailure(`ffprobe (a part of ffmpeg) is not installed; ${howToGet}`),
    );
  });

  it('the length of a file cannot be asked', async () => {
    writeFileSync(scratch.at('some.wav'), '');
    vi.stubEnv('PATH', '');
    await expect(probeMedia(scratch.at('some.wav'))).rejects.toThrow(
      new MachineFailure(`ffprobe (a part of ffmpeg) is not installed; ${howToGet}`),
    );
    execFileSync('/bin/rm', [scratch.at('some.wav')]);
  });

  it('frames and stills are written all the same', async () => {
    vi.stubEnv('PATH', '');
    expect(await renderFilm(opaque(3), scratch.at('bare/'))).toMatchObject({ kind: 'written' });
    expect(await writeStill(opaque(3), 0, scratch.at('bare.png'))).toMatchObject({ kind: 'written' });
    execFileSync('/bin/rm', ['-r', scratch.at('bare'), scratch.at('bare.png')]);
  });
});

describe('an ffmpeg that lacks an encoder', () => {
  it('is named with what it lacks', async () => {
    await expect(requireEncoders(['libx264', 'libnone', 'libother'])).rejects.toThrow(
      new MachineFailure(
        `this ffmpeg was built without libnone and libother; with it you can write a .mp4, a .mp4 with --codec av1, a .mov, a .mov with --lossless or --png, a .mov with --codec hevc, a .webm, a .webm with --codec av1 or a folder of PNG frames, or ${howToGet}`,
      ),
    );
    await requireEncoders(['libx264', 'prores_ks', 'qtrle', 'libvpx-vp9', 'aac', 'libopus', 'pcm_s16le']);
  });
});

describe('interrupted', () => {
  it.each(targets)('%s: nothing is left, and an older one stays as it was', async (name) => {
    await renderFilm(opaque(2), scratch.at(name));
    const before = snapshot();
    const controller = new AbortController();
    const result = await renderFilm(opaque(3000), scratch.at(name), {
      signal: controller.signal,
      onProgress: ({ done }) => {
        if (done === 20) setImmediate(() => controller.abort());
      },
    });
    expect(result).toEqual({ kind: 'interrupted' });
    expect(snapshot()).toEqual(before);
  });

  it.each(targets)('%s: before it began', async (name) => {
    const before = snapshot();
    expect(await renderFilm(opaque(3), scratch.at(name), { signal: AbortSignal.abort() })).toEqual({
      kind: 'interrupted',
    });
    expect(snapshot()).toEqual(before);
  });

  it.each(targets)('%s: while the film is looked through, before anything is drawn', async (name) => {
    const before = snapshot();
    const controller = new AbortController();
    const film = opaque(30);
    const painter: typeof film = {
      ...film,
      digestAt: (frame) => {
        if (frame === 29) controller.abort();
        return film.digestAt(frame);
      },
    };
    expect(await renderFilm(painter, scratch.at(name), { signal: controller.signal })).toEqual({ kind: 'interrupted' });
    expect(film.painted).toEqual([]);
    expect(snapshot()).toEqual(before);
  });

  it('while the encoder is being started', async () => {
    const before = snapshot();
    const controller = new AbortController();
    const rendering = renderFilm(opaque(3000), scratch.at('a.mp4'), { signal: controller.signal });
    setTimeout(() => controller.abort(), 1);
    expect(await rendering).toEqual({ kind: 'interrupted' });
    expect(snapshot()).toEqual(before);
  });

  it('takes back the folders that it made', async () => {
    const controller = new AbortController();
    const onProgress = (): void => controller.abort();
    await renderFilm(opaque(30), scratch.at('new/deep/a.mp4'), { signal: controller.signal, onProgress });
    expect(scratch.list()).not.toContain('new');
  });
});

describe('the encoder is killed', () => {
  it.each(videos)('%s: one sentence, and nothing is left', async (name) => {
    const before = snapshot();
    const rendering = renderFilm(opaque(3000), scratch.at(name), {
      onProgress: ({ done }) => {
        if (done === 20) for (const pid of encodersOf(process.pid)) process.kill(pid, 'SIGKILL');
      },
    });
    await expect(rendering).rejects.toThrow(
      new MachineFailure('the encoder was killed (SIGKILL) before it was done; memory may have run out'),
    );
    expect(snapshot()).toEqual(before);
  });
});

describe('a painter that fails', () => {
  it.each(targets)('%s: its own error comes out, and nothing is left', async (name) => {
    const before = snapshot();
    const painter: Painter = {
      ...opaque(30),
      paint: (_, frame) => {
        if (frame === 9) throw new Error('the brush broke');
      },
    };
    await expect(renderFilm(painter, scratch.at(name))).rejects.toThrow('the brush broke');
    expect(snapshot()).toEqual(before);
  });
});

describe('two renders to one name at once', () => {
  it.each(['twice.mp4', 'twice-frames/'])('%s: the last one to end is there, whole', async (name) => {
    const [short, long] = [opaque(5), opaque(40)];
    const results = await Promise.all([renderFilm(short, scratch.at(name)), renderFilm(long, scratch.at(name))]);
    expect(results.map(({ kind }) => kind)).toEqual(['written', 'written']);
    const count = name.endsWith('/') ? scratch.list(name).length : Number(probeVideo(scratch.at(name)).nb_read_frames);
    expect([5, 40]).toContain(count);
    expect(scratch.list().filter((file) => file.includes('temp'))).toEqual([]);
  });
});

const mountable = canMount();
it.skipIf(mountable).each(noMount)('skipped: a full and a read-only disk, for $why', () => undefined);

describe.skipIf(!mountable)('a disk of its own', () => {
  afterAll(() => {
    for (const name of ['full', 'read-only']) unmount(scratch.at(name));
  });

  it.each(targets)('that is full: %s', async (name) => {
    if (!mounted('full')) mount(scratch.at('full'), 'size=64k');
    // Noise that no codec can make small enough.
    const noisy = squarePainter({ width: 256, height: 256, frameCount: 40, ground: [0, 0, 0], squares: noise });
    const rendering = renderFilm(noisy, scratch.at(`full/${name}`));
    await expect(rendering).rejects.toThrow(MachineFailure);
    await expect(rendering).rejects.toThrow(/^cannot write .*: the disk is full; make room, or write to another disk$/);
    expect(readdirSync(scratch.at('full'))).toEqual([]);
  });

  it('that is full: a still', async () => {
    writeFileSync(scratch.at('full/other'), Buffer.alloc(60 * 1024));
    const noisy = squarePainter({ width: 256, height: 256, squares: noise });
    await expect(writeStill(noisy, 0, scratch.at('full/a.png'))).rejects.toThrow(
      new MachineFailure('cannot write a.png: the disk is full; make room, or write to another disk'),
    );
    expect(readdirSync(scratch.at('full'))).toEqual(['other']);
  });

  it.each([...targets, 'new/a.mp4'])('that can only be read: %s', async (name) => {
    if (!mounted('read-only')) mount(scratch.at('read-only'), 'ro');
    await expect(renderFilm(opaque(3), scratch.at(`read-only/${name}`))).rejects.toThrow(
      /^cannot write .*: the disk is read-only; write to another folder$/,
    );
  });
});

function noise(frame: number) {
  return Array.from({ length: 1500 }, (_, index) => {
    // A multiplicative hash (Knuth, The Art of Computer Programming, 6.4), so that every run sees the same noise.
    const hash = Math.imul(index + 1 + 5000 * frame, 2654435761) >>> 0;
    const colour = [hash & 255, (hash >> 8) & 255, (hash >> 16) & 255, 255] as const;
    return { left: (hash >> 3) & 255, top: (hash >> 13) & 255, width: 7, height: 5, colour };
  });
}

/** Names and contents of all that lies in the scratch folder. */
function snapshot(): Readonly<Record<string, string>> {
  const files = readdirSync(scratch.folder, { recursive: true, withFileTypes: true });
  return Object.fromEntries(
    files
      .map(
        (file) =>
          [
            `${file.parentPath}/${file.name}`,
            file.isFile() ? readFileSync(`${file.parentPath}/${file.name}`, 'base64') : 'folder',
          ] as const,
      )
      .sort(([a], [b]) => a.localeCompare(b)),
  );
}

function mounted(name: string): boolean {
  return readFileSync('/proc/mounts', 'utf8').includes(` ${scratch.at(name)} `);
}
