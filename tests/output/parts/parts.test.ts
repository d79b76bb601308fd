/**
 * One film made in parts and joined: the file is that of a render in one go, and parts that do not belong together are
 * refused with the reason.
 */
import { copyFileSync, existsSync, readFileSync, writeFileSync } from 'node:fs';
import { afterAll, beforeAll, describe, expect, it, vi } from 'vitest';
import { joinParts } from '../../../src/output/parts/join-parts.ts';
import { partName, shareOf } from '../../../src/output/parts/parts.ts';
import { type RenderOptions, renderFilm } from '../../../src/output/render.ts';
import type { Segment } from '../../../src/output/segments/segments.ts';
import { fraction } from '../../../src/scene/fraction.ts';
import { frameAt } from '../../../src/timeline/film.ts';
import { decodeSound, ffmpeg, probeVideo, scratchFolder } from '../outside.ts';
import { squarePainter, walkingSquare } from '../square-painter.ts';

const scratch = scratchFolder();
afterAll(scratch.remove);

/** Three times ten frames of motion and sixteen that stand. */
const frameCount = 78;
const film = (left: number, transparent: boolean) =>
  squarePainter({
    frameCount,
    rate: fraction(30000n, 1001n),
    ...(transparent ? {} : { ground: [20, 40, 60] as const }),
    squares: (frame) =>
      walkingSquare(1, [220, 40, 40, 255])(frame % 26 < 10 ? left + (frame % 26) / 4 : Math.floor(frame / 26)),
  });

/** Places at which its square is, one on each frame. */
const different = 3;

const chapters = [{ name: 'All of it', from: frameAt(0), until: frameAt(frameCount) }];

async function inParts(name: string, of: number, options: RenderOptions = {}): Promise<readonly string[]> {
  const painter = film(0, !name.endsWith('.mp4'));
  const parts: string[] = [];
  for (let number = 1; number <= of; number++) {
    const result = await renderFilm(painter, scratch.at(name), { ...options, part: { number, of } });
    if (result.kind !== 'written') throw new Error(JSON.stringify(result));
    parts.push(result.path);
  }
  return parts;
}

describe('the parts of a film, joined', () => {
  it.each([
    ['film.mp4', {}],
    ['film.mov', {}],
    ['png.mov', { png: true }],
    ['film.webm', {}],
    ['av1.mp4', { codec: 'av1' }],
  ] satisfies [string, RenderOptions][])('%s is the file of a render in one go', async (name, wish) => {
    const options: RenderOptions = { ...wish, chapters, timecode: '01:00:00;00' };
    await renderFilm(film(0, !name.endsWith('.mp4')), scratch.at(name), options);
    const parts = await inParts(name, 3, options);
    expect(parts).toEqual([1, 2, 3].map((number) => scratch.at(name.replace(/\.(\w+)$/, `-${number}-of-3.part`))));
    const joined = scratch.at(`joined-${name}`);
    expect(await joinParts([...parts].reverse(), joined)).toMatchObject({ kind: 'written', frameCount, parts: 3 });
    expect(readFileSync(joined).equals(readFileSync(scratch.at(name)))).toBe(true);
  });

  it('have the sound', async () => {
    ffmpeg(['-f', 'lavfi', '-i', 'sine=frequency=440:sample_rate=48000:duration=5', scratch.at('tone.wav')]);
    const options = { audio: scratch.at('tone.wav') };
    await renderFilm(film(0, false), scratch.at('loud.mp4'), options);
    await joinParts(await inParts('loud.mp4', 2, options), scratch.at('loud-joined.mp4'));
    const [whole, joined] = ['loud.mp4', 'loud-joined.mp4'].map((name) => decodeSound(scratch.at(name)));
    expect(joined!.length).toBe(whole!.length);
    expect(joined!.every((sample, index) => Math.abs(sample - whole![index]!) < 1e-4)).toBe(true);
    expect(probeVideo(scratch.at('loud-joined.mp4')).nb_read_frames).toBe(String(frameCount));
  });

  it('may be more than there are segments', async () => {
    const parts = await inParts('many.mp4', 7);
    expect(await joinParts(parts, scratch.at('many-joined.mp4'))).toMatchObject({ kind: 'written' });
    expect(probeVideo(scratch.at('many-joined.mp4')).nb_read_frames).toBe(String(frameCount));
  });
});

