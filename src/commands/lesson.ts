/**
 * A lesson: a scene file and the files it names, read, proved and timed. What every verb starts from.
 */
import { dirname, resolve } from 'node:path';
import type { CheckedScene } from '../check/verdict.ts';
import { certainErrors, checkScene } from '../lesson/check-scene.ts';
import { readScene } from '../lesson/read-scene.ts';
import { certainFaults, schedule } from '../lesson/schedule.ts';
import type { SceneFile } from '../report/report-of.ts';
import type { Diagnostic } from '../scene/diagnostic.ts';
import { nearestWords } from '../scene/nearest-word.ts';
import type { RoughScene } from '../scene/read.ts';
import type { Scene, TimedScene, Version } from '../scene/scene.ts';
import { sceneAs } from '../scene/versions.ts';
import type { Narration } from '../timeline/narration.ts';
import type { Schedule } from '../timeline/schedule.ts';
import { UsageError } from '../verbs/usage-error.ts';
import { type Beside, readBeside } from './beside-scene.ts';
import { readText } from './read-text.ts';

export type Lesson =
  | {
      readonly kind: 'lesson';
      readonly file: SceneFile;
      readonly scene: Scene;
      readonly checked: CheckedScene;
      readonly schedule: Schedule;
      /** Undefined if the scene names none. */
      readonly narration: Narration | undefined;
      /** Warnings; an error would have made it unusable. In text order. */
      readonly diagnostics: readonly Diagnostic[];
    }
  | {
      readonly kind: 'unusable';
      readonly file: SceneFile;
      readonly diagnostics: readonly Diagnostic[];
      readonly solutions: 0 | 1 | 2;
    };

/**
 * Reads, proves and times the scene. `media`: whether footage and audio must exist, as for a render, or are only probed
 * for their length if they exist, as for a check on another machine. `as`: the version whose frame is used.
 * @throws UsageError if the scene file itself cannot be read, or has no such version
 */
export async function openLesson(
  path: string,
  options: { readonly media: 'needed' | 'if there'; readonly as?: string | undefined },
): Promise<Lesson> {
  const file = { path, text: readSceneFile(path) };
  const read = readScene(file.text);
  const unusable = (diagnostics: readonly Diagnostic[], solutions: 0 | 1 | 2 = 0): Lesson => ({
    kind: 'unusable',
    file,
    diagnostics: inOrder(diagnostics),
    solutions,
  });
  const folder = dirname(resolve(path));
  if (read.scene === undefined) {
    const others = read.rough === undefined ? [] : await furtherFaults(read.rough, folder, options.media);
    return unusable([...read.diagnostics, ...others]);
  }
  const scene = options.as === undefined ? read.scene : sceneAs(read.scene, versionOf(read.scene, options.as));
  const beside = await readBeside(scene, folder, options.media);
  const timed = schedule(scene, beside.narration, beside.lengths);
  const checked = checkScene(scene);
  const ofVersions = faultsOfVersions(scene, beside);
  const diagnostics = [...read.diagnostics, ...beside.diagnostics, ...timed.diagnostics, ...ofVersions];
  const all = [...diagnostics, ...checked.errors];
  if (all.some((diagnostic) => diagnostic.severity === 'error')) return unusable(all, checked.solutions);
  return {
    kind: 'lesson',
    file,
    scene,
    checked,
    schedule: timed.schedule,
    narration: beside.narration,
    diagnostics: inOrder(diagnostics),
  };
}

/** For a scene with errors: what else is certainly wrong with it and with the files it names, despite the errors. */
async function furtherFaults(
  { parts, puzzle, puzzleSpan, doubts }: RoughScene,
  folder: string,
  media: 'needed' | 'if there',
): Promise<readonly Diagnostic[]> {
  const beside = await readBeside(parts, folder, media);
  const scene = { ...parts, puzzle: puzzle ?? { span: puzzleSpan } };
  const ofTimes = certainFaults(scene, doubts, beside.narration, beside.lengths);
  const ofVersions = doubts.video || doubts.versions ? [] : faultsOfVersions(scene, beside);
  const ofMarks = puzzle === undefined ? [] : certainErrors({ ...parts, puzzle }, doubts);
  return [...beside.diagnostics, ...ofTimes, ...ofVersions, ...ofMarks];
}

function versionOf(scene: Scene, name: string): Version {
  const found = scene.versions.find((version) => version.name === name);
  if (found !== undefined) return found;
  const names = scene.versions.map((version) => version.name);
  if (names.length === 0)
    throw new UsageError(
      `--as ${name}: the scene has no versions; name one, as in versions: {${name}: {size: 1080x1920}}`,
    );
  const [nearest] = nearestWords(name, names);
  throw new UsageError(
    `the scene has no version ${name}${nearest === undefined ? `; its versions are ${names.join(', ')}` : `; did you mean ${nearest}?`}`,
  );
}

/** What is wrong with the times of the versions' boards, each at its own place. */
function faultsOfVersions(scene: TimedScene & Pick<Scene, 'versions'>, { narration, lengths }: Beside): Diagnostic[] {
  return scene.versions.flatMap((version) =>
    schedule(sceneAs(scene, version), narration, lengths).diagnostics.filter(
      ({ span }) => span.start >= version.span.start && span.end <= version.span.end,
    ),
  );
}

/** The text of the scene file.
 * @throws UsageError if there is none
 */
export function readSceneFile(path: string): string {
  return readText(path, 'scene file');
}

function inOrder(diagnostics: readonly Diagnostic[]): Diagnostic[] {
  return [...diagnostics].sort((a, b) => a.span.start - b.span.start);
}
