/**
 * From a scene's path to a film that can be drawn: what `render` and `still` share.
 */
import { existsSync } from 'node:fs';
import { basename, join, relative } from 'node:path';
import { fileURLToPath } from 'node:url';
import { filmOf } from '../film/film-of.ts';
import { filmPainter } from '../output/painters/film-painter.ts';
import type { Painter } from '../output/painters/painter.ts';
import { defaultLook } from '../picture/default-look.ts';
import { printDiagnostic } from '../scene/locate.ts';
import type { Look } from '../scene/look.ts';
import { readLook } from '../scene/read-look.ts';
import type { Film } from '../timeline/film.ts';
import { UsageError } from '../verbs/usage-error.ts';
import { pathBeside } from './beside-scene.ts';
import { type Lesson, openLesson } from './lesson.ts';
import { readText, readTextBeside } from './read-text.ts';
import type { Terminal } from './terminal.ts';

export interface OpenFilm {
  readonly lesson: Extract<Lesson, { kind: 'lesson' }>;
  readonly film: Film;
  readonly look: Look;
  readonly painter: Painter;
}

/** The film of the scene; undefined if the scene is unusable, which has then been reported on the terminal. */
export async function openFilm(
  path: string,
  { look: lookPath, as }: { readonly look?: string | undefined; readonly as?: string | undefined },
  terminal: Terminal,
): Promise<OpenFilm | undefined> {
  const lesson = await openLesson(path, { media: 'needed', as });
  for (const each of lesson.diagnostics) terminal.err(`${printDiagnostic(path, lesson.file.text, each)}\n`);
  if (lesson.kind === 'unusable') return undefined;
  const look = lookOf(path, lesson.scene.look?.value, lookPath, terminal);
  if (look === undefined) return undefined;
  const film = filmOf(lesson.checked, lesson.schedule, look);
  return { lesson, film, look, painter: filmPainter(film, look) };
}

/**
 * The look from the command line, otherwise the scene's own, otherwise the default; undefined if it has faults, which
 * have then been printed.
 */
export function lookOf(
  scenePath: string,
  inScene: string | undefined,
  onLine: string | undefined,
  terminal: Terminal,
): Look | undefined {
  const path = onLine ?? (inScene === undefined ? undefined : pathBeside(scenePath, inScene));
  if (path === undefined) return defaultLook;
  const text = onLine === undefined ? readTextBeside(lookThere(path), 'look') : readText(lookThere(path), 'look');
  const { look, diagnostics } = readLook(text, defaultLook);
  for (const each of diagnostics) terminal.err(`${printDiagnostic(path, text, each)}\n`);
  return look;
}

/** The path, if the file exists. For the name of a built-in look, the error says where that is. */
function lookThere(path: string): string {
  if (existsSync(path)) return path;
  const folder = fileURLToPath(new URL('../../assets/looks', import.meta.url));
  const shipped = join(folder, `${basename(path).replace(/\.ya?ml$/, '')}.yaml`);
  if (!existsSync(shipped)) return path;
  throw new UsageError(`there is no look ${path}; the one included with proofreel is ${relative('', shipped)}`);
}