describe('the parts of a folder of frames, joined', () => {
  it.each([
    { what: 'a picture a frame', holds: false },
    { what: 'each picture once, and a list', holds: true },
  ])('$what: the folder of a render in one go', async ({ holds }) => {
    const name = `frames-${holds}`;
    await renderFilm(film(0, true), scratch.at(`${name}/`), { holds });
    const parts = await inParts(`${name}/`, 3, { holds });
    expect(parts).toEqual([1, 2, 3].map((number) => scratch.at(`${name}-${number}-of-3.part`)));
    const joined = await joinParts([...parts].reverse(), scratch.at(`${name}-joined/`));
    expect(joined).toMatchObject({ kind: 'written', frameCount, parts: 3 });
    const files = scratch.list(name);
    expect(scratch.list(`${name}-joined`)).toEqual(files);
    expect(files).toHaveLength(holds ? different + 1 : frameCount);
    for (const file of files) {
      const [whole, part] = [name, `${name}-joined`].map((folder) => readFileSync(scratch.at(`${folder}/${file}`)));
      expect(part!.equals(whole!), file).toBe(true);
    }
  });

  it('need no ffmpeg', async () => {
    vi.stubEnv('PATH', '');
    try {
      const parts = await inParts('bare/', 2);
      expect(await joinParts(parts, scratch.at('bare-joined/'))).toMatchObject({ kind: 'written' });
    } finally {
      vi.unstubAllEnvs();
    }
  });

  it('take the place of frames alone', async () => {
    const parts = await inParts('own/', 1);
    writeFileSync(scratch.at('letter.txt'), 'mine');
    expect(await joinParts(parts, `${scratch.folder}/`)).toMatchObject({
      kind: 'refused',
      message: expect.stringMatching(/ contains '.*', which is not a frame; /),
    });
    expect(await joinParts(parts, scratch.at('a.mp4'))).toEqual({
      kind: 'refused',
      message: "these are the parts of a folder of PNG frames; name a folder, 'a/'",
    });
    expect(await joinParts(await inParts('some.mp4', 1), scratch.at('folder/'))).toMatchObject({
      kind: 'refused',
      message: "these are the parts of a .mp4; name the result accordingly, not 'folder'",
    });
  });
});

describe('the shares', () => {
  it('hold each segment once, and about as many pictures each', () => {
    const segments = Array.from({ length: 60 }, (_, index): Segment => {
      const moving = new Array<number>(20 + (index % 7)).fill(0);
      return {
        digest: String(index % 50),
        from: 0,
        frameCount: 300,
        moving,
        hold: { frame: 0, count: 100 },
        holdPictures: 1,
      };
    });
    const shares = Array.from({ length: 8 }, (_, index) => shareOf(segments, { number: index + 1, of: 8 }));
    expect(shares.flat().map(({ digest }) => digest)).toEqual(Array.from({ length: 50 }, (_, index) => String(index)));
    const costs = shares.map((share) => share.reduce((sum, { moving }) => sum + moving.length + 1, 0));
    expect(Math.max(...costs) - Math.min(...costs)).toBeLessThan(30);
  });

  it('have names that sort', () => {
    expect(partName({ file: '/v/lesson.mp4', container: 'mp4' }, { number: 2, of: 8 })).toBe('/v/lesson-2-of-8.part');
    expect(partName({ file: '/v/lesson.mp4', container: 'mp4' }, { number: 2, of: 12 })).toBe(
      '/v/lesson-02-of-12.part',
    );
    expect(partName({ file: '/v/frames.v2', container: 'frames' }, { number: 2, of: 8 })).toBe(
      '/v/frames.v2-2-of-8.part',
    );
  });
});

