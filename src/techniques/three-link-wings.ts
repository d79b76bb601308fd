/**
 * Wings of three strong links, distinguished by what the links are: V a cell of two digits, L two places of a digit in
 * a house (common practice, from memory; the digits of the links are written in the order of the chain).
 *
 * - W-wing: V L V, (x=y)-y=y-(y=x): two cells of the same two digits that do not see each other.
 * - M-wing: V L L, (x=y)-y=(y-x)=x: the two houses meet in a cell.
 * - S-wing (split): L V L, x=x-(x=y)-y=y.
 * - L-wing (local): L L L of more than one digit: x=(x-y)=(y-z)=z, x=(x-y)=(y-x)=x, x=x-x=(x-y)=y and the like. All of
 *   one digit is an X-chain.
 * - H-wing (hybrid): both kinds and three digits, with an end of each digit: (x=y)-(y=z)-z=z, (x=y)-y=(y-z)=z,
 *   (x=y)-y=y-(y=z).
 *
 * If all the links are in one house, it is a hidden subset and not a wing. Three or more places that make two groups
 * are accepted instead of two places, with a warning.
 */
import { membersOf } from '../grid/candidates.ts';
import { sees } from '../grid/geometry.ts';
import { cellOf, type Digit, digitOf, type Grid } from '../grid/grid.ts';
import type { Conclusion } from '../grid/terms.ts';
import type { Position } from '../proof/kernel.ts';
import { type OfKind, searchKinds } from './chain-search.ts';
import { bestOf, fits, forEachConclusion, loosely } from './recognition.ts';
import { bilocalLinks, bivalueLinks } from './search-links.ts';
import { digitsOf } from './seen-by-all.ts';
import { areOfOneHouse, hasGroups, ringsTo, type StrungLink, strungChains } from './strung-chains.ts';
import type { Instance, Needless, TechniqueAbout, TechniqueRecord } from './technique.ts';

type ThreeLinks = readonly [StrungLink, StrungLink, StrungLink];

/** Whether the links, in this direction, make the wing. */
type IsWing = (grid: Grid, links: ThreeLinks) => boolean;

export const wWing = ofLinks(isW, {
  name: 'W-wing',
  plural: 'W-wings',
  otherNames: [],
  family: 'wings',
  kindOf: ['AIC'],
  teaching: { place: 2130, cost: 9 },
  isOffered: true,
  phrase: 'step by step',
  page: { under: 'Wings', shows: 'removals' },
});

export const mWing = ofLinks(isM, {
  name: 'M-wing',
  plural: 'M-wings',
  otherNames: [],
  family: 'wings',
  kindOf: ['AIC'],
  teaching: { place: 4080, cost: 13 },
  isOffered: false,
  phrase: 'step by step',
  page: { under: 'Wings', shows: 'removals' },
});

export const sWing = ofLinks(isS, {
  name: 'S-wing',
  plural: 'S-wings',
  otherNames: [],
  family: 'wings',
  kindOf: ['AIC'],
  teaching: { place: 4090, cost: 13 },
  isOffered: false,
  phrase: 'step by step',
  page: { under: 'Wings', shows: 'removals' },
});

export const lWing = ofLinks(isL, {
  name: 'L-wing',
  plural: 'L-wings',
  otherNames: [],
  family: 'wings',
  kindOf: ['AIC'],
  teaching: { place: 4100, cost: 14 },
  isOffered: false,
  phrase: 'step by step',
  page: { under: 'Wings', shows: 'removals' },
});

export const hWing = ofLinks(isH, {
  name: 'H-wing',
  plural: 'H-wings',
  otherNames: [],
  family: 'wings',
  kindOf: ['AIC'],
  teaching: { place: 4110, cost: 14 },
  isOffered: false,
  phrase: 'step by step',
  page: { under: 'Wings', shows: 'removals' },
});

function ofLinks<const Name extends string, const Other extends string = never>(
  isWing: IsWing,
  about: TechniqueAbout<Name, Other>,
): TechniqueRecord<Name, Other> {
  const { name } = about;
  const isEitherWay = (grid: Grid, links: ThreeLinks) => isWing(grid, links) || isWing(grid, turned(links));
  return {
    ...about,
    recognise: (shape) => {
      if (shape.sets.length !== 3 || areOfOneHouse(shape.position.grid, shape.sets)) return undefined;
      const stringing = { grid: shape.position.grid, sets: shape.sets };
      const judge = (links: readonly StrungLink[]) => {
        const [first, second, third] = links;
        if (first === undefined || second === undefined || third === undefined) return undefined;
        if (!isEitherWay(stringing.grid, [first, second, third])) return undefined;
        return hasGroups(links) ? loosely(`an end of a link is a group of places: a grouped ${name}`) : fits;
      };
      return forEachConclusion(
        shape,
        (conclusion) =>
          bestOf(strungChains(stringing, conclusion), judge) ?? bestOf(ringsTo(stringing, conclusion), judge),
      );
    },
    find: (position, wanted, needless) => findWings(position, name, wanted, needless),
  };
}

