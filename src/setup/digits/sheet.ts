/**
 * A sheet of cells to learn from: digits, small digits, letters and other things in cells of all looks, drawn at the
 * size at which a recording would show them, and then worn as recordings are: scaled, blurred, compressed, grainy.
 *
 * The cells are read by the very code that reads a board, so that what is learnt from is what will be met.
 */
import { type Canvas, type CanvasRenderingContext2D, createCanvas, Image } from 'canvas';
import type { Chance } from '../../puzzles/chance.ts';
import { readSide } from '../../recording/board-cells.ts';
import { type InkMark, inkOf } from '../../recording/cell-ink.ts';
import type { Colour } from '../../recording/colours.ts';
import { colourDistance } from '../../recording/colours.ts';
import type { RgbPicture } from '../../recording/picture.ts';
import { drawCentred } from './glyphs.ts';
import { otherClass, symbols } from './symbols.ts';

export interface Sample {
  readonly mark: InkMark;
  /** Index of its symbol in `symbols`, or `otherClass`. */
  readonly symbol: number;
  readonly font: string;
  /** Pixels that a cell of its sheet was wide. */
  readonly cellPx: number;
}

interface Drawn {
  readonly symbol: number;
  readonly font: string;
  /** In cells from its cell's left and top. */
  readonly box: { readonly left: number; readonly top: number; readonly right: number; readonly bottom: number };
}

interface Cell {
  readonly x: number;
  readonly y: number;
  readonly size: number;
}

const across = 8;

/** Draws a sheet by chance from these fonts, and gives what is found in its cells, each with what it is. */
export function sheetSamples(fonts: readonly string[], chance: Chance): readonly Sample[] {
  const cellPx = chance.pick([20, 22, 24, 26, 28, 30, 32, 36, 40, 48, 56, 64, 80, 100, 120]);
  const { canvas, drawn } = drawSheet(fonts, cellPx, chance);
  const picture = worn(canvas, chance);
  const slip = () => (chance.below(1000) / 1000 - 0.5) * 0.05;
  const place = { left: 1 + slip(), top: 1 + slip(), size: 1 + slip() / across };
  return drawn.flatMap((inCell, index) => {
    const [left, top] = [
      place.left + (index % across) * place.size,
      place.top + Math.floor(index / across) * place.size,
    ];
    const cell = cellSeen(
      picture.picture,
      left * cellPx * picture.scale,
      top * cellPx * picture.scale,
      place.size * cellPx * picture.scale,
    );
    const asSeen = inCell.map((each) => ({ ...each, box: seenFrom(each.box, index, left, top, place.size) }));
    return inkOf(cell).marks.flatMap((mark) => sampleOf(mark, asSeen, cellPx * picture.shrunk));
  });
}

/** A box in its cell as a box in the square that was cut out for this cell, a little beside it. */
function seenFrom(box: Box, index: number, left: number, top: number, size: number): Box {
  const acrossSeen = (x: number) => (1 + (index % across) + x - left) / size;
  const downSeen = (y: number) => (1 + Math.floor(index / across) + y - top) / size;
  return {
    left: acrossSeen(box.left),
    right: acrossSeen(box.right),
    top: downSeen(box.top),
    bottom: downSeen(box.bottom),
  };
}

