import { describe, expect, it } from 'vitest';
import { drawingAt } from '../../src/frames/drawing.ts';
import { paint } from '../../src/frames/paint.ts';
import { boardPlace } from '../../src/picture/board-place.ts';
import { defaultLook } from '../../src/picture/default-look.ts';
import { layoutOf } from '../../src/picture/layout.ts';
import { safeArea } from '../../src/picture/safe-area.ts';
import type { BoardShape, Point } from '../../src/scene/scene.ts';
import { type Film, frameAt } from '../../src/timeline/film.ts';
import { drawn, inkBox, type Pixel } from './drawn.ts';
import { circle, fill, film, sparseGivens } from './films.ts';
import { boundsOf, recorder } from './recording-context.ts';

const corners: readonly [Point, Point, Point, Point] = [
  [420, 140],
  [1420, 60],
  [1560, 860],
  [260, 960],
];

function at(shape: BoardShape): Film['board'] {
  return [{ from: frameAt(0), shape }];
}

const frameColour: Pixel = [0xe8, 0xe5, 0xdc, 255];
const lineColour: Pixel = [0x26, 0x30, 0x3a, 255];

describe('the outer square of the grid lies exactly where it is put', () => {
  const rows: readonly (readonly [left: number, top: number, side: number])[] = [
    [60, 60, 960],
    [61, 7, 900],
    [13, 20, 551],
  ];
  for (const [left, top, side] of rows) {
    it(`left ${left}, top ${top}, side ${side}`, () => {
      const picture = drawn(film({ board: at({ kind: 'square', left, top, side }) }), 0);
      const [x, y] = [left + Math.floor(side / 2) + 9, top + Math.floor(side / 2) + 9];
      const across = [left - 1, left, left + side - 1, left + side].map((each) => picture.at(each, y));
      const down = [top - 1, top, top + side - 1, top + side].map((each) => picture.at(x, each));
      expect(across).toEqual([frameColour, lineColour, lineColour, frameColour]);
      expect(down).toEqual([frameColour, lineColour, lineColour, frameColour]);
    });
  }

  it('and a filled cell lies exactly in its ninth of it', () => {
    const shape = { kind: 'square', left: 60, top: 30, side: 900 } as const;
    const picture = drawn(film({ draw: 'overlay', board: at(shape), marks: [fill('r2c3')] }), 50);
    expect(inkBox(picture)).toEqual({ left: 260, top: 130, right: 360, bottom: 230 });
  });
});

describe('a board filmed at an angle', () => {
  const place = boardPlace({ kind: 'corners', corners }, 9)!;

  it('has its corners where they are given', () => {
    const own: readonly Point[] = [
      [0, 0],
      [9, 0],
      [9, 9],
      [0, 9],
    ];
    own.forEach((corner, index) => {
      expect(place.at(corner)[0]).toBeCloseTo(corners[index]![0], 9);
      expect(place.at(corner)[1]).toBeCloseTo(corners[index]![1], 9);
    });
  });

  it('keeps straight lines straight, and its middle where the diagonals cross', () => {
    const middle = place.at([4.5, 4.5]);
    const across = (p: Point, q: Point, r: Point) => (q[0] - p[0]) * (r[1] - p[1]) - (q[1] - p[1]) * (r[0] - p[0]);
    expect(across(corners[0], corners[2], middle)).toBeCloseTo(0, 6);
    expect(across(corners[1], corners[3], middle)).toBeCloseTo(0, 6);
    const [a, b, c] = [place.at([1, 2]), place.at([4, 2]), place.at([8, 2])];
    expect(across(a, b, c)).toBeCloseTo(0, 6);
  });

  it('is the same as a square where its corners are those of one', () => {
    const square: [Point, Point, Point, Point] = [
      [60, 60],
      [1020, 60],
      [1020, 1020],
      [60, 1020],
    ];
    const asCorners = drawn(
      film({
        givens: sparseGivens,
        draw: 'overlay',
        board: at({ kind: 'corners', corners: square }),
        marks: [circle('5r4c3', 0)],
      }),
      50,
    );
    const asSquare = drawn(
      film({
        givens: sparseGivens,
        draw: 'overlay',
        board: at({ kind: 'square', left: 60, top: 60, side: 960 }),
        marks: [circle('5r4c3', 0)],
      }),
      50,
    );
    const alphas = (pixels: Uint8ClampedArray) => pixels.filter((_, index) => index % 4 === 3);
    const other = alphas(asSquare.pixels);
    const farthest = alphas(asCorners.pixels).reduce(
      (most, alpha, index) => Math.max(most, Math.abs(alpha - other[index]!)),
      0,
    );
    // The ring is a filled outline in the one and a stroke in the other; only the smoothing of edges may differ.
    expect(farthest).toBeLessThan(90);
  });

  it('has a mark within its cell as it is filmed', () => {
    const { context, take } = recorder();
    const shown = film({ draw: 'overlay', board: at({ kind: 'corners', corners }), marks: [fill('r9c1')] });
    paint(context, shown, defaultLook, drawingAt(shown, defaultLook, frameAt(50)));
    const [left, top, right, bottom] = boundsOf(take());
    const cell = [
      [0, 8],
      [1, 8],
      [1, 9],
      [0, 9],
    ].map(([x, y]) => place.at([x!, y!]));
    expect(left).toBeCloseTo(Math.min(...cell.map(([x]) => x)), 0);
    expect(right).toBeCloseTo(Math.max(...cell.map(([x]) => x)), 0);
    expect(top).toBeCloseTo(Math.min(...cell.map(([, y]) => y)), 0);
    expect(bottom).toBeCloseTo(Math.max(...cell.map(([, y]) => y)), 0);
  });
});

it('while the board is hidden nothing is drawn on it', () => {
  const shown = film({ draw: 'overlay', board: at({ kind: 'hidden' }), marks: [fill('r1c1'), circle('5r5c5', 0)] });
  expect(inkBox(drawn(shown, 50))).toBeUndefined();
});

describe('a frame laid out by the tool', () => {
  for (const [width, height] of [
    [1920, 1080],
    [1280, 720],
    [1080, 1920],
    [1080, 1080],
    [2560, 1080],
    [1440, 1080],
    [640, 360],
  ] as const) {
    it(`${width}x${height}: board and words lie apart, within the frame, clear of its lowest eighth`, () => {
      const shown = film({ width, height });
      const layout = layoutOf(shown, undefined);
      const safe = safeArea(shown);
      expect(safe.bottom).toBeLessThanOrEqual((height * 7) / 8);
      const board = layout.place!.bounds;
      for (const box of [layout.heading!, layout.callout]) {
        expect(box.left).toBeGreaterThanOrEqual(safe.left);
        expect(box.right).toBeLessThanOrEqual(safe.right);
        expect(box.top).toBeGreaterThanOrEqual(safe.top);
        expect(box.bottom).toBeLessThanOrEqual(safe.bottom);
        const apart =
          box.left >= board.right || box.right <= board.left || box.top >= board.bottom || box.bottom <= board.top;
        expect(apart).toBe(true);
      }
      expect(board.bottom).toBeLessThanOrEqual(safe.bottom);
      expect(board.right - board.left).toBeGreaterThan(Math.min(width, height) * 0.5);
    });
  }
});
