/**
 * A claim: conclusions drawn together, from one position, by one argument. A step makes one with `so` (or with just a
 * chain), one for each item of `only` and `pencil`, and one for each conclusion of a cascade.
 */

import { type Candidate, difference, has, intersection, membersOf, setOf } from '../grid/candidates.ts';
import { candidateAt, candidatesInCell, candidatesInHouse } from '../grid/grid.ts';
import type { Conclusion, OnlyPlaces, PencilList } from '../grid/terms.ts';
import { isRedundant, type Outcome, type Position, prove } from '../proof/kernel.ts';
import type { Step } from '../scene/scene.ts';
import type { ArgumentName } from '../techniques/all-techniques.ts';
import { type FoundArgument, findArgument, instancesOf } from '../techniques/find-argument.ts';
import type { Instance } from '../techniques/technique.ts';
import {
  type BuiltArgument,
  buildArgument,
  buildFound,
  type Eithers,
  type GivenArgument,
  givesAnArgument,
  type NamedSet,
  nameOfSet,
} from './argument.ts';
import { type Allowed, findSingle } from './singles.ts';
import type { CheckedConclusion } from './verdict.ts';

export interface Claim {
  readonly origin: CheckedConclusion['origin'];
  /** The index of the item in `only`, `pencil` or `cascade`; 0 for `so`. */
  readonly item: number;
  readonly given: GivenArgument;
  /** The argument's name, in canonical spelling: what is searched for if no argument is given. */
  readonly because: ArgumentName | undefined;
  /** What else may be searched for if no argument is given. */
  readonly allowed: Allowed | undefined;
  /** `all`: every removal that the argument proves. For lists: the removals they imply in the position. */
  readonly concludes:
    | { readonly kind: 'listed'; readonly conclusions: readonly Conclusion[] }
    | { readonly kind: 'all' }
    | { readonly kind: 'only'; readonly places: readonly OnlyPlaces[] }
    | { readonly kind: 'pencil'; readonly lists: readonly PencilList[] };
}

/**
 * A claim evaluated in one position: the kernel's outcomes, with proofs but without a verdict. The same claim is
 * evaluated again in other positions (to find what it rests on, and what would fix it); only the outcome in the
 * position reached becomes a `CheckedConclusion`, which is plain data and contains no proof.
 */
export interface Evaluated {
  readonly argument: BuiltArgument;
  readonly conclusions: readonly EvaluatedConclusion[];
  /** Candidates that a list names and the position no longer has. */
  readonly stale: readonly Candidate[];
}

export interface EvaluatedConclusion {
  readonly conclusion: Conclusion;
  readonly outcome: Outcome;
  /** The sets it was tried with: the argument's, or the single that was found. */
  readonly sets: readonly NamedSet[];
  readonly found: boolean;
  /** How many other singles would also have done. */
  readonly others: number;
}

const noArgument: GivenArgument = { from: [], chains: [], deadly: undefined };

/** The claims of a step, in the order they are drawn: `so`, `only`, `pencil`, `cascade`. */
export function claimsOf(step: Step): Claim[] {
  const claims: Claim[] = [];
  if (step.so !== undefined || step.chains.length > 0) {
    claims.push({
      origin: 'so',
      item: 0,
      given: step,
      because: step.because?.name,
      allowed: allowedBy(step.because?.name),
      concludes:
        step.so?.kind === 'all'
          ? { kind: 'all' }
          : { kind: 'listed', conclusions: (step.so?.conclusions ?? []).map((conclusion) => conclusion.value) },
    });
  }
  const lists = { given: noArgument, because: undefined, allowed: 'locked candidates' } as const;
  for (const [item, { places }] of step.only.entries()) {
    claims.push({ origin: 'only', item, ...lists, concludes: { kind: 'only', places } });
  }
  for (const [item, pencil] of step.pencil.entries()) {
    claims.push({ origin: 'pencil', item, ...lists, concludes: { kind: 'pencil', lists: pencil.lists } });
  }
  for (const [item, cascade] of step.cascade.entries()) {
    const given = { from: cascade.from, chains: cascade.chains, deadly: undefined };
    const because = cascade.because?.name;
    const named = singleNamed(because);
    for (const { value } of cascade.conclusions) {
      const concludes = { kind: 'listed', conclusions: [value] } as const;
      claims.push({
        origin: 'cascade',
        item,
        given,
        because,
        allowed: named ?? 'singles and locked candidates',
        concludes,
      });
    }
  }
  return claims;
}

/** Evaluates a claim in a position. Nothing enters the position. */
export function evaluate(position: Position, claim: Claim, eithers: Eithers): Evaluated {
  const argument = argumentFor(position, claim, eithers);
  const sets = argument.sets.map((named) => named.set);
  const hasArgument = givesAnArgument(claim.given) || argument.found !== undefined;
  const conclude = (conclusion: Conclusion): EvaluatedConclusion => {
    if (!hasArgument) return concludeBySingle(position, conclusion, claim.allowed);
    const found = argument.found !== undefined;
    const others = argument.found?.others ?? 0;
    return { conclusion, outcome: prove(position, sets, conclusion), sets: argument.sets, found, others };
  };
  switch (claim.concludes.kind) {
    case 'listed':
      return { argument, conclusions: distinct(claim.concludes.conclusions).map(conclude), stale: [] };
    case 'all': {
      const proved = removalsProved(position, argument.sets);
      return {
        argument: proved.length === 0 ? provingNothing(argument, claim) : argument,
        conclusions: proved.map((candidate) => conclude({ kind: 'impossible', candidate })),
        stale: [],
      };
    }
    case 'only':
      return { argument, ...listed(position, placesOfOnly(position, claim.concludes.places), conclude) };
    case 'pencil':
      return { argument, ...listed(position, digitsOfPencil(position, claim.concludes.lists), conclude) };
  }
}

