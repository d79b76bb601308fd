/**
 * What must hold of every film, over the lessons and over scenes of every kind with known reports, sound and unsound.
 */
import { existsSync, readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { filmOf } from '../../src/film/film-of.ts';
import { lastFullFrame } from '../../src/film/last-full-frame.ts';
import { type Candidate, type Candidates, difference, has, membersOf, setOf } from '../../src/grid/candidates.ts';
import { candidatesInCell, cellOf } from '../../src/grid/grid.ts';
import { defaultLook } from '../../src/picture/default-look.ts';
import type { Film } from '../../src/timeline/film.ts';
import { marksOf, type Told, tell } from './stage.ts';

const lessons = ['lamp-room', 'first-steps', 'mistaken', 'two-towers'].map((name) => `scenes/${name}`);
const kinds = [
  'all-01',
  'basic-01',
  'chains-01',
  'deadly-01',
  'either-01',
  'fails-01',
  'fish-01',
  'lists-01',
  'nets-01',
  'several-01',
  'size4-01',
  'size6-spoilt-01',
  'spoilt-apart-01',
  'spoilt-digit-01',
  'spoilt-disorder-01',
  'spoilt-fails-01',
  'spoilt-links-01',
  'spoilt-list-unproved-01',
  'spoilt-mixed-01',
  'spoilt-places-true-01',
  'spoilt-spent-01',
].map((name) => `tests/scenes/checks/${name}`);

const ways = [
  { draw: 'board', candidates: 'all' },
  { draw: 'writing', candidates: 'pencilled' },
  { draw: 'overlay', candidates: 'none' },
] as const;

function fullFrom(path: string): Told {
  const narration = existsSync(`${path}.vtt`) ? readFileSync(`${path}.vtt`, 'utf8') : undefined;
  return tell(readFileSync(`${path}.yaml`, 'utf8'), narration);
}

/** The same scene, drawn in another way. */
function drawn({ checked, schedule }: Told, way: (typeof ways)[number]): Film {
  const { scene } = checked;
  return filmOf({ ...checked, scene: { ...scene, video: { ...scene.video, ...way } } }, schedule, defaultLook);
}

/** The candidates of a position that stand small: those of cells without a digit. */
function smallDigits({ grid }: Film, possible: Candidates, placed: Candidates): Candidate[] {
  const filled = membersOf(placed).flatMap((candidate) => candidatesInCell(grid, cellOf(grid, candidate)));
  return membersOf(difference(possible, setOf(grid, filled)));
}

describe.each([...lessons, ...kinds])('%s', (path) => {
  const told = fullFrom(path);
  const { checked, schedule } = told;
  const films = ways.map((way) => drawn(told, way));
  const [board, writing, overlay] = films as [Film, Film, Film];

  test('everything is on screen for at least a frame of the film, marks in order', () => {
    for (const film of films) {
      const things = [film.marks, film.written, film.candidates, film.headings].flat();
      for (const { from, until } of things) {
        expect(Number.isInteger(from) && Number.isInteger(until)).toBe(true);
        expect(from).toBeGreaterThanOrEqual(0);
        expect(from).toBeLessThan(until);
        expect(until).toBeLessThanOrEqual(film.frameCount);
      }
      expect(film.marks.map(({ from }) => from)).toEqual(film.marks.map(({ from }) => from).sort((a, b) => a - b));
    }
  });

  test('at the start of each step the board shows exactly the position that was proved by then', () => {
    for (const [index, { step, possibleBefore, placedBefore }] of checked.steps.entries()) {
      const { from } = schedule.steps[index]!;
      // A position reached on the film's last edge is never seen.
      if (from >= board.frameCount) continue;
      // A step may begin with a digit on its first frame; what it takes away then is not counted as missing.
      const after = checked.steps[index + 1];
      const position = smallDigits(board, possibleBefore, placedBefore);
      const left = after === undefined ? [] : smallDigits(board, after.possibleBefore, after.placedBefore);
      const shown = board.candidates.flatMap(({ candidate, ...small }) =>
        small.from <= from && from < small.until ? [candidate] : [],
      );
      expect(
        shown.filter((candidate) => !position.includes(candidate)),
        step.id,
      ).toEqual([]);
      expect(
        left.filter((candidate) => !shown.includes(candidate)),
        step.id,
      ).toEqual([]);
      const digits = [...board.standing, ...board.written.filter((digit) => digit.from <= from)].map(
        ({ cell }) => cell,
      );
      for (const placed of membersOf(placedBefore)) expect(digits, step.id).toContain(cellOf(board.grid, placed));
    }
  });

  test('digits are written once, as they were proved, and stay', () => {
    const proved = checked.steps.flatMap(({ step, conclusions }) =>
      conclusions.flatMap(({ conclusion, verdict }) => {
        const placed = conclusion.kind === 'one-of' ? membersOf(conclusion.candidates) : [];
        return verdict === 'proved' && !step.fails && placed.length === 1 ? placed : [];
      }),
    );
    for (const film of [board, writing]) {
      const written = film.written.map(({ cell, digit }) => cell * film.grid.size + digit - 1);
      expect(written.sort((a, b) => a - b)).toEqual([...new Set(proved)].sort((a, b) => a - b));
      expect(film.written.every(({ until }) => until === film.frameCount)).toBe(true);
    }
  });

  test('no mark outlives its candidate', () => {
    const until = new Map(board.candidates.map((small) => [small.candidate, small.until]));
    for (const { shape, ...mark } of board.marks) {
      const about =
        shape.kind === 'circle' || shape.kind === 'strike'
          ? [shape.candidate]
          : shape.kind === 'link'
            ? [...shape.from, ...shape.to]
            : shape.kind === 'label' && shape.candidate !== undefined
              ? [shape.candidate]
              : [];
      for (const candidate of about) expect(mark.until).toBeLessThanOrEqual(until.get(candidate) ?? 0);
    }
  });

  test('links and strikes that are not proved stand under the stamp of their step alone', () => {
    for (const film of films) {
      for (const { step: id, from, until, shape } of film.marks) {
        const { step, links, conclusions } = checked.steps.find((each) => each.step.id === id)!;
        const holds =
          shape.kind === 'link'
            ? links.some(
                (link) =>
                  link.holds &&
                  shape.from.every((end) => link.fromCandidates.includes(end)) &&
                  shape.to.every((end) => link.toCandidates.includes(end)),
              )
            : shape.kind === 'strike'
              ? conclusions.some(
                  ({ conclusion, verdict }) =>
                    verdict === 'proved' &&
                    conclusion.kind === 'impossible' &&
                    conclusion.candidate === shape.candidate,
                )
              : shape.kind === 'place'
                ? conclusions.some(
                    ({ conclusion, verdict }) =>
                      verdict === 'proved' &&
                      conclusion.kind === 'one-of' &&
                      has(conclusion.candidates, candidatesInCell(film.grid, shape.cell)[shape.digit - 1]!),
                  )
                : true;
        if (holds) continue;
        expect(step.fails, `${id} draws ${shape.kind}`).toBe(false);
        const stamp = film.marks.find((mark) => mark.step === id && mark.shape.kind === 'stamp');
        expect(stamp !== undefined && stamp.from <= from && until <= stamp.until, `${id} draws ${shape.kind}`).toBe(
          true,
        );
      }
    }
  });

  test('stamped is what is not sound, for all its frames, and nothing else', () => {
    const due = checked.steps.flatMap(({ step, sound }, index) => {
      const { from, until } = schedule.steps[index]!;
      return sound || from >= until ? [] : [`${step.id} ${from}-${until}`];
    });
    for (const film of films) {
      const stamps = film.marks.filter(({ shape }) => shape.kind === 'stamp');
      expect(stamps.map(({ step, from, until }) => `${step} ${from}-${until}`)).toEqual(due);
    }
  });

  test('over a recording no digit is drawn, small or large', () => {
    expect([overlay.written, overlay.candidates]).toEqual([[], []]);
  });

  test('the frame that shows a step whole lies in it', () => {
    for (const film of films) {
      for (const { id, from, until } of schedule.steps) {
        if (from >= until) continue;
        const frame = lastFullFrame(film, id, defaultLook);
        expect(frame).toBeGreaterThanOrEqual(from);
        expect(frame).toBeLessThan(until);
      }
    }
  });

  test('told again it is the same film', () => {
    expect(drawn(told, ways[0])).toEqual(board);
  });
});

describe('the lamp room', () => {
  const told = fullFrom('scenes/lamp-room');
  const rows: readonly { readonly step: string; readonly kinds: string }[] = [
    { step: 'sixes', kinds: 'outline circle*2 strike*2' },
    { step: 'places', kinds: 'focus circle*4' },
    { step: 'kite', kinds: 'outline link*3 strike' },
    { step: 'lists', kinds: 'outline fill' },
    { step: 'quad', kinds: 'fill strike*4' },
    { step: 'tail', kinds: 'circle*2 link*5 strike' },
    { step: 'lamps', kinds: 'fill link*7 strike' },
    { step: 'towers', kinds: 'circle*4 outline label*2 strike*2' },
    { step: 'line', kinds: 'link*9 circle*2 strike*2' },
    { step: 'light', kinds: 'place*3' },
    { step: 'home', kinds: 'place*44' },
  ];

  test.each(rows)('$step shows all its marks, in order', ({ step, kinds: expected }) => {
    const runs: { kind: string; count: number }[] = [];
    for (const { shape } of told.film.marks.filter((mark) => mark.step === step)) {
      const last = runs.at(-1);
      if (last?.kind === shape.kind) last.count++;
      else runs.push({ kind: shape.kind, count: 1 });
    }
    expect(runs.map(({ kind, count }) => (count === 1 ? kind : `${kind}*${count}`)).join(' ')).toBe(expected);
  });

  test('a beat begins on the frame on which its words are said', () => {
    // "here" of "can go here or here" has the stamp 00:00:40.920 on "can": 40.920 s at 30000/1001 is frame 1226.37, nearest 1226.
    expect(marksOf(told, 'places')[1]).toBe('1226-1481 circle 5r7c1 @blue0');
  });

  test('ends with every digit on the board and no small one', () => {
    expect(told.film.standing.length + told.film.written.length).toBe(81);
    expect(told.film.candidates.filter(({ until }) => until === told.film.frameCount)).toEqual([]);
  });
});
