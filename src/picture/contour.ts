/**
 * Outlines of a field: the lines on which it has one value, found square by square (marching squares: W. Lorensen and
 * H. Cline, Marching Cubes, 1987, in two dimensions; from memory).
 */
import type { Point } from '../scene/scene.ts';
import type { Box } from './board-place.ts';
import type { Path } from './path.ts';

/** Closed outlines around where the field is below `level`. The field must be above it along the box's edge. */
export function contourAt(field: (point: Point) => number, level: number, box: Box, step: number): Path[] {
  const columns = Math.ceil((box.right - box.left) / step);
  const rows = Math.ceil((box.bottom - box.top) / step);
  const at = (column: number, row: number): Point => [box.left + column * step, box.top + row * step];
  const values = Array.from(
    { length: (columns + 1) * (rows + 1) },
    (_, index) => field(at(index % (columns + 1), Math.floor(index / (columns + 1)))) - level,
  );
  const value = (column: number, row: number) => values[row * (columns + 1) + column]!;
  // A crossing is named by the edge of the squares that it lies on: `x y h` (to the right of x, y) or `x y v` (below it).
  const next = new Map<string, string>();
  const place = new Map<string, Point>();
  const cross = (column: number, row: number, way: 'h' | 'v'): string => {
    const name = `${column} ${row} ${way}`;
    const [a, b] = [value(column, row), way === 'h' ? value(column + 1, row) : value(column, row + 1)];
    const part = a / (a - b);
    const [x, y] = at(column, row);
    place.set(name, way === 'h' ? [x + part * step, y] : [x, y + part * step]);
    return name;
  };
  for (let row = 0; row < rows; row++) {
    for (let column = 0; column < columns; column++) {
      const corners = [value(column, row), value(column + 1, row), value(column + 1, row + 1), value(column, row + 1)];
      const edges = [
        () => cross(column, row, 'h'),
        () => cross(column + 1, row, 'v'),
        () => cross(column, row + 1, 'h'),
        () => cross(column, row, 'v'),
      ];
      // Walking round the square, each step from outside to inside begins a piece that ends at the next step out.
      for (let edge = 0; edge < 4; edge++) {
        if (!(corners[edge]! >= 0 && corners[(edge + 1) % 4]! < 0)) continue;
        let out = (edge + 1) % 4;
        while (corners[(out + 1) % 4]! < 0) out = (out + 1) % 4;
        next.set(edges[out]!(), edges[edge]!());
      }
    }
  }
  return followed(next, place);
}

function followed(next: Map<string, string>, place: ReadonlyMap<string, Point>): Path[] {
  const outlines: Path[] = [];
  for (const start of next.keys()) {
    const points: Point[] = [];
    let current: string | undefined = start;
    while (current !== undefined && next.has(current)) {
      points.push(place.get(current)!);
      const following: string | undefined = next.get(current);
      next.delete(current);
      current = following;
    }
    if (points.length > 2) outlines.push({ points, closed: true });
  }
  return outlines;
}
