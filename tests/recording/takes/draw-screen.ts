/**
 * The whole screen of a take: the board, what lies beside it, what moves, and what covers it.
 */
import { type CanvasRenderingContext2D, createCanvas } from 'canvas';
import { boardStateAt } from './board-state.ts';
import { css, drawBoard, roundRect } from './draw-board.ts';
import type { Box, Colour, Cover, Take, View } from './take.ts';

/** Draws frames of the screen, before it is tilted or scaled. Frames that look the same have the same key. */
export function screenOf(take: Take) {
  const { width, height } = take;
  const base = createCanvas(width, height);
  const baseContext = base.getContext('2d');
  const whole = createCanvas(width, height);
  const context = whole.getContext('2d');
  let baseKey = '';
  return {
    canvas: whole,
    keyOf: (frame: number): string =>
      JSON.stringify([
        boardStateAt(take, frame).key,
        take.webcam === undefined ? 0 : Math.floor(frame / 2),
        take.hasCursor ? cursorAt(take, frame) : 0,
        viewAt(take, frame),
        coversAt(take, frame),
      ]),
    draw(frame: number): void {
      const state = boardStateAt(take, frame);
      if (state.key !== baseKey) {
        drawSurroundings(baseContext, take);
        drawBoard(baseContext, take, state);
        baseKey = state.key;
      }
      const { zoom, x, y } = viewAt(take, frame);
      context.setTransform(1, 0, 0, 1, 0, 0);
      context.fillStyle = css(take.look.background);
      context.fillRect(0, 0, width, height);
      context.setTransform(zoom, 0, 0, zoom, width / 2 - zoom * x, height / 2 - zoom * y);
      context.drawImage(base, 0, 0);
      if (take.webcam !== undefined) drawWebcam(context, take.webcam, frame);
      if (take.hasCursor) drawCursor(context, cursorAt(take, frame));
      context.setTransform(1, 0, 0, 1, 0, 0);
      for (const { cover, alpha } of coversAt(take, frame)) drawCover(context, take, cover, alpha);
    },
  };
}

/** Where the view is at a frame. */
export function viewAt(take: Take, frame: number): View {
  let view: View = { zoom: 1, x: take.width / 2, y: take.height / 2 };
  for (const { from, until, to, eased } of take.moves) {
    if (frame < from) break;
    const part = frame >= until ? 1 : (frame - from + 1) / (until - from + 1);
    const way = eased ? part * part * (3 - 2 * part) : part;
    const between = (a: number, b: number) => a + (b - a) * way;
    view = { zoom: between(view.zoom, to.zoom), x: between(view.x, to.x), y: between(view.y, to.y) };
  }
  return view;
}

export function coversAt(
  { covers }: Take,
  frame: number,
): readonly { readonly cover: Cover; readonly alpha: number }[] {
  return covers.flatMap((cover) => {
    if (frame < cover.from || frame >= cover.until) return [];
    const { fadeFrames } = cover;
    const [since, left] = [frame - cover.from + 1, cover.until - frame];
    // What covers the very beginning is there from the first frame on.
    const coming = cover.from === 0 ? 1 : since / (fadeFrames + 1);
    return [{ cover, alpha: fadeFrames === 0 ? 1 : Math.min(1, coming, left / (fadeFrames + 1)) }];
  });
}

function drawSurroundings(context: CanvasRenderingContext2D, take: Take): void {
  const { look, width, height, board } = take;
  context.fillStyle = css(look.background);
  context.fillRect(0, 0, width, height);
  context.fillStyle = css(mixed(look.background, look.given, 0.12));
  context.fillRect(0, 0, width, Math.round(height * 0.045));
  const text = css(mixed(look.background, look.given, 0.7));
  context.fillStyle = text;
  context.textAlign = 'left';
  context.textBaseline = 'middle';
  context.font = `${Math.round(height * 0.022)}px "${look.font}"`;
  context.fillText('Board 12   File  Edit  View      00:14', width * 0.02, height * 0.023);
  const beside = board.left + board.side + 0.12 * board.side;
  const lines = ['Every row, every column', 'and every box holds each', 'digit once.', '', 'Take your time.'];
  if (take.pad === undefined)
    for (const [index, line] of lines.entries()) context.fillText(line, beside, height * (0.2 + 0.04 * index));
  if (take.pad !== undefined) drawPad(context, take, take.pad);
  if (take.second !== undefined) drawSecond(context, take, take.second);
}

