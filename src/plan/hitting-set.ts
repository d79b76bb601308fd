/**
 * The least costly choice of things that meets every landmark: a minimum-cost hitting set, by branch and bound.
 *
 * A landmark is met by any of the things in its list. The bound adds up, over landmarks that share no remaining thing,
 * the least costly thing of each (a common lower bound for set covering; from memory).
 */
import { isLess } from './teaching.ts';

export interface Hitting {
  readonly chosen: readonly number[];
  readonly cost: number;
}

/** How many choices are tried before the search gives up. */
const nodeBound = 60_000;

/**
 * `landmarks`: for each, the numbers of the things that meet it. `costs`: by thing, above 0. Undefined if the search
 * would take too long; the cost is infinite if some landmark is met by nothing, or if no choice costs less than
 * `below`.
 */
export function leastHitting(
  landmarks: readonly (readonly number[])[],
  costs: readonly number[],
  below = Number.POSITIVE_INFINITY,
): Hitting | undefined {
  const search: Search = { ...reduced(landmarks, costs), costs, best: { chosen: [], cost: below }, left: nodeBound };
  choose(search, [], 0, new Set(search.landmarks.keys()));
  if (search.left < 0) return undefined;
  return isLess(search.best.cost, below) ? search.best : { chosen: [], cost: Number.POSITIVE_INFINITY };
}

interface Search {
  readonly landmarks: readonly (readonly number[])[];
  /** By thing: the landmarks that it meets. */
  readonly meets: ReadonlyMap<number, readonly number[]>;
  readonly costs: readonly number[];
  best: Hitting;
  left: number;
}

/**
 * Among things that meet the same landmarks only the least costly is kept; dropped is also what meets fewer for as
 * much.
 */
function reduced(
  landmarks: readonly (readonly number[])[],
  costs: readonly number[],
): Pick<Search, 'landmarks' | 'meets'> {
  const meets = new Map<number, number[]>();
  for (const [landmark, things] of landmarks.entries()) {
    for (const thing of things) {
      const met = meets.get(thing);
      if (met === undefined) meets.set(thing, [landmark]);
      else met.push(landmark);
    }
  }
  const bySet = new Map<string, number>();
  for (const [thing, met] of meets) {
    const key = met.join();
    const other = bySet.get(key);
    if (other === undefined || isLess(costs[thing]!, costs[other]!)) bySet.set(key, thing);
  }
  const kept = [...bySet.values()];
  const isWithin = (inner: readonly number[], outer: ReadonlySet<number>) => inner.every((each) => outer.has(each));
  const sets = new Map(kept.map((thing) => [thing, new Set(meets.get(thing)!)]));
  const useful = kept.filter(
    (thing) =>
      !kept.some(
        (other) =>
          other !== thing &&
          sets.get(other)!.size > sets.get(thing)!.size &&
          !isLess(costs[thing]!, costs[other]!) &&
          isWithin(meets.get(thing)!, sets.get(other)!),
      ),
  );
  const isUseful = new Set(useful);
  return {
    landmarks: landmarks.map((things) =>
      things.filter((thing) => isUseful.has(thing)).sort((a, b) => costs[a]! - costs[b]!),
    ),
    meets: new Map(useful.map((thing) => [thing, meets.get(thing)!])),
  };
}

function choose(search: Search, chosen: readonly number[], cost: number, open: ReadonlySet<number>): void {
  if (--search.left < 0) return;
  if (open.size === 0) {
    if (isLess(cost, search.best.cost)) search.best = { chosen, cost };
    return;
  }
  if (!isLess(cost + boundOf(search, open), search.best.cost)) return;
  let narrowest: number | undefined;
  for (const landmark of open) {
    if (narrowest === undefined || search.landmarks[landmark]!.length < search.landmarks[narrowest]!.length)
      narrowest = landmark;
  }
  for (const thing of search.landmarks[narrowest!]!) {
    const next = cost + search.costs[thing]!;
    if (!isLess(next, search.best.cost)) return; // least costly first: the others cost no less
    const left = new Set(open);
    for (const landmark of search.meets.get(thing)!) left.delete(landmark);
    choose(search, [...chosen, thing], next, left);
    if (search.left < 0) return;
  }
}

function boundOf({ landmarks, costs }: Search, open: ReadonlySet<number>): number {
  const taken = new Set<number>();
  let bound = 0;
  for (const landmark of [...open].sort((a, b) => landmarks[a]!.length - landmarks[b]!.length)) {
    const things = landmarks[landmark]!;
    if (things.some((thing) => taken.has(thing))) continue;
    for (const thing of things) taken.add(thing);
    bound += things.length === 0 ? Number.POSITIVE_INFINITY : costs[things[0]!]!;
  }
  return bound;
}
