/**
 * Solutions by two general libraries of the npm registry that know nothing of grids: dancing-links (exact cover,
 * Knuth, "Dancing Links", arXiv:cs/0011047) and logic-solver (MiniSat). What they are told comes from the grid's tables.
 */
import { DancingLinks } from 'dancing-links';
import Logic from 'logic-solver';
import { type Candidate, type Candidates, has, membersOf } from '../../src/grid/candidates.ts';
import { candidatesInCell, candidatesInHouse, cellOf, digitOf, type Grid } from '../../src/grid/grid.ts';

/** Up to `most` solutions of the possible candidates, each as its candidates in order. */
export type Oracle = (possible: Candidates, most: number) => Candidate[][];

/** A column for each cell and for each digit of each house: a solution covers each exactly once. */
export function exactCoverOn(grid: Grid): Oracle {
  const dancingLinks = new DancingLinks<Candidate>();
  const columnsOf = (candidate: Candidate) => {
    const cell = cellOf(grid, candidate);
    const ofDigit = grid.cellCount + (digitOf(grid, candidate) - 1) * grid.houses.length;
    return [cell, ...grid.housesOf[cell]!.map(({ house }) => ofDigit + house)];
  };
  const columns = Array.from({ length: grid.candidateCount }, (_, index) => columnsOf(index as Candidate));
  return (possible, most) => {
    const solver = dancingLinks.createSolver({ columns: grid.cellCount + grid.size * grid.houses.length });
    for (const candidate of membersOf(possible)) solver.addSparseConstraint(candidate, columns[candidate]!);
    return solver.find(most).map((rows) => rows.map((row) => row.data).sort((a, b) => a - b));
  };
}

/**
 * A variable for each candidate; at least one true in each cell and for each digit of each house, no two in conflict
 * (Lynce & Ouaknine, "Sudoku as a SAT problem", 2006, the extended encoding). One solver a grid, which keeps what it
 * has learnt; what is not possible is assumed false, and a solution found is forbidden for the same question alone.
 */
export function satisfiabilityOn(grid: Grid): Oracle {
  const solver = new Logic.Solver();
  const named = (candidate: Candidate) => `x${candidate}`;
  const all = grid.cells.flatMap((cell) => candidatesInCell(grid, cell));
  for (const cell of grid.cells) solver.require(Logic.or(...candidatesInCell(grid, cell).map(named)));
  for (const house of grid.houses) {
    for (const digit of grid.digits) solver.require(Logic.or(...candidatesInHouse(grid, digit, house).map(named)));
  }
  for (const candidate of all) {
    for (const other of membersOf(grid.conflicts[candidate]!)) {
      if (candidate < other) solver.require(Logic.or(`-${named(candidate)}`, `-${named(other)}`));
    }
  }
  let questions = 0;
  return (possible, most) => {
    const question = `question ${questions++}`;
    const impossible = all.filter((candidate) => !has(possible, candidate)).map((candidate) => `-${named(candidate)}`);
    const assumed = Logic.and(question, ...impossible);
    const found: Candidate[][] = [];
    while (found.length < most) {
      const solution = solver.solveAssuming(assumed);
      if (solution === null) return found;
      const isTrue = solution.getMap();
      const candidates = all.filter((candidate) => isTrue[named(candidate)]);
      found.push(candidates);
      solver.require(Logic.or(`-${question}`, ...candidates.map((candidate) => `-${named(candidate)}`)));
    }
    return found;
  };
}
