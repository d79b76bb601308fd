/**
 * What `locate` says, as one value with two printers: text and JSON.
 */
import { z } from 'zod';
import { printSeconds } from './clock-time.ts';

const point = z
  .tuple([z.number(), z.number()])
  .describe('x and y in pixels of the picture as it is shown; (0, 0) is the outer corner of its first pixel.');
const corners = z
  .tuple([point, point, point, point])
  .describe("The four corners of the grid's outer square, clockwise from the top left.");
const from = z.number().describe("Seconds from the recording's start: the first picture of the stretch.");
const to = z.number().describe('The first picture after it.');

const stretch = z.union([
  z.strictObject({ from, to, corners }).describe('The board lies still.'),
  z.strictObject({ from, to, hidden: z.literal(true) }).describe('No board is to be seen.'),
  z
    .strictObject({ from, to, moving: z.literal(true), path: z.array(z.strictObject({ t: from, corners })) })
    .describe('The board moves: its place on each picture.'),
]);

const cells = z.array(z.string());

const locateReport = z.strictObject({
  recording: z.string().describe('The file.'),
  width: z.number(),
  height: z.number(),
  cells: z.number().describe('In a row of the board.'),
  sure: z.boolean().describe('Whether the board is told from anything else.'),
  why: z.array(z.string()).describe('What speaks for it, and against it.'),
  puzzle: z
    .strictObject({
      givens: z.number(),
      missing: cells.describe('Givens that are not seen.'),
      filled: cells.describe('Blank cells in which something stands when the board is first seen.'),
    })
    .optional()
    .describe('With a puzzle: its givens, held against the board.'),
  others: z.array(z.strictObject({ cells: z.number(), corners })).describe('Other boards on the same picture.'),
  board: z.array(stretch).describe('Where the board lies when, without a gap from the first picture to the end.'),
});

export type LocateReport = z.infer<typeof locateReport>;

/** A schema of JSON Schema draft 2020-12 for `locate --json`. */
export function locateSchema(): object {
  return { title: 'proofreel locate', ...z.toJSONSchema(locateReport) };
}

export function printLocateJson(report: LocateReport): string {
  return `${JSON.stringify(report, undefined, 2)}\n`;
}

export function printLocate({ recording, cells: size, sure, why, board, others }: LocateReport): string {
  const lines = [
    `${recording}: a board of ${size}x${size} cells, ${sure ? 'sure' : 'not sure'}`,
    ...why.map((reason) => `  ${reason}`),
    ...others.map((other) => `  not meant: a board of ${other.cells}x${other.cells} cells at ${shown(other.corners)}`),
    ...board.map((each) => `${printSeconds(each.from)} - ${printSeconds(each.to)}  ${whatIs(each)}`),
  ];
  return `${lines.join('\n')}\n`;
}

function whatIs(each: LocateReport['board'][number]): string {
  if ('hidden' in each) return 'hidden';
  if ('corners' in each) return shown(each.corners);
  const [first, last] = [each.path[0], each.path.at(-1)];
  if (first === undefined || last === undefined) return 'moves';
  return `moves from ${shown(first.corners)} to ${shown(last.corners)}`;
}

/** Left, top and side for an upright square, four corners for anything else. */
function shown(all: z.infer<typeof corners>): string {
  const [[left, top], [right], [, bottom], [lowLeft]] = all;
  const [width, height] = [right - left, bottom - top];
  const isUpright = Math.abs(lowLeft - left) < 0.5 && Math.abs(all[1][1] - top) < 0.5 && Math.abs(width - height) < 1;
  if (isUpright) return `left ${px(left)}, top ${px(top)}, side ${px((width + height) / 2)}`;
  return `corners ${all.map(([x, y]) => `[${px(x)}, ${px(y)}]`).join(' ')}`;
}

function px(value: number): string {
  return value.toFixed(1);
}
