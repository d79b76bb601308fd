/**
 * From the text of a scene file to a typed scene, with all the faults of the file.
 */
import type { BeatDefinition } from './beats.ts';
import type { Diagnostic, Span } from './diagnostic.ts';
import { type Doubts, doubtsOf } from './doubts.ts';
import type { Faults } from './faults.ts';
import { readGroups } from './groups.ts';
import { type AdviceMap, type SceneMap, sceneDefinition } from './language.ts';
import { gridOfPuzzle, readPuzzle } from './puzzle.ts';
import { located } from './reading.ts';
import { checkReferences, readIds } from './references.ts';
import type { Advice, Puzzle, Scene } from './scene.ts';
import { readShape } from './shape.ts';
import { readStep } from './step.ts';
import { readVersions } from './versions.ts';
import { rateOf, readVideo } from './video.ts';
import { readYamlFile } from './yaml-file.ts';

export interface ReadScene {
  /** Undefined if there is an error: a scene is usable only as a whole. */
  readonly scene: Scene | undefined;
  /** If there is an error: what could still be read. Undefined if YAML itself cannot be read to its end. */
  readonly rough: RoughScene | undefined;
  /** All faults of the file by place, warnings among them. */
  readonly diagnostics: readonly Diagnostic[];
}

/** A scene with errors, for other stages to find their own. */
export interface RoughScene {
  readonly parts: Omit<Scene, 'puzzle'>;
  /** Undefined if it could not be read. */
  readonly puzzle: Puzzle | undefined;
  readonly puzzleSpan: Span;
  readonly doubts: Doubts;
}

/**
 * Reads a scene, whose steps show these beats. `text` is the file's content; a byte order mark at its start is ignored.
 */
export function readSceneWith(beat: BeatDefinition, text: string): ReadScene {
  const { value, rough, diagnostics } = readYamlFile(text, 'a scene begins with `proofreel: 1`', (tree, faults) => {
    const file = readShape(sceneDefinition(beat), tree, faults);
    return file === undefined ? undefined : { ...partsOf(file, faults), written: tree, meant: file };
  });
  const whole = value?.puzzle === undefined ? undefined : { ...value.parts, puzzle: value.puzzle };
  if (whole !== undefined || rough === undefined) return { scene: whole, rough: undefined, diagnostics };
  const { parts, puzzle, written, meant } = rough;
  const puzzleSpan = (meant.keys.puzzle ?? meant).span;
  const doubts = doubtsOf(written, meant, diagnostics);
  return { scene: undefined, rough: { parts, puzzle, puzzleSpan, doubts }, diagnostics };
}

function partsOf(file: SceneMap, faults: Faults): Pick<RoughScene, 'parts' | 'puzzle'> {
  const { values } = file;
  const grid = gridOfPuzzle(values.puzzle);
  const puzzle = values.puzzle === undefined ? undefined : readPuzzle(values.puzzle, grid, faults);
  const rate = rateOf(values.video, faults);
  const video = readVideo(values.video, rate, faults);
  const versions = readVersions(values.versions, rate, faults);
  const groups = readGroups(values.groups, faults);
  const maps = (values.steps?.items ?? []).flatMap((step) => step ?? []);
  const stepIds = readIds(maps, faults);
  const steps = maps.map((map, index) => readStep(map, index, { faults, grid, rate, groups, stepIds }));
  checkReferences(steps, faults);
  const parts = {
    title: values.title?.text,
    video,
    versions,
    look: located(values.look),
    advice: readAdvice(values.advice, faults),
    groups: [...groups].map(([name, colour]) => ({ name, colour })),
    steps,
  };
  return { parts, puzzle };
}

function readAdvice(map: AdviceMap | undefined, faults: Faults): Advice {
  return {
    simpler: map?.values.simpler?.read() ?? true,
    open: map?.values.open?.read() ?? true,
    mostCases: map?.values.cases?.read({ faults }) ?? 12,
  };
}
