/**
 * One step changed in a lesson of sixty: the lesson rendered from nothing into an empty cache, then with one mark of one
 * step changed, both from the command line as a user does it, reading and checking of the scene included.
 *
 * `SIZE=1920x1080` takes other frames; `FRESH=yes` renders the changed lesson from nothing too, and the run fails where
 * the file is another.
 */
import { execFileSync, spawn } from 'node:child_process';
import { createHash } from 'node:crypto';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { cpus, tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { type CpuUse, measured } from './cpu.ts';

const root = fileURLToPath(new URL('../..', import.meta.url));
const steps = 60;
const secondsEach = 4;
const changedStep = 30;
/** Of the first render, by the processor. */
const wanted = 0.1;

export async function run(): Promise<void> {
  const folder = mkdtempSync(join(tmpdir(), 'proofreel-changed-'));
  const at = (name: string): string => join(folder, name);
  const size = process.env.SIZE ?? '640x360';
  try {
    writeFileSync(at('lesson.yaml'), lesson(size, false));
    writeFileSync(at('changed.yaml'), lesson(size, true));
    console.log(`one step of ${steps} changed, ${size}, 60 frames a second, ${steps * secondsEach} s`);
    console.log(`${cpus()[0]?.model ?? 'unknown processor'}, ${cpus().length} cores, Node ${process.version}`);
    const first = await timed('from nothing', at('lesson.yaml'), at('lesson.mp4'), folder, []);
    const again = await timed('one step changed', at('changed.yaml'), at('lesson.mp4'), folder, []);
    const [byProcessor, byClock] = [again.cpuSeconds / first.cpuSeconds, again.wallSeconds / first.wallSeconds];
    const goal = `at most ${wanted.toFixed(2)} is wanted`;
    console.log(`${byProcessor.toFixed(3)} of its processor time, ${byClock.toFixed(3)} by the clock (${goal})`);
    if (process.env.FRESH === 'yes') {
      await timed('changed, from nothing', at('changed.yaml'), at('fresh.mp4'), folder, ['--no-cache']);
      const isSame = readFileSync(at('fresh.mp4')).equals(readFileSync(at('lesson.mp4')));
      console.log(isSame ? 'byte for byte the same' : 'NOT the same file');
      if (!isSame) process.exitCode = 1;
    }
    console.log(`checksum of the decoded pictures: ${pictures(at('lesson.mp4'))}`);
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

/** Three marks that come one upon the other in each step, then nothing moves; no two steps have the same pictures. */
function lesson(size: string, isChanged: boolean): string {
  const puzzles = readFileSync(new URL('../data/minimum-17.txt', import.meta.url), 'utf8');
  const cell = (shift: number, step: number): string =>
    `r${1 + ((step + shift) % 9)}c${1 + (Math.floor(step / 9) % 9)}`;
  const step = (_: unknown, index: number): string => {
    const outlined = isChanged && index === changedStep ? 'c9' : `b${1 + (index % 9)}`;
    return `  - {id: s${index}, at: ${secondsEach * index}, show: [{fill: ${cell(0, index)}}, {fill: ${cell(4, index)}, at: +0.05}, {outline: ${outlined}, at: +0.1}]}`;
  };
  return `proofreel: 1
puzzle: {givens: '${puzzles.split('\n')[0]?.trim()}'}
video: {size: ${size}, rate: 60, length: ${steps * secondsEach}, draw: board}
steps:
${Array.from({ length: steps }, step).join('\n')}
`;
}

async function timed(
  what: string,
  scene: string,
  out: string,
  cache: string,
  more: readonly string[],
): Promise<CpuUse> {
  let said = '';
  const cost = await measured(
    () =>
      new Promise<void>((resolve, reject) => {
        const words = ['--import', 'tsx', 'src/cli.ts', 'render', scene, '-o', out, '--quiet', ...more];
        const child = spawn(process.execPath, words, {
          ...{ cwd: root, stdio: ['ignore', 'ignore', 'pipe'] },
          env: { ...process.env, XDG_CACHE_HOME: cache },
        });
        child.stderr.setEncoding('utf8').on('data', (text: string) => {
          said += text;
        });
        child.on('close', (status) => (status === 0 ? resolve() : reject(new Error(said))));
      }),
  );
  const counted = /\d+ frames.*/.exec(said)?.[0] ?? '';
  const time = `${cost.cpuSeconds.toFixed(2).padStart(9)} s processor, ${cost.wallSeconds.toFixed(2)} s by the clock`;
  console.log(`${what.padEnd(22)}${time}: ${counted}`);
  return cost;
}

function pictures(file: string): string {
  const md5 = execFileSync('ffmpeg', ['-v', 'error', '-i', file, '-map', '0:v', '-f', 'md5', '-']);
  return createHash('sha256').update(md5).digest('hex').slice(0, 16);
}

if (import.meta.url === pathToFileURL(process.argv[1] ?? '').href) await run();