/** A square of the picture as `rectifiedRgb` would give it; written apart because it runs millions of times and is upright. */
function cellSeen({ width, height, rgb }: RgbPicture, left: number, top: number, size: number): RgbPicture {
  const step = size / readSide;
  const fineness = Math.max(1, Math.ceil(step - 0.25));
  const seen = new Uint8Array(3 * readSide ** 2);
  for (let row = 0; row < readSide; row++) {
    for (let column = 0; column < readSide; column++) {
      const sum = [0, 0, 0];
      for (let part = 0; part < fineness ** 2; part++) {
        const x = Math.min(width - 1, Math.max(0, left + (column + ((part % fineness) + 0.5) / fineness) * step - 0.5));
        const y = Math.min(
          height - 1,
          Math.max(0, top + (row + (Math.floor(part / fineness) + 0.5) / fineness) * step - 0.5),
        );
        const [fromX, fromY] = [Math.floor(x), Math.floor(y)];
        const [partX, partY] = [x - fromX, y - fromY];
        const at = 3 * (fromY * width + fromX);
        const right = fromX + 1 < width ? 3 : 0;
        const below = fromY + 1 < height ? 3 * width : 0;
        for (let channel = 0; channel < 3; channel++) {
          const from = at + channel;
          const upper = rgb[from]! * (1 - partX) + rgb[from + right]! * partX;
          const lower = rgb[from + below]! * (1 - partX) + rgb[from + below + right]! * partX;
          sum[channel]! += upper * (1 - partY) + lower * partY;
        }
      }
      for (let channel = 0; channel < 3; channel++)
        seen[3 * (row * readSide + column) + channel] = Math.round(sum[channel]! / fineness ** 2);
    }
  }
  return { width: readSide, height: readSide, rgb: seen };
}

/** What a mark is: the symbol whose box it fills, or nothing known; what fits by half is left out. */
function sampleOf(mark: InkMark, drawn: readonly Drawn[], cellPx: number): readonly Sample[] {
  const filled = drawn.find(({ box }) => furthestEdge(box, mark) < 0.08 * longerSide(box) + 0.8 / cellPx);
  if (filled !== undefined) return [{ mark, symbol: filled.symbol, font: filled.font, cellPx }];
  return drawn.some(({ box }) => meet(box, mark)) ? [] : [{ mark, symbol: otherClass, font: '', cellPx }];
}

type Box = Drawn['box'];

function furthestEdge(a: Box, b: Box): number {
  return Math.max(
    Math.abs(a.left - b.left),
    Math.abs(a.right - b.right),
    Math.abs(a.top - b.top),
    Math.abs(a.bottom - b.bottom),
  );
}

function longerSide({ left, top, right, bottom }: Box): number {
  return Math.max(right - left, bottom - top);
}

function meet(a: Box, b: Box): boolean {
  return a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom;
}

function drawSheet(fonts: readonly string[], cellPx: number, chance: Chance) {
  const side = cellPx * (across + 2);
  const canvas = createCanvas(side, side);
  const context = canvas.getContext('2d');
  const look = lookBy(chance);
  context.fillStyle = css(look.ground);
  context.fillRect(0, 0, side, side);
  const drawn: (readonly Drawn[])[] = [];
  const cells = Array.from({ length: across ** 2 }, (_, index) => ({
    x: cellPx * (1 + (index % across)),
    y: cellPx * (1 + Math.floor(index / across)),
    size: cellPx,
  }));
  for (const cell of cells) tint(context, cell, look.ground, chance);
  drawLines(context, cellPx, look, chance);
  for (const cell of cells) drawn.push(fill(context, cell, { fonts, inks: look.inks, chance }));
  for (const cell of cells) if (chance.below(40) === 0) drawCursor(context, cell, chance);
  return { canvas, drawn };
}

interface Look {
  readonly ground: Colour;
  readonly line: Colour;
  readonly inks: readonly Colour[];
}

function lookBy(chance: Chance): Look {
  const any = (from: number, to: number): Colour => [
    from + chance.below(to - from),
    from + chance.below(to - from),
    from + chance.below(to - from),
  ];
  const ground = chance.below(3) > 0 ? any(215, 256) : any(5, 70);
  const far = (least: number): Colour => {
    for (;;) {
      const colour = any(0, 256);
      if (colourDistance(colour, ground) > least) return colour;
    }
  };
  return { ground, line: far(30), inks: [far(110), far(60)] };
}

function css([red, green, blue]: Colour): string {
  return `rgb(${Math.round(red)},${Math.round(green)},${Math.round(blue)})`;
}

