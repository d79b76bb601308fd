/**
 * The edges of a patch of cells: its outer edges and those of its holes.
 */
import { columnOf, rowOf } from '../grid/geometry.ts';
import type { Cell, Grid } from '../grid/grid.ts';
import type { Point } from '../scene/scene.ts';
import { type Path, roundCorners } from './path.ts';

/** Closed lines at a distance within the patch's edge, corners rounded, each beginning at its first cell's top left. */
export function edgesOf(grid: Grid, cells: readonly Cell[], inset: number, radius: number): Path[] {
  const inside = new Set(cells.map((cell) => `${columnOf(grid, cell) - 1} ${rowOf(grid, cell) - 1}`));
  const has = (x: number, y: number) => inside.has(`${x} ${y}`);
  return loopsOf(grid, cells, has).map((loop) => roundCorners(insetLoop(loop, inset), radius));
}

/**
 * The edge as loops of corners, the patch always on the right hand. Where two cells touch only at a corner, a loop
 * turns to stay with its own cell.
 */
function loopsOf(grid: Grid, cells: readonly Cell[], has: (x: number, y: number) => boolean): Point[][] {
  const sides = new Map<string, readonly [Point, Point]>();
  for (const cell of [...cells].sort((a, b) => a - b)) {
    const [x, y] = [columnOf(grid, cell) - 1, rowOf(grid, cell) - 1];
    const add = (from: Point, to: Point) =>
      sides.set(`${from.join(' ')} ${to[0] - from[0]} ${to[1] - from[1]}`, [from, to]);
    if (!has(x, y - 1)) add([x, y], [x + 1, y]);
    if (!has(x + 1, y)) add([x + 1, y], [x + 1, y + 1]);
    if (!has(x, y + 1)) add([x + 1, y + 1], [x, y + 1]);
    if (!has(x - 1, y)) add([x, y + 1], [x, y]);
  }
  const loops: Point[][] = [];
  for (const key of sides.keys()) {
    const loop: Point[] = [];
    let side = sides.get(key);
    sides.delete(key);
    while (side !== undefined) {
      const [from, to] = side;
      loop.push(from);
      const [dx, dy] = [to[0] - from[0], to[1] - from[1]];
      // To the right first: that keeps to the same cell. Then straight on, then to the left.
      const turns: readonly Point[] = [
        [-dy, dx],
        [dx, dy],
        [dy, -dx],
      ];
      const next = turns.map(([x, y]) => `${to.join(' ')} ${x} ${y}`).find((name) => sides.has(name));
      side = next === undefined ? undefined : sides.get(next);
      if (next !== undefined) sides.delete(next);
    }
    loops.push(cornersOf(loop));
  }
  return loops;
}

/** Without the points at which the line continues straight. */
function cornersOf(loop: readonly Point[]): Point[] {
  return loop.filter((point, index) => {
    const before = loop[(index + loop.length - 1) % loop.length]!;
    const after = loop[(index + 1) % loop.length]!;
    return (point[0] - before[0]) * (after[1] - point[1]) !== (point[1] - before[1]) * (after[0] - point[0]);
  });
}

/** Every side moved to its right, into the patch. */
function insetLoop(loop: readonly Point[], inset: number): Path {
  const points = loop.map((point, index): Point => {
    const before = loop[(index + loop.length - 1) % loop.length]!;
    const after = loop[(index + 1) % loop.length]!;
    const [inX, inY] = [Math.sign(point[0] - before[0]), Math.sign(point[1] - before[1])];
    const [outX, outY] = [Math.sign(after[0] - point[0]), Math.sign(after[1] - point[1])];
    return [point[0] - (inY + outY) * inset, point[1] + (inX + outX) * inset];
  });
  return { points, closed: true };
}