/**
 * The argument given. If there is only a name: the simplest argument of that name that proves all the conclusions (for
 * `all`: that proves a removal). `all` with no argument is not a claim but a fault.
 */
function argumentFor(position: Position, claim: Claim, eithers: Eithers): BuiltArgument {
  const { given, because, concludes } = claim;
  const isToBeFound = !givesAnArgument(given) && because !== undefined && singleNamed(because) === undefined;
  if (isToBeFound && concludes.kind === 'listed') {
    const found = findArgument(position, because, concludes.conclusions, 'kept');
    if (found !== undefined) return buildFound(position, found);
  }
  const built = buildArgument(position, given, eithers);
  if (concludes.kind !== 'all' || givesAnArgument(given)) return built;
  const found = isToBeFound ? simplestRemoving(position, because) : undefined;
  if (found !== undefined) return buildFound(position, found);
  const lacking = because === undefined ? 'none is given' : `no ${because} was found that removes a candidate`;
  const message = `\`so: all\` stands for the removals that an argument proves, and ${lacking}; name its sets with \`from\`, or its links with \`chain\``;
  return { ...built, faults: [...built.faults, { code: 'no-argument', message }] };
}

/** An argument with a name claims that it removes something; one without may just be shown. */
function provingNothing(argument: BuiltArgument, { because }: Claim): BuiltArgument {
  if (because === undefined || argument.faults.length > 0) return argument;
  const message = `this ${because} removes nothing: \`so: all\` stands for no removal here`;
  return { ...argument, faults: [{ code: 'no-argument', message }] };
}

/** How many arguments of a name are examined for `so: all`, when any of them would do. */
const sameNameBound = 50;

function simplestRemoving(position: Position, name: ArgumentName): FoundArgument | undefined {
  let best: Instance | undefined;
  let count = 0;
  for (const instance of instancesOf(position, name)) {
    if (
      !instance.conclusions.some((conclusion) => conclusion.kind === 'impossible' && !isRedundant(position, conclusion))
    )
      continue;
    if (best === undefined || instance.sets.length < best.sets.length) best = instance;
    if (++count === sameNameBound) break;
  }
  return best === undefined ? undefined : { instance: best, others: count - 1 };
}

/** Every candidate that the sets prove impossible and that the position still has. */
export function removalsProved(position: Position, sets: readonly NamedSet[], bound?: number): Candidate[] {
  if (sets.length === 0) return [];
  const oneOfs = sets.map((named) => named.set);
  return membersOf(position.possible).filter(
    (candidate) => prove(position, oneOfs, { kind: 'impossible', candidate }, bound).kind === 'proved',
  );
}

function concludeBySingle(
  position: Position,
  conclusion: Conclusion,
  allowed: Allowed | undefined,
): EvaluatedConclusion {
  const single = allowed === undefined ? undefined : findSingle(position, conclusion, allowed);
  const sets = single === undefined ? [] : [{ name: nameOfSet(position.grid, single.set), set: single.set }];
  const outcome = prove(
    position,
    sets.map((named) => named.set),
    conclusion,
  );
  return { conclusion, outcome, sets, found: single !== undefined, others: single?.others ?? 0 };
}

interface Listing {
  /** The candidates one of which must be true: the digit in a house for `only`, a cell's for `pencil`. */
  readonly among: readonly Candidate[];
  readonly listed: readonly Candidate[];
}

function placesOfOnly({ grid }: Position, places: readonly OnlyPlaces[]): Listing[] {
  return places.map(({ digit, house, cells }) => ({
    among: candidatesInHouse(grid, digit, house),
    listed: cells.map((cell) => candidateAt(grid, cell, digit)),
  }));
}

function digitsOfPencil({ grid }: Position, lists: readonly PencilList[]): Listing[] {
  return lists.map(({ cell, digits }) => ({
    among: candidatesInCell(grid, cell),
    listed: digits.map((digit) => candidateAt(grid, cell, digit)),
  }));
}

/**
 * The removals that the lists imply and the position does not have yet, and the listed candidates that are already
 * gone.
 */
function listed(
  position: Position,
  listings: readonly Listing[],
  conclude: (conclusion: Conclusion) => EvaluatedConclusion,
): Pick<Evaluated, 'conclusions' | 'stale'> {
  const { grid, possible } = position;
  const leftOut = listings.flatMap(({ among, listed }) =>
    membersOf(difference(intersection(setOf(grid, among), possible), setOf(grid, listed))),
  );
  const stale = listings.flatMap(({ listed }) => listed.filter((candidate) => !has(possible, candidate)));
  const removals = distinct(leftOut.map((candidate): Conclusion => ({ kind: 'impossible', candidate })));
  return { conclusions: removals.map(conclude), stale: membersOf(setOf(grid, stale)) };
}

function distinct(conclusions: readonly Conclusion[]): Conclusion[] {
  const seen = new Map<string, Conclusion>();
  for (const conclusion of conclusions) {
    const key = conclusion.kind === 'impossible' ? `-${conclusion.candidate}` : membersOf(conclusion.candidates).join();
    if (!seen.has(key)) seen.set(key, conclusion);
  }
  return [...seen.values()];
}

function allowedBy(name: ArgumentName | undefined): Allowed | undefined {
  return name === undefined ? 'singles' : singleNamed(name);
}

function singleNamed(name: ArgumentName | undefined): Allowed | undefined {
  return name === 'full house' || name === 'naked single' || name === 'hidden single' ? name : undefined;
}
