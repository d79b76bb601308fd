/**
 * Singles. Naked: the cell has one digit left. Hidden: the digit has one place left in a house. Full house: the last
 * open cell of a house, seen either way.
 *
 * The named set distinguishes naked from hidden: a cell, or the places of a digit. The single may also remove what sees
 * it.
 */
import { type Candidate, membersOf } from '../grid/candidates.ts';
import { countOf } from '../grid/counting.ts';
import { type Cell, cellOf, type HouseShape } from '../grid/grid.ts';
import { isPlaced } from '../proof/is-placed.ts';
import { digitsIn, type Position, placesIn } from '../proof/kernel.ts';
import { fits } from './recognition.ts';
import { placementOf, plainInstance } from './removals.ts';
import { type Instance, type Recognition, type Shape, technique } from './technique.ts';

export const fullHouse = technique({
  name: 'full house',
  plural: 'full houses',
  otherNames: [],
  family: 'singles',
  kindOf: ['naked single'],
  teaching: { place: 10, cost: 'free' },
  isOffered: true,
  phrase: 'step by step',
  page: { under: 'Singles', shows: 'placement' },
  recognise: recogniseFullHouse,
  find: findFullHouses,
});

export const nakedSingle = technique({
  name: 'naked single',
  plural: 'naked singles',
  otherNames: [],
  family: 'singles',
  kindOf: [],
  teaching: { place: 30, cost: 'free' },
  isOffered: true,
  phrase: 'step by step',
  page: { under: 'Singles', shows: 'placement' },
  recognise: (shape) => recogniseSingle(shape, 'cell'),
  find: findNakedSingles,
});

export const hiddenSingle = technique({
  name: 'hidden single',
  plural: 'hidden singles',
  otherNames: [],
  family: 'singles',
  kindOf: [],
  teaching: { place: 20, cost: 'free' },
  isOffered: true,
  phrase: 'step by step',
  page: { under: 'Singles', shows: 'placement' },
  recognise: (shape) => recogniseSingle(shape, 'places'),
  find: findHiddenSingles,
});

function recogniseSingle(shape: Shape, kind: 'cell' | 'places'): Recognition {
  return singleOf(shape) !== undefined && shape.sets[0]!.source.kind === kind ? fits : undefined;
}

function recogniseFullHouse(shape: Shape): Recognition {
  const single = singleOf(shape);
  if (single === undefined) return undefined;
  const { grid } = shape.position;
  const cell = cellOf(grid, single);
  return grid.housesOf[cell]!.some((house) => isLastCell(shape.position, cell, house)) ? fits : undefined;
}

/** The only candidate of the only set. */
function singleOf({ sets }: Shape): Candidate | undefined {
  const [set, ...others] = sets;
  if (set === undefined || others.length > 0) return undefined;
  return countOf(set.members) === 1 ? membersOf(set.members)[0] : undefined;
}

function isLastCell(position: Position, cell: Cell, house: HouseShape): boolean {
  return house.cells.every((other) => other === cell || isPlaced(position, other));
}

function* findFullHouses(position: Position): Generator<Instance> {
  const shown = new Set<Cell>();
  for (const house of position.grid.houses) {
    const [cell, ...others] = house.cells.filter((each) => !isPlaced(position, each));
    if (cell === undefined || others.length > 0 || shown.has(cell)) continue;
    shown.add(cell);
    yield* nakedAt(position, cell);
  }
}

function* findNakedSingles(position: Position): Generator<Instance> {
  for (const cell of position.grid.cells) if (!isPlaced(position, cell)) yield* nakedAt(position, cell);
}

function* nakedAt(position: Position, cell: Cell): Generator<Instance> {
  const set = digitsIn(position, cell);
  const [only, ...others] = membersOf(set.members);
  if (only !== undefined && others.length === 0) yield plainInstance([set], [placementOf(position.grid, only)]);
}

/** Those in boxes first, as they are the easiest to see. */
function* findHiddenSingles(position: Position): Generator<Instance> {
  const { grid } = position;
  const shown = new Set<Candidate>();
  const boxesFirst = [...grid.houses].sort((a, b) => Number(b.kind === 'box') - Number(a.kind === 'box'));
  for (const house of boxesFirst) {
    for (const digit of grid.digits) {
      const set = placesIn(position, digit, house);
      const [only, ...others] = membersOf(set.members);
      if (only === undefined || others.length > 0 || shown.has(only) || isPlaced(position, cellOf(grid, only)))
        continue;
      shown.add(only);
      yield plainInstance([set], [placementOf(grid, only)]);
    }
  }
}