const wings: readonly (readonly [name: string, isWing: IsWing])[] = [
  ['W-wing', isW],
  ['M-wing', isM],
  ['S-wing', isS],
  ['L-wing', isL],
  ['H-wing', isH],
];

function* findWings(
  position: Position,
  name: string,
  wanted: readonly Conclusion[] | undefined,
  needless: Needless | undefined,
): Generator<Instance> {
  const found = wanted === undefined ? everyWing(position) : searchWings(position, wanted, needless);
  for (const { instance, kind } of found) {
    if (kind.split(' ').includes(name)) yield instance;
  }
}

/** One search finds the wings of all names; computed once, since a position never changes. */
function everyWing(position: Position): readonly OfKind[] {
  const made = known.get(position) ?? [...searchWings(position, undefined)];
  known.set(position, made);
  return made;
}

const known = new WeakMap<Position, readonly OfKind[]>();

function searchWings(
  position: Position,
  wanted: readonly Conclusion[] | undefined,
  needless?: Needless,
): Generator<OfKind> {
  const { grid } = position;
  return searchKinds({
    position,
    links: [...bivalueLinks(position), ...bilocalLinks(position)],
    fewest: 3,
    most: 3,
    every: true,
    kindOf: ([first, second, third]) => {
      const links: ThreeLinks = [first!, second!, third!];
      const back = turned(links);
      const names = wings.flatMap(([name, isWing]) => (isWing(grid, links) || isWing(grid, back) ? [name] : []));
      return names.length === 0 ? undefined : names.join(' ');
    },
    wanted,
    needless,
  });
}

function isW(grid: Grid, links: ThreeLinks): boolean {
  const [first, , last] = links;
  if (kindsOf(links) !== 'VLV' || digitsIn(grid, first).join() !== digitsIn(grid, last).join()) return false;
  return !sees(grid, cellIn(grid, first), cellIn(grid, last)) && startOf(grid, first) === endOf(grid, last);
}

function isM(grid: Grid, links: ThreeLinks): boolean {
  const [first, second, last] = links;
  return (
    kindsOf(links) === 'VLL' &&
    startOf(grid, first) === endOf(grid, last) &&
    endOf(grid, second) !== startOf(grid, last)
  );
}

function isS(grid: Grid, [first, second, last]: ThreeLinks): boolean {
  return kindsOf([first, second, last]) === 'LVL' && startOf(grid, first) !== endOf(grid, last);
}

function isL(grid: Grid, links: ThreeLinks): boolean {
  return kindsOf(links) === 'LLL' && new Set(links.flatMap((link) => digitsIn(grid, link))).size > 1;
}

function isH(grid: Grid, links: ThreeLinks): boolean {
  if (!['VVL', 'VLL', 'VLV'].includes(kindsOf(links))) return false;
  const digits = new Set(links.flatMap((link) => digitsIn(grid, link)));
  return digits.size === 3 && startOf(grid, links[0]) !== endOf(grid, links[2]);
}

/** For each link V or L; ? for what is neither. */
function kindsOf(links: ThreeLinks): string {
  return links
    .map(({ sets: [set] }) => {
      if (set?.source.kind === 'cell') return 'V';
      return set?.source.kind === 'places' ? 'L' : '?';
    })
    .join('');
}

function turned([first, second, last]: ThreeLinks): ThreeLinks {
  const back = ({ near, far, ...link }: StrungLink): StrungLink => ({ ...link, near: far, far: near });
  return [back(last), back(second), back(first)];
}

function digitsIn(grid: Grid, { sets: [set] }: StrungLink): Digit[] {
  return digitsOf(grid, set!.members);
}

function startOf(grid: Grid, { near }: StrungLink): Digit {
  return digitOf(grid, membersOf(near)[0]!);
}

function endOf(grid: Grid, { far }: StrungLink): Digit {
  return digitOf(grid, membersOf(far)[0]!);
}

function cellIn(grid: Grid, { near }: StrungLink) {
  return cellOf(grid, membersOf(near)[0]!);
}
