/**
 * `versions`: other frames for the same telling, such as an upright one.
 */
import { readBoard } from './board.ts';
import { readCamera } from './camera.ts';
import type { Faults } from './faults.ts';
import type { Fraction } from './fraction.ts';
import { wordOf } from './reading.ts';
import type { Scene, Version } from './scene.ts';
import { isOn, readSize } from './video.ts';
import { type Tree, valueOf } from './yaml-tree.ts';

/** The versions in their order. Faulty ones are reported and left out. */
export function readVersions(value: Tree | undefined, rate: Fraction | undefined, faults: Faults): Version[] {
  if (value?.kind !== 'map') return [];
  return value.entries.flatMap(({ key, value: map }) => {
    if (map.kind !== 'map') return [];
    const size = readSize(map, faults);
    if (size === undefined) return [];
    const board = readBoard(valueOf(map, 'board'), size, { faults, rate });
    return [
      {
        name: key.text,
        span: map.span,
        ...size,
        board,
        coordinates: isOn(wordOf(map, 'coordinates', ['on', 'off'])),
        said: isOn(wordOf(map, 'said', ['on', 'off'])),
        camera: readCamera(map, size, faults),
      },
    ];
  });
}

/** The scene on the frame of one of its versions; all else is as it was. */
export function sceneAs<S extends Pick<Scene, 'video'>>(
  scene: S,
  { width, height, board, camera, ...version }: Version,
): S {
  const { video } = scene;
  const coordinates = version.coordinates ?? video.coordinates;
  const said = version.said ?? video.said;
  return { ...scene, video: { ...video, width, height, board, camera, coordinates, said } };
}
