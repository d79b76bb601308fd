/**
 * Entailment is a question of satisfiability (Lynce & Ouaknine, "Sudoku as a SAT problem", 2006): a clause a set, a
 * binary clause a conflict, the conclusion denied. The oracle is logic-solver (MiniSat), from the npm registry: one
 * solver a grid, in which each set's clause is switched on by a variable of its own.
 */
import Logic from 'logic-solver';
import { type Candidate, membersOf } from '../../src/grid/candidates.ts';
import type { Grid } from '../../src/grid/grid.ts';

export interface Question {
  /** From each group at least one is true. */
  readonly groups: readonly (readonly Candidate[])[];
  readonly isTrue?: readonly Candidate[];
  readonly isFalse?: readonly Candidate[];
}

/** Answers whether everything asked can be so at once, without conflicts. */
export function satisfiabilityOn(grid: Grid): (question: Question) => boolean {
  const solver = new Logic.Solver();
  const named = (candidate: Candidate) => `x${candidate}`;
  for (const [candidate, conflicts] of grid.conflicts.entries()) {
    for (const other of membersOf(conflicts)) {
      if (candidate < other) solver.forbid(Logic.and(named(candidate as Candidate), named(other)));
    }
  }
  const clauses = new Set<string>();
  return ({ groups, isTrue = [], isFalse = [] }) => {
    if (groups.some((group) => group.length === 0)) return false;
    const switches = groups.map((group) => {
      const members = group.map(named);
      const name = `group ${members.join(' ')}`;
      if (!clauses.has(name)) solver.require(Logic.implies(name, Logic.or(...members)));
      clauses.add(name);
      return name;
    });
    const denied = isFalse.map((candidate) => `-${named(candidate)}`);
    return solver.solveAssuming(Logic.and(...switches, ...isTrue.map(named), ...denied)) !== null;
  };
}
