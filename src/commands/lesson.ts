/**
 * A lesson: a scene file with what lies beside it, read, proved and timed. What every verb starts from.
 */
import { existsSync, readFileSync, statSync } from 'node:fs';
import { dirname, resolve } from 'node:path';
import { checkScene } from '../check/check-scene.ts';
import type { CheckedScene } from '../check/verdict.ts';
import { MachineFailure } from '../output/machine-failure.ts';
import type { SceneFile } from '../report/report-of.ts';
import type { Diagnostic } from '../scene/diagnostic.ts';
import type { Fraction } from '../scene/fraction.ts';
import { nearestWords } from '../scene/nearest-word.ts';
import { readScene } from '../scene/read.ts';
import type { Located, Scene, Version } from '../scene/scene.ts';
import { sceneAs } from '../scene/versions.ts';
import { type Narration, readNarration } from '../timeline/narration.ts';
import { type Schedule, schedule } from '../timeline/schedule.ts';
import { BadCall } from './bad-call.ts';
import { readText } from './read-text.ts';

export type Lesson =
  | {
      readonly kind: 'lesson';
      readonly file: SceneFile;
      readonly scene: Scene;
      readonly checked: CheckedScene;
      readonly schedule: Schedule;
      /** Undefined where the scene names none. */
      readonly narration: Narration | undefined;
      /** Warnings; an error would have made it unusable. In order of place. */
      readonly diagnostics: readonly Diagnostic[];
    }
  | {
      readonly kind: 'unusable';
      readonly file: SceneFile;
      readonly diagnostics: readonly Diagnostic[];
      readonly solutions: 0 | 1 | 2;
    };

/**
 * Reads, proves and times the scene. `media`: whether footage and audio must be there, as for a render, or are asked for
 * their length if they are there, as for a check on another machine. `as`: the version whose frame is meant.
 * @throws BadCall where the scene file itself cannot be read, or has no such version
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
  if (read.scene === undefined) return unusable(read.diagnostics);
  const scene = options.as === undefined ? read.scene : sceneAs(read.scene, versionOf(read.scene, options.as));
  const beside = await readBeside(scene, dirname(resolve(path)), options.media);
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

/** The path of a file that the scene names, from where this process stands. */
export function pathBeside(scenePath: string, name: string): string {
  return resolve(dirname(resolve(scenePath)), name);
}

function versionOf(scene: Scene, name: string): Version {
  const found = scene.versions.find((version) => version.name === name);
  if (found !== undefined) return found;
  const names = scene.versions.map((version) => version.name);
  if (names.length === 0)
    throw new BadCall(
      `--as ${name}: the scene has no versions; name one, as in versions: {${name}: {size: 1080x1920}}`,
    );
  const [nearest] = nearestWords(name, names);
  throw new BadCall(
    `the scene has no version ${name}${nearest === undefined ? `; its versions are ${names.join(', ')}` : `; did you mean ${nearest}?`}`,
  );
}

/** What is wrong with the times of the boards of versions, each at its own place. */
function faultsOfVersions(scene: Scene, { narration, lengths }: Beside): Diagnostic[] {
  return scene.versions.flatMap((version) =>
    schedule(sceneAs(scene, version), narration, lengths).diagnostics.filter(
      ({ span }) => span.start >= version.span.start && span.end <= version.span.end,
    ),
  );
}

/** The text of the scene file.
 * @throws BadCall where there is none
 */
export function readSceneFile(path: string): string {
  return readText(path, 'scene file');
}

interface Beside {
  readonly narration: Narration | undefined;
  readonly lengths: { readonly footageSeconds?: Fraction; readonly audioSeconds?: Fraction };
  readonly diagnostics: readonly Diagnostic[];
}

async function readBeside(scene: Scene, folder: string, media: 'needed' | 'if there'): Promise<Beside> {
  const diagnostics: Diagnostic[] = [];
  const { video } = scene;
  const narration = video.narration === undefined ? undefined : readNarrationFile(video.narration, folder, diagnostics);
  const lengthOf = async (file: Located<string> | undefined, what: string): Promise<Fraction | undefined> => {
    if (file === undefined) return undefined;
    const path = resolve(folder, file.value);
    if (!existsSync(path)) {
      const severity = media === 'needed' ? 'error' : 'warning';
      diagnostics.push({
        code: 'file-not-found',
        severity,
        span: file.span,
        message: `there is no ${what} ${file.value} beside the scene`,
      });
      return undefined;
    }
    const told = await askLength(path, media);
    if ('seconds' in told) return told.seconds;
    diagnostics.push({
      code: 'media-not-read',
      severity: media === 'needed' ? 'error' : 'warning',
      span: file.span,
      message: told.message,
    });
    return undefined;
  };
  const footageSeconds = await lengthOf(video.footage?.file, 'footage');
  const audioSeconds = await lengthOf(video.audio, 'audio');
  const lengths = {
    ...(footageSeconds === undefined ? {} : { footageSeconds }),
    ...(audioSeconds === undefined ? {} : { audioSeconds }),
  };
  return { narration, lengths, diagnostics };
}

/** How long the file lasts, or why that is not known. Without ffprobe a check goes on; a render cannot. */
async function askLength(
  path: string,
  media: 'needed' | 'if there',
): Promise<{ readonly seconds: Fraction | undefined } | { readonly message: string }> {
  try {
    const { probeMedia } = await import('../output/media.ts'); // only where a file is asked for: a check starts fast
    const probed = await probeMedia(path);
    return probed.kind === 'media' ? { seconds: probed.durationSeconds } : { message: probed.message };
  } catch (failure) {
    if (media === 'needed' || !(failure instanceof MachineFailure)) throw failure;
    return { message: `the length of ${path} is not known here: ${failure.message}` };
  }
}

function readNarrationFile(file: Located<string>, folder: string, diagnostics: Diagnostic[]): Narration | undefined {
  const path = resolve(folder, file.value);
  if (!existsSync(path)) {
    diagnostics.push({
      code: 'file-not-found',
      severity: 'error',
      span: file.span,
      message: `there is no narration ${file.value} beside the scene`,
    });
    return undefined;
  }
  if (statSync(path).isDirectory()) {
    const message = `${file.value} is a folder; name a narration (.vtt, .srt, .json)`;
    diagnostics.push({ code: 'file-not-found', severity: 'error', span: file.span, message });
    return undefined;
  }
  const { narration, faults } = readNarration(readFileSync(path, 'utf8'), file.value);
  for (const fault of faults) {
    const message = `${file.value}:${fault.line}: ${fault.message}`;
    diagnostics.push({ code: 'broken-cue', severity: 'warning', span: file.span, message });
  }
  return narration;
}

function inOrder(diagnostics: readonly Diagnostic[]): Diagnostic[] {
  return [...diagnostics].sort((a, b) => a.span.start - b.span.start);
}
