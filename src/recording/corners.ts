/**
 * Where a board lies on a picture: the four corners of the square of which its cells are equal parts. That is the middle
 * of a frame line drawn on it, the inner edge of a heavy frame around the cells, and where straight sides would meet if
 * its corners are rounded.
 */
import type { Point } from '../scene/scene.ts';
import type { Homography } from './homography.ts';
import { homographyOf, mapped } from './homography.ts';

/** Clockwise from the top left, in pixels of the picture as it is shown. */
export type Corners = readonly [topLeft: Point, topRight: Point, bottomRight: Point, bottomLeft: Point];

/** The corners of an upright rectangle. */
export function uprightCorners(left: number, top: number, width: number, height: number): Corners {
  const [right, bottom] = [left + width, top + height];
  return [
    [left, top],
    [right, top],
    [right, bottom],
    [left, bottom],
  ];
}

/** From points of the board, in cells (`[0, 0]` to `[size, size]`), to points of the picture. */
export function boardToPicture(corners: Corners, size: number): Homography {
  return homographyOf(uprightCorners(0, 0, size, size).map((from, index) => ({ from, to: corners[index]! })));
}

/** Where the corners of a board of `size` cells a row come to lie. */
export function cornersUnder(map: Homography, size: number): Corners {
  const [a, b, c, d] = uprightCorners(0, 0, size, size);
  return [mapped(map, a), mapped(map, b), mapped(map, c), mapped(map, d)];
}

/** The mean length of the four sides, in pixels. */
export function meanSide(corners: Corners): number {
  return corners.reduce((sum, corner, index) => sum + distance(corner, corners[(index + 1) % 4]!), 0) / 4;
}

/** How far the corners lie from those of the upright rectangle that is most like them, in parts of a side. */
export function leanOf(corners: Corners): number {
  const [a, b, c, d] = corners;
  const [left, right] = [(a[0] + d[0]) / 2, (b[0] + c[0]) / 2];
  const [top, bottom] = [(a[1] + b[1]) / 2, (c[1] + d[1]) / 2];
  return furthestApart(corners, uprightCorners(left, top, right - left, bottom - top)) / meanSide(corners);
}

/** How far the corner lies that is furthest from its counterpart, in pixels. */
export function furthestApart(one: Corners, other: Corners): number {
  return Math.max(...one.map((corner, index) => distance(corner, other[index]!)));
}

export function distance([x, y]: Point, [otherX, otherY]: Point): number {
  return Math.hypot(otherX - x, otherY - y);
}