describe('parts that cannot be joined', () => {
  let parts: readonly string[] = [];
  beforeAll(async () => {
    parts = await inParts('some.mp4', 3);
    const other = await renderFilm(film(1, false), scratch.at('other.mp4'), { part: { number: 2, of: 3 } });
    expect(other.kind).toBe('written');
    await renderFilm(film(0, false), scratch.at('four.mp4'), { part: { number: 2, of: 4 } });
    writeFileSync(scratch.at('cut.part'), readFileSync(parts[1]!).subarray(0, -10));
    const bytes = readFileSync(parts[1]!);
    writeFileSync(scratch.at('flipped.part'), bytes.fill(bytes.at(-3)! ^ 1, bytes.length - 3, bytes.length - 2));
    writeFileSync(scratch.at('words.part'), 'words');
    copyFileSync(parts[0]!, scratch.at('copy.part'));
  });

  it.each<[string, () => readonly string[], string, string]>([
    ['missing', () => [parts[0]!, parts[2]!], 'a.mp4', 'of 3 parts 2 is missing'],
    ['most of them', () => [parts[0]!], 'a.mp4', 'of 3 parts 2, 3 are missing'],
    ['twice', () => [...parts, scratch.at('copy.part')], 'a.mp4', 'part 1 of 3 is named twice'],
    [
      'another kind of file',
      () => parts,
      'a.mov',
      "these are the parts of a .mp4; name the result accordingly, not 'a.mov'",
    ],
    [
      'cut off',
      () => [parts[0]!, scratch.at('cut.part'), parts[2]!],
      'a.mp4',
      'cut.part is not a complete part of a render',
    ],
    ['no part', () => [scratch.at('words.part')], 'a.mp4', 'words.part is not a complete part of a render'],
    ['not there', () => [scratch.at('gone.part')], 'a.mp4', `there is no part ${scratch.at('gone.part')}`],
    [
      'of another film',
      () => [parts[0]!, scratch.at('other-2-of-3.part'), parts[2]!],
      'a.mp4',
      'some-1-of-3.part and other-2-of-3.part are not parts of one render: they were made from different scenes or looks, with different options, or by different versions of proofreel, ffmpeg or Node',
    ],
    [
      'of another number',
      () => [parts[0]!, scratch.at('four-2-of-4.part')],
      'a.mp4',
      'some-1-of-3.part and four-2-of-4.part are not parts of one render: one is of 3 parts, the other of 4',
    ],
  ])('%s', async (_, files, name, message) => {
    expect(await joinParts(files(), scratch.at(name))).toEqual({ kind: 'refused', message });
    expect(scratch.list().filter((file) => file === name || file.startsWith('.'))).toEqual([]);
  });

  it('damaged within', async () => {
    await expect(joinParts([parts[0]!, scratch.at('flipped.part'), parts[2]!], scratch.at('a.mp4'))).rejects.toThrow(
      'a part is damaged: its contents are not what was written; copy or render it again',
    );
    expect(scratch.list().filter((file) => file === 'a.mp4' || file.startsWith('.'))).toEqual([]);
  });

  it.each<[string, (head: Record<string, unknown>) => Record<string, unknown>]>([
    ['with a file of its own name', (head) => ({ ...head, contents: [['../../planted', 5]] })],
    ['with a file at a path', (head) => ({ ...head, contents: [['/tmp/planted', 5]] })],
    ['longer than its segments', (head) => ({ ...head, frameCount: 79 })],
    ['longer than any film', (head) => ({ ...head, segments: [['0'.repeat(64), 2 ** 40, 0]], frameCount: 2 ** 40 })],
    ['of more parts than can be', (head) => ({ ...head, of: 2 ** 40 })],
    ['at no rate', (head) => ({ ...head, rate: ['0', '0'] })],
    ['at a rate over nothing', (head) => ({ ...head, rate: ['24', '0'] })],
    ['of a codec named like a member of every object', (head) => ({ ...head, codec: 'constructor' })],
  ])('from a stranger, %s', async (what, forged) => {
    const bytes = readFileSync(parts[0]!);
    const end = bytes.indexOf(10);
    const head = { ...forged({ ...JSON.parse(bytes.toString('utf8', 0, end)), of: 1 }) };
    const isPlanted = what.startsWith('with');
    const rest = isPlanted ? Buffer.from('plant') : bytes.subarray(end + 1);
    writeFileSync(scratch.at('forged.part'), Buffer.concat([Buffer.from(`${JSON.stringify(head)}\n`), rest]));
    const planted = [scratch.at('planted.segment'), scratch.at('../planted.segment'), '/tmp/planted.segment'];
    const before = scratch.list();
    const message = 'forged.part is not a complete part of a render';
    expect(await joinParts([scratch.at('forged.part')], scratch.at('a.mp4'))).toMatchObject({
      kind: 'refused',
      message,
    });
    expect(scratch.list()).toEqual(before);
    expect(planted.filter((path) => existsSync(path))).toEqual([]);
  });
});
