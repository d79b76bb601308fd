/**
 * Sight: a band from a written digit over the cells in which it rules out its copies, with an arrow at each border
 * between two cells and a bar at its end. Only the band's light tint covers digits.
 */

import type { JudgedStep } from '../check/marks.ts';
import { overlaps, setOf } from '../grid/candidates.ts';
import { columnOf, rowOf } from '../grid/geometry.ts';
import { type Cell, candidateAt, candidatesInCell, type Grid } from '../grid/grid.ts';
import { printCandidate, printCell } from '../grid/notation/print.ts';
import { spokenCells } from '../grid/notation/spoken.ts';
import { each, type MarkPainting, none } from '../picture/painting.ts';
import { line, type Path, rectangle, roundCorners } from '../picture/path.ts';
import { fillPaths, strokePaths, strokeWidth } from '../picture/pen.ts';
import { cornerOf } from '../picture/small-digits.ts';
import { type BoardStage, colourOf, type Standing } from '../picture/stage.ts';
import { type MarkReading, markReading } from '../scene/beats.ts';
import type { Diagnostic } from '../scene/diagnostic.ts';
import type { Beat, BeatMarks, Point, Sight } from '../scene/scene.ts';
import { linesOfSight } from '../staging/sights.ts';
import type { StagedBeat, StagedMarks } from '../staging/staged-beat.ts';
import { type BeatContext, type Stroke, stays } from '../staging/strokes.ts';
import { type Frame, frameAt, type Shapes } from '../timeline/film.ts';
import { halfSecond, oneByOne } from '../timeline/pace.ts';
import type { BeatRecord } from './record.ts';
import { readSight, sightLines } from './sight-lines.ts';
import { type MarkWords, never } from './words.ts';

export const reading = (): MarkReading<'sight'> =>
  markReading({ sight: sightLines() }, ({ values: { sight } }, context) => readSight(sight, context));

export const beat = {
  judge,
  seconds: ({ sights }) => oneByOne(halfSecond, sights.length),
  strokes,
} satisfies BeatRecord<'sight'>['beat'];

export const words = {
  clause: ([shape], { grid }) =>
    shape === undefined
      ? ''
      : `a line of sight runs from ${spokenCells(grid, [shape.of])} over ${spokenCells(grid, shape.cells)}`,
  isClaim: false,
  areJoined: false,
  isNews: true,
  answers: never,
} satisfies MarkWords<'sight'>;

export const painting = {
  comesIn: (_, motion) => motion.sight,
  candidates: none,
  isRinged: false,
  covers: ({ of, cells }) => [of, ...cells],
  onBoard: {
    band: each((stage, one) => paintSight(stage, one, 'band')),
    arrows: each((stage, one) => paintSight(stage, one, 'arrows')),
  },
  onFrame: {},
} satisfies MarkPainting<'sight'>;

/** Half the band's width, in cells. */
const half = 0.36;

/** The bands under the digits, or the arrows between them. */
function paintSight(stage: BoardStage, { mark, ink }: Standing<'sight'>, part: 'band' | 'arrows'): void {
  const { look, film } = stage;
  const colour = colourOf(stage, mark);
  const { beams, apart } = beamsOf(film.grid, mark.shape);
  if (part === 'band') {
    const alpha = look.inks.fill * 0.9 * ink.alpha;
    const [x, y] = cornerOf(film.grid, mark.shape.of);
    fillPaths(stage, [roundCorners(rectangle(x + 0.06, y + 0.06, x + 0.94, y + 0.94), 0.2)], colour, alpha);
    for (const beam of beams) fillPaths(stage, [bandOf(beam, ink.progress)], colour, alpha);
    const boxes = apart.map((cell) => {
      const [left, top] = cornerOf(film.grid, cell);
      return roundCorners(rectangle(left + 0.14, top + 0.14, left + 0.86, top + 0.86), 0.16);
    });
    fillPaths(stage, boxes, colour, alpha * ink.progress);
    return;
  }
  const width = strokeWidth(stage, 0.05);
  const strokes = beams.flatMap((beam) => arrowsOf(beam, ink.progress));
  strokePaths(stage, strokes, { colour, width, alpha: ink.alpha, cased: true });
}

