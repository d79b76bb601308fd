/**
 * The geometry of marks, from the calls that they make on a canvas that only writes them down. The board is 900 pixels
 * from the frame's corner, so a cell is 100.
 */
import { describe, expect, it } from 'vitest';
import { drawingAt } from '../../src/frames/drawing.ts';
import { paint } from '../../src/frames/paint.ts';
import { defaultLook } from '../../src/picture/default-look.ts';
import { frameAt } from '../../src/timeline/film.ts';
import {
  ask,
  circle,
  clash,
  during,
  type FilmWish,
  fill,
  film,
  focus,
  label,
  link,
  type MarkWish,
  note,
  outline,
  place,
  sight,
  strike,
} from './films.ts';
import { boundsOf, recorder } from './recording-context.ts';

const { colours } = defaultLook;

/** The calls for these marks, drawn whole. */
function callsFor(marks: readonly MarkWish[], wish: FilmWish = {}, frame = 50): string[] {
  const { context, take } = recorder();
  const board = [{ from: frameAt(0), shape: { kind: 'square', left: 0, top: 0, side: 900 } }] as const;
  const shown = film({ width: 1920, height: 1080, draw: 'overlay', board, ...wish, marks });
  paint(context, shown, defaultLook, drawingAt(shown, defaultLook, frameAt(frame)));
  return take();
}

/** The calls of each fill and stroke with this colour: what was traced, and the call itself last. */
function drawnWith(calls: readonly string[], colour: string): string[][] {
  const groups: string[][] = [];
  let current: string[] = [];
  for (const call of calls) {
    if (call === 'begin') current = [];
    current.push(call);
    if (/^(fill|stroke) /.test(call) && call.includes(colour)) groups.push([...current]);
  }
  return groups;
}

describe('a fill', () => {
  it('is its cells, as rectangles', () => {
    expect(callsFor([fill('r2c3', 0)]).filter((call) => /^(move|line|fill)/.test(call))).toEqual([
      'move 200 100',
      'line 300 100',
      'line 300 200',
      'line 200 200',
      `fill ${colours.groups.orange} 30%`,
    ]);
  });

  it('hides an earlier one on the same cell', () => {
    const calls = callsFor([fill('r2c3', 0), fill('r2c3', 2)]);
    expect(drawnWith(calls, colours.groups.orange)).toEqual([]);
    expect(drawnWith(calls, colours.groups.green)).toHaveLength(1);
  });

  it('lets the earlier one come back when it ends', () => {
    const calls = callsFor([fill('r2c3', 0), during(fill('r2c3', 2), 0, 40)], {}, 60);
    expect(drawnWith(calls, colours.groups.orange)).toHaveLength(1);
  });
});

describe('a candidate stands in its part of the cell', () => {
  const rows: readonly (readonly ['123' | '789' | 'whole', string, number, number])[] = [
    ['123', '1r1c1', 18, 18],
    ['123', '5r1c1', 50, 50],
    ['123', '9r2c3', 282, 182],
    ['789', '1r1c1', 18, 82],
    ['789', '9r2c3', 282, 118],
    ['whole', '3r1c1', 82, 18],
  ];
  for (const [small, candidate, x, y] of rows) {
    it(`${candidate} with small: ${small}`, () => {
      const [left, top, right, bottom] = boundsOf(
        drawnWith(callsFor([circle(candidate, 0)], { small }), colours.groups.orange)[0]!,
      );
      expect([(left + right) / 2, (top + bottom) / 2]).toEqual([x, y]);
    });
  }
});

describe('a clash', () => {
  it('keeps off the digits that lie between', () => {
    const givens = '....5....';
    const calls = callsFor([clash('3r1c1', '3r1c9')], { givens });
    const line = drawnWith(calls, colours.text).find((group) => group.at(-1)!.startsWith('stroke'))!;
    // The digit stands at 450, 50, and is 54 high.
    const near = line
      .map((call) => /^(?:move|line) (\S+) (\S+)$/.exec(call))
      .filter((match) => match !== null && Math.hypot(Number(match[1]) - 450, Number(match[2]) - 50) < 27);
    expect(near).toEqual([]);
    expect(boundsOf(line)[2]).toBeGreaterThan(800);
  });
});

