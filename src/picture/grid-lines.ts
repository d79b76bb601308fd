/**
 * The board itself: its ground, the lines between cells and the heavier ones between boxes (or regions instead), and
 * the diagonals where they are houses. The outer edge of the outer line is the board's outer square, to the pixel.
 */
import type { Grid } from '../grid/grid.ts';
import type { Point } from '../scene/scene.ts';
import { line, type Path, polygon } from './path.ts';
import { fillPaths, strokePaths } from './pen.ts';
import type { BoardStage } from './stage.ts';

type Segment = readonly [from: Point, to: Point];

/** The ground of all cells. */
export function paintGround(stage: BoardStage): void {
  const { size } = stage.film.grid;
  fillPaths(stage, [polygon([0, 0], [size, 0], [size, size], [0, size])], stage.look.colours.cell, 1);
}

/** The lines between cells and around boxes, over tints and under digits. */
export function paintLines(stage: BoardStage): void {
  const { grid } = stage.film;
  const { colours, strokes } = stage.look;
  const [linePx, houseLinePx] = [wholePx(stage, strokes.line), wholePx(stage, strokes.houseLine)];
  const { thin, heavy } = linesBetween(grid, houseLinePx / stage.place.cellPx / 2);
  const { size } = grid;
  if (grid.houses.some((house) => house.kind === 'diagonal')) {
    const diagonals = [line([0, 0], [size, size]), line([size, 0], [0, size])];
    const width = linePx / stage.place.cellPx;
    strokePaths(stage, diagonals, { colour: colours.line, width, alpha: 1, cased: false, cap: 'butt' });
  }
  rule(stage, thin, linePx, colours.line);
  rule(stage, heavy, houseLinePx, colours.houseLine);
  const edge = houseLinePx / stage.place.cellPx;
  const square = (inset: number): Path =>
    polygon([inset, inset], [size - inset, inset], [size - inset, size - inset], [inset, size - inset]);
  fillPaths(stage, [square(0), square(edge)], colours.houseLine, 1);
}

/**
 * The lines between neighbours of one box, and those between boxes, in straight pieces. A heavy line that ends inside
 * the board is `overlap` cells longer, so that corners are filled.
 */
function linesBetween(grid: Grid, overlap: number): { readonly thin: Segment[]; readonly heavy: Segment[] } {
  const { size } = grid;
  const boxAt = (row: number, column: number) =>
    grid.housesOf[grid.cells[row * size + column]!]!.find((house) => house.kind === 'box');
  const found = { thin: [] as Segment[], heavy: [] as Segment[] };
  const lineUp = (isBorder: (along: number) => boolean, segment: (from: number, to: number) => Segment) => {
    let from = 0;
    for (let to = 1; to <= size; to++) {
      if (to < size && isBorder(to) === isBorder(from)) continue;
      const longer = isBorder(from) ? overlap : 0;
      const ends = segment(from === 0 ? 0 : from - longer, to === size ? size : to + longer);
      (isBorder(from) ? found.heavy : found.thin).push(ends);
      from = to;
    }
  };
  const inner = Array.from({ length: size - 1 }, (_, index) => index + 1);
  for (const x of inner)
    lineUp(
      (row) => boxAt(row, x - 1) !== boxAt(row, x),
      (from, to) => [
        [x, from],
        [x, to],
      ],
    );
  for (const y of inner)
    lineUp(
      (column) => boxAt(y - 1, column) !== boxAt(y, column),
      (from, to) => [
        [from, y],
        [to, y],
      ],
    );
  return found;
}

/** A width in cells as whole frame pixels, so that lines along the pixels are sharp. */
function wholePx(stage: BoardStage, part: number): number {
  return Math.max(1, Math.round(part * stage.place.cellPx));
}

function rule(stage: BoardStage, lines: readonly Segment[], widthPx: number, colour: string): void {
  const { place, context } = stage;
  if (!place.flat) {
    const paths = lines.map(([from, to]) => line(from, to));
    strokePaths(stage, paths, { colour, width: widthPx / place.cellPx, alpha: 1, cased: false, cap: 'butt' });
    return;
  }
  context.fillStyle = colour;
  for (const [from, to] of lines) {
    const [[left, top], [right, bottom]] = [place.at(from), place.at(to)];
    if (left === right) context.fillRect(Math.round(left - widthPx / 2), top, widthPx, bottom - top);
    else context.fillRect(left, Math.round(top - widthPx / 2), right - left, widthPx);
  }
}