/** Some cells have a tint, few a second one below a slant, few a broad frame. */
function tint(context: CanvasRenderingContext2D, { x, y, size }: Cell, ground: Colour, chance: Chance): void {
  if (chance.below(4) > 0) return;
  const mixed = (): string => {
    const by = 0.15 + chance.below(30) / 100;
    const other: Colour = [chance.below(256), chance.below(256), chance.below(256)];
    return css([0, 1, 2].map((channel) => ground[channel]! * (1 - by) + other[channel]! * by) as unknown as Colour);
  };
  context.fillStyle = mixed();
  context.fillRect(x, y, size, size);
  const kind = chance.below(8);
  if (kind === 0) {
    context.fillStyle = mixed();
    context.beginPath();
    context.moveTo(x, y + size);
    context.lineTo(x + size, y);
    context.lineTo(x + size, y + size);
    context.fill();
  }
  if (kind === 1) {
    context.strokeStyle = mixed();
    context.lineWidth = size * (0.05 + chance.below(8) / 100);
    context.strokeRect(
      x + context.lineWidth / 2,
      y + context.lineWidth / 2,
      size - context.lineWidth,
      size - context.lineWidth,
    );
  }
}

function drawLines(context: CanvasRenderingContext2D, cellPx: number, { line }: Look, chance: Chance): void {
  const [thin, thick] = [Math.max(1, cellPx * 0.02), Math.max(1, cellPx * (0.03 + chance.below(5) / 100))];
  context.strokeStyle = css(line);
  for (let index = 0; index <= across; index++) {
    context.lineWidth = index % 3 === 0 ? thick : thin;
    context.beginPath();
    context.moveTo(cellPx, cellPx * (1 + index));
    context.lineTo(cellPx * (1 + across), cellPx * (1 + index));
    context.moveTo(cellPx * (1 + index), cellPx);
    context.lineTo(cellPx * (1 + index), cellPx * (1 + across));
    context.stroke();
  }
}

interface Filling {
  readonly fonts: readonly string[];
  readonly inks: readonly Colour[];
  readonly chance: Chance;
}

function fill(context: CanvasRenderingContext2D, cell: Cell, { fonts, inks, chance }: Filling): readonly Drawn[] {
  context.fillStyle = css(chance.pick(inks));
  const font = chance.pick(fonts);
  const kind = chance.below(20);
  const { x, y, size } = cell;
  const at = (symbol: number, part: number, places: readonly [number, number], text = symbols[symbol]!): Drawn => {
    const box = drawCentred(context, {
      font,
      symbol: text,
      size: part * size,
      x: x + places[0] * size,
      y: y + places[1] * size,
    });
    return {
      symbol,
      font,
      box: {
        left: (box.left - x) / size,
        right: (box.right - x) / size,
        top: (box.top - y) / size,
        bottom: (box.bottom - y) / size,
      },
    };
  };
  const little = () => (chance.below(101) - 50) / 1000;
  if (kind === 0) {
    at(
      otherClass,
      0.3 + chance.below(50) / 100,
      [0.5 + little(), 0.5 + little()],
      chance.pick([...'0?!x+*#@&%HKMNPRWX=<']),
    );
    return [];
  }
  if (kind <= 11) return [at(symbolBy(chance), 0.4 + chance.below(50) / 100, [0.5 + little(), 0.5 + little()])];
  return smallDigits(chance).map(({ symbol, part, places }) => at(symbol, part, places));
}

/** Letters are rarer than digits: few boards have them. */
function symbolBy(chance: Chance): number {
  return chance.below(6) > 0 ? chance.below(9) : 9 + chance.below(7);
}

