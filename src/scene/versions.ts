/**
 * `versions`: other frames for the same lesson, such as an upright one.
 */
import { readBoard } from './board.ts';
import { readCamera } from './camera.ts';
import type { Faults } from './faults.ts';
import type { Fraction } from './fraction.ts';
import type { VersionEntries } from './language.ts';
import type { Scene, Version } from './scene.ts';

/** The versions in their order. Faulty ones are reported and left out. */
export function readVersions(
  written: VersionEntries | undefined,
  rate: Fraction | undefined,
  faults: Faults,
): readonly Version[] {
  return (written?.entries ?? []).flatMap(({ key, value: map }): readonly Version[] => {
    const frame = map?.values.size?.read({ faults });
    if (map === undefined || frame === undefined) return [];
    const { values, span } = map;
    const version = {
      name: key.text,
      span,
      ...frame,
      board: readBoard(values.board, { faults, rate, frame }),
      coordinates: values.coordinates?.read(),
      subtitles: values.subtitles?.read(),
      camera: readCamera(values.camera, { frame, faults }),
    };
    return [version];
  });
}

/** The scene on the frame of one of its versions; everything else is unchanged. */
export function sceneAs<S extends Pick<Scene, 'video'>>(
  scene: S,
  { width, height, board, camera, ...version }: Version,
): S {
  const { video } = scene;
  const coordinates = version.coordinates ?? video.coordinates;
  const subtitles = version.subtitles ?? video.subtitles;
  return { ...scene, video: { ...video, width, height, board, camera, coordinates, subtitles } };
}
