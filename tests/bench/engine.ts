/**
 * The engine, timed in one run on one film: plain (every frame drawn in full and piped), ours, and the limit (the
 * different frames, drawn beforehand, through the encoder alone); then how the cost grows with length and with steps.
 * The limit's input is the canvas's own bytes, which ffmpeg converts and encodes with the plain way's options.
 * Wall time and CPU time of all processes stand side by side: on a machine that does other work trust the second.
 * The digest is that of all decoded pictures; without loss it is the same for plain and ours, or the run fails.
 *
 * `SIZE=960x540`, `STEPS=2`, `SECONDS_EACH=10`, `FORMATS=mp4,mov,qtrle,png,webm`, `GROWTH=no` make it shorter.
 */
import { execFileSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { cpus, tmpdir } from 'node:os';
import { join } from 'node:path';
import { filmPainter } from '../../src/output/painters/film-painter.ts';
import type { Painter } from '../../src/output/painters/painter.ts';
import { renderFilm } from '../../src/output/render.ts';
import { engineFilm, type FilmSize, look } from './engine-film.ts';
import { drawDifferent, encodeDrawn, type Format, formats, renderPlain } from './engine-plain.ts';

interface Cost {
  readonly wall: number;
  readonly cpu: number;
}

export async function run(): Promise<void> {
  const [width = 1920, height = 1080] = (process.env.SIZE ?? '1920x1080').split('x').map(Number);
  const size = {
    steps: Number(process.env.STEPS ?? 2),
    secondsEach: Number(process.env.SECONDS_EACH ?? 10),
    width,
    height,
  };
  const asked = (process.env.FORMATS ?? Object.keys(formats).join()).split(',');
  console.log(`the engine, ${width}x${height} at 60, ${size.steps} steps of 1 s motion in ${size.secondsEach} s`);
  console.log(`${cpus()[0]?.model ?? 'unknown processor'}, ${cpus().length} cores, Node ${process.version}`);
  const folder = mkdtempSync(join(tmpdir(), 'proofreel-engine-'));
  try {
    for (const [name, format] of Object.entries(formats))
      if (asked.includes(name)) await compare(name, format, size, folder);
    if (process.env.GROWTH !== 'no') await growth(size, folder);
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

async function compare(name: string, format: Format, size: Omit<FilmSize, 'draw'>, folder: string): Promise<void> {
  const painter = filmPainter(engineFilm({ ...size, draw: format.draw }), look);
  const file = (which: string): string => join(folder, `${which}.${format.ending}`);
  const drawn = join(folder, 'drawn.raw');
  const count = drawDifferent(painter, drawn);
  console.log(`${name}: ${painter.frameCount} frames, ${count} different`);
  const plain = await timed(() => renderPlain(painter, format, file('plain')));
  const ours = await timed(() => render(painter, file('ours'), format.wish));
  const limit = await timed(() => encodeDrawn(painter, format, drawn, file('limit')));
  rmSync(drawn);
  const digests = { plain: decodedDigest(file('plain')), ours: decodedDigest(file('ours')), limit: '' };
  for (const [which, cost] of Object.entries({ plain, ours, limit })) {
    const over = `${(plain.wall / cost.wall).toFixed(1)} / ${(plain.cpu / cost.cpu).toFixed(1)} of plain`;
    const beyond = `${(cost.wall / limit.wall).toFixed(2)} / ${(cost.cpu / limit.cpu).toFixed(2)} of the limit`;
    const digest = digests[which as keyof typeof digests];
    console.log(`  ${which.padEnd(7)}${shown(cost)}  ${over.padEnd(22)}${beyond.padEnd(28)}${digest}`);
  }
  if (format.exact && digests.plain !== digests.ours) {
    console.log('  without loss, but ours is not what plain is');
    process.exitCode = 1;
  }
}

/** From one minute to ten with the same steps, and from six steps to 24 of the same length. */
async function growth(size: Omit<FilmSize, 'draw'>, folder: string): Promise<void> {
  const file = join(folder, 'growth.mp4');
  const cost = (steps: number, secondsEach: number): Promise<Cost> =>
    timed(() => render(filmPainter(engineFilm({ ...size, steps, secondsEach, draw: 'board' }), look), file, {}));
  await cost(1, 10); // Warms up.
  const [short, long, many] = [await cost(6, 10), await cost(6, 100), await cost(24, 10)];
  console.log(`growth (mp4): 6 steps in 1 min ${shown(short)}, in 10 min ${shown(long)}: ${ratio(long, short)}`);
  console.log(`  24 steps in 4 min ${shown(many)}: ${ratio(many, short)} of 6 steps`);
}

async function render(painter: Painter, file: string, wish: Format['wish']): Promise<void> {
  const result = await renderFilm(painter, file, wish);
  if (result.kind !== 'written') throw new Error(`the render was ${result.kind}`);
}

async function timed(work: () => void | Promise<void>): Promise<Cost> {
  const [wall, cpu] = [performance.now(), cpuSeconds()];
  await work();
  return { wall: (performance.now() - wall) / 1000, cpu: cpuSeconds() - cpu };
}

/** Of this process and of those of its children that have ended (proc(5), stat: utime, stime, cutime, cstime). */
function cpuSeconds(): number {
  const fields = readFileSync('/proc/self/stat', 'utf8')
    .replace(/^.*\) /, '')
    .split(' ')
    .map(Number);
  return fields.slice(11, 15).reduce((sum, ticks) => sum + ticks, 0) / 100;
}

function decodedDigest(file: string): string {
  const decoder = file.endsWith('.webm') ? ['-c:v', 'libvpx-vp9'] : [];
  const words = ['-v', 'error', ...decoder, '-i', file, '-f', 'framemd5', '-'];
  const frames = execFileSync('ffmpeg', words, { encoding: 'utf8', maxBuffer: 2 ** 28 })
    .split('\n')
    .filter((line) => !line.startsWith('#'))
    .map((line) => line.split(',').at(-1)?.trim());
  const different = new Set(frames).size - 1;
  return `${frames.length - 1} decoded, ${different} different, ${createHash('sha256').update(frames.join()).digest('hex').slice(0, 12)}`;
}

function shown({ wall, cpu }: Cost): string {
  return `${wall.toFixed(1)} s (CPU ${cpu.toFixed(1)})`;
}

function ratio(a: Cost, b: Cost): string {
  return `${(a.wall / b.wall).toFixed(2)} / ${(a.cpu / b.cpu).toFixed(2)} times`;
}
