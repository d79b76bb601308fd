/**
 * An argument to be said, and what its sentences are filled with.
 */

import { membersOf, union } from '../grid/candidates.ts';
import { type Cell, cellOf, type Digit, digitOf, type HouseShape } from '../grid/grid.ts';
import type { OneOf, Position } from '../proof/kernel.ts';
import type { ArgumentName } from '../techniques/all-techniques.ts';
import type { Instance } from '../techniques/technique.ts';
import type { SentenceKey, TitleKey } from './sayings.ts';
import type { Slots, Wording } from './wording.ts';

export interface ToSay {
  readonly wording: Wording;
  readonly name: ArgumentName;
  readonly position: Position;
  readonly instance: Instance;
}

export interface SaidArgument {
  /** One or more sentences. */
  readonly say: string;
  readonly title: string;
}

/** The sentence and the title of one shape, from the same slots. */
export function said({ wording }: ToSay, key: SentenceKey, title: TitleKey, slots: Slots): SaidArgument {
  return { say: wording.sentence(key, slots), title: wording.title(title, slots) };
}

/** The digits and the cells of a set of candidates, ascending. */
export function cellsAndDigits(
  { wording: { grid } }: ToSay,
  sets: readonly OneOf[],
): { cells: Cell[]; digits: Digit[] } {
  const members = membersOf(sets.map((set) => set.members).reduce(union));
  const distinct = <T extends number>(all: readonly T[]) => [...new Set(all)].sort((a, b) => a - b);
  return {
    cells: distinct(members.map((candidate) => cellOf(grid, candidate))),
    digits: distinct(members.map((candidate) => digitOf(grid, candidate))),
  };
}

export function so({ wording, instance }: ToSay): string {
  return wording.conclusions(instance.conclusions);
}

export function aboutDigit({ wording }: ToSay, digit: Digit): Readonly<Record<'digit' | 'a-digit' | 'digits', string>> {
  return { digit: wording.digit(digit), 'a-digit': wording.aDigit(digit), digits: wording.digits(digit) };
}

export interface Places {
  readonly digit: Digit;
  readonly house: HouseShape;
  readonly members: OneOf['members'];
}

export function placesOf(sets: readonly OneOf[]): Places[] {
  return sets.flatMap(({ source, members }) =>
    source.kind === 'places' ? [{ digit: source.digit, house: source.house, members }] : [],
  );
}
