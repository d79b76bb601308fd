/**
 * Still pictures of boards by chance, and what stands on them: the takes' looks with digits in any font, tints, small
 * digits, a pointer, worn by scaling and compression.
 */
import { type Canvas, createCanvas, Image } from 'canvas';
import { type Corners, uprightCorners } from '../../../src/recording/corners.ts';
import type { RgbPicture } from '../../../src/recording/picture.ts';
import { type Chance, chanceFrom } from '../../random.ts';
import type { BoardState, CellState } from '../takes/board-state.ts';
import { css, drawBoard } from '../takes/draw-board.ts';
import { mixed } from '../takes/draw-screen.ts';
import { lookFrom } from '../takes/looks.ts';
import { puzzleFrom } from '../takes/puzzles.ts';
import type { Colour, TakeLook } from '../takes/take.ts';

export interface BoardPicture {
  readonly picture: RgbPicture;
  readonly corners: Corners;
  readonly boxes: '2x2' | '2x3' | '3x3';
  /** By cell; 0: none. */
  readonly givens: readonly number[];
  readonly placed: readonly number[];
  /** Cells over which the pointer lies. */
  readonly covered: readonly number[];
}

export interface BoardWishes {
  readonly font: string;
  readonly cellPx: number;
  readonly size?: 4 | 6 | 9;
  readonly look?: Partial<TakeLook>;
  /** Of a JPEG, 0 to 1; undefined: not compressed. */
  readonly quality?: number | undefined;
  /** What is made of the picture's size, and then undone. */
  readonly shrunk?: number;
  readonly isPlain?: boolean;
  readonly pointer?: boolean;
}

const tints: readonly Colour[] = [
  [250, 214, 150],
  [180, 220, 190],
  [236, 150, 150],
  [150, 180, 240],
];

export function boardPicture(seed: number, wishes: BoardWishes): BoardPicture {
  const chance = chanceFrom(6151 * seed + 29);
  for (let round = 0; round < 4; round++) chance.below(2);
  const size = wishes.size ?? chance.pick([9, 9, 9, 9, 6, 4] as const);
  const { boxes, givens, solution } = puzzleFrom(seed, size);
  const look: TakeLook = { ...lookFrom(chance), isBold: false, font: wishes.font, ...wishes.look };
  const { cellPx } = wishes;
  const [left, top] = [cellPx + chance.below(100) / 100, cellPx + chance.below(100) / 100];
  const side = Math.round((size + 2) * cellPx);
  const canvas = createCanvas(side, side);
  const context = canvas.getContext('2d');
  context.fillStyle = css(look.background);
  context.fillRect(0, 0, side, side);
  const state = stateFrom(chance, { givens, solution, size, look, isPlain: wishes.isPlain === true });
  const [boxRows = 3, boxColumns = 3] = boxes.split('x').map(Number);
  const board = { left, top, side: size * cellPx };
  drawBoard(context, { size, boxRows, boxColumns, look, board }, state);
  const covered = wishes.pointer === true ? pointer(context, chance, { left, top, cellPx, size }) : [];
  return {
    picture: worn(canvas, wishes),
    corners: uprightCorners(left, top, board.side, board.side),
    boxes: boxes === '2x2' ? '2x2' : boxes === '2x3' ? '2x3' : '3x3',
    givens,
    placed: state.cells.map(({ digit, isGiven }) => (isGiven ? 0 : digit)),
    covered,
  };
}

/** Some blanks are filled, of the others some have small digits, and some cells a tint. */
function stateFrom(
  chance: Chance,
  {
    givens,
    solution,
    size,
    look,
    isPlain,
  }: { givens: readonly number[]; solution: readonly number[]; size: number; look: TakeLook; isPlain: boolean },
): BoardState {
  const [filled, pencilled, tinted] = isPlain ? [0, 0, 0] : [chance.below(60), chance.below(80), chance.below(30)];
  const cells = givens.map((given, cell): CellState => {
    const isWritten = given === 0 && chance.below(100) < filled;
    const digits = chance.shuffled(Array.from({ length: size }, (_, index) => index + 1)).slice(0, 1 + chance.below(5));
    return {
      digit: isWritten ? solution[cell]! : given,
      isGiven: given !== 0,
      strength: 1,
      leaving: undefined,
      small: given === 0 && !isWritten && chance.below(100) < pencilled ? digits.sort((a, b) => a - b) : [],
      tint: chance.below(100) < tinted ? mixed(look.cell, chance.pick(tints), 0.6) : undefined,
    };
  });
  return { cells, selected: isPlain ? undefined : chance.below(size * size), key: '' };
}

function pointer(
  context: ReturnType<Canvas['getContext']>,
  chance: Chance,
  { left, top, cellPx, size }: { left: number; top: number; cellPx: number; size: number },
): readonly number[] {
  const [column, row] = [(chance.below(100) / 100) * size, (chance.below(100) / 100) * size];
  const unit = 0.035 * cellPx + 0.4;
  context.beginPath();
  for (const [dx, dy] of [
    [0, 0],
    [0, 20],
    [5, 16],
    [9, 24],
    [12, 22],
    [8, 14],
    [14, 14],
  ] as const)
    context.lineTo(left + column * cellPx + dx * unit, top + row * cellPx + dy * unit);
  context.closePath();
  context.fillStyle = 'white';
  context.fill();
  context.strokeStyle = 'black';
  context.lineWidth = Math.max(1, 1.5 * unit);
  context.stroke();
  const [right, bottom] = [column + (14 * unit) / cellPx, row + (24 * unit) / cellPx];
  const covered: number[] = [];
  for (let r = Math.floor(row); r <= Math.min(size - 1, Math.floor(bottom)); r++)
    for (let c = Math.floor(column); c <= Math.min(size - 1, Math.floor(right)); c++) covered.push(r * size + c);
  return covered;
}

function worn(canvas: Canvas, { quality, shrunk = 1 }: BoardWishes): RgbPicture {
  let now = canvas;
  for (const by of shrunk === 1 ? [] : [shrunk, 1 / shrunk]) {
    const other = createCanvas(
      by < 1 ? Math.round(now.width * by) : canvas.width,
      by < 1 ? Math.round(now.height * by) : canvas.height,
    );
    other.getContext('2d').drawImage(now, 0, 0, other.width, other.height);
    now = other;
  }
  if (quality !== undefined) {
    const image = new Image();
    image.src = now.toBuffer('image/jpeg', { quality, chromaSubsampling: true });
    now = createCanvas(canvas.width, canvas.height);
    now.getContext('2d').drawImage(image, 0, 0);
  }
  const { width, height } = now;
  const { data } = now.getContext('2d').getImageData(0, 0, width, height);
  const rgb = new Uint8Array(3 * width * height);
  for (let pixel = 0; pixel < width * height; pixel++)
    for (let channel = 0; channel < 3; channel++) rgb[3 * pixel + channel] = data[4 * pixel + channel]!;
  return { width, height, rgb };
}
