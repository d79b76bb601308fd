import { describe, expect, it } from 'vitest';
import { digestOf, drawingAt } from '../../src/frames/drawing.ts';
import { runsOf } from '../../src/frames/runs.ts';
import { defaultLook } from '../../src/picture/default-look.ts';
import { fraction } from '../../src/scene/fraction.ts';
import { type Film, frameAt } from '../../src/timeline/film.ts';
import { drawn, inkBox } from './drawn.ts';
import {
  ask,
  circle,
  clash,
  during,
  fill,
  film,
  focus,
  ghost,
  houseLine,
  label,
  link,
  type MarkWish,
  note,
  opens,
  outline,
  place,
  reach,
  sight,
  stamp,
  strike,
} from './films.ts';

/** One mark of each kind. */
const everyKind: readonly (readonly [string, MarkWish])[] = [
  ['fill', fill('r5c5', 0)],
  ['circle', circle('5r5c5', 0)],
  ['dashed circle', circle('5r5c5', 2)],
  ['strong link', link('strong', '5r5c5', '5r5c9')],
  ['weak link', link('weak', '5r5c5', '5r9c5')],
  ['link in a cell', link('strong', '5r5c5', '6r5c5')],
  ['grouped link', link('strong', '5r5c12', '5r9c23')],
  ['strike', strike('5r5c5')],
  ['place', place('r5c5=5')],
  ['outline', outline('r456c456')],
  ['label', label('5r5c5', 'here')],
  ['note', note('Two places are left.')],
  ['ask', ask('Where can it go?')],
  ['focus', focus('r5c5')],
  ['sight', sight('r5c5', 'r5c6789')],
  ['sight along a diagonal', sight('r5c5', 'r6c6 r7c7', 'diagonal')],
  ['reach', reach('5r5c5', '5r5c9')],
  ['what opens', opens('5r5c5')],
  ['house of a cover', houseLine('r123456789c5', 'dashed', 0)],
  ['ghost', ghost('5r5c5', true)],
  ['clash', clash('5r5c5', '5r5c9')],
  ['stamp', stamp('one: the link is broken')],
];

const board = [{ from: frameAt(0), shape: { kind: 'square', left: 12, top: 12, side: 162 } }] as const;

describe('a mark of each kind has ink on its first frame, and none before it or on its last', () => {
  for (const [name, mark] of everyKind) {
    for (const [rate, named] of [
      [fraction(25), '25'],
      [fraction(30000, 1001), '30000/1001'],
      [fraction(60), '60'],
    ] as const) {
      it(`${name} at ${named}`, () => {
        const shown = film({ width: 384, height: 216, draw: 'overlay', board, rate, marks: [during(mark, 10, 70)] });
        const hasInk = (frame: number) => inkBox(drawn(shown, frame)) !== undefined;
        expect([9, 10, 69, 70].map(hasInk)).toEqual([false, true, true, false]);
      });
    }
  }

  it('even where a mark lasts for one frame', () => {
    for (const [name, mark] of everyKind) {
      const shown = film({ width: 384, height: 216, draw: 'overlay', board, marks: [during(mark, 10, 11)] });
      const hasInk = (frame: number) => inkBox(drawn(shown, frame)) !== undefined;
      expect([name, ...[9, 10, 11].map(hasInk)]).toEqual([name, false, true, false]);
    }
  });
});

describe('a mark is whole after its motion and until its going', () => {
  const { motion } = defaultLook;
  const rows: readonly (readonly [string, MarkWish, number])[] = [
    ['fill', fill('r5c5'), motion.fill],
    ['circle', circle('5r5c5'), motion.circle],
    ['strike', strike('5r5c5'), motion.strike],
    ['focus', focus('r5c5'), motion.focus],
  ];
  for (const [name, mark, seconds] of rows) {
    it(name, () => {
      const shown = film({ rate: fraction(60), marks: [during(mark, 0, 90)] });
      const frames = Math.round(seconds * 60);
      const inkAt = (frame: number) => drawingAt(shown, defaultLook, frameAt(frame)).marks[0];
      expect(inkAt(frames - 2)?.progress).toBeLessThan(1);
      expect(inkAt(frames - 1)).toEqual({ index: 0, progress: 1, alpha: 1 });
      // Nine frames of 60 are the 0.15 s of a fade: the last whole one is the tenth before the end.
      expect(inkAt(80)).toEqual({ index: 0, progress: 1, alpha: 1 });
      expect(inkAt(81)?.alpha).toBeLessThan(1);
    });
  }

  it('and never goes back on its way, but for the beats of a clash', () => {
    for (const [, mark] of everyKind) {
      const shown = film({ marks: [during(mark, 0, 60)] });
      const progress = Array.from(
        { length: 60 },
        (_, frame) => drawingAt(shown, defaultLook, frameAt(frame)).marks[0]!,
      );
      for (let frame = 1; frame < 60; frame++) {
        const whole = (at: number) => Math.min(1, progress[at]!.progress);
        expect(whole(frame)).toBeGreaterThanOrEqual(whole(frame - 1));
        expect(progress[frame]!.alpha).toBeLessThanOrEqual(progress[frame - 1]!.alpha);
      }
    }
  });

  it('and stays to the end of a film that ends before it goes', () => {
    const shown = film({ frameCount: 50, marks: [during(circle('5r5c5'), 0, 50)] });
    expect(drawingAt(shown, defaultLook, frameAt(49)).marks[0]?.alpha).toBe(1);
  });
});

