/**
 * Boards with further rules, made as tables from an ordinary one.
 */
import { type Candidate, membersOf, setOf } from '../../src/grid/candidates.ts';
import { columnOf, rowOf } from '../../src/grid/geometry.ts';
import {
  type Cell,
  candidateAt,
  candidatesInCell,
  cellOf,
  digitOf,
  type Grid,
  type House,
  type HouseShape,
} from '../../src/grid/grid.ts';

/** The grid with more houses of `size` cells each. */
export function withHouses(grid: Grid, more: readonly (readonly number[])[]): Grid {
  const houses: HouseShape[] = [...grid.houses];
  for (const cells of more) {
    const number = houses.length as House;
    houses.push({
      house: number,
      kind: 'box',
      number: number + 1,
      name: `b${number + 1}`,
      cells: cells.map((cell) => grid.cells[cell]!),
    });
  }
  const housesOf = grid.cells.map((cell) => houses.filter((house) => house.cells.includes(cell)));
  const peers = grid.cells.map((cell) => {
    const all = new Set<Cell>(housesOf[cell]!.flatMap((house) => house.cells));
    return [...all].filter((other) => other !== cell).sort((a, b) => a - b);
  });
  const conflicts = grid.conflicts.map((own, index) => {
    const candidate = index as Candidate;
    const copies = peers[cellOf(grid, candidate)]!.map((peer) => candidateAt(grid, peer, digitOf(grid, candidate)));
    return setOf(grid, [...membersOf(own), ...copies]);
  });
  return { ...grid, houses, housesOf, peers, conflicts };
}

/** The grid with more conflicts: between digits `a` and `b` of two cells so far apart, by columns and rows. */
export function withConflicts(
  grid: Grid,
  clash: (across: number, down: number, a: number, b: number) => boolean,
): Grid {
  const all = grid.cells.flatMap((cell) => candidatesInCell(grid, cell));
  const isClash = (one: Candidate, other: Candidate) => {
    const [a, b] = [cellOf(grid, one), cellOf(grid, other)];
    const across = Math.abs(columnOf(grid, a) - columnOf(grid, b));
    const down = Math.abs(rowOf(grid, a) - rowOf(grid, b));
    return clash(across, down, digitOf(grid, one), digitOf(grid, other));
  };
  const conflicts = all.map((one) =>
    setOf(grid, [...membersOf(grid.conflicts[one]!), ...all.filter((other) => isClash(one, other))]),
  );
  return { ...grid, conflicts };
}
