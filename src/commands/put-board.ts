/**
 * A board that was found, put into a scene as its `video.board`.
 */
import { writeFile } from 'node:fs/promises';
import { basename, resolve } from 'node:path';
import { edited } from '../check/scene-text.ts';
import { Bug } from '../grid/bug.ts';
import { readScene } from '../lesson/read-scene.ts';
import { schedule } from '../lesson/schedule.ts';
import { fitted } from '../output/footage/footage.ts';
import { writeAtomically } from '../output/machine/atomic-write.ts';
import { pathFault } from '../output/machine/output-path.ts';
import type { Recording } from '../output/recordings/recording.ts';
import type { Location } from '../recording/locate-board.ts';
import { type ScenePlace, scenePlaces } from '../recording/scene-places.ts';
import { boardEdit } from '../scene/board-text.ts';
import { fractionOf, toNumber } from '../scene/fraction.ts';
import { printDiagnostic } from '../scene/locate.ts';
import type { Scene } from '../scene/scene.ts';
import { footageStart } from '../timeline/length.ts';
import { printSeconds } from '../timeline/seconds.ts';
import { UsageError } from '../verbs/usage-error.ts';
import { pathBeside, readBeside } from './beside-scene.ts';
import { readSceneFile } from './lesson.ts';
import type { Terminal } from './terminal.ts';

export interface SceneToWrite {
  readonly path: string;
  readonly text: string;
  readonly scene: Scene;
}

/**
 * The scene, and whether it can be written; undefined where it has faults, which then have been said with their places.
 * @throws UsageError where there is no such file, or it cannot be written
 */
export async function sceneToWrite(path: string, terminal: Terminal): Promise<SceneToWrite | undefined> {
  const text = readSceneFile(path);
  const fault = pathFault(resolve(path));
  if (fault !== undefined) throw new UsageError(fault);
  const { scene, diagnostics } = readScene(text);
  for (const each of diagnostics) terminal.err(`${printDiagnostic(path, text, each)}\n`);
  return scene === undefined ? undefined : { path, text, scene };
}

export async function putBoard(
  { path, text, scene }: SceneToWrite,
  recording: Recording,
  { stretches, size }: Extract<Location, { readonly kind: 'found' }>,
  terminal: Terminal,
): Promise<void> {
  const { video } = scene;
  const { width, height } = recording.picture;
  const fit = fitted(recording.picture, video.width, video.height);
  const rate = toNumber(video.rate);
  const beside = await readBeside(scene, resolve(path, '..'), 'if there');
  const { frameCount } = schedule(scene, beside.narration, beside.lengths).schedule;
  const places = scenePlaces(stretches, {
    left: fit.left,
    top: fit.top,
    scaleX: fit.width / width,
    scaleY: fit.height / height,
    start: toNumber(footageStart(scene)),
    rate,
    frameCount,
    size,
  });
  const edit = boardEdit(
    text,
    places.map(({ seconds, shape }) => ({ shape, at: places.length === 1 ? undefined : timeOf(seconds) })),
  );
  if (edit === undefined)
    throw new UsageError(`${path}: video.board stands behind an alias; write it out there, and try again`);
  const written = edited(text, [edit]);
  const again = readScene(written);
  if (again.scene === undefined) throw new Bug('a scene can be read after its board was written');
  await writeAtomically(resolve(path), (temp) => writeFile(temp, written));
  terminal.err(`${path}: video.board written, ${summaryOf(places)}\n`);
  for (const note of notesOn(path, scene, recording)) terminal.err(`proofreel: ${note}\n`);
}

/** As the language writes it; to a thousandth of a second, which names a frame at any rate. */
function timeOf(seconds: number): string {
  return printSeconds(fractionOf(Math.round(seconds * 1000) / 1000), 3);
}

function summaryOf(places: readonly ScenePlace[]): string {
  const hidden = places.filter(({ shape }) => shape.kind === 'hidden').length;
  const count = `${places.length} ${places.length === 1 ? 'place' : 'places'}`;
  return hidden === 0 ? count : `${count}, hidden in ${hidden} of them`;
}

function notesOn(path: string, { video }: Scene, { file, picture }: Recording): readonly string[] {
  const { footage, width, height } = video;
  const isItsOwn = footage !== undefined && pathBeside(path, footage.file.value) === file;
  const isItsShape = Math.abs(picture.width * height - picture.height * width) < Math.max(width, height) * 2;
  return [
    ...(footage === undefined
      ? [`the scene names no footage; for an .mp4 over it add \`footage: ${basename(file)}\``]
      : []),
    ...(footage !== undefined && !isItsOwn ? [`the scene's footage is ${footage.file.value}, another file`] : []),
    ...(isItsShape
      ? []
      : [
          `the recording is ${picture.width}x${picture.height}, the scene's frame ${width}x${height}; places are those within its bars`,
        ]),
  ];
}