describe('runs', () => {
  const busy = film({
    frameCount: 200,
    heading: { title: 'Two towers' },
    candidates: true,
    written: ['r1c1=1'],
    board: [
      { from: frameAt(0), shape: { kind: 'hidden' } },
      { from: frameAt(120), shape: { kind: 'square', left: 0, top: 0, side: 900 } },
    ],
    marks: [
      during(circle('5r5c5'), 10, 60),
      during(link('weak', '5r5c5', '5r5c9'), 30, 140),
      during(note('Look.'), 58, 61),
    ],
  });

  it('cover the film without gaps, and tell still frames from moving ones', () => {
    const runs = runsOf(busy, defaultLook);
    expect(runs[0]?.from).toBe(0);
    expect(runs.at(-1)?.until).toBe(200);
    runs.slice(1).forEach((run, index) => {
      expect(run.from).toBe(runs[index]!.until);
    });
    for (const run of runs) {
      const digests = new Set(digestsBetween(busy, run.from, run.until));
      if (run.kind === 'still') expect(digests.size).toBe(1);
    }
    expect(runs.filter((run) => run.kind === 'still').length).toBeGreaterThan(4);
  });

  it('miss no change: every frame that differs from the one before it begins a run or lies in a moving one', () => {
    const runs = runsOf(busy, defaultLook);
    const digests = digestsBetween(busy, 0, 200);
    for (let frame = 1; frame < 200; frame++) {
      if (digests[frame] === digests[frame - 1]) continue;
      const run = runs.find((each) => each.from <= frame && frame < each.until)!;
      expect([frame, run.from === frame || run.kind === 'moving']).toEqual([frame, true]);
    }
  });
});

it('two drawings are equal exactly if their digests are', () => {
  const shown = film({ marks: [during(circle('5r5c5'), 3, 40), during(fill('r1c1'), 20, 60)] });
  const drawings = Array.from({ length: 70 }, (_, frame) => drawingAt(shown, defaultLook, frameAt(frame)));
  const byDigest = new Set(drawings.map(digestOf));
  const byContent = new Set(drawings.map((drawing) => JSON.stringify(drawing)));
  expect(byDigest.size).toBe(byContent.size);
  expect(byDigest.size).toBeGreaterThan(8);
});

function digestsBetween(shown: Film, from: number, until: number): string[] {
  return Array.from({ length: until - from }, (_, index) =>
    digestOf(drawingAt(shown, defaultLook, frameAt(from + index))),
  );
}

describe('a clash beats twice, slowly, and then stands', () => {
  const at = { width: 384, height: 216, board, frameCount: 200 } as const;
  const swelling = (shown: Film, look = defaultLook) =>
    Array.from({ length: 200 }, (_, frame) => drawingAt(shown, look, frameAt(frame)).marks[0]?.progress ?? 0);
  const peaksOf = (values: readonly number[]) =>
    values.flatMap((value, frame) =>
      value > 1 && value > values[frame - 1]! && value >= values[frame + 1]! ? [frame] : [],
    );

  it('a second apart, in frames that stand still afterwards', () => {
    const shown = film({ ...at, marks: [during(clash('5r5c5', '5r5c9'), 10, 200)] });
    const [first, second, ...more] = peaksOf(swelling(shown));
    expect(more).toEqual([]);
    expect(second! - first!).toBe(25);
    const last = runsOf(shown, defaultLook).at(-1)!;
    expect(last.kind).toBe('still');
    expect(last.until - last.from).toBeGreaterThan(100);
  });

  it('as often as there is time for', () => {
    const standing = (until: number) => peaksOf(swelling(film({ ...at, marks: [during(clash('5r5c5'), 10, until)] })));
    expect([30, 55, 100].map((until) => standing(until).length)).toEqual([0, 1, 2]);
  });

  it('not at all where nothing moves', () => {
    const still = { ...defaultLook, motion: { ...defaultLook.motion, come: 'faded' as const } };
    expect(peaksOf(swelling(film({ ...at, marks: [clash('5r5c5')] }), still))).toEqual([]);
  });
});
