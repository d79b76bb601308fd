/**
 * Several videos from one call, as a user makes it.
 */
import { spawnSync } from 'node:child_process';
import { mkdtempSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, expect, it } from 'vitest';
import { run } from './run.ts';

const folder = mkdtempSync(join(tmpdir(), 'proofreel-render-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));
const at = (name: string): string => join(folder, name);

const cacheBefore = process.env.XDG_CACHE_HOME;
process.env.XDG_CACHE_HOME = at('cache');
afterAll(() => {
  process.env.XDG_CACHE_HOME = cacheBefore;
});

const scene = (draw: string, so = 'r3c1=2') => `proofreel: 1
puzzle: {boxes: 2x2, givens: 1... ..1. .1.4 ..2.}
video: {size: 320x240, rate: 24, length: 1, draw: ${draw}, timecode: 01:00:00:00}
steps:
  - {id: first, at: 0, from: 2r3, so: ${so}}
  - {id: second, at: 0.5, show: [{outline: b1}]}
`;
writeFileSync(at('marks.yaml'), scene('overlay'));
writeFileSync(at('board.yaml'), scene('board'));
writeFileSync(at('bad.yaml'), scene('board', 'r3c1=3'));

const timecodeOf = (file: string): string => {
  const words = [
    '-v',
    'error',
    '-select_streams',
    'v:0',
    '-show_entries',
    'stream_tags=timecode',
    '-of',
    'csv=p=0',
    file,
  ];
  return spawnSync('ffprobe', words, { encoding: 'utf8' }).stdout.trim();
};

it('a video a step, named by its id and labelled by its place', async () => {
  const ran = await run(
    'render',
    at('marks.yaml'),
    '-o',
    at('clips/'),
    '--by',
    'step',
    '--handles',
    '0.25s',
    '--quiet',
  );
  expect(ran.err).toMatch(/first\.mov: 18 frames[\s\S]*second\.mov: 18 frames/);
  expect(ran.status).toBe(0);
  expect(readdirSync(at('clips')).sort()).toEqual(['first.mov', 'second.mov']);
  expect(timecodeOf(at('clips/second.mov'))).toBe('01:00:00:06');
});

it('several scenes: what can be rendered is, and the status says what could not', async () => {
  const ran = await run('render', at('marks.yaml'), at('bad.yaml'), at('board.yaml'), '-o', at('all'), '--quiet');
  expect(ran.err).toMatch(/1 step to fix: first/);
  expect(ran.status).toBe(1);
  expect(readdirSync(at('all')).sort()).toEqual(['board.mp4', 'marks.mov']);
});

it('parts on the command line, joined; the second render draws nothing', async () => {
  for (const part of ['1/2', '2/2']) {
    expect((await run('render', at('board.yaml'), '-o', at('b.mp4'), '--part', part, '--quiet')).status).toBe(0);
  }
  const joined = await run('join', at('b-2-of-2.part'), at('b-1-of-2.part'), '-o', at('b.mp4'));
  expect(joined.err).toMatch(/b\.mp4: 24 frames, joined from 2 parts\n$/);
  expect(joined.status).toBe(0);
  const again = await run('render', at('board.yaml'), '-o', at('again.mp4'), '--quiet');
  expect(again.err).toMatch(/again\.mp4: 24 frames, 0 of them drawn, 24 from an earlier render\n$/);
  const alone = await run('join', at('b-2-of-2.part'), '-o', at('c.mp4'));
  expect(alone).toMatchObject({ status: 2, err: 'proofreel: of 2 parts 1 is missing\n' });
});

it('a small frame, and a matte of what nothing shows through', async () => {
  const small = await run('render', at('board.yaml'), '-o', at('small.mp4'), '--scale', '1/4', '--no-cache', '--quiet');
  expect(small.status).toBe(0);
  const words = ['-v', 'error', '-show_entries', 'stream=width,height', '-of', 'csv=p=0', at('small.mp4')];
  expect(spawnSync('ffprobe', words, { encoding: 'utf8' }).stdout.trim()).toBe('80,60');
  const matte = await run('render', at('board.yaml'), '-o', at('m.mp4'), '--matte');
  expect(matte.err).toMatch(/--matte: these frames are not transparent/);
  expect(matte.status).toBe(2);
});

it('says to a log what it will do and what it has done, a plain line each', async () => {
  const lines = (await run('render', at('board.yaml'), '-o', at('log.mp4'), '--no-cache')).err.split('\n');
  expect(lines.slice(-3)).toEqual([
    expect.stringMatching(/^24 frames, \d+ different: \d+ to draw, \S.*$/),
    expect.stringMatching(/log\.mp4: 24 frames, \d+ of them drawn$/),
    '',
  ]);
  for (const line of lines) expect(line).toMatch(/^\P{Cc}*$/u);
  expect(lines.slice(0, -3)).toEqual(
    (await run('render', at('board.yaml'), '-o', at('log.mp4'), '--quiet')).err.split('\n').slice(0, -2),
  );
});
