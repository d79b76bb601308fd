/**
 * The part of an argument that a conclusion needs: a choice of its sets that still proves it and from which none can be
 * left out. There may be several such parts.
 */
import type { Conclusion } from '../grid/terms.ts';
import { type OneOf, type Position, prove } from '../proof/kernel.ts';

/** With at most this many sets, every part is examined. */
const smallArgument = 7;
/** In a larger argument, sets are left out in this many orders, in addition to the argument's own. */
const ordersTried = 5;
/** How many candidates the search for a proof may try, for each choice of sets. */
const proofBound = 50_000;

/**
 * All parts that prove the conclusion and none of whose sets can be left out, those with the fewest sets first; for a
 * large argument, only some of them. Empty if the sets do not prove it, or if it is redundant.
 */
export function minimalParts(
  position: Position,
  sets: readonly OneOf[],
  conclusion: Conclusion,
): readonly (readonly OneOf[])[] {
  const proves = (part: readonly OneOf[]) => prove(position, part, conclusion, proofBound).kind === 'proved';
  if (!proves(sets)) return [];
  return sets.length <= smallArgument ? allParts(sets, proves) : someParts(sets, proves);
}

/** One such part: sets are left out one at a time, the last ones first. */
export function minimalPart(
  position: Position,
  sets: readonly OneOf[],
  conclusion: Conclusion,
): readonly OneOf[] | undefined {
  const proves = (part: readonly OneOf[]) => prove(position, part, conclusion, proofBound).kind === 'proved';
  return proves(sets) ? thinned(sets, proves) : undefined;
}

/** Whether there are conclusions, and leaving out any set would leave one of them unproved. */
export function needsEverySet(
  position: Position,
  { sets, conclusions }: { readonly sets: readonly OneOf[]; readonly conclusions: readonly Conclusion[] },
): boolean {
  if (conclusions.length === 0) return false;
  return sets.every((set) => {
    const others = sets.filter((other) => other !== set);
    return conclusions.some((conclusion) => prove(position, others, conclusion, proofBound).kind !== 'proved');
  });
}

type Proves = (part: readonly OneOf[]) => boolean;

function allParts(sets: readonly OneOf[], proves: Proves): OneOf[][] {
  const choices = Array.from({ length: 2 ** sets.length }, (_, choice) => choice).sort((a, b) => sizeOf(a) - sizeOf(b));
  const minimal: number[] = [];
  for (const choice of choices) {
    if (minimal.some((smaller) => (smaller & choice) === smaller)) continue;
    if (proves(chosen(sets, choice))) minimal.push(choice);
  }
  return minimal.map((choice) => chosen(sets, choice));
}

/** What is left when sets are left out from the back, from the front, and from a few places between. */
function someParts(sets: readonly OneOf[], proves: Proves): (readonly OneOf[])[] {
  const parts = new Map<string, readonly OneOf[]>();
  const turns = Array.from({ length: ordersTried }, (_, turn) => Math.floor((turn * sets.length) / ordersTried));
  const orders = [[...sets].reverse(), ...turns.map((turn) => [...sets.slice(turn), ...sets.slice(0, turn)])];
  for (const order of orders) {
    const part = thinned(order, proves);
    const inOrder = sets.filter((set) => part.includes(set));
    parts.set(inOrder.map((set) => sets.indexOf(set)).join(), inOrder);
  }
  return [...parts.values()].sort((a, b) => a.length - b.length);
}

function thinned(sets: readonly OneOf[], proves: Proves): readonly OneOf[] {
  let part = sets;
  for (const set of [...sets].reverse()) {
    const without = part.filter((other) => other !== set);
    if (proves(without)) part = without;
  }
  return part;
}

function chosen(sets: readonly OneOf[], choice: number): OneOf[] {
  return sets.filter((_, index) => ((choice >> index) & 1) === 1);
}

function sizeOf(choice: number): number {
  let size = 0;
  for (let rest = choice; rest !== 0; rest &= rest - 1) size++;
  return size;
}
