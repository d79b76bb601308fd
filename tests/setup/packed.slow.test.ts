/**
 * What `npm pack` makes, installed by itself into an empty folder: it checks, renders and writes slides there. The
 * packages that it depends on come from the registry, as they do for `npm ci`.
 */
import { execFileSync } from 'node:child_process';
import { copyFileSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { probeVideo, scratchFolder } from '../output/outside.ts';

const root = fileURLToPath(new URL('../..', import.meta.url));
const scratch = scratchFolder();
afterAll(scratch.remove);

/** None of npm's own variables, which would lead an installation back to this folder. */
const env = Object.fromEntries(Object.entries(process.env).filter(([name]) => !/^npm_|^NODE_PATH$/i.test(name)));
const call = (program: string, words: readonly string[], cwd = scratch.folder): string =>
  execFileSync(program, words, { cwd, env, encoding: 'utf8', stdio: ['ignore', 'pipe', 'pipe'], maxBuffer: 2 ** 26 });
const proofreel = (...words: readonly string[]): string => call(scratch.at('node_modules/.bin/proofreel'), words);

beforeAll(() => {
  call('npm', ['pack', '--silent', '--pack-destination', scratch.folder], root);
  const [archive = ''] = scratch.list().filter((name) => name.endsWith('.tgz'));
  writeFileSync(scratch.at('package.json'), '{"name": "a-lesson", "version": "1.0.0", "private": true}');
  call('npm', ['install', '--no-audit', '--no-fund', '--prefer-offline', `./${archive}`]);
  for (const scene of ['two-towers.yaml', 'lamp-room.yaml', 'lamp-room.vtt']) {
    copyFileSync(join(root, 'scenes', scene), scratch.at(scene));
  }
}, 600_000);

it('holds what runs and what it needs, and no source', () => {
  const folder = 'node_modules/proofreel';
  expect(scratch.list(folder)).toEqual(['LICENSE', 'README.md', 'assets', 'dist', 'package.json']);
  const files = readdirSync(scratch.at(folder), { recursive: true, encoding: 'utf8' });
  expect(files.filter((name) => name.endsWith('.ts') && !name.endsWith('.d.ts'))).toEqual([]);
  expect(scratch.list('node_modules')).not.toContain('vitest');
});

it('checks a scene', () => {
  const report = JSON.parse(proofreel('check', 'two-towers.yaml', '--json'));
  expect(report).toMatchObject({ sound: true, scene: 'two-towers.yaml' });
  expect(proofreel('check', 'lamp-room.yaml')).toMatch(/^sound {2}lamp-room\.yaml/);
});

it('renders a video, a still and frames', () => {
  const small = ['--steps', 'corner', '--scale', '1/4', '--no-cache', '--quiet'];
  proofreel('render', 'two-towers.yaml', '-o', 'lesson.mp4', ...small);
  expect(probeVideo(scratch.at('lesson.mp4'))).toMatchObject({ width: 480, height: 270, codec_name: 'h264' });
  proofreel('still', 'two-towers.yaml', '--step', 'towers', '-o', 'towers.png');
  expect(readFileSync(scratch.at('towers.png')).toString('latin1', 1, 4)).toBe('PNG');
  proofreel('render', 'two-towers.yaml', '-o', 'frames/', '--holds', ...small);
  expect(scratch.list('frames')).toContain('holds.json');
});

it('writes slides with their program, and a draft with its phrases and costs', () => {
  for (const out of ['slides.html', 'slides.pdf', 'slides.pptx']) {
    proofreel('slides', 'two-towers.yaml', '-o', out);
    expect(readFileSync(scratch.at(out)).length).toBeGreaterThan(10_000);
  }
  proofreel('draft', 'two-towers.yaml', '-o', 'draft.yaml', '--language', 'de');
  expect(proofreel('check', 'draft.yaml')).toMatch(/^sound/);
});
