/**
 * How a step without `show` draws its argument: the ground, then the sets and links in order, then what they say
 * together.
 */
import type { Argument, ArgumentSet, CheckedStep } from '../check/verdict.ts';
import { type Candidate, has, membersOf } from '../grid/candidates.ts';
import { countOf } from '../grid/counting.ts';
import { type Cell, candidateAt, cellOf, digitOf, type Grid, type HouseShape } from '../grid/grid.ts';
import { printSet } from '../grid/notation/print.ts';
import type { Step } from '../scene/scene.ts';
import { chainsOf } from './chain-ends.ts';
import { fishHousesOf } from './fish-houses.ts';
import { drawableLinks } from './links.ts';
import { reachedBy } from './reaches.ts';
import { ascending, cellsOf, houseOfSet } from './set-houses.ts';
import { reasonsOfSingle } from './single-reasons.ts';
import type { StagedMark } from './staged-beat.ts';

/** What the eye is drawn to first: a deadly pattern; the house of a single; the cells of the sets. */
export function groundMarks(grid: Grid, checked: CheckedStep): StagedMark[] {
  const { step, argument } = checked;
  const deadly = step.deadly?.value;
  const pattern = deadly?.kind === 'pattern' ? deadly.parts.flatMap((part) => part.cells) : [];
  const houses = argument.sets.flatMap((set) => reasonsOfSingle(grid, checked, set)?.houses ?? []);
  return [
    ...(pattern.length === 0 ? [] : [outlined(ascending(pattern))]),
    ...[...new Set(houses)].map((house) => houseLine(house)),
    ...filled(groundCells(grid, checked)),
  ];
}

function groundCells(grid: Grid, checked: CheckedStep): Cell[] {
  const { step, argument, placedBefore } = checked;
  // A grid of pairs is deadly as a whole: it concerns everything that is still open.
  if (step.deadly?.value.kind === 'grid') {
    const placed = new Set(cellsOf(grid, membersOf(placedBefore)));
    return grid.cells.filter((cell) => !placed.has(cell));
  }
  // The houses of a fish are drawn, one after another, and its places circled; tints would add nothing.
  if (fishHousesOf(grid, checked) !== undefined) return [];
  // In a false step, the named sets are tinted one after another instead.
  const tinted = argument.sets.filter((set) => !step.fails || isOfLinks(grid, step, set));
  return cellsOf(
    grid,
    tinted.flatMap((set) => membersOf(set.members)),
  );
}

/**
 * The strokes of the argument, each a list of marks that come together: the named or found sets, then the links; the
 * sets of links are drawn as links. In a false step the sets are tinted, so that circles remain for the choice that
 * breaks it.
 */
export function argumentStrokes(grid: Grid, checked: CheckedStep): StagedMark[][] {
  const { step, argument } = checked;
  const named = argument.sets.filter((set) => !isOfLinks(grid, step, set));
  if (step.fails)
    return [...named.map((set) => filled(cellsOf(grid, membersOf(set.members)))), ...linkStrokes(checked)];
  const fish = fishHousesOf(grid, checked);
  const sets = named.flatMap((set): StagedMark[][] => {
    // A single's house is ground; and with too many houses, the eye would see none.
    const base = named.length > mostHouses || countOf(set.members) === 1 ? undefined : houseOfSet(grid, set);
    const circles = circled(membersOf(set.members));
    return [...reasonStrokes(grid, checked, set), base === undefined ? circles : [houseLine(base), ...circles]];
  });
  const covers = fish === undefined ? [] : [fish.covers.map((house) => houseLine(house, 'dashed'))];
  return [...sets, ...covers, ...linkStrokes(checked)];
}

const mostHouses = 4;

/** What comes before the only candidate of a set is circled. */
function reasonStrokes(grid: Grid, checked: CheckedStep, set: ArgumentSet): StagedMark[][] {
  const reasons = reasonsOfSingle(grid, checked, set);
  if (reasons !== undefined) {
    const sights = reasons.sights.map((sight): StagedMark[] => [{ kind: 'sight', sights: [sight] }]);
    return [...sights, ...(reasons.seen.length === 0 ? [] : [filled(reasons.seen)])];
  }
  const [extra, ...others] = membersOf(set.members);
  if (checked.step.deadly?.value.kind !== 'grid' || extra === undefined || others.length > 0) return [];
  return onceTooOften(grid, checked, extra).map((house) => [
    houseLine(house),
    ...circled(placesOf(grid, checked, extra, house)),
  ]);
}

