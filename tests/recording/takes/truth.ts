/**
 * The truth about a take: where its board lies on each picture, and what stands on it from which picture on.
 */
import { type Corners, uprightCorners } from '../../../src/recording/corners.ts';
import { homographyOf, mapped } from '../../../src/recording/homography.ts';
import { boardStateAt } from './board-state.ts';
import { coversAt, viewAt } from './draw-screen.ts';
import type { Deed, Take, TrueEvent, TrueStretch, Truth } from './take.ts';

/**
 * Which frames have a picture, and when it is shown: every one, or, at no fixed rate, with gaps of two frames after every
 * fifth and of seven after every 23rd picture.
 */
export function picturesOf({
  frames,
  rate,
  encoding,
}: Take): readonly { readonly frame: number; readonly seconds: number }[] {
  const all: { frame: number; seconds: number }[] = [];
  for (let index = 0; ; index++) {
    const frame = encoding.isVariable ? index + 2 * Math.floor(index / 5) + 7 * Math.floor(index / 23) : index;
    if (frame >= frames) return all;
    all.push({ frame, seconds: frame / rate });
  }
}

export function truthOf(take: Take): Truth {
  const pictures = picturesOf(take);
  const symbols = (digits: readonly number[]) => digits.map((digit) => (digit === 0 ? '.' : String(digit))).join('');
  return {
    board: stretchesOf(take),
    boxes: `${take.boxRows}x${take.boxColumns}`,
    givens: symbols(take.givens),
    solution: symbols(take.solution),
    events: eventsOf(take),
    times: pictures.map(({ seconds }) => seconds),
  };
}

/** Where the board lies on the picture of a frame, whatever covers it. */
export function cornersAt(take: Take, frame: number): Corners {
  const { board, width, height, tilt, encoding } = take;
  const { zoom, x, y } = viewAt(take, frame);
  const screen = uprightCorners(board.left, board.top, board.side, board.side);
  const whole = uprightCorners(0, 0, width, height);
  const tilted =
    tilt === undefined ? undefined : homographyOf(whole.map((from, index) => ({ from, to: tilt[index]! })));
  const [a, b, c, d] = screen.map(([left, top]) => {
    const seen = [width / 2 + zoom * (left - x), height / 2 + zoom * (top - y)] as const;
    const [px, py] = tilted === undefined ? seen : mapped(tilted, seen);
    const { scaledTo } = encoding;
    return scaledTo === undefined
      ? ([px, py] as const)
      : ([(px * scaledTo.width) / width, (py * scaledTo.height) / height] as const);
  });
  return [a!, b!, c!, d!];
}

function stretchesOf(take: Take): readonly TrueStretch[] {
  const pictures = picturesOf(take);
  const end = take.frames / take.rate;
  const stretches: { kind: string; from: number; to: number; path: { t: number; corners: Corners }[] }[] = [];
  for (const [index, { frame, seconds }] of pictures.entries()) {
    const to = pictures[index + 1]?.seconds ?? end;
    const kind = kindAt(take, frame);
    const last = stretches.at(-1);
    const corners = cornersAt(take, frame);
    if (last?.kind !== kind) stretches.push({ kind, from: seconds, to, path: [{ t: seconds, corners }] });
    else {
      last.to = to;
      last.path.push({ t: seconds, corners });
    }
  }
  return stretches.map(({ kind, from, to, path }): TrueStretch => {
    if (kind === 'hidden') return { from, to, hidden: true };
    if (kind.startsWith('moving')) return { from, to, moving: true, path };
    return { from, to, corners: path[0]!.corners };
  });
}

/** Half covered is hidden. A stretch ends where the kind changes. */
function kindAt(take: Take, frame: number): string {
  if (coversAt(take, frame).some(({ alpha }) => alpha >= 0.5)) return 'hidden';
  const moving = take.moves.findIndex(({ from, until }) => frame >= from && frame < until);
  if (moving >= 0) return `moving ${moving}`;
  return `still ${take.moves.filter(({ until }) => frame >= until).length}`;
}

function eventsOf(take: Take): readonly TrueEvent[] {
  const pictures = picturesOf(take);
  const { fadeFrames } = take.look;
  const shownFrom = (frame: number) => pictures.find((picture) => picture.frame >= frame)?.seconds;
  const cellName = (cell: number) => `r${Math.floor(cell / take.size) + 1}c${(cell % take.size) + 1}`;
  return take.deeds.flatMap((deed): TrueEvent[] => {
    const fades = deed.kind === 'write' || deed.kind === 'erase' ? fadeFrames : 0;
    const t = shownFrom(deed.frame + fades);
    if (t === undefined) return [];
    const cell = cellName(deed.cell);
    switch (deed.kind) {
      case 'select':
        return [];
      case 'write':
        return [...coveredSmall(take, deed, t), { t, cell, kind: 'place', digit: deed.digit }];
      case 'erase':
        return [{ t, cell, kind: 'erase' }];
      case 'pencil':
      case 'unpencil':
        return [{ t, cell, kind: deed.kind, digit: deed.digit }];
      case 'tint':
        return [{ t, cell, kind: 'tint' }];
      default:
        return deed satisfies never;
    }
  });
}

function coveredSmall(take: Take, { frame, cell }: Deed, t: number): readonly TrueEvent[] {
  const before = boardStateAt(take, frame - 1).cells[cell]!;
  const name = `r${Math.floor(cell / take.size) + 1}c${(cell % take.size) + 1}`;
  if (before.digit !== 0) return [];
  return before.small.map((digit) => ({ t, cell: name, kind: 'unpencil', digit, implied: true }));
}
