import { describe, expect, it } from 'vitest';
import { drawingAt } from '../../src/frames/drawing.ts';
import { cellAt, digit } from '../../src/grid/geometry.ts';
import { candidateAt } from '../../src/grid/grid.ts';
import { ringedBy } from '../../src/marks/paintings.ts';
import { defaultLook } from '../../src/picture/default-look.ts';
import { layoutOf } from '../../src/picture/layout.ts';
import { ringRooms, roomsOf, roundRoom, wideRoom } from '../../src/picture/ring-room.ts';
import { unitOf } from '../../src/picture/safe-area.ts';
import { distance, pointOfCandidate } from '../../src/picture/small-digits.ts';
import { stampBox } from '../../src/picture/stamp-place.ts';
import { type Film, frameAt } from '../../src/timeline/film.ts';
import { circle, type FilmWish, film, link, stamp, strike } from './films.ts';
import { recorder } from './recording-context.ts';

const half = defaultLook.strokes.circle / 2;

describe('the room of a ring', () => {
  it('is the whole where nothing stands near', () => {
    const shown = film({ marks: [circle('5r5c5'), circle('1r1c1')] });
    const rooms = [...ringRooms(shown, defaultLook, shown.marks, ringedBy).values()];
    expect(rooms).toEqual([wideRoom(shown, defaultLook), wideRoom(shown, defaultLook)]);
  });

  for (const [one, other] of [
    ['5r4c5', '6r4c5'],
    ['5r7c4', '8r7c4'],
    ['6r4c4', '4r4c5'],
  ] as const) {
    it(`of ${one} ends where that of ${other} begins`, () => {
      const shown = film({ candidates: true, marks: [circle(one, 0), link('strong', one, other)] });
      const [first, second] = [...ringRooms(shown, defaultLook, shown.marks, ringedBy)].map(([candidate, room]) => ({
        at: pointOfCandidate(shown, candidate),
        room,
      }));
      for (const [own, stranger] of [
        [first!, second!],
        [second!, first!],
      ] as const) {
        const nearer = roundRoom(own.at, own.room).points.filter(
          (point) => distance(point, stranger.at) < distance(point, own.at) - 1e-9,
        );
        expect(nearer).toEqual([]);
      }
    });
  }

  for (const draw of ['board', 'overlay'] as const) {
    it(`keeps off the small digits beside, above and below, with draw: ${draw}`, () => {
      const drawn = film({ candidates: true, marks: [circle('5r5c5')] });
      // What a recording shows is not drawn, and yet must stay readable under the marks.
      const shown = draw === 'board' ? drawn : { ...drawn, draw, candidates: [], recorded: drawn.candidates };
      const [only] = ringRooms(shown, defaultLook, shown.marks, ringedBy);
      const [candidate, room] = only!;
      const at = pointOfCandidate(shown, candidate);
      const { grid } = shown;
      for (const beside of [2, 4, 6, 8]) {
        const other = pointOfCandidate(shown, candidateAt(grid, cellAt(grid, 5, 5), digit(grid, beside)));
        // A small digit is at most as wide as its capitals are high; where rings stand closer, the digits do too.
        const least = room.radius + half - (draw === 'board' ? 0.005 : 0.02);
        expect(distance(at, other) - defaultLook.type.candidate / 2).toBeGreaterThanOrEqual(least);
      }
    });
  }

  it('is the same in every frame of a step', () => {
    const marks = [circle('5r4c5'), { ...circle('6r4c5'), from: 60 }];
    const shown = film({ marks });
    const early = shown.marks.filter((mark) => mark.from === 0).map((mark) => ({ mark }));
    expect(roomsOf(shown, defaultLook, early, ringedBy)).toEqual(ringRooms(shown, defaultLook, shown.marks, ringedBy));
  });
});

describe('a stamp', () => {
  const marks = [circle('5r7c4', 0), link('strong', '5r7c4', '5r7c1'), strike('5r8c4'), stamp('it is broken')];
  const square = (side: number): Film['board'] => [
    { from: frameAt(0), shape: { kind: 'square', left: 0, top: 0, side } },
  ];
  const wishes: readonly (readonly [string, FilmWish])[] = [
    ['beside a board', {}],
    ['on an upright frame', { width: 1080, height: 1920 }],
    ['on a square frame', { width: 1080, height: 1080 }],
    ['over footage', { draw: 'overlay', board: square(1000) }],
    ['over footage that the board fills', { draw: 'overlay', width: 1080, height: 1080, board: square(1080) }],
  ];
  for (const [name, wish] of wishes) {
    it(`${name} covers no cell of its argument`, () => {
      const shown = film({ ...wish, marks });
      const drawing = drawingAt(shown, defaultLook, frameAt(50));
      const standing = drawing.marks.map((ink) => ({ mark: shown.marks[ink.index]!, ink }));
      const layout = layoutOf(shown, shown.board.length > 0 ? 0 : undefined);
      const stage = {
        ...{ context: recorder().context, film: shown, look: defaultLook, drawing, layout, unit: unitOf(shown) },
        ...{ standing, involved: new Map(), ringed: ringedBy, rooms: roomsOf(shown, defaultLook, standing, ringedBy) },
      };
      const box = stampBox(stage, standing.at(-1)!);
      expect(box.bottom - box.top).toBeGreaterThan(80 * stage.unit);
      const place = layout.place!;
      const [top, bottom] = [place.at([0, 6])[1], place.at([0, 8])[1]];
      const isBeside = box.left >= place.bounds.right || box.right <= place.bounds.left;
      expect(isBeside || box.bottom <= top || box.top >= bottom).toBe(true);
    });
  }
});
