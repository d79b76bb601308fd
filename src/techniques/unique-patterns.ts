/**
 * Other patterns of cells that must not remain.
 *
 * - Avoidable rectangle: a rectangle of two digits some of whose corners are already placed, none of them a given; what
 *   is still open must not complete it. With any sets in addition to the guardians.
 * - Unique loop: six or more cells that share the same two digits; every house has two of them or none, and they form
 *   one connected ring. A ring of four is a unique rectangle, and gets a warning.
 * - Extended rectangle: two lines crossed by three or more, with as many digits as there are cells in each of the two,
 *   which could be swapped between them; each cell may hold all or some of the digits.
 */
import { columnOf, rowOf } from '../grid/geometry.ts';
import type { Cell, Grid } from '../grid/grid.ts';
import type { Deadly } from '../grid/terms.ts';
import { cellsOfPattern, placedAmong, readDeadly, readRectangle } from './deadly-reading.ts';
import { fits, loosely } from './recognition.ts';
import { type Recognition, type Shape, technique } from './technique.ts';
import { findAvoidableRectangles, findExtendedRectangles, findUniqueLoops } from './unique-pattern-instances.ts';

export const avoidableRectangle = technique({
  name: 'avoidable rectangle',
  plural: 'avoidable rectangles',
  otherNames: [],
  family: 'uniqueness',
  kindOf: [],
  teaching: { place: 3090, cost: 10 },
  isOffered: false,
  phrase: 'step by step',
  page: { under: 'Uniqueness', shows: 'removals' },
  recognise: recogniseAvoidable,
  find: findAvoidableRectangles,
});

export const uniqueLoop = technique({
  name: 'unique loop',
  plural: 'unique loops',
  otherNames: [],
  family: 'uniqueness',
  kindOf: [],
  teaching: { place: 4160, cost: 15 },
  isOffered: false,
  phrase: 'step by step',
  page: { under: 'Uniqueness', shows: 'removals' },
  recognise: recogniseLoop,
  find: findUniqueLoops,
});

export const extendedRectangle = technique({
  name: 'extended rectangle',
  plural: 'extended rectangles',
  otherNames: [],
  family: 'uniqueness',
  kindOf: [],
  teaching: { place: 4170, cost: 15 },
  isOffered: false,
  phrase: 'step by step',
  page: { under: 'Uniqueness', shows: 'removals' },
  recognise: recogniseExtended,
  find: findExtendedRectangles,
});

function recogniseAvoidable(shape: Shape): Recognition {
  const deadly = readDeadly(shape)?.deadly;
  const rectangle = deadly === undefined ? undefined : readRectangle(shape.position.grid, deadly);
  return rectangle !== undefined && placedAmong(shape.position, rectangle.corners) > 0 ? fits : undefined;
}

function recogniseLoop(shape: Shape): Recognition {
  const { grid } = shape.position;
  const deadly = readDeadly(shape)?.deadly;
  const ring = deadly === undefined ? undefined : ringOf(grid, deadly);
  if (ring === undefined || placedAmong(shape.position, ring) > 0) return undefined;
  return ring.length > 4 ? fits : loosely('a loop of four cells is a unique rectangle');
}

/** The cells, if all have the same two digits, each house has two of them or none, and all are connected. */
function ringOf(grid: Grid, deadly: Deadly): readonly Cell[] | undefined {
  const pattern = cellsOfPattern(grid, deadly);
  if (pattern === undefined || new Set([...pattern.values()].map((digits) => digits.join())).size !== 1)
    return undefined;
  if ([...pattern.values()].some((digits) => digits.length !== 2)) return undefined;
  const cells = [...pattern.keys()];
  const pairs = grid.houses
    .map((house) => house.cells.filter((cell) => pattern.has(cell)))
    .filter((own) => own.length > 0);
  if (pairs.some((own) => own.length !== 2)) return undefined;
  const reached = new Set([cells[0]!]);
  for (const cell of reached) {
    for (const pair of pairs) if (pair.includes(cell)) for (const other of pair) reached.add(other);
  }
  return reached.size === cells.length ? cells : undefined;
}

function recogniseExtended(shape: Shape): Recognition {
  const { grid } = shape.position;
  const deadly = readDeadly(shape)?.deadly;
  const pattern = deadly === undefined ? undefined : cellsOfPattern(grid, deadly);
  if (pattern === undefined) return undefined;
  const cells = [...pattern.keys()];
  const lines = [rowOf, columnOf]
    .map((lineOf) => new Set(cells.map((cell) => lineOf(grid, cell))).size)
    .sort((a, b) => a - b);
  const digits = new Set([...pattern.values()].flat()).size;
  const [few, many] = lines as [number, number];
  if (few !== 2 || many < 3 || cells.length !== few * many || digits !== many) return undefined;
  return placedAmong(shape.position, cells) === 0
    ? fits
    : loosely('cells of this rectangle are already placed: it is an avoidable one');
}