/** Small digits as they are usually set: each at its place, in a row in the middle, or in a row at the top. */
function smallDigits(chance: Chance): readonly { symbol: number; part: number; places: readonly [number, number] }[] {
  const chosen = chance
    .shuffled([0, 1, 2, 3, 4, 5, 6, 7, 8])
    .slice(0, 1 + chance.below(6))
    .sort((a, b) => a - b);
  const part = 0.22 + chance.below(14) / 100;
  const kind = chance.below(3);
  if (kind === 0)
    return chosen.map((symbol) => ({
      symbol,
      part,
      places: [0.2 + 0.3 * (symbol % 3), 0.2 + 0.3 * Math.floor(symbol / 3)],
    }));
  const row = chosen.slice(0, kind === 1 ? 4 : 3);
  const step = Math.min(0.24, 0.85 / row.length);
  return row.map((symbol, index) => ({
    symbol,
    part: Math.min(part, 0.3),
    places: [kind === 1 ? 0.5 + (index - (row.length - 1) / 2) * step : 0.2 + index * step, kind === 1 ? 0.5 : 0.22],
  }));
}

/** An arrow of a pointer, its outline in the other tone. */
function drawCursor(context: CanvasRenderingContext2D, { x, y, size }: Cell, chance: Chance): void {
  const unit = size * (0.04 + chance.below(5) / 100);
  context.save();
  context.translate(x + (chance.below(100) / 100) * size, y + (chance.below(100) / 100) * size);
  context.beginPath();
  for (const [dx, dy] of [
    [0, 0],
    [0, 10],
    [2.4, 7.8],
    [4, 11.4],
    [5.4, 10.8],
    [3.8, 7.2],
    [7, 7],
  ] as const)
    context.lineTo(dx * unit, dy * unit);
  context.closePath();
  const isDark = chance.below(2) === 0;
  context.fillStyle = isDark ? '#000' : '#fff';
  context.fill();
  context.strokeStyle = isDark ? '#fff' : '#000';
  context.lineWidth = Math.max(1, unit * 0.7);
  context.stroke();
  context.restore();
}

/** The canvas as a recording shows it. `scale`: its size by the canvas's; `shrunk`: to what its detail was brought down. */
function worn(canvas: Canvas, chance: Chance): { picture: RgbPicture; scale: number; shrunk: number } {
  let [now, scale, shrunk] = [canvas, 1, 1];
  if (chance.below(4) === 0) {
    // Recorded small and shown larger, or the other way.
    const by = 0.6 + chance.below(80) / 100;
    now = scaled(now, by);
    scale = by;
    if (chance.below(2) === 0 && by < 1) {
      now = scaled(now, 1 / by);
      scale = now.width / canvas.width;
    }
    shrunk = Math.min(1, by);
  }
  if (chance.below(3) > 0) now = compressed(now, 0.25 + chance.below(70) / 100);
  const { width, height } = now;
  const { data } = now.getContext('2d').getImageData(0, 0, width, height);
  const grain = chance.below(4) === 0 ? 1 + chance.below(10) : 0;
  const rgb = new Uint8Array(3 * width * height);
  for (let pixel = 0; pixel < width * height; pixel++) {
    const noise = grain === 0 ? 0 : chance.below(2 * grain + 1) + chance.below(2 * grain + 1) - 2 * grain;
    for (let channel = 0; channel < 3; channel++)
      rgb[3 * pixel + channel] = Math.min(255, Math.max(0, data[4 * pixel + channel]! + noise));
  }
  return { picture: { width, height, rgb }, scale, shrunk };
}

function scaled(canvas: Canvas, by: number): Canvas {
  const [width, height] = [Math.round(canvas.width * by), Math.round(canvas.height * by)];
  const other = createCanvas(width, height);
  const context = other.getContext('2d');
  context.imageSmoothingEnabled = true;
  context.quality = 'good';
  context.drawImage(canvas, 0, 0, width, height);
  return other;
}

function compressed(canvas: Canvas, quality: number): Canvas {
  const image = new Image();
  image.src = canvas.toBuffer('image/jpeg', { quality, chromaSubsampling: true });
  const other = createCanvas(canvas.width, canvas.height);
  other.getContext('2d').drawImage(image, 0, 0);
  return other;
}
