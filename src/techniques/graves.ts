/**
 * The whole grid as a pattern that must not remain (a "bivalue universal grave", BUG): every open cell with two
 * candidates, every digit twice or not at all among the open cells of each house. The *extras* are the candidates that
 * prevent it.
 *
 * - BUG+1: one extra, which is true; what it sees is removed.
 * - BUG+n: any number of extras, one of which is true, together with any further sets.
 *
 * Searched for: up to six extras, all of which lead to the same conclusion by at most two strong links each.
 */
import { type Candidate, has, membersOf } from '../grid/candidates.ts';
import { countOf } from '../grid/counting.ts';
import { candidatesInCell } from '../grid/grid.ts';
import type { Conclusion } from '../grid/terms.ts';
import { guardiansOf } from '../proof/guardians.ts';
import { isPlaced } from '../proof/is-placed.ts';
import type { OneOf, Position } from '../proof/kernel.ts';
import { readDeadly } from './deadly-reading.ts';
import { commonEnds, isWanted } from './leading-to-one.ts';
import { minimalPart } from './minimal-argument.ts';
import { fits } from './recognition.ts';
import { type Instance, type Recognition, type Shape, technique } from './technique.ts';

export const bugPlusOne = technique({
  name: 'BUG+1',
  plural: 'BUG+1s',
  otherNames: [],
  family: 'uniqueness',
  kindOf: ['BUG+n'],
  teaching: { place: 3010, cost: 6 },
  isOffered: false,
  phrase: 'step by step',
  page: { under: 'Uniqueness', shows: 'placement' },
  recognise: (shape) => recogniseGrave(shape, 1),
  find: (position) => findGraves(position, 1),
});
export const bugPlusAny = technique({
  name: 'BUG+n',
  plural: 'BUG+ns',
  otherNames: [],
  family: 'uniqueness',
  kindOf: [],
  teaching: { place: 4180, cost: 16 },
  isOffered: false,
  phrase: 'step by step',
  page: { under: 'Uniqueness', shows: 'removals' },
  recognise: (shape) => recogniseGrave(shape, undefined),
  find: (position, wanted) => findGraves(position, undefined, wanted),
  miscounted,
});

function recogniseGrave(shape: Shape, extras: number | undefined): Recognition {
  const read = readDeadly(shape);
  if (read?.deadly.kind !== 'grid') return undefined;
  return extras === undefined || countOf(read.guardians) === extras ? fits : undefined;
}

function miscounted(shape: Shape, written: number): string | undefined {
  const extras = readDeadly(shape)?.guardians;
  const count = extras === undefined ? written : countOf(extras);
  return count === written ? undefined : `the grid has ${count} extra candidate${count === 1 ? '' : 's'}: BUG+${count}`;
}

const grave = { kind: 'grid', without: undefined } as const;
/** The most extras, and the most strong links of a chain from one of them, that are searched for. */
const mostExtras = 6;
const mostLinks = 2;

function* findGraves(
  position: Position,
  extras: number | undefined,
  wanted?: readonly Conclusion[],
): Generator<Instance> {
  const count = extrasAtLeast(position);
  if (count === undefined || count > (extras ?? mostExtras)) return;
  const set = guardiansOf(position, grave);
  if ('refused' in set || (extras !== undefined && countOf(set.members) !== extras)) return;
  if (countOf(set.members) > mostExtras) return;
  const links = countOf(set.members) === 1 ? 0 : mostLinks; // a single extra is placed, and everything else follows from that
  for (let longest = 0; longest <= links; longest++) yield* concluded(position, set, { longest, wanted });
}

/** How many candidates the open cells have beyond two each; undefined if one has fewer. */
function extrasAtLeast(position: Position): number | undefined {
  let extras = 0;
  for (const cell of position.grid.cells) {
    if (isPlaced(position, cell)) continue;
    const open = candidatesInCell(position.grid, cell).filter((candidate) => has(position.possible, candidate)).length;
    if (open < 2) return undefined;
    extras += open - 2;
  }
  return extras;
}

/** Conclusions that need no chain come together, the others one by one. */
function* concluded(
  position: Position,
  set: OneOf,
  { longest, wanted }: { readonly longest: number; readonly wanted: readonly Conclusion[] | undefined },
): Generator<Instance> {
  const extras: readonly Candidate[] = membersOf(set.members);
  const ends = commonEnds(position, extras, longest).filter((end) => end.longest === longest);
  if (longest === 0) {
    const conclusions = ends
      .map((end) => end.conclusion)
      .sort((a, b) => Number(a.kind === 'impossible') - Number(b.kind === 'impossible'));
    if (conclusions.length > 0) yield { sets: [set], chain: undefined, deadly: grave, conclusions };
    return;
  }
  const found = ends.filter((end) => isWanted(end.conclusion, wanted));
  for (const { conclusion, links } of found.sort((a, b) => a.links.length - b.links.length)) {
    const sets = minimalPart(position, [set, ...links], conclusion);
    if (sets?.includes(set)) yield { sets, chain: undefined, deadly: grave, conclusions: [conclusion] };
  }
}