/** The houses in which the digit of the one candidate beyond a grid of pairs has a third place. */
function onceTooOften(grid: Grid, checked: CheckedStep, extra: Candidate): HouseShape[] {
  return grid.housesOf[cellOf(grid, extra)]!.filter((house) => placesOf(grid, checked, extra, house).length > 2);
}

function placesOf(grid: Grid, { possibleBefore }: CheckedStep, candidate: Candidate, house: HouseShape): Candidate[] {
  return house.cells
    .map((cell) => candidateAt(grid, cell, digitOf(grid, candidate)))
    .filter((each) => has(possibleBefore, each));
}

/** Whether the set belongs to a link of the step's chains, and is therefore drawn as that link. */
function isOfLinks(grid: Grid, step: Step, { name }: ArgumentSet): boolean {
  if (step.chains.length === 0 || name.startsWith('deadly ')) return false;
  return !step.from.some(({ value }) => printSet(grid, value) === name);
}

/** One stroke for each link that may be drawn. */
function linkStrokes(checked: CheckedStep): StagedMark[][] {
  const ranges = checked.step.chains.flatMap((chain, index) =>
    chain.value.links.map((_, link) => ({ chain: index + 1, first: link + 1, last: link + 1 })),
  );
  return ranges
    .filter((range) => drawableLinks(checked, [range]).length > 0)
    .map((range): StagedMark[] => [{ kind: 'link', links: [range] }]);
}

/** What the argument says, this end or that end: the ends of each chain that proves one of them true, circled. */
export function sayingMarks(checked: CheckedStep): StagedMark[] {
  if (checked.step.fails) return [];
  return chainsOf(checked)
    .filter(({ saysEither }) => saysEither)
    .flatMap(({ first, last }) => circled([...first, ...last]));
}

/**
 * From where each removal is seen. If it is seen along one house, that house is drawn, dashed like what an argument
 * clears; otherwise the lines to each removal are a separate stroke.
 */
export function reachStrokes(grid: Grid, checked: CheckedStep): StagedMark[][] {
  if (checked.step.fails) return [];
  const reached = reachedBy(grid, checked);
  const houses = [...new Set(reached.flatMap(({ house }) => house ?? []))];
  const lines = reached.filter(({ reaches }) => reaches.length > 0);
  return [
    ...(houses.length === 0 ? [] : [houses.map((house) => houseLine(house, 'dashed'))]),
    ...lines.map(({ reaches }): StagedMark[] => [{ kind: 'reach', reaches }]),
  ];
}

/** The sets and links of an item of a cascade, together. */
export function itemArgumentMarks(grid: Grid, { sets, links }: Argument): StagedMark[] {
  const members = [...new Set(sets.flatMap((set) => membersOf(set.members)))];
  const drawn = links.filter((link) => link.holds);
  return [
    ...filled(cellsOf(grid, members)),
    ...(drawn.length === 0 ? circled(members) : [{ kind: 'arrows', links: drawn } as const]),
  ];
}

export function circled(candidates: readonly Candidate[]): StagedMark[] {
  return candidates.length === 0 ? [] : [{ kind: 'circle', targets: [{ kind: 'candidates', candidates }] }];
}

function filled(cells: readonly Cell[]): StagedMark[] {
  return cells.length === 0 ? [] : [{ kind: 'fill', targets: [{ kind: 'cells', cells }] }];
}

function outlined(cells: readonly Cell[]): StagedMark {
  return { kind: 'outline', targets: [{ kind: 'cells', cells }] };
}

function houseLine(house: HouseShape, line: 'solid' | 'dashed' = 'solid'): StagedMark {
  return { kind: 'outline', targets: [{ kind: 'house', house }], line };
}
