/**
 * What is said of an argument by the shape that its name denotes: locked candidates, subsets, fish, wings.
 */
import { membersOf } from '../grid/candidates.ts';
import { countOf } from '../grid/counting.ts';
import { sharedHouses } from '../grid/geometry.ts';
import { type Cell, cellOf, digitOf } from '../grid/grid.ts';
import { techniqueNamed } from '../techniques/all-techniques.ts';
import { type FishKinds, fishAgainst } from '../techniques/fish-shape.ts';
import { aboutDigit, cellsAndDigits, placesOf, type SaidArgument, said, so, type ToSay } from './said-argument.ts';

/** Undefined for an argument that has no sentence of its own, or does not have the shape that its name denotes. */
export function byShape(argument: ToSay): SaidArgument | undefined {
  const { phrase } = techniqueNamed(argument.name);
  switch (phrase) {
    case 'locked':
      return lockedInWords(argument);
    case 'naked subset':
      return nakedSubset(argument);
    case 'hidden subset':
      return hiddenSubset(argument);
    case 'fish':
      return fishInWords(argument);
    case 'skyscraper':
    case 'kite':
      return twoStrings(argument, phrase);
    case 'XY-wing':
      return xyWing(argument);
    case 'step by step':
      return undefined;
    default:
      return phrase satisfies never;
  }
}

function lockedInWords(argument: ToSay): SaidArgument | undefined {
  const { wording, instance } = argument;
  const source = instance.sets[0]?.source;
  const [removed] = removedBy(argument);
  if (source?.kind !== 'places' || removed === undefined) return undefined;
  const { cells } = cellsAndDigits(argument, instance.sets);
  const other = sharedHouses(wording.grid, [...cells, removed]).find((house) => house !== source.house);
  if (other === undefined) return undefined;
  const houses = { house: wording.house(source.house), other: wording.house(other) };
  return said(argument, 'locked', 'of-locked', { ...aboutDigit(argument, source.digit), ...houses, so: so(argument) });
}

function removedBy({ wording: { grid }, instance }: ToSay): Cell[] {
  return instance.conclusions.flatMap((each) => (each.kind === 'impossible' ? [cellOf(grid, each.candidate)] : []));
}

function nakedSubset(argument: ToSay): SaidArgument | undefined {
  const { wording, instance } = argument;
  if (instance.sets.some((set) => set.source.kind !== 'cell')) return undefined;
  const { cells, digits } = cellsAndDigits(argument, instance.sets);
  const isPair = cells.length === 2;
  return said(argument, isPair ? 'naked-pair' : 'naked-subset', isPair ? 'of-naked-pair' : 'of-naked-subset', {
    cells: wording.cells(cells),
    count: wording.number(cells.length),
    digits: wording.all(digits.map(wording.digit)),
    so: so(argument),
  });
}

function hiddenSubset(argument: ToSay): SaidArgument | undefined {
  const { wording, instance } = argument;
  const houses = placesOf(instance.sets).map(({ house }) => house);
  if (houses.length !== instance.sets.length || houses.some((house) => house !== houses[0])) return undefined;
  const { cells, digits } = cellsAndDigits(argument, instance.sets);
  return said(argument, 'hidden-subset', 'of-hidden-subset', {
    house: wording.house(houses[0]!),
    cells: wording.cellsWithin(houses[0]!, cells),
    count: wording.number(cells.length),
    digits: wording.all(digits.map(wording.digit)),
    so: so(argument),
  });
}

const lines: readonly FishKinds[] = [
  { bases: ['row'], covers: ['column'] },
  { bases: ['column'], covers: ['row'] },
];

function fishInWords(argument: ToSay): SaidArgument | undefined {
  const { wording, instance } = argument;
  const removal = instance.conclusions.find((each) => each.kind === 'impossible');
  const bases = instance.sets.flatMap((set) => {
    const [places] = placesOf([set]);
    return places === undefined ? [] : [{ ...places, set }];
  });
  if (removal?.kind !== 'impossible' || bases.length !== instance.sets.length) return undefined;
  const [fish] = fishAgainst(wording.grid, bases, removal.candidate, lines);
  if (fish === undefined) return undefined;
  const slots = {
    ...aboutDigit(argument, fish.digit),
    bases: wording.houses(fish.bases.map(({ house }) => house)),
    covers: wording.houses(fish.covers),
    fins: wording.cells([...fish.fins].sort((a, b) => a - b)),
    so: so(argument),
  };
  return said(argument, fish.fins.length === 0 ? 'fish' : 'finned-fish', 'of-fish', slots);
}

/** Two houses with two places each, one of each in a house that they share. */
function twoStrings(argument: ToSay, key: 'skyscraper' | 'kite'): SaidArgument | undefined {
  const { wording, instance } = argument;
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
  return said(argument, key, 'of-strings', { ...aboutDigit(argument, first.digit), ...houses, so: so(argument) });
}

/**
 * A cell of two digits that sees two others, each sharing one of its digits; or a cell of three, with the digit that
 * all share.
 */
function xyWing(argument: ToSay): SaidArgument | undefined {
  const { wording, instance } = argument;
  const { grid } = wording;
  const cells = instance.sets.map((set) => {
    const { cells: own, digits } = cellsAndDigits(argument, [set]);
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
  return said(argument, ofThree === undefined ? 'xy-wing' : 'xyz-wing', 'of-wing', {
    pivot: wording.cell(pivot.cell),
    digit: wording.aDigit(digit),
    'other-digit': wording.aDigit(otherDigit),
    pincer: wording.cell(pincer.cell),
    'other-pincer': wording.cell(otherPincer.cell),
    'shared-digit': wording.aDigit(shared),
    so: so(argument),
  });
}
