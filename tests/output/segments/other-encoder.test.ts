/**
 * An x264 that is set up otherwise than usual, so that its pictures cannot be continued without it: the video is made the
 * compatible way, in parts and by two processes too, and it is said once.
 */
import { execFileSync } from 'node:child_process';
import { chmodSync, readFileSync, writeFileSync } from 'node:fs';
import { afterAll, afterEach, expect, it, vi } from 'vitest';
import { filmPainter } from '../../../src/output/painters/film-painter.ts';
import { joinParts } from '../../../src/output/parts/join-parts.ts';
import { type RenderResult, renderFilm } from '../../../src/output/render.ts';
import { defaultLook } from '../../../src/picture/default-look.ts';
import { fraction } from '../../../src/scene/fraction.ts';
import { circle, film } from '../../picture/films.ts';
import { probeVideo, scratchFolder } from '../outside.ts';
import { expectExact, type Timeline, timelinePainter } from '../timelines.ts';

const scratch = scratchFolder();
afterAll(scratch.remove);
afterEach(() => vi.unstubAllEnvs());

const notice =
  'the file is made as with --compatible, since this encoder writes its pictures in a way that cannot be continued without it';

/** An ffmpeg that hands x264 one more setting than it was called with. */
function ffmpegThatSets(setting: string): string {
  const real = execFileSync('which', ['ffmpeg'], { encoding: 'utf8' }).trim();
  const file = scratch.at(`ffmpeg-${setting}`);
  writeFileSync(
    file,
    `#!/bin/sh
for word do
  shift
  if [ "$before" = -x264-params ]; then set -- "$@" "$word:${setting}"; else set -- "$@" "$word"; fi
  before=$word
done
exec ${real} "$@"
`,
  );
  chmodSync(file, 0o755);
  return file;
}

/** Two segments; what is held in the second ends with a group of one picture. */
const runs: Timeline = [
  [0, 1],
  [1, 10],
  [2, 1],
  [3, 25],
];
const painter = timelinePainter(runs, { rate: fraction(12n), opaque: true });

it.each(['cabac=0', 'weightp=2'])('a whole video, %s', async (setting) => {
  vi.stubEnv('FFMPEG_PATH', ffmpegThatSets(setting));
  const file = scratch.at(`${setting}.mp4`);
  expect(noticesOf(await renderFilm(painter, file))).toEqual([notice]);
  vi.unstubAllEnvs();
  expectExact(file, painter, runs);
});

it('parts, of which one has nothing to draw, joined', async () => {
  vi.stubEnv('FFMPEG_PATH', ffmpegThatSets('cabac=0'));
  await renderFilm(painter, scratch.at('whole.mp4'));
  const parts: string[] = [];
  for (let number = 1; number <= 3; number++) {
    const result = await renderFilm(painter, scratch.at('parts.mp4'), { part: { number, of: 3 } });
    expect(noticesOf(result)).toEqual([notice]);
    if (result.kind === 'written') parts.push(result.path);
  }
  const joined = scratch.at('joined.mp4');
  expect(await joinParts(parts, joined)).toMatchObject({ kind: 'written', frameCount: painter.frameCount });
  expect(readFileSync(joined).equals(readFileSync(scratch.at('whole.mp4')))).toBe(true);
});

it('two processes', async () => {
  vi.stubEnv('FFMPEG_PATH', ffmpegThatSets('cabac=0'));
  const marks = [0, 60].map((from) => ({ ...circle('7r1c5'), from, until: from + 60, step: `s${from}` }));
  const board = filmPainter(film({ width: 320, height: 180, frameCount: 120, marks }), defaultLook);
  const file = scratch.at('two.mp4');
  expect(noticesOf(await renderFilm(board, file, { workers: 2 }))).toEqual([notice]);
  expect(probeVideo(file).nb_read_frames).toBe('120');
});

it('nothing is said where the compatible way was asked for, or the encoder is as usual', async () => {
  expect(noticesOf(await renderFilm(painter, scratch.at('usual.mp4')))).toEqual([]);
  vi.stubEnv('FFMPEG_PATH', ffmpegThatSets('cabac=0'));
  expect(noticesOf(await renderFilm(painter, scratch.at('asked.mp4'), { compatible: true }))).toEqual([]);
});

function noticesOf(result: RenderResult): readonly string[] {
  if (result.kind !== 'written') throw new Error(JSON.stringify(result));
  return result.notices;
}