function drawPad(context: CanvasRenderingContext2D, { look, size, seed }: Take, pad: Box): void {
  const columns = size === 4 ? 2 : 3;
  const rows = Math.ceil(size / columns);
  const [stepX, stepY] = [pad.width / columns, pad.height / rows];
  // Buttons that touch are a small grid of lines, others are tiles.
  const gap = seed % 2 === 0 ? 0 : 0.12 * stepX;
  for (let digit = 1; digit <= size; digit++) {
    const [x, y] = [pad.left + ((digit - 1) % columns) * stepX, pad.top + Math.floor((digit - 1) / columns) * stepY];
    roundRect(context, x + gap / 2, y + gap / 2, stepX - gap, gap, stepY - gap);
    context.fillStyle = css(mixed(look.background, look.written, 0.15));
    context.fill();
    context.strokeStyle = css(mixed(look.background, look.given, 0.6));
    context.lineWidth = 2;
    context.stroke();
    context.fillStyle = css(look.given);
    context.textAlign = 'center';
    context.textBaseline = 'middle';
    context.font = `${0.5 * stepY}px "${look.font}"`;
    context.fillText(String(digit), x + stepX / 2, y + stepY / 2);
  }
}

/** A board of an earlier puzzle, as a list of puzzles may show. */
function drawSecond(context: CanvasRenderingContext2D, take: Take, second: NonNullable<Take['second']>): void {
  const { size } = second;
  const boxColumns = size === 4 ? 2 : 3;
  const boxRows = size === 9 ? 3 : 2;
  const cells = Array.from({ length: size * size }, (_, cell) => ({
    digit: (cell * 7 + 3) % 5 === 0 ? ((cell * 11 + take.seed) % size) + 1 : 0,
    isGiven: true,
    strength: 1,
    leaving: undefined,
    small: [],
    tint: undefined,
  }));
  const board = { left: second.left, top: second.top, side: second.width };
  const look = { ...take.look, linePx: 1, boxLinePx: 2, frame: 'on' as const };
  drawBoard(context, { size, boxRows, boxColumns, look, board }, { cells, selected: undefined, key: '' });
}

/** A room, and a head that nods. */
function drawWebcam(context: CanvasRenderingContext2D, { left, top, width, height }: Box, frame: number): void {
  const turn = Math.floor(frame / 2) / 9;
  context.save();
  roundRect(context, left, top, width, 0.05 * width, height);
  context.clip();
  const room = context.createLinearGradient(left, top, left + width, top + height);
  room.addColorStop(0, 'rgb(120,96,70)');
  room.addColorStop(1, 'rgb(40,52,66)');
  context.fillStyle = room;
  context.fillRect(left, top, width, height);
  context.fillStyle = 'rgb(88,70,60)'; // Shelves: straight lines that are no board's.
  for (let shelf = 0; shelf < 5; shelf++)
    context.fillRect(left, top + (0.1 + 0.2 * shelf) * height, width, 0.02 * height);
  for (let post = 0; post < 4; post++) context.fillRect(left + (0.08 + 0.28 * post) * width, top, 0.02 * width, height);
  const [x, y] = [left + width * (0.5 + 0.05 * Math.sin(turn)), top + height * (0.55 + 0.03 * Math.cos(1.7 * turn))];
  context.fillStyle = 'rgb(70,80,120)';
  context.beginPath();
  context.ellipse(x, top + height, 0.34 * width, 0.3 * height, 0, 0, 2 * Math.PI);
  context.fill();
  context.fillStyle = 'rgb(214,170,140)';
  context.beginPath();
  context.ellipse(x, y, 0.15 * width, 0.26 * height, 0.1 * Math.sin(turn), 0, 2 * Math.PI);
  context.fill();
  context.restore();
  context.strokeStyle = 'rgb(230,230,230)';
  context.lineWidth = 3;
  roundRect(context, left, top, width, 0.05 * width, height);
  context.stroke();
}