describe('small digits that the recording does not show', () => {
  it('are brought along by circles, links and strikes alone', () => {
    const marks = [
      circle('1r1c1'),
      strike('2r2c2'),
      link('weak', '3r3c3', '3r3c9'),
      fill('r5c5'),
      label('7r7c7', 'top'),
    ];
    const texts = callsFor(marks, { small: 'whole' }).filter((call) => /^text '\d'/.test(call));
    expect(texts.map((call) => call[6])).toEqual(['1', '2', '3', '3', '7']);
  });

  it('and not drawn where it does', () => {
    expect(
      callsFor([circle('1r1c1'), strike('2r2c2')], { small: '123' }).filter((call) => call.startsWith('text')),
    ).toEqual([]);
  });
});

describe('an overlay', () => {
  it('has no ground, grid, digit or candidate', () => {
    const calls = callsFor([], { givens: '12.......', candidates: true, written: ['r5c5=5'], title: 'A title' });
    expect(calls).toEqual(['save', 'reset', 'clear 0 0 1920 540', 'clear 0 540 1920 540', 'restore']);
  });

  it('writing has what the scene writes, and no given', () => {
    const calls = callsFor([], { givens: '12.......', written: ['r5c5=5'], draw: 'writing' });
    expect(calls.filter((call) => call.startsWith('text')).map((call) => call[6])).toEqual(['5']);
  });
});

describe('a link', () => {
  it('runs from rim to rim, whatever its length', () => {
    for (const to of ['5r5c4', '5r5c6', '5r5c9', '5r2c2']) {
      const calls = callsFor([link('strong', '5r5c2', to)]);
      const line = drawnWith(calls, colours.strong).find((group) => / 6\.8$/.test(group.at(-1)!))!;
      const start = line
        .find((call) => call.startsWith('move'))!
        .split(' ')
        .map(Number);
      // 22.1 of the rim's radius, half a rim's stroke, and 3 of air.
      expect(Math.hypot(start[1]! - 150, start[2]! - 450)).toBeCloseTo(22.1 + 2.5 + 3, 0);
    }
  });

  it('has a head of one size at any length', () => {
    for (const kind of ['strong', 'weak'] as const) {
      const sizes = ['5r5c3', '5r5c6', '5r5c9', '5r1c2', '6r5c2'].map((to) =>
        headOf(callsFor([link(kind, '5r5c2', to)]), kind),
      );
      for (const size of sizes) expect(size).toBeCloseTo(sizes[0]!, 0);
      expect(sizes[0]).toBeGreaterThanOrEqual(16);
    }
  });

  it('never has a head below 16 pixels, however small the board', () => {
    const board = [{ from: frameAt(0), shape: { kind: 'square', left: 0, top: 0, side: 360 } }] as const;
    for (const kind of ['strong', 'weak'] as const) {
      expect(headOf(callsFor([link(kind, '5r5c2', '5r5c8')], { board }), kind)).toBeGreaterThanOrEqual(16);
    }
  });

  it('has its head only after its line', () => {
    const begun = callsFor([during(link('strong', '5r5c2', '5r5c8'), 0, 100)], {}, 2);
    expect(
      drawnWith(begun, colours.strong).filter(
        (group) => group.at(-1)!.startsWith('fill') && group.filter((call) => call.startsWith('line')).length === 3,
      ),
    ).toEqual([]);
  });

  it('misses a candidate in use that stands between its ends', () => {
    for (const between of ['5r5c5', '4r5c5', '6r5c4']) {
      const calls = callsFor([circle(between, 0), link('strong', '5r5c2', '5r5c8')]);
      const ring = boundsOf(drawnWith(calls, colours.groups.orange)[0]!);
      const [x, y] = [(ring[0] + ring[2]) / 2, (ring[1] + ring[3]) / 2];
      const line = drawnWith(calls, colours.strong).find((group) => / 6\.8$/.test(group.at(-1)!))!;
      const nearest = Math.min(...pointsOf(line).map(([px, py]) => Math.hypot(px - x, py - y)));
      expect([between, nearest > 22.1 + 2.5 + 3.4]).toEqual([between, true]);
    }
  });

  it('takes the same way in every frame, though other marks come and go', () => {
    const marks = [during(link('strong', '5r5c2', '5r5c8'), 0, 100), during(circle('5r5c5', 0), 40, 60)];
    const wayAt = (frame: number) =>
      drawnWith(callsFor(marks, {}, frame), colours.strong).find((group) => / 6\.8$/.test(group.at(-1)!));
    expect(wayAt(50)).toEqual(wayAt(30));
    expect(wayAt(80)).toEqual(wayAt(30));
  });

  it('has one hull round a grouped node', () => {
    const calls = callsFor([link('strong', '5r5c123', '5r9c9')]);
    const hull = drawnWith(calls, colours.strong).find((group) => {
      const [left, , right] = boundsOf(group);
      return right - left > 200;
    })!;
    const [left, top, right, bottom] = boundsOf(hull).map(Math.round);
    expect([left, top, right, bottom]).toEqual([27, 427, 273, 473]);
  });
});

