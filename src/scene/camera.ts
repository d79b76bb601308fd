/**
 * `camera`: a place on the frame that is left free for the face camera.
 */
import type { Faults } from './faults.ts';
import { readNumber } from './reading.ts';
import type { FramePart } from './scene.ts';
import { type MapNode, textOf, valueOf } from './yaml-tree.ts';

interface Size {
  readonly width: number;
  readonly height: number;
}

/** The place after `camera`; undefined where there is none, or after a report. */
export function readCamera(map: MapNode, frame: Size, faults: Faults): FramePart | undefined {
  const value = valueOf(map, 'camera');
  if (value?.kind !== 'map') return undefined;
  const read = (key: 'left' | 'top' | 'width' | 'height', least: number, most: number): number | undefined => {
    const node = textOf(value, key);
    return node === undefined ? undefined : readNumber(node, { what: `"${key}"`, least, most, faults });
  };
  const [left, top] = [read('left', 0, frame.width), read('top', 0, frame.height)];
  const [width, height] = [read('width', 16, frame.width), read('height', 16, frame.height)];
  if (left === undefined || top === undefined || width === undefined || height === undefined) return undefined;
  if (left + width > frame.width || top + height > frame.height) {
    const message = `this place stands out over the frame of ${frame.width}x${frame.height}; the farthest that ${width}x${height} goes is left: ${frame.width - width}, top: ${frame.height - height}`;
    faults.error('out-of-range', value.span, message);
    return undefined;
  }
  // More would leave the board and the words no place worth looking at.
  if (3 * width * height <= frame.width * frame.height) return { left, top, width, height };
  const message = `${width}x${height} is more than a third of the frame of ${frame.width}x${frame.height}, which leaves the board no room; make it smaller`;
  faults.error('out-of-range', value.span, message);
  return undefined;
}