/** An arrow that goes from cell to cell as they are selected, and rests there. */
function cursorAt(take: Take, frame: number): readonly [x: number, y: number] {
  const { board, size } = take;
  const cellPx = board.side / size;
  const middleOf = (cell: number) =>
    [board.left + ((cell % size) + 0.62) * cellPx, board.top + (Math.floor(cell / size) + 0.66) * cellPx] as const;
  const selects = take.deeds.filter((deed) => deed.kind === 'select');
  const next = selects.find((deed) => deed.frame >= frame);
  const last = selects.findLast((deed) => deed.frame < frame);
  const rest = last === undefined ? ([board.left - 30, board.top + 60] as const) : middleOf(last.cell);
  if (next === undefined) return rest;
  const travel = Math.min(12, next.frame - (last?.frame ?? 0));
  const part = travel === 0 ? 1 : Math.max(0, 1 - (next.frame - frame) / travel);
  const to = middleOf(next.cell);
  return [Math.round(rest[0] + (to[0] - rest[0]) * part), Math.round(rest[1] + (to[1] - rest[1]) * part)];
}

function drawCursor(context: CanvasRenderingContext2D, [x, y]: readonly [number, number]): void {
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
    context.lineTo(x + dx, y + dy);
  context.closePath();
  context.fillStyle = 'white';
  context.fill();
  context.strokeStyle = 'black';
  context.lineWidth = 1.5;
  context.stroke();
}

function drawCover(context: CanvasRenderingContext2D, take: Take, cover: Cover, alpha: number): void {
  const { width, height, look } = take;
  context.save();
  context.globalAlpha = alpha;
  if (cover.kind === 'title') {
    context.fillStyle = css(mixed(look.given, [30, 60, 90], 0.7));
    context.fillRect(0, 0, width, height);
    context.fillStyle = 'rgb(245,240,225)';
    context.textAlign = 'center';
    context.textBaseline = 'middle';
    context.font = `bold ${height * 0.1}px "${look.font}"`;
    context.fillText('The long corridor', width / 2, height * 0.45);
    context.fillRect(width * 0.3, height * 0.56, width * 0.4, 4);
  } else {
    const sky = context.createLinearGradient(0, 0, 0, height);
    sky.addColorStop(0, 'rgb(120,160,200)');
    sky.addColorStop(1, 'rgb(200,180,150)');
    context.fillStyle = sky;
    context.fillRect(0, 0, width, height);
    for (let house = 0; house < 7; house++) {
      const [left, tall] = [(house / 7) * width, height * (0.3 + 0.05 * ((house * 5) % 7))];
      context.fillStyle = house % 2 === 0 ? 'rgb(120,96,80)' : 'rgb(84,72,66)';
      context.fillRect(left, height - tall, width / 8, tall);
      context.fillStyle = 'rgb(236,214,150)';
      for (let floor = 0; floor < 5; floor++)
        for (let window = 0; window < 3; window++)
          context.fillRect(
            left + (0.02 + 0.04 * window) * width,
            height - tall + (0.03 + 0.055 * floor) * height,
            24,
            30,
          );
    }
  }
  context.restore();
}

export function mixed(one: Colour, other: Colour, part: number): Colour {
  const [red, green, blue] = one.map((level, index) => Math.round(level + (other[index]! - level) * part));
  return [red!, green!, blue!];
}
