/**
 * Arguments that no special shape stands behind, for names of which the tool itself finds the special kinds alone.
 */
import { has, membersOf } from '../../src/grid/candidates.ts';
import { countOf } from '../../src/grid/counting.ts';
import { columnOf, rowOf } from '../../src/grid/geometry.ts';
import { candidateAt, cellOf } from '../../src/grid/grid.ts';
import type { Conclusion, Deadly } from '../../src/grid/terms.ts';
import { guardiansOf } from '../../src/proof/guardians.ts';
import { isPlaced } from '../../src/proof/is-placed.ts';
import { digitsIn, type OneOf, type Position, placesIn, prove } from '../../src/proof/kernel.ts';
import { combinations } from '../../src/techniques/combinations.ts';
import { commonEnds } from '../../src/techniques/leading-to-one.ts';
import { minimalPart } from '../../src/techniques/minimal-argument.ts';
import type { Instance } from '../../src/techniques/technique.ts';

const mostMembers = 3;
const mostSets = 8;
/** How many nets are looked for in a position. */
const mostNets = 3;
const proofBound = 2_000;

/**
 * Nets of four to eight sets, each for one removal: what is left of all small sets of a position when those that the
 * removal does not need are taken away one after another.
 */
export function* findNets(position: Position): Generator<Instance> {
  const { grid } = position;
  const all: readonly OneOf[] = [
    ...grid.cells.map((cell) => digitsIn(position, cell)),
    ...grid.houses.flatMap((house) => grid.digits.map((digit) => placesIn(position, digit, house))),
  ];
  const small = all.filter((set) => countOf(set.members) > 1 && countOf(set.members) <= mostMembers);
  let left = mostNets;
  for (const candidate of membersOf(position.possible)) {
    if (left === 0) return;
    if (isPlaced(position, cellOf(grid, candidate))) continue;
    const conclusion: Conclusion = { kind: 'impossible', candidate };
    if (prove(position, small, conclusion, proofBound).kind !== 'proved') continue;
    const sets = minimalPart(position, small, conclusion);
    if (sets === undefined || sets.length < 4 || sets.length > mostSets) continue;
    left--;
    yield { sets, chain: undefined, deadly: undefined, conclusions: [conclusion] };
  }
}

/** Rectangles of two digits whose guardians, two to four, all lead to one removal by at most one strong link each. */
export function* findRectangleNets(position: Position): Generator<Instance> {
  for (const deadly of rectanglesIn(position)) {
    const guardians = guardiansOf(position, deadly);
    if ('refused' in guardians || countOf(guardians.members) < 2 || countOf(guardians.members) > 4) continue;
    for (const { conclusion, links } of commonEnds(position, membersOf(guardians.members), 1)) {
      if (conclusion.kind !== 'impossible' || links.length === 0) continue;
      const sets = minimalPart(position, [guardians, ...links], conclusion);
      if (sets?.includes(guardians)) yield { sets, chain: undefined, deadly, conclusions: [conclusion] };
    }
  }
}

/** Four open cells in two rows, two columns and two boxes that all have the same two digits, among others. */
function* rectanglesIn(position: Position): Generator<Deadly> {
  const { grid } = position;
  const open = grid.cells.filter((cell) => !isPlaced(position, cell));
  for (const [a, d] of combinations(open, 2)) {
    if (a === undefined || d === undefined) continue;
    if (rowOf(grid, a) === rowOf(grid, d) || columnOf(grid, a) === columnOf(grid, d)) continue;
    const corners = open.filter(
      (cell) =>
        [rowOf(grid, a), rowOf(grid, d)].includes(rowOf(grid, cell)) &&
        [columnOf(grid, a), columnOf(grid, d)].includes(columnOf(grid, cell)),
    );
    const boxes = new Set(corners.map((cell) => grid.housesOf[cell]!.find((house) => house.kind === 'box')));
    if (corners[0] !== a || corners.length !== 4 || boxes.size !== 2) continue;
    const shared = grid.digits.filter((digit) =>
      corners.every((cell) => has(position.possible, candidateAt(grid, cell, digit))),
    );
    for (const digits of combinations(shared, 2)) yield { kind: 'pattern', parts: [{ digits, cells: corners }] };
  }
}
