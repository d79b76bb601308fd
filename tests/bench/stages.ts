/**
 * A lesson of three minutes from text to file, timed by stage: read, check, schedule, tell, draw, and the render of its
 * first twenty seconds.
 * The checksum is that of the pixels of every tenth different frame, so that a faster run that draws another picture
 * shows.
 */
import { execFileSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { mkdtempSync, readFileSync, rmSync, statSync } from 'node:fs';
import { cpus, tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { filmOf } from '../../src/film/film-of.ts';
import { checkScene } from '../../src/lesson/check-scene.ts';
import { readScene } from '../../src/lesson/read-scene.ts';
import { schedule } from '../../src/lesson/schedule.ts';
import { filmPainter } from '../../src/output/painters/film-painter.ts';
import { frameCanvas } from '../../src/output/pixels/canvas.ts';
import { renderFilm } from '../../src/output/render.ts';
import { defaultLook } from '../../src/picture/default-look.ts';
import { readNarration } from '../../src/timeline/narration.ts';

const scenes = fileURLToPath(new URL('../../scenes/', import.meta.url));

/** Times each stage and prints milliseconds; the fastest of some rounds, but for drawing and rendering. */
export async function run(): Promise<void> {
  const text = readFileSync(join(scenes, 'lamp-room.yaml'), 'utf8');
  const narrationText = readFileSync(join(scenes, 'lamp-room.vtt'), 'utf8');
  console.log(`lamp-room.yaml by stage, commit ${commit()}`);
  console.log(`${cpus()[0]?.model ?? 'unknown processor'}, ${cpus().length} cores, Node ${process.version}`);

  const scene = timed('read', 20, () => readScene(text).scene);
  if (scene === undefined) throw new Error('lamp-room.yaml cannot be read');
  const checked = timed('check', 5, () => checkScene(scene));
  const made = timed('schedule', 20, () => {
    const { narration } = readNarration(narrationText, 'lamp-room.vtt');
    return schedule(scene, narration, {}).schedule;
  });
  const film = timed('tell', 20, () => filmOf(checked, made, defaultLook));

  const painter = filmPainter(film, defaultLook);
  const canvas = frameCanvas(painter.width, painter.height, undefined);
  const hash = createHash('sha256');
  const seen = new Set<string>();
  let drawing = 0;
  const before = performance.now();
  for (let frame = 0; frame < painter.frameCount; frame += 1) {
    const digest = painter.digestAt(frame);
    if (seen.has(digest)) continue;
    seen.add(digest);
    if (seen.size % 10 !== 0) continue;
    const began = performance.now();
    canvas.draw(painter, frame);
    const pixels = canvas.pixels();
    drawing += performance.now() - began;
    hash.update(pixels);
  }
  const drawn = Math.floor(seen.size / 10);
  print('digest, every frame', (performance.now() - before - drawing) / painter.frameCount, 'a frame');
  print('draw', drawing / drawn, `a frame (${drawn} of ${seen.size} different frames)`);
  await timeRender({ ...painter, frameCount: 600 });
  console.log(`checksum of the pixels: ${hash.digest('hex').slice(0, 16)}`);
}

async function timeRender(painter: ReturnType<typeof filmPainter>): Promise<void> {
  const folder = mkdtempSync(join(tmpdir(), 'proofreel-bench-'));
  try {
    const file = join(folder, 'lesson.mp4');
    const began = performance.now();
    const result = await renderFilm(painter, file, {});
    if (result.kind !== 'written') throw new Error(`the render was ${result.kind}`);
    const kilobytes = Math.round(statSync(file).size / 1000);
    print('render', performance.now() - began, `in all (${painter.frameCount} frames, ${kilobytes} kB)`);
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

/** The value of the last round; prints the time of the fastest. */
function timed<T>(stage: string, rounds: number, work: () => T): T {
  let fastest = Number.POSITIVE_INFINITY;
  for (let round = 1; ; round += 1) {
    const began = performance.now();
    const value = work();
    fastest = Math.min(fastest, performance.now() - began);
    if (round < rounds) continue;
    print(stage, fastest, 'in all');
    return value;
  }
}

function print(stage: string, milliseconds: number, of: string): void {
  console.log(`${stage.padEnd(22)}${milliseconds.toFixed(milliseconds < 100 ? 2 : 0).padStart(9)} ms ${of}`);
}

/** Of the working tree; `unknown` outside a repository. */
function commit(): string {
  try {
    return execFileSync('git', ['describe', '--always', '--dirty'], { encoding: 'utf8', stdio: 'pipe' }).trim();
  } catch {
    return 'unknown';
  }
}

if (import.meta.url === pathToFileURL(process.argv[1] ?? '').href) await run();
