/**
 * `npm run demo`: a lesson over a recording. The recording is a stand-in that is drawn here, the board alone and no
 * marks, as somebody would film it; then `proofreel render` lays the marks of the scene over it as over any footage.
 */
import { mkdirSync } from 'node:fs';
import { dirname, join, relative } from 'node:path';
import { fileURLToPath } from 'node:url';
import { openLesson } from './commands/lesson.ts';
import { render } from './commands/render.ts';
import { processTerminal } from './commands/terminal.ts';
import { filmPainter } from './output/film-painter.ts';
import { renderFilm } from './output/render.ts';
import { defaultLook } from './picture/default-look.ts';
import { tellFilm } from './telling/tell-film.ts';
import type { Film } from './timeline/film.ts';
import { exitStatus } from './verbs.ts';

const root = join(dirname(fileURLToPath(import.meta.url)), '..');
const fromHere = (path: string): string => relative(process.cwd(), join(root, path));
const scenePath = fromHere('scenes/demo.yaml');
const recording = fromHere('out/demo/recording.mp4');
const video = fromHere('out/demo/lesson.mp4');

process.exitCode = await demo();

async function demo(): Promise<number> {
  const terminal = processTerminal();
  mkdirSync(dirname(recording), { recursive: true });
  const board = await boardAlone();
  if (board !== undefined) {
    terminal.err('Drawing a recording of the board to lay the marks over: a few seconds.\n');
    await renderFilm(filmPainter(board, defaultLook), recording, {});
    terminal.err(`Rendering ${scenePath} over it: about half a minute.\n`);
  }
  const status = await render(scenePath, { out: video }, terminal);
  if (status !== exitStatus.sound) return status;
  terminal.out(`${video}\n`);
  terminal.err(`Watch it, then change a step of ${scenePath} and ask: npx proofreel check ${scenePath}\n`);
  return status;
}

/** The film of the scene as a camera would have it: digits and candidates come and go, and nothing is marked. */
async function boardAlone(): Promise<Film | undefined> {
  const lesson = await openLesson(scenePath, { media: 'if there' });
  if (lesson.kind === 'unusable') return undefined;
  const { checked, schedule } = lesson;
  const scene = { ...checked.scene, video: { ...checked.scene.video, draw: 'board' as const } };
  const film = tellFilm({ ...checked, scene }, schedule, defaultLook);
  return { ...film, title: undefined, credit: undefined, headings: [], marks: [] };
}
