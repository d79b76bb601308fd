/**
 * Two processes make, to the byte, the file that one makes; and neither outlives a render.
 */
import { readFileSync } from 'node:fs';
import { afterAll, expect, it } from 'vitest';
import { filmPainter } from '../../src/output/painters/film-painter.ts';
import type { Painter } from '../../src/output/painters/painter.ts';
import { renderFilm } from '../../src/output/render.ts';
import { defaultLook } from '../../src/picture/default-look.ts';
import { circle, film, link, type MarkWish } from '../picture/films.ts';
import { callOf, processes } from '../processes.ts';
import { scratchFolder } from './outside.ts';

const scratch = scratchFolder();
afterAll(scratch.remove);

/** Three steps of motion and rest on a small board. */
const marks = [0, 60, 120].flatMap((from): MarkWish[] => [
  { ...circle('7r1c5'), from, until: from + 60, step: `s${from}` },
  { ...link('strong', '7r1c5', '7r5c5'), from: from + 4, until: from + 60, step: `s${from}` },
  { ...circle(`3r${1 + from / 60}c9`), from: from + 20, until: from + 60, step: `s${from}` },
]);
const painter = filmPainter(film({ width: 320, height: 180, frameCount: 180, marks }), defaultLook);
const alone: Painter = { ...painter, painting: undefined };

it.each(['film.mp4', 'film.mov', 'film.webm'])('%s', async (name) => {
  expect(await renderFilm(alone, scratch.at(`one-${name}`))).toMatchObject({ kind: 'written' });
  const seen = new Set<number>();
  const onProgress = (): void => {
    for (const pid of workersOf(process.pid)) seen.add(pid);
  };
  expect(await renderFilm(painter, scratch.at(`two-${name}`), { workers: 2, onProgress })).toMatchObject({
    kind: 'written',
    frameCount: 180,
  });
  expect(seen.size).toBe(1);
  expect(readFileSync(scratch.at(`two-${name}`)).equals(readFileSync(scratch.at(`one-${name}`)))).toBe(true);
  expect(workersOf(process.pid)).toEqual([]);
});

it('a worker that dies is one sentence, and nothing is left', async () => {
  const onProgress = (): void => {
    for (const pid of workersOf(process.pid)) process.kill(pid, 'SIGKILL');
  };
  const dying = renderFilm(painter, scratch.at('dead.mp4'), { workers: 2, onProgress });
  await expect(dying).rejects.toThrow('a process that drew frames ended before it was done');
  expect(scratch.list().filter((name) => name.includes('dead'))).toEqual([]);
  expect(workersOf(process.pid)).toEqual([]);
});

/** Processes that run `worker.ts` for this one. */
function workersOf(parent: number): readonly number[] {
  return processes()
    .filter((one) => one.parent === parent && callOf(one.pid).includes('worker.ts'))
    .map(({ pid }) => pid);
}
