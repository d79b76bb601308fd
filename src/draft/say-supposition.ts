/**
 * An argument presented by supposing the opposite: what the sets force, one after the other, until a digit has no place
 * left or a cell no digit. If forcing does not lead there, nothing is said.
 */
import { type Candidate, difference, has, isEmpty, membersOf, setOf } from '../grid/candidates.ts';
import { cellOf, digitOf } from '../grid/grid.ts';
import type { Conclusion } from '../grid/terms.ts';
import type { OneOf, Position } from '../proof/kernel.ts';
import { minimalPart } from '../techniques/minimal-argument.ts';
import type { Wording } from './wording.ts';

export interface Supposition {
  /** What follows, in order; empty if it clashes immediately. */
  readonly steps: readonly string[];
  readonly clash: string;
}

/** Longer than this is too hard to follow by ear. */
const mostSteps = 8;

/**
 * The conclusion denied and played out through the sets that it needs; undefined if that takes cases, or too many
 * steps.
 */
export function supposition(
  wording: Wording,
  position: Position,
  sets: readonly OneOf[],
  conclusion: Conclusion,
): Supposition | undefined {
  const needed = minimalPart(position, sets, conclusion);
  if (needed === undefined) return undefined;
  const { grid } = position;
  const isDenied = conclusion.kind === 'one-of' ? conclusion.candidates : setOf(grid, []);
  const open = new Map(needed.map((set) => [set, difference(set.members, isDenied)]));
  const steps: string[] = [];
  const suppose = (candidate: Candidate) => {
    for (const [set, members] of open) {
      if (has(members, candidate)) open.delete(set);
      else open.set(set, difference(members, grid.conflicts[candidate]!));
    }
  };
  if (conclusion.kind === 'impossible') suppose(conclusion.candidate);
  for (;;) {
    const empty = [...open].find(([, members]) => isEmpty(members));
    if (empty !== undefined) return { steps, clash: clashOf(wording, empty[0]) };
    const forced = [...open].find(([, members]) => membersOf(members).length === 1);
    if (forced === undefined || steps.length === mostSteps) return undefined;
    const [set, members] = forced;
    const candidate = membersOf(members)[0]!;
    steps.push(forcedInWords(wording, set, candidate));
    suppose(candidate);
    open.delete(set);
  }
}

function forcedInWords(wording: Wording, { source }: OneOf, candidate: Candidate): string {
  const { grid } = wording;
  const [cell, digit] = [cellOf(grid, candidate), digitOf(grid, candidate)];
  const slots = { cell: wording.cell(cell), digit: wording.digit(digit), 'a-digit': wording.aDigit(digit) };
  if (source.kind === 'places') {
    const { house } = source;
    return wording.part('force-place', {
      ...slots,
      house: wording.house(house),
      cell: wording.cellsWithin(house, [cell]),
    });
  }
  return wording.part('force-cell', slots);
}

function clashOf(wording: Wording, { source }: OneOf): string {
  switch (source.kind) {
    case 'cell':
      return wording.part('clash-cell', { cell: wording.cell(source.cell) });
    case 'places': {
      const digit = { digit: wording.digit(source.digit), 'a-digit': wording.aDigit(source.digit) };
      return wording.part('clash-place', { ...digit, house: wording.house(source.house) });
    }
    case 'guardians':
    case 'either':
      return wording.part('clash-deadly');
    default:
      return source satisfies never;
  }
}