/** A straight line from the edge of the digit's cell to the far edge of the last cell. */
interface Beam {
  readonly from: Point;
  /** From the middle of one cell to that of the next. */
  readonly way: Point;
  /** In cells passed. */
  readonly long: number;
}

/** One beam for each direction along row, column or diagonal; cells in none are separate. */
function beamsOf(grid: Grid, { of, cells, house }: Shapes['sight']): { beams: Beam[]; apart: Cell[] } {
  const [column, row] = [columnOf(grid, of), rowOf(grid, of)];
  const slants = house?.kind === 'diagonal';
  const farthest = new Map<string, { way: Point; long: number }>();
  const apart: Cell[] = [];
  for (const cell of cells) {
    const [dx, dy] = [columnOf(grid, cell) - column, rowOf(grid, cell) - row];
    if (dx !== 0 && dy !== 0 && !slants) apart.push(cell);
    else if (dx !== 0 || dy !== 0) {
      const way: Point = [Math.sign(dx), Math.sign(dy)];
      const key = way.join(' ');
      farthest.set(key, { way, long: Math.max(Math.abs(dx), Math.abs(dy), farthest.get(key)?.long ?? 0) });
    }
  }
  const beams = [...farthest.values()].map(({ way, long }) => {
    const from: Point = [column - 0.5 + way[0] * 0.5, row - 0.5 + way[1] * 0.5];
    return { from, way, long };
  });
  return { beams, apart };
}

function along(beam: Beam, distance: number, across: number): Point {
  const [wx, wy] = beam.way;
  // A step along a diagonal is longer than one along a row; a band has the same width on both.
  const sideways = across / Math.hypot(wx, wy);
  return [beam.from[0] + wx * distance - wy * sideways, beam.from[1] + wy * distance + wx * sideways];
}

/** How far a band stays from the far edge of its last cell; on a diagonal its corners would extend beyond the board. */
function shortBy({ way }: Beam): number {
  return way[0] !== 0 && way[1] !== 0 ? 0.32 : 0.08;
}

function bandOf(beam: Beam, progress: number): Path {
  const end = (beam.long - shortBy(beam)) * progress;
  return {
    points: [along(beam, 0, -half), along(beam, end, -half), along(beam, end, half), along(beam, 0, half)],
    closed: true,
  };
}

function arrowsOf(beam: Beam, progress: number): Path[] {
  const end = (beam.long - shortBy(beam)) * progress;
  const arrows: Path[] = [];
  for (let border = 0; border < beam.long; border++) {
    const tip = border + 0.08;
    if (tip <= end || border === 0)
      arrows.push(line(along(beam, tip - 0.11, -0.16), along(beam, tip, 0), along(beam, tip - 0.11, 0.16)));
  }
  if (progress === 1) arrows.push(line(along(beam, end, -half), along(beam, end, half)));
  return arrows;
}

function judge({ before: { grid }, after }: JudgedStep, { sights }: BeatMarks['sight'], { span }: Beat): Diagnostic[] {
  return sights.flatMap(({ cell, digit }) => {
    const inCell = digit === undefined ? candidatesInCell(grid, cell) : [candidateAt(grid, cell, digit)];
    if (overlaps(after.placed, setOf(grid, inCell))) return [];
    const named = digit === undefined ? `a digit in ${printCell(grid, cell)}` : printCandidate(grid, inCell[0]!);
    const message = `a line of sight starts from a written digit, but ${named} is not on the board by then; place it in an earlier step`;
    return [{ code: 'sight-without-digit', severity: 'error', span, message }];
  });
}

function strokes(context: BeatContext, { sights }: StagedMarks['sight'], { from }: StagedBeat): Stroke[] {
  return sights.flatMap((sight) => lines(context, sight, from));
}

/** Lines from a digit that is on the board by then; they begin no sooner than the digit. */
function lines({ board }: BeatContext, sight: Sight, from: Frame): Stroke[] {
  const standing = board.digitOf(sight.cell);
  if (standing === undefined || (sight.digit !== undefined && sight.digit !== standing.digit)) return [];
  const first = frameAt(Math.max(from, standing.from));
  const isOpen = (cell: Cell) => (board.digitOf(cell)?.from ?? stays) > first;
  return linesOfSight(board.grid, sight, isOpen).map((shape) => ({ shape, from: first, until: stays }));
}
