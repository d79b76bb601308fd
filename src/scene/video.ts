/**
 * `video`: the frame, its rate, what is under the marks, and where the board is on it.
 */

import { readBoard } from './board.ts';
import { readCamera } from './camera.ts';
import type { Faults } from './faults.ts';
import { type Fraction, fraction } from './fraction.ts';
import type { VideoMap } from './language-video.ts';
import { type Context, located } from './reading.ts';
import type { Video } from './scene.ts';

const defaultFrame = { width: 1920, height: 1080 };

/** For a scene that does not describe its frames. */
const defaultVideo: Video = {
  ...defaultFrame,
  rate: fraction(30n),
  length: undefined,
  timecode: undefined,
  board: [],
  small: '123',
  draw: 'board',
  candidates: 'all',
  coordinates: false,
  subtitles: false,
  camera: undefined,
  narration: undefined,
  audio: undefined,
  footage: undefined,
};

/**
 * The video with everything that the scene leaves out filled in. A faulty value is reported and treated as left out.
 * `rate` is undefined if it could not be read.
 */
export function readVideo(map: VideoMap | undefined, rate: Fraction | undefined, faults: Faults): Video {
  if (map === undefined) return defaultVideo;
  const { values } = map;
  const context = { faults, rate };
  const frame = values.size?.read({ faults }) ?? defaultFrame;
  const board = readBoard(values.board, { ...context, frame });
  const footage = readFootage(values.footage, context);
  // Over a recording only what it does not show itself; without one, everything.
  const draw = board.length > 0 || footage !== undefined ? 'overlay' : 'board';
  return {
    ...frame,
    rate: rate ?? defaultVideo.rate,
    length: values.length?.read(context),
    timecode: values.timecode?.read(context),
    board,
    small: values.small?.read() ?? defaultVideo.small,
    draw: values.draw?.read() ?? draw,
    candidates: values.candidates?.read() ?? defaultVideo.candidates,
    coordinates: values.coordinates?.read() ?? defaultVideo.coordinates,
    subtitles: values.subtitles?.read() ?? defaultVideo.subtitles,
    camera: readCamera(values.camera, { frame, faults }),
    narration: located(values.narration),
    audio: located(values.audio),
    footage,
  };
}

/** Frames a second, 30 if the scene does not say; undefined after a report. */
export function rateOf(map: VideoMap | undefined, faults: Faults): Fraction | undefined {
  const rate = map?.values.rate;
  if (rate !== undefined) return rate.read({ faults });
  return map?.misfits.has('rate') === true ? undefined : defaultVideo.rate;
}

function readFootage(
  written: VideoMap['values']['footage'],
  context: Pick<Context, 'faults' | 'rate'>,
): Video['footage'] {
  if (written === undefined) return undefined;
  if (written.kind === 'text') return { file: { value: written.text, span: written.span }, start: undefined };
  const file = located(written.values.file);
  const start = written.values.start?.read(context);
  return file === undefined ? undefined : { file, start };
}
