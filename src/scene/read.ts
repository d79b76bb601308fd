/**
 * From the text of a scene file to a typed scene, with all the faults of the file.
 */
import type { Diagnostic, Span } from './diagnostic.ts';
import { type Doubts, doubtsOf } from './doubts.ts';
import type { Faults } from './faults.ts';
import { readGroups } from './groups.ts';
import { sceneDefinition } from './language.ts';
import { gridOfPuzzle, readPuzzle } from './puzzle.ts';
import { locatedText, readNumber, wordOf } from './reading.ts';
import { checkReferences, readIds } from './references.ts';
import type { Advice, Puzzle, Scene } from './scene.ts';
import { checkShape } from './shape.ts';
import { readStep } from './step.ts';
import { readVersions } from './versions.ts';
import { readRate, readVideo } from './video.ts';
import { readYamlFile } from './yaml-file.ts';
import { keyOf, type MapNode, textOf, valueOf } from './yaml-tree.ts';

export interface ReadScene {
  /** Undefined where there is an error: a scene is usable only as a whole. */
  readonly scene: Scene | undefined;
  /** Where there is an error: what could be read all the same. Undefined where YAML itself cannot be read to its end. */
  readonly rough: RoughScene | undefined;
  /** All faults of the file by place, warnings among them. */
  readonly diagnostics: readonly Diagnostic[];
}

/** A scene with errors, for other stages to find their own. */
export interface RoughScene {
  readonly parts: Omit<Scene, 'puzzle'>;
  /** Undefined where it could not be read. */
  readonly puzzle: Puzzle | undefined;
  readonly puzzleSpan: Span;
  readonly doubts: Doubts;
}

/** Reads a scene. `text` is the file's content; a byte order mark at its start is passed over. */
export function readScene(text: string): ReadScene {
  const { value, rough, diagnostics } = readYamlFile(text, 'a scene begins with `proofreel: 1`', (tree, faults) => {
    const meant = checkShape(sceneDefinition, tree, faults);
    return meant.kind === 'map' ? { ...partsOf(meant, faults), written: tree, meant } : undefined;
  });
  const whole = value?.puzzle === undefined ? undefined : { ...value.parts, puzzle: value.puzzle };
  if (whole !== undefined || rough === undefined) return { scene: whole, rough: undefined, diagnostics };
  const { parts, puzzle, written, meant } = rough;
  const puzzleSpan = (keyOf(meant, 'puzzle') ?? meant).span;
  const doubts = doubtsOf(written, meant, diagnostics);
  return { scene: undefined, rough: { parts, puzzle, puzzleSpan, doubts }, diagnostics };
}

function partsOf(file: MapNode, faults: Faults): Pick<RoughScene, 'parts' | 'puzzle'> {
  const [puzzleMap, videoMap] = [mapOf(file, 'puzzle'), mapOf(file, 'video')];
  const grid = gridOfPuzzle(puzzleMap);
  const puzzle = puzzleMap === undefined ? undefined : readPuzzle(puzzleMap, grid, faults);
  const rate = readRate(videoMap, faults);
  const video = readVideo(videoMap, rate, faults);
  const versions = readVersions(valueOf(file, 'versions'), rate, faults);
  const groups = readGroups(valueOf(file, 'groups'), faults);
  const list = valueOf(file, 'steps');
  const maps = list?.kind === 'list' ? list.items.flatMap((item) => (item.kind === 'map' ? [item] : [])) : [];
  const stepIds = readIds(maps, faults);
  const steps = maps.map((map, index) => readStep(map, index, { faults, grid, rate, groups, stepIds }));
  checkReferences(steps, faults);
  const parts = {
    title: textOf(file, 'title')?.text,
    video,
    versions,
    look: locatedText(file, 'look'),
    advice: readAdvice(mapOf(file, 'advice'), faults),
    groups: [...groups].map(([name, colour]) => ({ name, colour })),
    steps,
  };
  return { parts, puzzle };
}

function readAdvice(map: MapNode | undefined, faults: Faults): Advice {
  const cases = map === undefined ? undefined : textOf(map, 'cases');
  const most =
    cases === undefined ? undefined : readNumber(cases, { what: '"cases"', least: 0, most: 1_000_000, faults });
  return {
    simpler: wordOf(map, 'simpler', ['on', 'off']) !== 'off',
    open: wordOf(map, 'open', ['on', 'off']) !== 'off',
    mostCases: most ?? 12,
  };
}

function mapOf(file: MapNode, key: string): MapNode | undefined {
  const value = valueOf(file, key);
  return value?.kind === 'map' ? value : undefined;
}
