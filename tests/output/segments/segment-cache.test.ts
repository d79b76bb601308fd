/**
 * What a render leaves for the next one: only what changed is drawn again, and the file is that of a render from
 * nothing. Whatever is wrong with the cache costs time alone.
 */
import { mkdirSync, readdirSync, readFileSync, rmSync, statSync, utimesSync, writeFileSync } from 'node:fs';
import { homedir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { renderFilm } from '../../../src/output/render.ts';
import { cacheFolder, segmentCache } from '../../../src/output/segments/segment-cache.ts';
import { isUntouched, readSegment, writeSegment } from '../../../src/output/segments/segment-file.ts';
import { type Chance, chanceFrom } from '../../random.ts';
import { scratchFolder } from '../outside.ts';
import { type Square, squarePainter } from '../square-painter.ts';

const scratch = scratchFolder();
afterAll(scratch.remove);

/** Steps of 10 frames of motion and 20 that stand; each walks on a row of its own, in its own colour. */
const lesson = (colours: readonly number[], transparent = false) =>
  squarePainter({
    frameCount: 30 * colours.length,
    ...(transparent ? {} : { ground: [20, 40, 60] as const }),
    squares: (frame): readonly Square[] => {
      const step = Math.floor(frame / 30);
      const left = 2 + 4 * Math.min(10, frame % 30);
      return [{ left, top: 6 + 4 * step, width: 12, height: 12, colour: [220, colours[step]!, 40, 255] }];
    },
  });
const first = lesson([10, 60, 110]);
const changed = [10, 61, 110];

describe('one step of three changed', () => {
  it.each(['film.mp4', 'film.mov', 'png.mov', 'film.webm', 'frames/'])(
    '%s: that step is drawn, and what is written is that of a render from nothing',
    async (name) => {
      const cache = scratch.at(`cache-${name}`);
      const transparent = !name.endsWith('.mp4');
      const png = name === 'png.mov';
      await renderFilm(lesson([10, 60, 110], transparent), scratch.at(name), { cache, png });
      const result = await renderFilm(lesson(changed, transparent), scratch.at(name), { cache, png });
      // A square that has come to its end looks as in the ten frames before.
      expect(result).toMatchObject({ kind: 'written', frameCount: 90, drawn: 11, kept: 60 });
      await renderFilm(lesson(changed, transparent), scratch.at(`fresh-${name}`), { png });
      expect(contentOf(name)).toEqual(contentOf(`fresh-${name}`));
    },
  );

  it('nothing is drawn where nothing changed', async () => {
    const cache = scratch.at('cache-film.mp4');
    expect(await renderFilm(lesson(changed), scratch.at('again.mp4'), { cache })).toMatchObject({ drawn: 0, kept: 90 });
  });

  it('another key colour is another picture', async () => {
    const [cache, film] = [scratch.at('cache-keys'), lesson([10], true)];
    await renderFilm(film, scratch.at('green.mp4'), { cache, key: '#00b140' });
    const result = await renderFilm(film, scratch.at('blue.mp4'), { cache, key: '#0000ff' });
    expect(result).toMatchObject({ kept: 0 });
  });
});

describe('a cache in which something is wrong', () => {
  it('a damaged entry is made anew', async () => {
    const cache = scratch.at('damaged');
    await renderFilm(first, scratch.at('whole.mp4'), { cache });
    const entries = entriesOf(cache);
    entries.forEach((path, index) => {
      const bytes = readFileSync(path);
      if (index % 3 === 0) writeFileSync(path, bytes.subarray(0, bytes.length - 1));
      else if (index % 3 === 1) writeFileSync(path, bytes.fill(bytes.at(-2)! ^ 1, bytes.length - 2, bytes.length - 1));
      else writeFileSync(path, '');
    });
    expect(await renderFilm(first, scratch.at('anew.mp4'), { cache })).toMatchObject({ kept: 0 });
    expect(readFileSync(scratch.at('anew.mp4')).equals(readFileSync(scratch.at('whole.mp4')))).toBe(true);
    expect(await renderFilm(first, scratch.at('anew.mp4'), { cache })).toMatchObject({ kept: 90, drawn: 0 });
  });

  it.each(['bits.mp4', 'bits.mov', 'bits/'])('%s: bits flipped anywhere in it show in no picture', async (name) => {
    const cache = scratch.at(`cache-of-${name}`);
    const film = lesson([10, 60], !name.endsWith('.mp4'));
    await renderFilm(film, scratch.at(name), { cache });
    const whole = contentOf(name);
    const chance = chanceFrom(7);
    for (let round = 0; round < 6; round++) {
      const entries = entriesOf(cache);
      const damaged = entries.filter((_, index) => index % 2 === round % 2);
      expect(damaged.length).toBeGreaterThan(0);
      for (const path of damaged) flipBit(path, chance);
      const result = await renderFilm(film, scratch.at(name), { cache });
      expect(result.kind === 'written' && result.kept).toBeLessThan(60);
      expect(contentOf(name)).toEqual(whole);
    }
  });

  it('each bit of an entry counts', async () => {
    const file = await segmentFile(scratch.at('bits.segment'));
    const bytes = readFileSync(file);
    expect(await isUntouched(file)).toBe(true);
    const missed: number[] = [];
    for (let bit = 0; bit < 8 * bytes.length; bit++) {
      bytes[bit >> 3]! ^= 1 << (bit & 7);
      writeFileSync(file, bytes);
      if (await isUntouched(file)) missed.push(bit);
      bytes[bit >> 3]! ^= 1 << (bit & 7);
    }
    expect(missed).toEqual([]);
  });

  it('an entry that goes on behind its packets, or ends before, is no segment', async () => {
    const file = await segmentFile(scratch.at('length.segment'));
    const bytes = readFileSync(file);
    expect((await readSegment(file, 2))?.packets.map(({ length }) => length)).toEqual([5, 6]);
    expect(await readSegment(file, 3)).toBeUndefined();
    for (const other of [Buffer.concat([bytes, Buffer.of(0)]), bytes.subarray(0, -1)]) {
      writeFileSync(file, other);
      expect(await readSegment(file, 2)).toBeUndefined();
    }
  });

  it('one that cannot be written is done without', async () => {
    writeFileSync(scratch.at('a-file'), '');
    const result = await renderFilm(lesson([10]), scratch.at('bare.mp4'), { cache: scratch.at('a-file') });
    expect(result).toMatchObject({ kind: 'written', kept: 0 });
  });

  it('two renders at once make the same of it', async () => {
    const cache = scratch.at('shared');
    const names = ['one.mp4', 'two.mp4'].map((name) => scratch.at(name));
    await Promise.all(names.map((name) => renderFilm(first, name, { cache })));
    const [one, ...others] = names.map((name) => readFileSync(name));
    expect(others.every((other) => other.equals(one!))).toBe(true);
    expect(readdirSync(join(cache, 'segments')).filter((name) => name.startsWith('temp-'))).toEqual([]);
  });

  it('an interrupted render leaves what it has done', async () => {
    const cache = scratch.at('stopped');
    const controller = new AbortController();
    const film = lesson(Array.from({ length: 12 }, (_, step) => 20 * step));
    const onProgress = ({ done }: { readonly done: number }): void => {
      if (done >= 340) controller.abort();
    };
    const result = await renderFilm(film, scratch.at('stopped.mp4'), { cache, signal: controller.signal, onProgress });
    expect(result).toEqual({ kind: 'interrupted' });
    const rest = await renderFilm(film, scratch.at('stopped.mp4'), { cache });
    // What is under way is lost: two runs of the encoder, of two steps each here.
    expect(rest.kind === 'written' && rest.kept).toBeGreaterThanOrEqual(120);
  });
});

describe('the cache', () => {
  const segment = async (name: string, bytes: number): Promise<string> => {
    mkdirSync(scratch.at('made'), { recursive: true });
    const file = scratch.at(`made/${name}`);
    await writeSegment(file, { config: Buffer.of(1), packets: [{ bytes: Buffer.alloc(bytes, name), key: true }] });
    return file;
  };

  it('throws out what was unused for longest, and keeps to its bound', async () => {
    const folder = scratch.at('bounded');
    const cache = segmentCache(folder, 'maker', 10_000);
    for (const name of ['a', 'b', 'c', 'd', 'e']) {
      await cache.keep(name, await segment(name, 2000));
      for (const path of entriesOf(folder)) {
        const { mtimeMs } = statSync(path);
        utimesSync(path, new Date(mtimeMs - 1000), new Date(mtimeMs - 1000));
      }
    }
    expect(await cache.fetch('a', scratch.at('a'))).toBe(true); // So that it is the one last used.
    await cache.trim();
    const left: string[] = [];
    for (const name of ['a', 'b', 'c', 'd', 'e']) if (await cache.fetch(name, scratch.at(name))) left.push(name);
    expect(left).toEqual(['a', 'c', 'd', 'e']);
    expect(entriesOf(folder).reduce((sum, path) => sum + statSync(path).size, 0)).toBeLessThanOrEqual(10_000);
  });

  it('keeps nothing that would fill it by itself', async () => {
    const cache = segmentCache(scratch.at('small'), 'maker', 10_000);
    await cache.keep('large', await segment('large', 4000));
    expect(await cache.fetch('large', scratch.at('large'))).toBe(false);
  });

  it('knows nothing of what another program made', async () => {
    await segmentCache(scratch.at('makers'), 'one').keep('x', await segment('x', 100));
    expect(await segmentCache(scratch.at('makers'), 'other').fetch('x', scratch.at('x1'))).toBe(false);
    expect(await segmentCache(scratch.at('makers'), 'one').fetch('x', scratch.at('x1'))).toBe(true);
  });

  it.skipIf(process.platform === 'win32')('lies where the XDG Base Directory Specification has it', () => {
    expect(cacheFolder({ XDG_CACHE_HOME: '/var/my-cache' })).toBe('/var/my-cache/proofreel');
    expect(cacheFolder({ XDG_CACHE_HOME: 'relative' })).toBe(join(homedir(), '.cache/proofreel'));
    expect(cacheFolder({})).toBe(join(homedir(), '.cache/proofreel'));
  });
});

/** A segment of two packets, one with its transparency apart. */
async function segmentFile(file: string): Promise<string> {
  const packets = [
    { bytes: Buffer.from('first'), key: true },
    { bytes: Buffer.from('second'), alpha: Buffer.from('clear'), key: false },
  ];
  await writeSegment(file, { config: Buffer.of(1, 2, 3), packets });
  return file;
}

/** In the line of JSON at its beginning as often as behind it. Written anew, so that who has taken it over keeps it. */
function flipBit(path: string, chance: Chance): void {
  const bytes = readFileSync(path);
  const within = chance.below(2) === 0 ? bytes.indexOf(10) : bytes.length;
  bytes[chance.below(within)]! ^= 1 << chance.below(8);
  rmSync(path);
  writeFileSync(path, bytes);
}

/** The bytes of a file, or of the files of a folder. */
function contentOf(name: string): readonly string[] {
  if (!name.endsWith('/')) return [readFileSync(scratch.at(name), 'base64')];
  return scratch.list(name).map((file) => `${file} ${readFileSync(scratch.at(`${name}${file}`), 'base64')}`);
}

function entriesOf(cache: string): readonly string[] {
  return readdirSync(join(cache, 'segments')).map((name) => join(cache, 'segments', name));
}
