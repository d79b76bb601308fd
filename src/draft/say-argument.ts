/**
 * What is said of an argument: by the shape that its name stands for, else along its chain, else by supposing the opposite.
 */
import { type Candidate, countOf, membersOf, union } from '../grid/candidates.ts';
import { type Cell, cellOf, type Digit, digitOf, type HouseShape, sharedHouses } from '../grid/grid.ts';
import type { Conclusion } from '../grid/terms.ts';
import type { OneOf, Position } from '../proof/kernel.ts';
import { type FishKinds, fishAgainst } from '../techniques/fish-shape.ts';
import type { Instance } from '../techniques/technique.ts';
import { chainInWords } from './say-chain.ts';
import { supposition } from './say-supposition.ts';
import type { SentenceKey, TitleKey } from './sayings.ts';
import type { Slots, Wording } from './wording.ts';

export interface Told {
  readonly wording: Wording;
  /** In canonical spelling. */
  readonly name: string;
  readonly position: Position;
  readonly instance: Instance;
}

export interface SaidArgument {
  /** One sentence or a few. */
  readonly say: string;
  readonly title: string;
}

/** An argument in words. */
export function argumentInWords(told: Told): SaidArgument {
  return byShape(told) ?? byChain(told) ?? bySupposition(told) ?? byCases(told);
}

function byShape(told: Told): SaidArgument | undefined {
  const { name } = told;
  if (lockedNames.includes(name)) return lockedInWords(told);
  if (/^(naked|locked) (pair|triple|quad)$/.test(name)) return nakedSubset(told);
  if (/^hidden (pair|triple|quad)$/.test(name)) return hiddenSubset(told);
  if (/(X-wing|swordfish|jellyfish)$/.test(name)) return fishInWords(told);
  if (name === 'skyscraper') return twoStrings(told, 'skyscraper');
  if (name === 'two-string kite') return twoStrings(told, 'kite');
  if (name === 'XY-wing' || name === 'XYZ-wing') return xyWing(told);
  if (told.instance.deadly !== undefined) return deadlyInWords(told);
  return undefined;
}

const lockedNames: readonly string[] = [
  'pointing pair',
  'pointing triple',
  'claiming',
  'box-line reduction',
  'locked candidates',
];

/** The sentence and the title of one shape, from the same slots. */
function said({ wording }: Told, key: SentenceKey, title: TitleKey, slots: Slots): SaidArgument {
  return { say: wording.sentence(key, slots), title: wording.title(title, slots) };
}

/** The digits and the cells of a set of candidates, ascending. */
function cellsAndDigits({ wording: { grid } }: Told, sets: readonly OneOf[]): { cells: Cell[]; digits: Digit[] } {
  const members = membersOf(sets.map((set) => set.members).reduce(union));
  const distinct = <T extends number>(all: readonly T[]) => [...new Set(all)].sort((a, b) => a - b);
  return {
    cells: distinct(members.map((candidate) => cellOf(grid, candidate))),
    digits: distinct(members.map((candidate) => digitOf(grid, candidate))),
  };
}

function so({ wording, instance }: Told): string {
  return wording.conclusions(instance.conclusions);
}

function aboutDigit({ wording }: Told, digit: Digit): Readonly<Record<'digit' | 'a-digit' | 'digits', string>> {
  return { digit: wording.digit(digit), 'a-digit': wording.aDigit(digit), digits: wording.digits(digit) };
}

function lockedInWords(told: Told): SaidArgument | undefined {
  const { wording, instance } = told;
  const source = instance.sets[0]?.source;
  const [removed] = removedBy(told);
  if (source?.kind !== 'places' || removed === undefined) return undefined;
  const { cells } = cellsAndDigits(told, instance.sets);
  const other = sharedHouses(wording.grid, [...cells, removed]).find((house) => house !== source.house);
  if (other === undefined) return undefined;
  const houses = { house: wording.house(source.house), other: wording.house(other) };
  return said(told, 'locked', 'of-locked', { ...aboutDigit(told, source.digit), ...houses, so: so(told) });
}

function removedBy({ wording: { grid }, instance }: Told): Cell[] {
  return instance.conclusions.flatMap((each) => (each.kind === 'impossible' ? [cellOf(grid, each.candidate)] : []));
}

