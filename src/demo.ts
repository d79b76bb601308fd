/**
 * The demo: draws a stand-in for a recording (a plain board on which the solve proceeds, without marks), then renders
 * the demo lesson's marks over it, and prints where the video is.
 */
import { mkdirSync } from 'node:fs';
import { dirname, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import { openLesson } from './commands/lesson.ts';
import { main } from './commands/main.ts';
import { processTerminal } from './commands/terminal.ts';
import { filmOf } from './film/film-of.ts';
import { checkScene } from './lesson/check-scene.ts';
import { MachineFailure } from './output/machine/machine-failure.ts';
import { filmPainter } from './output/painters/film-painter.ts';
import { progressLine } from './output/progress.ts';
import { renderFilm } from './output/render.ts';
import { defaultLook } from './picture/default-look.ts';
import type { Film } from './timeline/film.ts';
import { exitStatus } from './verbs/exit-status.ts';
import { UsageError } from './verbs/usage-error.ts';

const root = fileURLToPath(new URL('..', import.meta.url));
const scenePath = resolve(root, 'scenes/demo.yaml');
const recordingPath = resolve(root, 'out/demo/recording.mp4');
const lessonPath = resolve(root, 'out/demo/lesson.mp4');

/**
 * What a recording of the solve would show: the board, its digits and candidates as they come and go, and nothing else.
 */
async function recordingFilm(): Promise<Film> {
  const lesson = await openLesson(scenePath, { media: 'if there' });
  if (lesson.kind === 'unusable')
    throw new UsageError(`${scenePath} cannot be used; \`npm run proofreel check ${scenePath}\` says why`);
  const { scene } = lesson;
  const shown = { ...scene, video: { ...scene.video, draw: 'board' as const, candidates: 'all' as const } };
  const film = filmOf(checkScene(shown), lesson.schedule, defaultLook);
  return { ...film, marks: [], headings: [], title: undefined, credit: undefined };
}

async function demo(): Promise<number> {
  const terminal = processTerminal();
  mkdirSync(dirname(recordingPath), { recursive: true });
  terminal.err('Drawing a stand-in for a recording: a board on which the solve proceeds, without marks.\n');
  const line = progressLine(process.stderr);
  const recording = await renderFilm(filmPainter(await recordingFilm(), defaultLook), recordingPath, {
    onProgress: (progress) => line.show(progress),
  });
  line.clear();
  if (recording.kind !== 'written') throw new UsageError('the stand-in recording was not written');
  terminal.err(`Proving the steps of ${scenePath} and drawing their marks over it.\n`);
  const status = await main(['render', scenePath, '-o', lessonPath], terminal);
  if (status === exitStatus.sound) terminal.out(`\nThe lesson is here: ${lessonPath}\n`);
  return status;
}

try {
  process.exitCode = await demo();
} catch (failure) {
  if (!(failure instanceof UsageError || failure instanceof MachineFailure)) throw failure;
  process.stderr.write(`proofreel: ${failure.message}\n`);
  process.exitCode = failure instanceof UsageError ? exitStatus.unusable : exitStatus.machineFailed;
}
