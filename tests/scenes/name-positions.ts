/**
 * Positions in which instances of names are looked for, of puzzles of our own making, each the same for the same seed.
 */
import { type Candidate, difference, has, membersOf, setOf } from '../../src/grid/candidates.ts';
import { countOf } from '../../src/grid/counting.ts';
import { cellOf, digitOf, gridOf } from '../../src/grid/grid.ts';
import { isPlaced } from '../../src/proof/is-placed.ts';
import { digitsIn, oneOf, type Position, placesIn, takeAsRead } from '../../src/proof/kernel.ts';
import { instancesOf } from '../../src/techniques/find-argument.ts';
import { type Chance, chanceFrom } from '../random.ts';
import { advanced, generatedPuzzle } from '../techniques/generated-positions.ts';

export interface Place {
  /** The seed of its puzzle. */
  readonly seed: number;
  readonly position: Position;
  /** Singles still to be made; none left; the same with false candidates taken away at random; nothing easy left. */
  readonly kind: 'singles' | 'open' | 'stuck' | 'thinned';
  /** How many candidates stand in the open cells. */
  readonly clutter: number;
}

/** Fewer open cells than this show little of a puzzle. */
const fewestCells = 14;

/** All places of the puzzles with these seeds, those with few candidates first. */
export function placesOf(seeds: readonly number[]): readonly Place[] {
  return seeds.flatMap((seed) => placesOfPuzzle(seed)).sort((a, b) => a.clutter - b.clutter);
}

function placesOfPuzzle(seed: number): Place[] {
  const chance = chanceFrom(seed);
  const grid = gridOf('3x3');
  const { position: start, solution } = generatedPuzzle(grid, chance);
  const places: Place[] = [];
  const keep = (position: Position, kind: Place['kind']) => {
    if (openCellsIn(position) >= fewestCells) places.push({ seed, position, kind, clutter: clutterOf(position) });
  };
  let reached = start;
  while (openCellsIn(reached) >= fewestCells) {
    const single = withSingles(reached, chance);
    if (single.halfway !== undefined) keep(single.halfway, 'singles');
    keep(single.reached, 'open');
    for (const percent of [50, 80, 100]) keep(thinned(single.reached, solution, { chance, percent }), 'thinned');
    reached = advanced(single.reached);
    keep(reached, 'stuck');
    const open = solution.filter((candidate) => !has(reached.placed, candidate));
    if (open.length > 0) reached = takeAsRead(reached, oneOf(grid, chance.pick(open)));
  }
  return places;
}

/** After singles alone, and a place on the way to there. */
function withSingles(
  position: Position,
  chance: Chance,
): { readonly halfway: Position | undefined; readonly reached: Position } {
  const way = [position];
  for (let reached: Position | undefined = position; reached !== undefined; ) {
    const last: Position = reached;
    reached = singleIn(last);
    if (reached !== undefined) way.push(reached);
  }
  return { halfway: way.length > 1 ? way[chance.below(way.length - 1)] : undefined, reached: way.at(-1)! };
}

function singleIn(position: Position): Position | undefined {
  for (const name of ['naked single', 'hidden single'] as const) {
    for (const { conclusions } of instancesOf(position, name)) return takeAsRead(position, conclusions[0]!);
  }
  return undefined;
}

/** Some of what is false taken away, as if by steps before, but so that no single comes about. */
function thinned(
  position: Position,
  solution: readonly Candidate[],
  { chance, percent }: { readonly chance: Chance; readonly percent: number },
): Position {
  const isFalse = membersOf(difference(position.possible, setOf(position.grid, solution)));
  let reached = position;
  for (const candidate of chance.shuffled(isFalse)) {
    if (chance.below(100) < percent && !makesSingle(reached, candidate)) {
      reached = takeAsRead(reached, { kind: 'impossible', candidate });
    }
  }
  return reached;
}

function makesSingle(position: Position, removed: Candidate): boolean {
  const { grid } = position;
  const cell = cellOf(grid, removed);
  const sets = [
    digitsIn(position, cell),
    ...grid.housesOf[cell]!.map((house) => placesIn(position, digitOf(grid, removed), house)),
  ];
  return sets.some((set) => countOf(set.members) < 3);
}

function openCellsIn(position: Position): number {
  return position.grid.cells.filter((cell) => !isPlaced(position, cell)).length;
}

function clutterOf(position: Position): number {
  return membersOf(position.possible).filter((candidate) => !isPlaced(position, cellOf(position.grid, candidate)))
    .length;
}