function nakedSubset(told: Told): SaidArgument | undefined {
  const { wording, instance } = told;
  if (instance.sets.some((set) => set.source.kind !== 'cell')) return undefined;
  const { cells, digits } = cellsAndDigits(told, instance.sets);
  const isPair = cells.length === 2;
  return said(told, isPair ? 'naked-pair' : 'naked-subset', isPair ? 'of-naked-pair' : 'of-naked-subset', {
    cells: wording.cells(cells),
    count: wording.number(cells.length),
    digits: wording.all(digits.map(wording.digit)),
    so: so(told),
  });
}

function hiddenSubset(told: Told): SaidArgument | undefined {
  const { wording, instance } = told;
  const houses = placesOf(instance.sets).map(({ house }) => house);
  if (houses.length !== instance.sets.length || houses.some((house) => house !== houses[0])) return undefined;
  const { cells, digits } = cellsAndDigits(told, instance.sets);
  return said(told, 'hidden-subset', 'of-hidden-subset', {
    house: wording.house(houses[0]!),
    cells: wording.cellsWithin(houses[0]!, cells),
    count: wording.number(cells.length),
    digits: wording.all(digits.map(wording.digit)),
    so: so(told),
  });
}

interface Places {
  readonly digit: Digit;
  readonly house: HouseShape;
  readonly members: OneOf['members'];
}

function placesOf(sets: readonly OneOf[]): Places[] {
  return sets.flatMap(({ source, members }) =>
    source.kind === 'places' ? [{ digit: source.digit, house: source.house, members }] : [],
  );
}

const lines: readonly FishKinds[] = [
  { bases: ['row'], covers: ['column'] },
  { bases: ['column'], covers: ['row'] },
];

function fishInWords(told: Told): SaidArgument | undefined {
  const { wording, instance } = told;
  const removal = instance.conclusions.find((each) => each.kind === 'impossible');
  const bases = instance.sets.flatMap((set) => {
    const [places] = placesOf([set]);
    return places === undefined ? [] : [{ ...places, set }];
  });
  if (removal?.kind !== 'impossible' || bases.length !== instance.sets.length) return undefined;
  const [fish] = fishAgainst(wording.grid, bases, removal.candidate, lines);
  if (fish === undefined) return undefined;
  const slots = {
    ...aboutDigit(told, fish.digit),
    bases: wording.houses(fish.bases.map(({ house }) => house)),
    covers: wording.houses(fish.covers),
    fins: wording.cells([...fish.fins].sort((a, b) => a - b)),
    so: so(told),
  };
  return said(told, fish.fins.length === 0 ? 'fish' : 'finned-fish', 'of-fish', slots);
}

/** Two houses with two places each, one of each in a house that they share. */
function twoStrings(told: Told, key: 'skyscraper' | 'kite'): SaidArgument | undefined {
  const { wording, instance } = told;
  const { grid } = wording;
  const [first, second, ...others] = placesOf(instance.sets);
  if (first === undefined || second === undefined || others.length > 0) return undefined;
  if (countOf(first.members) !== 2 || countOf(second.members) !== 2) return undefined;
  const own = [first.house, second.house];
  const joints = membersOf(first.members).flatMap((a) =>
    membersOf(second.members).flatMap((b) =>
      sharedHouses(grid, [cellOf(grid, a), cellOf(grid, b)]).filter((house) => !own.includes(house) && a !== b),
    ),
  );
  const link = key === 'kite' ? joints.find(({ kind }) => kind === 'box') : joints.find(({ kind }) => kind !== 'box');
  if (link === undefined) return undefined;
  const houses = { house: wording.house(first.house), other: wording.house(second.house), link: wording.house(link) };
  return said(told, key, 'of-strings', { ...aboutDigit(told, first.digit), ...houses, so: so(told) });
}

/** A cell of two digits that sees two others, each of which shares one of them; or of three, with the one that all share. */
function xyWing(told: Told): SaidArgument | undefined {
  const { wording, instance } = told;
  const { grid } = wording;
  const cells = instance.sets.map((set) => {
    const { cells: own, digits } = cellsAndDigits(told, [set]);
    return { cell: own[0]!, digits, kind: set.source.kind };
  });
  const [removal] = instance.conclusions;
  if (cells.length !== 3 || cells.some(({ kind }) => kind !== 'cell')) return undefined;
  if (removal?.kind !== 'impossible') return undefined;
  const shared = digitOf(grid, removal.candidate);
  const ofThree = cells.find(({ digits }) => digits.length === 3);
  const pivot = ofThree ?? cells.find(({ digits }) => !digits.includes(shared));
  const pincers = cells.filter((each) => each !== pivot && each.digits.length === 2 && each.digits.includes(shared));
  const [digit, otherDigit] = pivot?.digits.filter((each) => each !== shared) ?? [];
  const pincer = pincers.find(({ digits }) => digit !== undefined && digits.includes(digit));
  const otherPincer = pincers.find(({ digits }) => otherDigit !== undefined && digits.includes(otherDigit));
  if (pivot === undefined || digit === undefined || otherDigit === undefined) return undefined;
  if (pincer === undefined || otherPincer === undefined) return undefined;
  return said(told, ofThree === undefined ? 'xy-wing' : 'xyz-wing', 'of-wing', {
    pivot: wording.cell(pivot.cell),
    digit: wording.aDigit(digit),
    'other-digit': wording.aDigit(otherDigit),
    pincer: wording.cell(pincer.cell),
    'other-pincer': wording.cell(otherPincer.cell),
    'shared-digit': wording.aDigit(shared),
    so: so(told),
  });
}

