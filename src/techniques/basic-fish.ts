/** Basic and finned fish in a position: lines of one direction covered by lines of the other, seen as rows of bits. */
import { type Candidate, has } from '../grid/candidates.ts';
import { bitsIn } from '../grid/counting.ts';
import { type Cell, candidateAt, type Digit, type HouseShape } from '../grid/grid.ts';
import { isPlaced } from '../proof/is-placed.ts';
import { type Position, placesIn } from '../proof/kernel.ts';
import { combinations } from './combinations.ts';
import { basicKinds, type CaughtFish, type FishSearch } from './fish-shape.ts';
import { digitsWanted } from './removals.ts';
import type { PlacesSet } from './set-reading.ts';

/** A base line; bit `i` of `places` stands for the cell that it shares with cover line `i`. */
interface BaseLine {
  readonly set: PlacesSet;
  readonly places: number;
}

interface Lines {
  readonly bases: readonly BaseLine[];
  readonly covers: readonly HouseShape[];
}

/** Fish without fins. */
export function* findBasicFish({ position, size, wanted }: FishSearch): Generator<CaughtFish> {
  for (const digit of digitsWanted(position.grid, wanted)) {
    for (const { bases, covers } of linesOf(position, digit)) {
      const few = bases.filter((base) => bitsIn(base.places) <= size);
      for (const chosen of combinations(few, size)) {
        const all = chosen.reduce((places, base) => places | base.places, 0);
        if (bitsIn(all) !== size) continue;
        const own = covers.filter((_, index) => ((all >> index) & 1) === 1);
        const removed = possibleIn(
          position,
          digit,
          own.flatMap((cover) => cover.cells),
          chosen,
        );
        if (removed.length > 0) yield { fish: fishOf(digit, chosen, own, []), removed };
      }
    }
  }
}

/** Fish with fins in one box, which also contains what is removed. */
export function* findFinnedFish({ position, size, wanted }: FishSearch): Generator<CaughtFish> {
  const boxes = position.grid.houses.filter((house) => house.kind === 'box');
  for (const digit of digitsWanted(position.grid, wanted)) {
    for (const lines of linesOf(position, digit)) {
      for (const chosen of combinations(lines.bases, size)) {
        const all = chosen.reduce((places, base) => places | base.places, 0);
        if (bitsIn(all) <= size) continue;
        for (const box of boxes) yield* finnedIn(position, digit, lines, chosen, all, box);
      }
    }
  }
}

function* finnedIn(
  position: Position,
  digit: Digit,
  { covers }: Lines,
  chosen: readonly BaseLine[],
  all: number,
  box: HouseShape,
): Generator<CaughtFish> {
  const size = chosen.length;
  const outside = chosen.reduce((places, base) => places | placesOutside(base, box), 0);
  if (bitsIn(outside) > size || bitsIn(outside) === bitsIn(all)) return;
  const inside = covers.map((_, index) => index).filter((index) => (((all & ~outside) >> index) & 1) === 1);
  for (const more of combinations(inside, size - bitsIn(outside))) {
    const own = covers.filter((_, index) => ((outside >> index) & 1) === 1 || more.includes(index));
    const inBox = own.flatMap((cover) => cover.cells.filter((cell) => box.cells.includes(cell)));
    const removed = possibleIn(position, digit, inBox, chosen);
    if (removed.length === 0) continue;
    const fins = chosen.flatMap((base) =>
      base.set.house.cells.filter(
        (cell, index) => ((base.places >> index) & 1) === 1 && !own.some((cover) => cover.cells.includes(cell)),
      ),
    );
    yield { fish: fishOf(digit, chosen, own, fins), removed };
  }
}

function linesOf(position: Position, digit: Digit): Lines[] {
  const { grid } = position;
  return basicKinds.map((kinds) => {
    const bases = grid.houses
      .filter((house) => kinds.bases.includes(house.kind) && !holds(position, digit, house))
      .map((house): BaseLine => {
        const { members } = placesIn(position, digit, house);
        const places = house.cells.reduce(
          (bits, cell, index) => (has(members, candidateAt(grid, cell, digit)) ? bits | (1 << index) : bits),
          0,
        );
        return { set: { digit, house, members }, places };
      });
    return {
      bases: bases.filter((base) => bitsIn(base.places) > 1),
      covers: grid.houses.filter((house) => kinds.covers.includes(house.kind)),
    };
  });
}

function holds(position: Position, digit: Digit, house: HouseShape): boolean {
  return house.cells.some((cell) => has(position.placed, candidateAt(position.grid, cell, digit)));
}

function placesOutside(base: BaseLine, box: HouseShape): number {
  return base.set.house.cells.reduce(
    (bits, cell, index) => (box.cells.includes(cell) ? bits & ~(1 << index) : bits),
    base.places,
  );
}

/** The digit's candidates in these cells, outside the bases. */
function possibleIn(position: Position, digit: Digit, cells: readonly Cell[], bases: readonly BaseLine[]): Candidate[] {
  return cells
    .filter((cell) => !bases.some((base) => base.set.house.cells.includes(cell)) && !isPlaced(position, cell))
    .map((cell) => candidateAt(position.grid, cell, digit))
    .filter((candidate) => has(position.possible, candidate));
}

function fishOf(
  digit: Digit,
  chosen: readonly BaseLine[],
  covers: readonly HouseShape[],
  fins: readonly Cell[],
): CaughtFish['fish'] {
  return { digit, bases: chosen.map((base) => base.set), covers, fins };
}
