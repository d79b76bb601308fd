/**
 * The board itself: its ground, the lines between cells and the heavier ones between boxes. The outer edge of the
 * outer line is the board's outer square, to the pixel.
 */
import type { Point } from '../scene/scene.ts';
import { line, type Path, polygon } from './path.ts';
import { fillPaths, strokePaths } from './pen.ts';
import type { BoardStage } from './stage.ts';

/** The ground of all cells. */
export function paintGround(stage: BoardStage): void {
  const { size } = stage.film.grid;
  fillPaths(stage, [polygon([0, 0], [size, 0], [size, size], [0, size])], stage.look.colours.cell, 1);
}

/** The lines between cells and round boxes, over tints and under digits. */
export function paintLines(stage: BoardStage): void {
  const { grid } = stage.film;
  const { colours, strokes } = stage.look;
  const inner = Array.from({ length: grid.size - 1 }, (_, index) => index + 1);
  const thin = [
    ...inner.filter((each) => each % grid.boxColumns !== 0).map((x) => upright(x, grid.size)),
    ...inner.filter((each) => each % grid.boxRows !== 0).map((y) => level(y, grid.size)),
  ];
  const heavy = [
    ...inner.filter((each) => each % grid.boxColumns === 0).map((x) => upright(x, grid.size)),
    ...inner.filter((each) => each % grid.boxRows === 0).map((y) => level(y, grid.size)),
  ];
  rule(stage, thin, wholePx(stage, strokes.line), colours.line);
  rule(stage, heavy, wholePx(stage, strokes.houseLine), colours.houseLine);
  const edge = wholePx(stage, strokes.houseLine) / stage.place.cellPx;
  const { size } = grid;
  const square = (inset: number): Path =>
    polygon([inset, inset], [size - inset, inset], [size - inset, size - inset], [inset, size - inset]);
  fillPaths(stage, [square(0), square(edge)], colours.houseLine, 1);
}

/** A width in cells as whole frame pixels, so that lines along the pixels are sharp. */
function wholePx(stage: BoardStage, part: number): number {
  return Math.max(1, Math.round(part * stage.place.cellPx));
}

function rule(stage: BoardStage, lines: readonly (readonly [Point, Point])[], widthPx: number, colour: string): void {
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

function upright(x: number, size: number): [Point, Point] {
  return [
    [x, 0],
    [x, size],
  ];
}

function level(y: number, size: number): [Point, Point] {
  return [
    [0, y],
    [size, y],
  ];
}