function deadlyInWords(told: Told): SaidArgument | undefined {
  const { wording, instance } = told;
  const { deadly } = instance;
  const guardians = instance.sets.find((set) => set.source.kind === 'guardians');
  if (deadly === undefined || guardians === undefined) return undefined;
  if (deadly.kind === 'grid') {
    const { cells } = cellsAndDigits(told, [guardians]);
    return said(told, 'grave', 'of-grave', { guardians: wording.cells(cells), so: so(told) });
  }
  const cells = deadly.parts.flatMap((part) => part.cells);
  const digits = deadly.parts.flatMap((part) => part.digits);
  const slots = {
    cells: wording.cells([...new Set(cells)].sort((a, b) => a - b)),
    digits: wording.all([...new Set(digits)].sort((a, b) => a - b).map(wording.digit)),
    so: so(told),
  };
  const isOneCell = cellsAndDigits(told, [guardians]).cells.length === 1 && instance.sets.length === 1;
  const played = isOneCell ? undefined : playedOut(told);
  if (played !== undefined && played.steps !== '')
    return said(told, 'deadly-suppose', 'of-deadly', { ...played, ...slots });
  return said(told, isOneCell ? 'rectangle' : 'deadly', 'of-deadly', slots);
}

function byChain(told: Told): SaidArgument | undefined {
  const { wording, instance } = told;
  const links = instance.chain === undefined ? undefined : chainInWords(wording, instance.chain);
  if (links === undefined) return undefined;
  if (instance.chain?.loop === true) return said(told, 'loop', 'of-loop', { links, so: so(told) });
  const places = placesOf(instance.sets);
  const [first] = places;
  const isOneDigit = places.length === instance.sets.length && places.every(({ digit }) => digit === first?.digit);
  if (first === undefined || !isOneDigit) return said(told, 'chain', 'of-chain', { links, so: so(told) });
  return said(told, 'chain', 'of-digit-chain', { ...aboutDigit(told, first.digit), links, so: so(told) });
}

/** The first conclusion denied and played out; the others fall in the same way. */
function bySupposition(told: Told): SaidArgument | undefined {
  const played = playedOut(told);
  if (played === undefined) return undefined;
  const [first, ...others] = told.instance.conclusions;
  const isAtOnce = played.steps === '';
  if (first?.kind === 'one-of') return said(told, isAtOnce ? 'suppose-not-at-once' : 'suppose-not', 'of-cases', played);
  const key = isAtOnce ? 'suppose-at-once' : others.length === 0 ? 'suppose' : 'suppose-others';
  return said(told, key, 'of-supposition', played);
}

function playedOut(told: Told): Slots | undefined {
  const { wording, position, instance } = told;
  const [first] = instance.conclusions;
  const candidate = first === undefined ? undefined : theOne(first);
  const played = first === undefined ? undefined : supposition(wording, position, instance.sets, first);
  if (candidate === undefined || played === undefined) return undefined;
  return {
    cell: wording.cell(cellOf(wording.grid, candidate)),
    'a-digit': wording.aDigit(digitOf(wording.grid, candidate)),
    steps: wording.inTurn(played.steps),
    clash: played.clash,
    so: so(told),
  };
}

function theOne(conclusion: Conclusion): Candidate | undefined {
  if (conclusion.kind === 'impossible') return conclusion.candidate;
  const [only, ...others] = membersOf(conclusion.candidates);
  return others.length === 0 ? only : undefined;
}

function byCases(told: Told): SaidArgument {
  const { wording, name } = told;
  return said(told, 'cases', 'of-cases', { name: wording.nameOf(name), so: so(told) });
}