describe('an outline', () => {
  it('runs within the edge of its patch', () => {
    expect(boundsOf(callsFor([outline('r456c456')])).map(Math.round)).toEqual([303, 303, 598, 598]);
  });

  it('goes round a hole, and round each piece', () => {
    const ring = callsFor([outline('r123c13 r13c2')]);
    const pieces = callsFor([outline('r1c1 r3c3 r5c5')]);
    const lines = (calls: readonly string[]) =>
      drawnWith(calls, colours.plain)[0]!.filter((call) => call.startsWith('move')).length;
    expect([lines(ring), lines(pieces)]).toEqual([2, 3]);
    expect(boundsOf(drawnWith(ring, colours.plain)[0]!).map(Math.round)).toEqual([3, 3, 298, 298]);
  });
});

describe('strokes', () => {
  it('are at least 5 pixels wide at full size, on a small board too', () => {
    const board = [{ from: frameAt(0), shape: { kind: 'square', left: 0, top: 0, side: 270 } }] as const;
    const marks = [
      circle('5r2c2'),
      link('weak', '5r5c2', '5r5c8'),
      strike('5r8c2'),
      outline('r9c9'),
      place('r1c9=5'),
      sight('r1c1', 'r1c23'),
    ];
    const strokes = callsFor(marks, { board }).filter((call) => call.startsWith('stroke'));
    expect(strokes.length).toBeGreaterThan(8);
    for (const stroke of strokes) {
      const width = Number(stroke.split(' ').at(-1));
      // The edge of a strong link's head is filled besides.
      expect(width).toBeGreaterThanOrEqual(5);
    }
  });

  it('have a casing under each, of the opposite luminance', () => {
    const strokes = callsFor([circle('5r2c2', 3)]).filter((call) => call.startsWith('stroke'));
    expect(strokes).toEqual([`stroke ${colours.casing} 100% 8.2`, `stroke ${colours.groups.yellow} 100% 5`]);
  });
});

describe('a sight line', () => {
  it('leads from the digit to the far edge of the last cell, and lays no stroke on a digit', () => {
    const calls = callsFor([sight('r5c1', 'r5c2345')]);
    const [left, top, right, bottom] = boundsOf(drawnWith(calls, `${colours.plain} 27%`)[1]!);
    expect([left, top, right, bottom]).toEqual([100, 414, 492, 486]);
    const strokes = pointsOf(drawnWith(calls, `stroke ${colours.plain}`)[0]!);
    for (const [x] of strokes) expect(Math.abs((x % 100) - 50)).toBeGreaterThan(38);
  });
});

describe('focus', () => {
  it('veils all other cells', () => {
    const [veil] = drawnWith(callsFor([focus('r1c1 r9c9')]), colours.veil);
    expect(veil!.filter((call) => call.startsWith('move'))).toHaveLength(79);
    expect(veil).not.toContain('move 0 0');
  });
});

