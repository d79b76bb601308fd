/**
 * `camera`: a place on the frame that is kept free for the face camera.
 */
import type { Faults } from './faults.ts';
import type { FrameSize } from './frame.ts';
import type { CameraMap } from './language-video.ts';
import type { FramePart } from './scene.ts';

/** The place after `camera`; undefined if there is none, or after a report. */
export function readCamera(
  map: CameraMap | undefined,
  needs: { readonly frame: FrameSize; readonly faults: Faults },
): FramePart | undefined {
  if (map === undefined) return undefined;
  const { values } = map;
  const [left, top] = [values.left?.read(needs), values.top?.read(needs)];
  const [width, height] = [values.width?.read(needs), values.height?.read(needs)];
  if (left === undefined || top === undefined || width === undefined || height === undefined) return undefined;
  const { frame, faults } = needs;
  if (left + width > frame.width || top + height > frame.height) {
    const message = `this place extends beyond the frame of ${frame.width}x${frame.height}; the farthest that ${width}x${height} goes is left: ${frame.width - width}, top: ${frame.height - height}`;
    faults.error('out-of-range', map.span, message);
    return undefined;
  }
  // More would leave too little room for the board and the words.
  if (3 * width * height <= frame.width * frame.height) return { left, top, width, height };
  const message = `${width}x${height} is more than a third of the frame of ${frame.width}x${frame.height}, which leaves the board no room; make it smaller`;
  faults.error('out-of-range', map.span, message);
  return undefined;
}
