/** Proofs and positions carry what they assume: that the puzzle has one solution, and what was taken as read. */
import { describe, expect, it } from 'vitest';
import { membersOf, setOf } from '../../src/grid/candidates.ts';
import type { Conclusion } from '../../src/grid/terms.ts';
import { guardiansOf } from '../../src/proof/guardians.ts';
import { begin, digitsIn, eitherOf, oneOf, type Position, placesIn, takeAsRead } from '../../src/proof/kernel.ts';
import { at, deadly, grid, proofOf, reachedBy, rectangle, start, without } from './forgeries/forging.ts';

const isImpossible = (cell: number, digit: number): Conclusion => ({ kind: 'impossible', candidate: at(cell, digit) });
const row = (position: Position, digit: number, number: number) =>
  placesIn(position, grid.digits[digit - 1]!, grid.houses[number - 1]!);

describe('one solution', () => {
  it('is assumed by guardians, by what they prove, and by the position reached', () => {
    const { position, set, proof } = rectangle();
    expect([position.assumesOneSolution, set.assumesOneSolution, proof.assumesOneSolution]).toEqual([
      false,
      true,
      true,
    ]);
    expect(reachedBy(position, proof).assumesOneSolution).toBe(true);
    expect(membersOf(reachedBy(position, proof).goneByOneSolution)).toEqual([at(6, 1)]);
  });

  it('is assumed by an either/or that was proved from guardians, and by what is proved from it', () => {
    const { position, set } = rectangle();
    const either = proofOf(position, [set], { kind: 'one-of', candidates: setOf(grid, [at(6, 3), at(6, 4)]) });
    const later = reachedBy(position, either);
    const again = eitherOf(later, either);
    expect([either.assumesOneSolution, again.assumesOneSolution]).toEqual([true, true]);
    expect(proofOf(later, [again], isImpossible(6, 1)).assumesOneSolution).toBe(true);
  });

  it('is assumed by a proof from sets that have lost members to it, if they would not prove it otherwise', () => {
    const { position, proof, set } = rectangle();
    const second = proofOf(position, [set], isImpossible(6, 2));
    const reached = reachedBy(position, proof, second); // the cell has 3 alone
    expect(proofOf(reached, [digitsIn(reached, grid.cells[6]!)], oneOf(grid, at(6, 3))).assumesOneSolution).toBe(true);
    expect(digitsIn(reached, grid.cells[6]!).assumesOneSolution).toBe(false);
  });

  it('is not assumed by a proof that holds with those members too, nor by what other sets prove', () => {
    const { position, proof } = rectangle();
    const reached = reachedBy(position, proof);
    const [first, third] = [digitsIn(reached, grid.cells[0]!), digitsIn(reached, grid.cells[2]!)];
    expect(proofOf(reached, [first, third], isImpossible(1, 1)).assumesOneSolution).toBe(false);
    // The cell has lost its 1; that it holds 3, 2 or 1 is needed by nothing here.
    const beside = [first, third, digitsIn(reached, grid.cells[6]!)];
    expect(proofOf(reached, beside, isImpossible(1, 1)).assumesOneSolution).toBe(false);
    expect(proofOf(reached, beside, isImpossible(1, 1)).takenAsRead).toHaveLength(7);
  });

  it('no longer matters for a candidate that is taken as read to be impossible', () => {
    const { position, proof } = rectangle();
    const reached = takeAsRead(reachedBy(position, proof), isImpossible(6, 1));
    expect(membersOf(reached.goneByOneSolution)).toEqual([]);
  });

  it('is assumed by an either/or that stands because of it, and not by one that stands anyway', () => {
    const { position, set } = rectangle();
    const placed = reachedBy(position, proofOf(position, [set], oneOf(grid, at(6, 3))));
    const stands: Conclusion = { kind: 'one-of', candidates: setOf(grid, [at(6, 3), at(9, 3)]) };
    expect(eitherOf(placed, stands).assumesOneSolution).toBe(true);
    const given = without(begin(grid, [at(6, 3)], { oneSolution: true }), at(15, 1));
    expect(eitherOf(given, stands).assumesOneSolution).toBe(false);
  });

  it('is not assumed by an either/or of which one stands because of it and another anyway', () => {
    const { position, set } = rectangle();
    const placed = reachedBy(position, proofOf(position, [set], oneOf(grid, at(6, 3))));
    const both = takeAsRead(placed, oneOf(grid, at(9, 4)));
    const stands: Conclusion = { kind: 'one-of', candidates: setOf(grid, [at(6, 3), at(9, 4)]) };
    expect(eitherOf(both, stands).assumesOneSolution).toBe(false);
  });

  it('cannot be assumed where it may not be', () => {
    const position = begin(grid, [], { oneSolution: false });
    expect(guardiansOf(position, deadly)).toEqual({
      refused: 'no step may assume here that the puzzle has one solution',
    });
  });
});

describe('what was taken as read', () => {
  it('stands on every proof and position that comes after it, and on none before', () => {
    const cleared = without(start, at(1, 1), at(2, 1));
    const proof = proofOf(cleared, [row(cleared, 1, 1)], eitherEnds);
    expect(start.takenAsRead).toEqual([]);
    expect(proof.takenAsRead).toEqual([isImpossible(1, 1), isImpossible(2, 1)]);
    expect(reachedBy(cleared, proof).takenAsRead).toEqual(proof.takenAsRead);
  });
});

const eitherEnds: Conclusion = { kind: 'one-of', candidates: setOf(grid, [at(0, 1), at(3, 1)]) };
