/**
 * `versions`: other frames for the same telling, such as an upright one.
 */
import { readBoard } from './board.ts';
import type { Faults } from './faults.ts';
import type { Fraction } from './fraction.ts';
import type { Scene, Version } from './scene.ts';
import { readSize } from './video.ts';
import { type Tree, valueOf } from './yaml-tree.ts';

/** The versions in their order. Faulty ones are reported and left out. */
export function readVersions(value: Tree | undefined, rate: Fraction | undefined, faults: Faults): Version[] {
  if (value?.kind !== 'map') return [];
  return value.entries.flatMap(({ key, value: map }) => {
    if (map.kind !== 'map') return [];
    const size = readSize(map, faults);
    if (size === undefined) return [];
    const board = readBoard(valueOf(map, 'board'), size, { faults, rate });
    return [{ name: key.text, span: map.span, ...size, board }];
  });
}

/** The scene on the frame of one of its versions; all else is as it was. */
export function sceneAs(scene: Scene, { width, height, board }: Version): Scene {
  return { ...scene, video: { ...scene.video, width, height, board } };
}
