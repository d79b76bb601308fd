/**
 * A lesson laid over a recording, beside the plain transcode of the same recording with the same encoder: what the
 * marks cost. Both in turn, twice, as a machine is never quite its own.
 */
import { execFileSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { filmOf } from '../../src/film/film-of.ts';
import { checkScene } from '../../src/lesson/check-scene.ts';
import { readScene } from '../../src/lesson/read-scene.ts';
import { schedule } from '../../src/lesson/schedule.ts';
import { run as runFfmpeg } from '../../src/output/ffmpeg/ffmpeg.ts';
import { footageEncoder } from '../../src/output/footage/over-footage.ts';
import { filmPainter } from '../../src/output/painters/film-painter.ts';
import type { Painter } from '../../src/output/painters/painter.ts';
import { renderFilm } from '../../src/output/render.ts';
import { defaultLook } from '../../src/picture/default-look.ts';
import { fraction, zero } from '../../src/scene/fraction.ts';
import { readNarration } from '../../src/timeline/narration.ts';
import { type CpuUse, measured } from './cpu.ts';

const scenes = fileURLToPath(new URL('../../scenes/', import.meta.url));
const seconds = 8;

export async function run(): Promise<void> {
  const folder = mkdtempSync(join(tmpdir(), 'proofreel-bench-'));
  try {
    const recording = join(folder, 'take.mp4');
    // Something moves all over it, as in a recording with a face beside the board.
    const source = ['-f', 'lavfi', '-i', 'testsrc2=s=1920x1080:r=60', '-t', String(seconds), '-pix_fmt', 'yuv420p'];
    execFileSync('ffmpeg', ['-v', 'error', ...source, '-colorspace', 'bt709', '-preset', 'ultrafast', recording]);
    const painter = lesson();
    const ours: CpuUse[] = [];
    const plain: CpuUse[] = [];
    for (let round = 0; round < 2; round++) {
      plain.push(await measured(() => transcode(recording, join(folder, 'plain.mp4'))));
      ours.push(await measured(() => render(painter, recording, join(folder, 'over.mp4'))));
    }
    const [best, bestPlain] = [leastCpu(ours), leastCpu(plain)];
    console.log(`footage, 1920x1080, 60 frames a second, ${seconds} s`);
    print('plain transcode', bestPlain);
    print('with the lesson', best);
    const ratio = best.cpuSeconds / bestPlain.cpuSeconds;
    console.log(`${ratio.toFixed(2)} times the processor time of the transcode (at most 1.15 is wanted)`);
    console.log(`checksum of the decoded pictures: ${pictures(join(folder, 'over.mp4'))}`);
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

/** A stretch of a lesson at 60 frames a second, as marks over a recording, in which one picture in nine is a new one. */
function lesson(): Painter {
  const scene = readScene(readFileSync(join(scenes, 'lamp-room.yaml'), 'utf8')).scene;
  if (scene === undefined) throw new Error('lamp-room.yaml cannot be read');
  const { narration } = readNarration(readFileSync(join(scenes, 'lamp-room.vtt'), 'utf8'), 'lamp-room.vtt');
  const marked = { ...scene, video: { ...scene.video, rate: fraction(60n), draw: 'overlay' as const } };
  const film = filmOf(checkScene(marked), schedule(marked, narration, {}).schedule, defaultLook);
  const whole = filmPainter(film, defaultLook);
  const first = 40 * 60;
  return {
    ...whole,
    frameCount: 60 * seconds,
    digestAt: (frame) => whole.digestAt(first + frame),
    paint: (context, frame) => whole.paint(context, first + frame),
  };
}

async function transcode(recording: string, output: string): Promise<void> {
  await runFfmpeg(
    {
      inputs: [{ kind: 'file', file: recording, options: [] }],
      filter: '[0:v:0]fps=60[video]',
      outputOptions: ['-map', '[video]', ...footageEncoder(fraction(60n)), '-f', 'mp4'],
      output,
    },
    undefined,
  );
}

async function render(painter: Painter, recording: string, output: string): Promise<void> {
  const result = await renderFilm(painter, output, { footage: { file: recording, start: zero } });
  if (result.kind !== 'written') throw new Error(`the render was ${result.kind}`);
}

function leastCpu(all: readonly CpuUse[]): CpuUse {
  return all.reduce((least, one) => (one.cpuSeconds < least.cpuSeconds ? one : least));
}

function print(what: string, { wallSeconds, cpuSeconds }: CpuUse): void {
  console.log(
    `${what.padEnd(22)}${cpuSeconds.toFixed(2).padStart(9)} s processor, ${wallSeconds.toFixed(2)} s by the clock`,
  );
}

function pictures(file: string): string {
  const md5 = execFileSync('ffmpeg', ['-v', 'error', '-i', file, '-map', '0:v', '-f', 'md5', '-']);
  return createHash('sha256').update(md5).digest('hex').slice(0, 16);
}

if (import.meta.url === pathToFileURL(process.argv[1] ?? '').href) await run();
