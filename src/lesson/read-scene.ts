/**
 * Reading the text of a scene, with the marks of its language.
 */
import { beatReadings } from '../marks/marks.ts';
import { beatDefinition } from '../scene/beats.ts';
import { type ReadScene, readSceneWith } from '../scene/read.ts';
import { sceneSchemaWith } from '../scene/schema.ts';

/** One item of `show`. */
export const beat = beatDefinition(beatReadings);

/** Reads a scene. `text` is the file's content; a byte order mark at its start is skipped. */
export function readScene(text: string): ReadScene {
  return readSceneWith(beat, text);
}

/** A schema of JSON Schema draft 2020-12 for scene files. */
export function sceneSchema(): object {
  return sceneSchemaWith(beat);
}
