/**
 * The lessons of `scenes/`, read and proved, with what their videos show.
 */
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import type { CheckedScene } from '../../src/check/verdict.ts';
import { filmOf } from '../../src/film/film-of.ts';
import { checkScene } from '../../src/lesson/check-scene.ts';
import { readScene } from '../../src/lesson/read-scene.ts';
import { schedule } from '../../src/lesson/schedule.ts';
import { defaultLook } from '../../src/picture/default-look.ts';
import type { Scene } from '../../src/scene/scene.ts';
import type { Film } from '../../src/timeline/film.ts';
import { type Narration, readNarration } from '../../src/timeline/narration.ts';
import type { Schedule } from '../../src/timeline/schedule.ts';

export interface Told {
  readonly scene: Scene;
  readonly narration: Narration | undefined;
  readonly schedule: Schedule;
  readonly checked: CheckedScene;
  readonly film: Film;
}

const folder = new URL('../../scenes/', import.meta.url);

export const lessonNames = readdirSync(folder).filter((name) => name.endsWith('.yaml'));

const known = new Map<string, Told>();

/** The lesson of this file of `scenes/`; with `text`, of this text instead. */
export function lessonOf(name: string, text?: string): Told {
  if (text !== undefined) return told(name, text);
  const lesson = known.get(name) ?? told(name, readFileSync(new URL(name, folder), 'utf8'));
  known.set(name, lesson);
  return lesson;
}

function told(name: string, text: string): Told {
  const { scene, diagnostics } = readScene(text);
  if (scene === undefined) throw new Error(diagnostics.map(({ message }) => message).join('; '));
  const spoken = new URL(name.replace('.yaml', '.vtt'), folder);
  const narration = existsSync(spoken) ? readNarration(readFileSync(spoken, 'utf8'), name).narration : undefined;
  const timed = schedule(scene, narration, {}).schedule;
  const checked = checkScene(scene);
  return { scene, narration, schedule: timed, checked, film: filmOf(checked, timed, defaultLook) };
}
