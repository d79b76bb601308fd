/**
 * A take's board, drawn as its look says. Nothing here comes from the program's own drawing of boards.
 */
import type { CanvasRenderingContext2D } from 'canvas';
import type { BoardState, CellState } from './board-state.ts';
import type { Colour, Take } from './take.ts';

type Drawn = Pick<Take, 'size' | 'boxRows' | 'boxColumns' | 'look' | 'board'>;

export function css([red, green, blue]: Colour, alpha = 1): string {
  return `rgba(${red},${green},${blue},${alpha})`;
}

export function drawBoard(context: CanvasRenderingContext2D, take: Drawn, state: BoardState): void {
  const { look, board, size } = take;
  const { left, top, side } = board;
  const cellPx = side / size;
  context.save();
  if (look.frame === 'outside') {
    const out = look.frameCells * cellPx;
    roundRect(context, left - out, top - out, side + 2 * out, look.roundCells * cellPx + out);
    context.fillStyle = css(look.boxLine);
    context.fill();
  }
  context.save();
  if (look.gapCells === 0) {
    roundRect(context, left, top, side, look.roundCells * cellPx);
    context.clip();
  }
  drawCells(context, take, state);
  context.restore();
  if (look.gapCells === 0) drawLines(context, take);
  for (const [cell, each] of state.cells.entries()) {
    const [x, y] = [left + ((cell % size) + 0.5) * cellPx, top + (Math.floor(cell / size) + 0.5) * cellPx];
    drawDigits(context, take, each, x, y, cellPx);
  }
  context.restore();
}

function drawCells(context: CanvasRenderingContext2D, take: Drawn, state: BoardState): void {
  const { look, board, size } = take;
  const cellPx = board.side / size;
  const gapPx = look.gapCells * cellPx;
  for (const [cell, { tint }] of state.cells.entries()) {
    const [row, column] = [Math.floor(cell / size), cell % size];
    const box = boxOf(take, cell);
    const isOther = look.otherBox !== undefined && (Math.floor(box / 8) + box) % 2 === 1;
    const plain = isOther ? look.otherBox! : look.cell;
    const isLit = state.selected !== undefined && sees(take, state.selected, cell);
    const colour =
      cell === state.selected
        ? look.selected
        : tint !== undefined
          ? tint
          : isLit && look.lit !== undefined
            ? look.lit
            : plain;
    context.fillStyle = css(colour);
    const [x, y] = [board.left + column * cellPx, board.top + row * cellPx];
    if (gapPx === 0) context.fillRect(x - 0.3, y - 0.3, cellPx + 0.6, cellPx + 0.6);
    else {
      roundRect(context, x + gapPx / 2, y + gapPx / 2, cellPx - gapPx, 0.08 * cellPx);
      context.fill();
    }
  }
}

/** A number for each box; of boxes beside each other one is odd and one is even, once its row is added. */
function boxOf({ size, boxRows, boxColumns }: Drawn, cell: number): number {
  const [row, column] = [Math.floor(cell / size), cell % size];
  return 8 * Math.floor(row / boxRows) + Math.floor(column / boxColumns);
}

function sees(take: Drawn, one: number, other: number): boolean {
  const { size } = take;
  const sameRow = Math.floor(one / size) === Math.floor(other / size);
  return sameRow || one % size === other % size || boxOf(take, one) === boxOf(take, other);
}

function drawLines(context: CanvasRenderingContext2D, { look, board, size, boxRows, boxColumns }: Drawn): void {
  const { left, top, side } = board;
  const cellPx = side / size;
  const stroke = (isBox: boolean) => {
    context.strokeStyle = css(isBox ? look.boxLine : look.line);
    context.lineWidth = isBox ? look.boxLinePx : look.linePx;
  };
  // The boxes' lines lie over those of the cells.
  for (const wantsBox of [false, true]) {
    stroke(wantsBox);
    context.beginPath();
    for (let index = 1; index < size; index++) {
      const at = index * cellPx;
      if ((index % boxColumns === 0) === wantsBox) {
        context.moveTo(left + at, top);
        context.lineTo(left + at, top + side);
      }
      if ((index % boxRows === 0) === wantsBox) {
        context.moveTo(left, top + at);
        context.lineTo(left + side, top + at);
      }
    }
    context.stroke();
  }
  if (look.frame !== 'on') return;
  stroke(true);
  roundRect(context, left, top, side, look.roundCells * cellPx);
  context.stroke();
}

function drawDigits(
  context: CanvasRenderingContext2D,
  { look, size }: Drawn,
  { digit, isGiven, strength, leaving, small }: CellState,
  x: number,
  y: number,
  cellPx: number,
): void {
  const colour = isGiven ? look.given : look.written;
  const digitPx = look.digitCells * cellPx;
  if (leaving !== undefined)
    drawDigit(context, look, leaving.digit, x, y, digitPx, css(look.written, leaving.strength));
  if (digit !== 0) {
    drawDigit(context, look, digit, x, y, digitPx, css(colour, strength));
    return;
  }
  const ink = css(look.small);
  switch (look.smallDigits) {
    case 'places': {
      const columns = size === 4 ? 2 : 3;
      const rows = Math.ceil(size / columns);
      for (const each of small) {
        const [column, row] = [(each - 1) % columns, Math.floor((each - 1) / columns)];
        const placeX = x + ((column + 0.5) / columns - 0.5) * 0.88 * cellPx;
        const placeY = y + ((row + 0.5) / rows - 0.5) * 0.88 * cellPx;
        drawDigit(context, look, each, placeX, placeY, 0.25 * cellPx, ink);
      }
      break;
    }
    case 'row':
    case 'middle': {
      const smallPx = Math.min(look.smallDigits === 'row' ? 0.24 : 0.3, 1.5 / Math.max(1, small.length)) * cellPx;
      const step = 0.62 * smallPx;
      const placeY = look.smallDigits === 'row' ? y - 0.3 * cellPx : y;
      for (const [index, each] of small.entries())
        drawDigit(context, look, each, x + (index - (small.length - 1) / 2) * step, placeY, smallPx, ink);
      break;
    }
    default:
      look.smallDigits satisfies never;
  }
}

/** A digit with its middle at the point; `heightPx`: of the font. */
function drawDigit(
  context: CanvasRenderingContext2D,
  { font, isBold }: Take['look'],
  digit: number,
  x: number,
  y: number,
  heightPx: number,
  ink: string,
): void {
  context.font = `${isBold ? 'bold ' : ''}${heightPx}px "${font}"`;
  context.fillStyle = ink;
  context.textAlign = 'center';
  context.textBaseline = 'alphabetic';
  context.fillText(String(digit), x, y + 0.36 * heightPx);
}

/** The path of a square with round corners. */
export function roundRect(
  context: CanvasRenderingContext2D,
  left: number,
  top: number,
  width: number,
  radius: number,
  height = width,
): void {
  const [right, bottom] = [left + width, top + height];
  const r = Math.min(radius, width / 2, height / 2);
  context.beginPath();
  context.moveTo(left + r, top);
  context.arcTo(right, top, right, bottom, r);
  context.arcTo(right, bottom, left, bottom, r);
  context.arcTo(left, bottom, left, top, r);
  context.arcTo(left, top, right, top, r);
  context.closePath();
}
