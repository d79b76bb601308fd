/**
 * Twenty minutes with sixty steps, timed: ours is the whole film. Plain (every frame drawn in full and piped) would take
 * half an hour, so it makes the first seconds alone, and is scaled by the number of frames: those seconds hold as much
 * motion for their length as the rest.
 *
 * `SIZE=960x540`, `STEPS=60`, `SECONDS_EACH=20`, `PLAIN_SECONDS=40` change it.
 */
import { mkdtempSync, rmSync } from 'node:fs';
import { cpus, tmpdir } from 'node:os';
import { join } from 'node:path';
import { excerpt } from '../../src/output/painters/excerpt.ts';
import { filmPainter } from '../../src/output/painters/film-painter.ts';
import { renderFilm } from '../../src/output/render.ts';
import { toNumber } from '../../src/scene/fraction.ts';
import { measured } from './cpu.ts';
import { engineFilm, look } from './engine-film.ts';
import { formats, renderPlain } from './engine-plain.ts';

/** Times faster than plain. */
const wanted = 15;

export async function run(): Promise<void> {
  const [width = 1920, height = 1080] = (process.env.SIZE ?? '1920x1080').split('x').map(Number);
  const [steps, secondsEach] = [Number(process.env.STEPS ?? 60), Number(process.env.SECONDS_EACH ?? 20)];
  const painter = filmPainter(engineFilm({ steps, secondsEach, width, height, draw: 'board' }), look);
  // Whole steps, so that motion and rest have their shares.
  const piece = secondsEach * Math.max(1, Math.round(Number(process.env.PLAIN_SECONDS ?? 40) / secondsEach));
  const frames = Math.min(painter.frameCount, Math.round(piece * toNumber(painter.rate)));
  const minutes = ((steps * secondsEach) / 60).toFixed(1);
  console.log(`the engine, ${width}x${height} at 60, ${steps} steps in ${minutes} min, ${painter.frameCount} frames`);
  console.log(`${cpus()[0]?.model ?? 'unknown processor'}, ${cpus().length} cores, Node ${process.version}`);
  const folder = mkdtempSync(join(tmpdir(), 'proofreel-long-'));
  try {
    const part = await measured(() =>
      renderPlain(excerpt(painter, 0, frames), formats.mp4!, join(folder, 'plain.mp4')),
    );
    let drawn = 0;
    const ours = await measured(async () => {
      const result = await renderFilm(painter, join(folder, 'ours.mp4'));
      if (result.kind !== 'written') throw new Error(`the render was ${result.kind}`);
      drawn = result.drawn;
    });
    const scale = painter.frameCount / frames;
    const plain = { wall: part.wallSeconds * scale, cpu: part.cpuSeconds * scale };
    const seconds = (wall: number, cpu: number): string => `${wall.toFixed(1)} s (CPU ${cpu.toFixed(1)})`;
    console.log(`  plain  ${seconds(part.wallSeconds, part.cpuSeconds)} for ${frames} frames,`);
    console.log(`         times ${scale.toFixed(1)}, not measured: ${seconds(plain.wall, plain.cpu)}`);
    console.log(`  ours   ${seconds(ours.wallSeconds, ours.cpuSeconds)}, ${drawn} frames drawn`);
    const [byClock, byProcessor] = [plain.wall / ours.wallSeconds, plain.cpu / ours.cpuSeconds];
    const goal = `at least ${wanted} is wanted`;
    console.log(
      `  ${byClock.toFixed(1)} times faster by the clock, ${byProcessor.toFixed(1)} by the processor (${goal})`,
    );
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}
