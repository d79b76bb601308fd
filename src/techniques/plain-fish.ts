/** Fish that need no chain, among the sets of an argument that may hold chains besides. */
import type { Grid } from '../grid/grid.ts';
import type { Conclusion } from '../grid/terms.ts';
import type { OneOf } from '../proof/kernel.ts';
import { combinations } from './combinations.ts';
import { basicKinds, fishAgainst, fishWithin, frankenKinds, mutantKinds } from './fish-shape.ts';
import { readAsPlaces } from './set-reading.ts';

const anyKinds = [...basicKinds, ...frankenKinds, ...mutantKinds];
const mostBases = 4;

/** Whether two to four of the sets are a fish of any kind that gives the conclusion, each of its fins, if it has any, seeing it. */
export function hasPlainFish(grid: Grid, sets: readonly OneOf[], conclusion: Conclusion): boolean {
  const places = sets.flatMap((set) => readAsPlaces([set]) ?? []);
  for (let size = 2; size <= Math.min(mostBases, places.length); size++) {
    for (const bases of combinations(places, size)) {
      if (bases.some((base) => base.digit !== bases[0]!.digit)) continue;
      const fish =
        conclusion.kind === 'impossible'
          ? fishAgainst(grid, bases, conclusion.candidate, anyKinds)
          : fishWithin(grid, bases, conclusion.candidates, anyKinds);
      if (fish.length > 0) return true;
    }
  }
  return false;
}