describe('words', () => {
  const long =
    'A very long note that goes on and on, far beyond what two lines of thirty characters can hold at full size.';

  const rooms: readonly (readonly [string, FilmWish])[] = [
    ['beside a board', {}],
    [
      'in a narrow column',
      { board: [{ from: frameAt(0), shape: { kind: 'square', left: 20, top: 20, side: 1040 } }], width: 1400 },
    ],
    [
      'under a board',
      {
        width: 1080,
        height: 1920,
        board: [{ from: frameAt(0), shape: { kind: 'square', left: 20, top: 300, side: 1040 } }],
      },
    ],
    [
      'where the board fills the frame',
      {
        width: 1080,
        height: 1080,
        board: [{ from: frameAt(0), shape: { kind: 'square', left: 0, top: 0, side: 1080 } }],
      },
    ],
    ['while the board is hidden', { board: [{ from: frameAt(0), shape: { kind: 'hidden' } }] }],
    [
      'on a board laid out by the tool',
      { board: [], draw: 'board', title: long, heading: { title: long, argument: 'AIC', conclusions: long } },
    ],
    [
      'on a square frame',
      {
        width: 1080,
        height: 1080,
        board: [],
        draw: 'board',
        title: long,
        heading: { title: long, argument: 'AIC', conclusions: long },
      },
    ],
  ];
  for (const [name, wish] of rooms) {
    it(`${name} keep within the frame and off its lowest eighth`, () => {
      const { width = 1920, height = 1080 } = wish;
      const calls = callsFor([note(long, 0), ask(long)], wish);
      const texts = calls.filter((call) => call.startsWith('text') && !/^text '\d'/.test(call));
      expect(texts.length).toBeGreaterThan(2);
      for (const text of texts) {
        const [, words, x, y] = /^text '(.*)' #.* (\S+) (\S+)$/.exec(text)!;
        expect(Number(x)).toBeGreaterThanOrEqual(0);
        expect(Number(y)).toBeLessThanOrEqual((height * 7) / 8);
        // The recorder's letters are 0.6 of the font size wide; the smallest note is set at 26 pixels.
        expect(Number(x) + [...words!].length * 0.6 * 20).toBeLessThanOrEqual(width);
      }
      const all = texts.map((text) => /^text '(.*)' #/.exec(text)![1]).join(' ');
      expect(all).toContain('at full size.');
    });
  }

  it('stay where they are while another callout comes and goes', () => {
    const marks = [during(note('First.'), 0, 100), during(note('Second.'), 40, 60)];
    const first = (frame: number) => callsFor(marks, {}, frame).filter((call) => call.includes("'First.'"));
    expect(first(50)).toEqual(first(20));
    expect(first(80)).toEqual(first(20));
  });
});

describe('a label', () => {
  it('stands on the board, off the candidate that it names and off others in use', () => {
    for (const [candidate, others] of [
      ['1r1c1', []],
      ['9r9c9', ['5r9c8', '1r9c9']],
      ['5r5c5', ['5r4c5', '5r6c5']],
    ] as const) {
      const calls = callsFor([label(candidate, 'or here'), ...others.map((other) => circle(other))]);
      const card = drawnWith(calls, colours.card).find((group) => group.at(-1)!.startsWith('fill'));
      const [left, top, right, bottom] = boundsOf(card!);
      expect(Math.min(left, top)).toBeGreaterThanOrEqual(0);
      expect(Math.max(right, bottom)).toBeLessThanOrEqual(900);
      for (const each of [candidate, ...others]) {
        const [, digit, row, column] = /(\d)r(\d)c(\d)/.exec(each)!.map(Number);
        const x = (column! - 1) * 100 + 18 + ((digit! - 1) % 3) * 32;
        const y = (row! - 1) * 100 + 18 + Math.floor((digit! - 1) / 3) * 32;
        expect(x > left && x < right && y > top && y < bottom).toBe(false);
      }
    }
  });
});

it('a label stays where it is while other marks of its step come and go', () => {
  const marks = [
    during(label('5r5c5', 'here'), 0, 100),
    during(circle('5r4c5'), 40, 60),
    during(label('5r5c6', 'there'), 40, 60),
  ];
  const tag = (frame: number) => callsFor(marks, {}, frame).filter((call) => call.includes("'here'"));
  expect(tag(50)).toEqual(tag(20));
  expect(tag(80)).toEqual(tag(20));
});

function pointsOf(calls: readonly string[]): [number, number][] {
  return calls.flatMap((call): [number, number][] => {
    const [, x, y] = /^(?:move|line) (\S+) (\S+)$/.exec(call) ?? [];
    return x === undefined ? [] : [[Number(x), Number(y)]];
  });
}

/** The length of a head along its link: of a filled head its own, of an open one that of its arms' span. */
function headOf(calls: readonly string[], kind: 'strong' | 'weak'): number {
  const colour = kind === 'strong' ? colours.strong : colours.weak;
  const groups = drawnWith(calls, colour);
  if (kind === 'strong') {
    const head = groups.find(
      (group) => group.at(-1)!.startsWith('fill') && group.filter((call) => call.startsWith('line')).length === 3,
    )!;
    const [tip, one, , other] = pointsOf(head);
    return Math.hypot(tip![0] - (one![0] + other![0]) / 2, tip![1] - (one![1] + other![1]) / 2);
  }
  const [one, tip, other] = pointsOf(groups.at(-1)!).slice(-3);
  return Math.hypot(tip![0] - (one![0] + other![0]) / 2, tip![1] - (one![1] + other![1]) / 2);
}
