/**
 * What the forgeries have in common. They do what the types forbid, as a caller without scruples would, and a forgery
 * counts as refused if it throws or changes nothing.
 *
 * Out of scope: replacing parts of the language itself (`Object.freeze`, `WeakMap.prototype.get`, `Array.prototype`).
 * Whoever can do so can replace the kernel too.
 */
import { expect, it } from 'vitest';
import { type Candidate, membersOf, setOf } from '../../../src/grid/candidates.ts';
import { candidateAt, gridOf } from '../../../src/grid/grid.ts';
import type { Conclusion, Deadly } from '../../../src/grid/terms.ts';
import { guardiansOf } from '../../../src/proof/guardians.ts';
import {
  after,
  begin,
  digitsIn,
  type OneOf,
  type Outcome,
  type Position,
  type Proof,
  prove,
  takeAsRead,
} from '../../../src/proof/kernel.ts';

export type Forgery = readonly [attack: string, isBelieved: () => boolean];

/** One test a forgery; the names are counted by whoever counts forgeries. */
export function refusesAll(forgeries: readonly Forgery[]): void {
  it.each(forgeries)('refused: %s', (_, isBelieved) => {
    expect(isBelieved()).toBe(false);
  });
}

export const grid = gridOf('2x2');
export const start = begin(grid, [], { oneSolution: true });
/** The cell counted from 0, the digit from 1. */
export const at = (cell: number, digit: number) => candidateAt(grid, grid.cells[cell]!, grid.digits[digit - 1]!);
export const firstCell = grid.cells[0]!;
/** 1 in the first cell, which nothing ever proves here. */
export const one = at(0, 1);
export const onlyOne: Conclusion = { kind: 'one-of', candidates: setOf(grid, [one]) };
export const oneOrTwo: Conclusion = { kind: 'one-of', candidates: setOf(grid, [at(0, 1), at(0, 2)]) };

export function without(position: Position, ...gone: readonly Candidate[]): Position {
  return gone.reduce((reached, candidate) => takeAsRead(reached, { kind: 'impossible', candidate }), position);
}

/** A position in which the first cell has 1 and 2, its set, and the proof that it has one of them. */
export function pair(): { position: Position; cell: OneOf; proof: Proof } {
  const position = without(start, at(0, 3), at(0, 4));
  const cell = digitsIn(position, firstCell);
  return { position, cell, proof: proofOf(position, [cell], oneOrTwo) };
}

export function proofOf(position: Position, sets: readonly OneOf[], conclusion: Conclusion): Proof {
  const outcome = prove(position, sets, conclusion);
  if (outcome.kind !== 'proved') throw new Error(outcome.kind);
  return outcome.proof;
}

export const reachedBy = (position: Position, ...proofs: readonly Proof[]) => after(position, proofs);

export const deadly = {
  kind: 'pattern',
  parts: [{ digits: grid.digits.slice(0, 2), cells: [0, 2, 4, 6].map((cell) => grid.cells[cell]!) }],
} as const satisfies Deadly;

/** The corners of a rectangle have 1 and 2 alone, but for the last, which has 3 besides: its guardian. */
export function rectangle(): { position: Position; set: OneOf; proof: Proof } {
  const position = without(start, at(0, 3), at(0, 4), at(2, 3), at(2, 4), at(4, 3), at(4, 4), at(6, 4));
  const set = guardiansOf(position, deadly);
  if ('refused' in set) throw new Error(set.refused);
  return { position, set, proof: proofOf(position, [set], { kind: 'impossible', candidate: at(6, 1) }) };
}

/** The value by whatever type is asked for. */
export const passed = <T>(value: unknown): T => value as T;

/** Writes onto it as `Object.assign` does, whether it likes it or not. */
export function assign(target: object, values: object): void {
  for (const [key, value] of Object.entries(values)) Reflect.set(target, key, value);
}

/** Whether 1 came to stand in the first cell, or 2 to be impossible there. */
export function isFooled(act: () => Position): boolean {
  return succeeds(
    act,
    ({ placed, possible }) => membersOf(placed).includes(one) || !membersOf(possible).includes(at(0, 2)),
  );
}

/** Whether it is said to be proved. */
export function isProved(act: () => Outcome): boolean {
  return succeeds(act, ({ kind }) => kind === 'proved');
}

/** Whether the act goes through, and what it makes is as `then` has it. */
export function succeeds<T>(act: () => T, then: (made: T) => boolean = () => true): boolean {
  try {
    return then(act());
  } catch {
    return false;
  }
}

/** A list that holds others once it was gone through, or looked into, as often as this. */
export function turningList<T>(first: readonly T[], second: readonly T[], times: number): T[] {
  let asked = 0;
  return new Proxy([...first], {
    get(target, key) {
      if (key === Symbol.iterator) return () => (asked++ < times ? first : second)[Symbol.iterator]();
      return Reflect.get(asked >= times ? second : target, key);
    },
  });
}

/** A thing whose property has its first value as often as this, and then its second. */
export function turningProperty<T>(base: object, key: string, first: unknown, second: unknown, times: number): T {
  let asked = 0;
  const get = () => (asked++ < times ? first : second);
  return passed<T>(Object.defineProperty({ ...base }, key, { enumerable: true, get }));
}
