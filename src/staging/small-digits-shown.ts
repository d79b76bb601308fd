/**
 * Which small digits are on the board, and from when; until when depends on the board's state.
 *
 * With `candidates: all` every candidate from the first frame on; with `pencilled` those that a list wrote down
 * (`pencil`, or a place of `only`), from the frame of its item. An unproved list is shown only under the stamp of its
 * step.
 */

import type { CheckedConclusion, CheckedStep } from '../check/verdict.ts';
import type { Candidate } from '../grid/candidates.ts';
import { candidateAt, cellOf, digitOf, type Grid } from '../grid/grid.ts';
import { type Film, type Frame, frameAt } from '../timeline/film.ts';
import type { ScheduledStep } from '../timeline/schedule.ts';
import type { BoardState } from './board-state.ts';
import type { Pacing } from './pacing.ts';
import { listFrames } from './staged-conclusions.ts';

/** A span of frames in which a candidate would be drawn if it is still possible; `until` may be infinite. */
export interface Written {
  readonly from: Frame;
  readonly until: number;
}

export interface SmallDigits {
  readonly candidates: 'all' | 'pencilled' | 'none';
  /** By candidate, with `pencilled`. */
  readonly written: ReadonlyMap<Candidate, readonly Written[]>;
}

/** Every candidate that is open, from the first frame on. */
export const everySmallDigit: SmallDigits = { candidates: 'all', written: new Map() };

/** What the lists of these steps write down. */
export function smallDigitsOf(
  candidates: SmallDigits['candidates'],
  grid: Grid,
  pacing: Pacing,
  steps: readonly { readonly checked: CheckedStep; readonly times: ScheduledStep }[],
): SmallDigits {
  const written = new Map<Candidate, Written[]>();
  if (candidates !== 'pencilled') return { candidates, written };
  const write = (candidate: Candidate, from: Frame, until: number) => {
    written.set(candidate, [...(written.get(candidate) ?? []), { from, until }]);
  };
  for (const { checked, times } of steps) {
    const { step } = checked;
    if (step.fails) continue;
    for (const [item, { places }] of step.only.entries()) {
      for (const { digit, house, cells } of places) {
        const isAbout = (candidate: Candidate) =>
          digitOf(grid, candidate) === digit && house.cells.includes(cellOf(grid, candidate));
        const until = isProved(checked, 'only', item, isAbout) ? Number.POSITIVE_INFINITY : times.until;
        for (const cell of cells) write(candidateAt(grid, cell, digit), times.only[item] ?? times.from, until);
      }
    }
    for (const [item, { lists }] of step.pencil.entries()) {
      const frames = listFrames(pacing, checked, times, item);
      for (const [index, { cell, digits }] of lists.entries()) {
        const isProvedHere = isProved(checked, 'pencil', item, (candidate) => cellOf(grid, candidate) === cell);
        const until = isProvedHere ? Number.POSITIVE_INFINITY : times.until;
        for (const digit of digits) write(candidateAt(grid, cell, digit), frames[index]!, until);
      }
    }
  }
  return { candidates, written };
}

/** The first frame on which the candidate may be drawn small; undefined where it never is. */
export function smallDigitFrom({ candidates, written }: SmallDigits, candidate: Candidate): Frame | undefined {
  if (candidates === 'all') return frameAt(0);
  const froms = (written.get(candidate) ?? []).map(({ from }) => from);
  return froms.length === 0 ? undefined : frameAt(Math.min(...froms));
}

/** The small digits of the film: by candidate, those of one candidate in order and without overlaps. */
export function shownCandidates(small: SmallDigits, board: BoardState, frameCount: number): Film['candidates'] {
  if (small.candidates === 'none') return [];
  const { grid } = board;
  const all = grid.cells.flatMap((cell) => grid.digits.map((digit) => candidateAt(grid, cell, digit)));
  return all.flatMap((candidate) => {
    const spans =
      small.candidates === 'all'
        ? [{ from: frameAt(0), until: Number.POSITIVE_INFINITY }]
        : (small.written.get(candidate) ?? []);
    return joined(spans).flatMap(({ from, until }) => {
      const end = frameAt(Math.min(until, board.showsUntil(candidate), frameCount));
      return from < end ? [{ candidate, from, until: end }] : [];
    });
  });
}

function isProved(
  checked: CheckedStep,
  origin: CheckedConclusion['origin'],
  item: number,
  isAbout: (candidate: Candidate) => boolean,
): boolean {
  return checked.conclusions.every(
    ({ origin: other, item: otherItem, conclusion, verdict }) =>
      other !== origin ||
      otherItem !== item ||
      conclusion.kind !== 'impossible' ||
      !isAbout(conclusion.candidate) ||
      verdict === 'proved' ||
      verdict === 'redundant',
  );
}

/** Stretches that meet or overlap, as one. */
function joined(spans: readonly Written[]): Written[] {
  const joint: Written[] = [];
  for (const span of [...spans].sort((a, b) => a.from - b.from)) {
    const last = joint.at(-1);
    if (last === undefined || last.until < span.from) joint.push(span);
    else joint[joint.length - 1] = { from: last.from, until: Math.max(last.until, span.until) };
  }
  return joint;
}
