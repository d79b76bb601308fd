/** What the options of `render` change in what is written, each held against the same render without it. */
import { execFileSync } from 'node:child_process';
import { readdirSync, readFileSync, statSync, writeFileSync } from 'node:fs';
import { afterAll, describe, expect, it } from 'vitest';
import { scratchFolder } from '../output/outside.ts';
import { run } from './run.ts';

const scratch = scratchFolder();
afterAll(scratch.remove);
const scene = (draw: string, so = 'r3c1=2') => `proofreel: 1
puzzle: {boxes: 2x2, givens: 1... ..1. .1.4 ..2.}
video: {size: 160x120, rate: 24, length: 0.5, draw: ${draw}}
steps:
  - {id: first, at: 0, from: 2r3, so: ${so}}
`;
const written = (name: string, text: string): string => {
  writeFileSync(scratch.at(name), text);
  return scratch.at(name);
};
const board = written('board.yaml', scene('board'));
const marks = written('marks.yaml', scene('overlay'));
/** Two seconds on which nothing moves any more follow what moves. */
const still = written('still.yaml', scene('board').replace('length: 0.5', 'length: 3'));
const bad = written('bad.yaml', scene('board', 'r3c1=3'));

const codecOf = (file: string): string => {
  const words = ['-v', 'error', '-select_streams', 'v:0', '-show_entries', 'stream=codec_name', '-of', 'csv=p=0', file];
  return execFileSync('ffprobe', words, { encoding: 'utf8' }).trim();
};
/** A digest of all pictures that a decoder makes of the file. */
const picturesOf = (file: string): string =>
  execFileSync('ffmpeg', ['-v', 'error', '-i', file, '-map', '0:v', '-f', 'md5', '-'], { encoding: 'utf8' });

describe('the codec of a .mov', () => {
  it.each([
    [['render'], 'prores'],
    [['render', '--lossless'], 'qtrle'],
    [['render', '--png'], 'png'],
  ])('%j: %s', async ([, ...more], codec) => {
    const out = scratch.at(`${codec}.mov`);
    expect(await run('render', marks, '-o', out, '--quiet', ...more)).toMatchObject({ status: 0 });
    expect(codecOf(out)).toBe(codec);
  });
});

it.each([
  ['a.mp4', 'av1'],
  ['a.webm', 'av1'],
  ['a.mov', 'hevc'],
])('--codec: %s of %s', async (name, codec) => {
  const out = scratch.at(name);
  expect(await run('render', board, '-o', out, '--quiet', '--codec', codec)).toMatchObject({ status: 0 });
  expect(codecOf(out)).toBe(codec);
});

it('--codec names the containers of several videos, and is refused where it is none or the file cannot hold it', async () => {
  const several = await run(
    'render',
    board,
    '-o',
    scratch.at('several/'),
    '--by',
    'step',
    '--quiet',
    '--codec',
    'hevc',
  );
  expect(several.status).toBe(0);
  expect(readdirSync(scratch.at('several'))).toEqual(['first.mov']);
  expect(await run('render', board, '-o', scratch.at('b.mp4'), '--codec', 'hvec')).toMatchObject({
    status: 2,
    err: 'proofreel: --codec hvec: did you mean hevc?\n',
  });
  expect(await run('render', board, '-o', scratch.at('b.mp4'), '--codec', 'hevc')).toMatchObject({
    status: 2,
    err: expect.stringContaining('proofreel: a .mp4 is not written with HEVC; name a .mov\n'),
  });
});

it('--compatible leaves it to the encoder to say that nothing changes: a larger file with as many frames', async () => {
  const [plain, compatible] = [scratch.at('plain.mp4'), scratch.at('compatible.mp4')];
  expect((await run('render', still, '-o', plain, '--quiet')).status).toBe(0);
  expect((await run('render', still, '-o', compatible, '--quiet', '--compatible')).status).toBe(0);
  expect([codecOf(plain), codecOf(compatible)]).toEqual(['h264', 'h264']);
  expect(readFileSync(compatible).equals(readFileSync(plain))).toBe(false);
  expect(statSync(compatible).size).toBeGreaterThan(statSync(plain).size);
});

it('--key: what lies behind the marks has that colour', async () => {
  const [green, blue] = [scratch.at('green.mp4'), scratch.at('blue.mp4')];
  expect((await run('render', marks, '-o', green, '--quiet', '--key', '#00b140')).status).toBe(0);
  expect((await run('render', marks, '-o', blue, '--quiet', '--key', '#0000ff')).status).toBe(0);
  expect(picturesOf(green)).not.toBe(picturesOf(blue));
});

it('--holds writes each picture once, and how long it is shown', async () => {
  expect((await run('render', board, '-o', scratch.at('frames/'), '--quiet')).status).toBe(0);
  expect((await run('render', board, '-o', scratch.at('holds/'), '--quiet', '--holds')).status).toBe(0);
  const [all, held] = [readdirSync(scratch.at('frames')), readdirSync(scratch.at('holds'))];
  expect(all).toHaveLength(12);
  expect(held).toContain('holds.json');
  expect(held.length - 1).toBeLessThan(all.length);
});

it('--look draws with another look', async () => {
  expect((await run('render', board, '-o', scratch.at('own/'), '--quiet')).status).toBe(0);
  expect(
    (await run('render', board, '-o', scratch.at('dark/'), '--quiet', '--look', 'assets/looks/bluehour.yaml')).status,
  ).toBe(0);
  const [name] = readdirSync(scratch.at('own'));
  expect(readFileSync(scratch.at(`dark/${name}`)).equals(readFileSync(scratch.at(`own/${name}`)))).toBe(false);
});

it('--stamp renders an unsound scene, stamped', async () => {
  expect((await run('render', bad, '-o', scratch.at('refused/'), '--quiet')).status).toBe(1);
  const { status, err } = await run('render', bad, '-o', scratch.at('stamped/'), '--quiet', '--stamp');
  expect([status, err]).toEqual([0, expect.stringMatching(/12 frames, .*stamped where it is not proved\n$/)]);
  const [name] = readdirSync(scratch.at('stamped'));
  expect(readdirSync(scratch.at('stamped'))).toHaveLength(12);
  expect(name).toMatch(/\.png$/);
});

it('--matte writes the colours and the transparency apart', async () => {
  expect((await run('render', marks, '-o', scratch.at('apart.mov'), '--quiet', '--matte')).status).toBe(0);
  expect(readdirSync(scratch.folder).filter((name) => name.startsWith('apart'))).toEqual([
    'apart-fill.mov',
    'apart-matte.mov',
  ]);
});
