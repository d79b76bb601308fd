/**
 * Stretches of a recording as the places of `video.board`: in pixels of a scene's frame, at times of its video.
 */
import type { BoardShape, Point } from '../scene/scene.ts';
import { type Corners, furthestApart, meanSide, uprightCorners } from './corners.ts';
import type { Stretch } from './stretches.ts';

export interface ScenePlace {
  /** From the video's start. */
  readonly seconds: number;
  readonly shape: BoardShape;
}

/** How the recording lies on the scene's frame, and when it begins there. */
export interface OnScene {
  /** The frame's pixels, from those of the recording: `left + x * scaleX`. */
  readonly left: number;
  readonly top: number;
  readonly scaleX: number;
  readonly scaleY: number;
  /** The moment of the recording that falls on the video's first frame. */
  readonly start: number;
  /** Frames a second. */
  readonly rate: number;
  /** Frames of the video; places that are later are left out. */
  readonly frameCount: number;
  /** Cells in a row. */
  readonly size: number;
}

/** Parts of a cell by which a place may be off, so that one written with a side will do for four corners. */
const squareTolerance = 0.02;

/** Parts of a cell that a board must move before it gets another place. */
const leastStep = 0.01;

/** In order of time, the first at 0; of several on one frame the last. */
export function scenePlaces(stretches: readonly Stretch[], on: OnScene): readonly ScenePlace[] {
  const places: { frame: number; seconds: number; corners: Corners | undefined }[] = [];
  const put = (recorded: number, corners: Corners | undefined, isStep: boolean): void => {
    const seconds = Math.max(0, recorded - on.start);
    const frame = Math.floor(seconds * on.rate + 0.5);
    if (frame >= on.frameCount) return;
    const last = places.at(-1);
    if (last !== undefined && isStep && isNear(last.corners, corners, leastStep / on.size)) return;
    // What lies before the first frame is over when the video begins.
    if (last?.frame === frame) places.pop();
    places.push({ frame, seconds, corners });
  };
  for (const stretch of stretches) {
    switch (stretch.kind) {
      case 'hidden':
        put(stretch.from, undefined, false);
        break;
      case 'still':
        put(stretch.from, onFrame(stretch.corners, on), false);
        break;
      case 'moving':
        for (const { seconds, corners } of stretch.path) put(seconds, onFrame(corners, on), true);
        break;
      default:
        stretch satisfies never;
    }
  }
  return places.map(({ seconds, corners }) => ({ seconds, shape: shapeOf(corners, on.size) }));
}

function onFrame(corners: Corners, { left, top, scaleX, scaleY }: OnScene): Corners {
  const [a, b, c, d] = corners.map(([x, y]): Point => [left + x * scaleX, top + y * scaleY]);
  return [a!, b!, c!, d!];
}

function shapeOf(corners: Corners | undefined, size: number): BoardShape {
  if (corners === undefined) return { kind: 'hidden' };
  const side = meanSide(corners);
  const middle = [0, 1].map((axis) => corners.reduce((sum, corner) => sum + corner[axis]!, 0) / 4);
  const [left, top] = [middle[0]! - side / 2, middle[1]! - side / 2];
  const square = uprightCorners(left, top, side, side);
  if (furthestApart(square, corners) > (squareTolerance * side) / size) return { kind: 'corners', corners };
  return { kind: 'square', left, top, side };
}

function isNear(one: Corners | undefined, other: Corners | undefined, part: number): boolean {
  if (one === undefined || other === undefined) return one === other;
  return furthestApart(one, other) <= part * meanSide(other);
}
