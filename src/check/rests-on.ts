/**
 * Which earlier steps a failure depends on: the claim is evaluated again as if the conclusions that did not enter the
 * position had entered. If it then holds, it rests on those steps; the smallest sufficient selection is named.
 */
import { type Candidates, has, overlaps } from '../grid/candidates.ts';
import { candidateAt, candidatesInCell } from '../grid/grid.ts';
import type { Conclusion } from '../grid/terms.ts';
import { type Position, takeAsRead } from '../proof/kernel.ts';
import type { Eithers } from './argument.ts';
import { type Claim, type Evaluated, evaluate } from './claim.ts';

/** A conclusion of an earlier step that did not enter the position. */
export interface Failure {
  readonly step: string;
  readonly conclusion: Conclusion;
  readonly isFalse: boolean;
}

/**
 * The steps without whose failures `holds` would be true of the claim, in scene order; empty if it fails on its own.
 * Unproved conclusions are supposed first; false ones only if that is not enough.
 */
export function stepsRestedOn(
  position: Position,
  claim: Claim,
  eithers: Eithers,
  failures: readonly Failure[],
  holds: (evaluated: Evaluated) => boolean,
): string[] {
  for (const supposed of [failures.filter((failure) => !failure.isFalse), failures]) {
    const holdsWith = (steps: ReadonlySet<string>) => {
      const chosen = supposed.filter((failure) => steps.has(failure.step));
      const evaluated = evaluateSupposing(position, claim, eithers, chosen);
      return evaluated !== undefined && holds(evaluated);
    };
    const steps = new Set(supposed.map((failure) => failure.step));
    if (steps.size === 0 || !holdsWith(steps)) continue;
    for (const step of [...steps]) {
      steps.delete(step);
      if (!holdsWith(steps)) steps.add(step);
    }
    const order = supposed.map((failure) => failure.step);
    return [...steps].sort((a, b) => order.indexOf(a) - order.indexOf(b));
  }
  return [];
}

/** Whether its links hold and nothing else is wrong with the argument. */
export function isUnbroken({ argument }: Evaluated): boolean {
  return argument.faults.length === 0 && argument.links.every((link) => link.holds);
}

/** The claim in a position that takes these conclusions as read; undefined if they contradict the position. */
function evaluateSupposing(
  position: Position,
  claim: Claim,
  eithers: Eithers,
  supposed: readonly Failure[],
): Evaluated | undefined {
  const reached = supposed.reduce((at, { conclusion }) => takeAsRead(at, conclusion), position);
  if (!hasRoomForAll(reached, reached.possible)) return undefined;
  const withSupposed = new Map(eithers);
  for (const { step, conclusion } of supposed) if (conclusion.kind === 'one-of') withSupposed.set(step, conclusion);
  const possible = [...withSupposed.values()].every((either) => {
    const conclusion = 'conclusion' in either ? either.conclusion : either;
    return conclusion.kind === 'one-of' && overlaps(conclusion.candidates, reached.possible);
  });
  return possible ? evaluate(reached, claim, withSupposed) : undefined;
}

function hasRoomForAll({ grid }: Position, possible: Candidates): boolean {
  const cellsOpen = grid.cells.every((cell) =>
    candidatesInCell(grid, cell).some((candidate) => has(possible, candidate)),
  );
  return (
    cellsOpen &&
    grid.houses.every((house) =>
      grid.digits.every((digit) => house.cells.some((cell) => has(possible, candidateAt(grid, cell, digit)))),
    )
  );
}
