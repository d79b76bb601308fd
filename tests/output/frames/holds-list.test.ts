/**
 * A folder that holds each picture once: played by its list it is the folder of all frames.
 */
import { readFileSync, statSync } from 'node:fs';
import { afterAll, expect, it } from 'vitest';
import { renderFilm } from '../../../src/output/render.ts';
import { fraction } from '../../../src/scene/fraction.ts';
import { scratchFolder } from '../outside.ts';
import { mixed, timelinePainter } from '../timelines.ts';

const scratch = scratchFolder();
afterAll(scratch.remove);

it('lists every frame once, and its pictures are the frames', async () => {
  const painter = timelinePainter(mixed, { rate: fraction(30000n, 1001n), opaque: false });
  await renderFilm(painter, scratch.at('all/'));
  await renderFilm(painter, scratch.at('held/'), { holds: true });
  const list = JSON.parse(readFileSync(scratch.at('held/holds.json'), 'utf8')) as {
    rate: string;
    frames: number;
    pictures: { file: string; in: number; out: number }[];
  };
  expect(list).toMatchObject({ rate: '30000/1001', frames: painter.frameCount });
  let next = 0;
  for (const { file, in: from, out } of list.pictures) {
    expect(from).toBe(next);
    next = out;
    const name = (frame: number) => `all/${String(frame).padStart(6, '0')}.png`;
    for (const frame of [from, out - 1]) {
      expect(readFileSync(scratch.at(`held/${file}`)).equals(readFileSync(scratch.at(name(frame))))).toBe(true);
    }
    expect(statSync(scratch.at(name(from))).ino).toBe(statSync(scratch.at(name(out - 1))).ino);
  }
  expect(next).toBe(painter.frameCount);
  // Fourteen pictures, one of which returns, and the list.
  expect(scratch.list('held')).toHaveLength(15 + 1);
});

it('replaces an older one, and is for folders alone', async () => {
  const painter = timelinePainter([[0, 3]], { rate: fraction(25n), opaque: true });
  expect(await renderFilm(painter, scratch.at('held/'))).toMatchObject({ kind: 'written' });
  expect(await renderFilm(painter, scratch.at('a.mp4'), { holds: true })).toMatchObject({
    kind: 'refused',
    message: expect.stringContaining('--holds is for a folder of PNG frames'),
  });
});
