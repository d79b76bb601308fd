/**
 * The report of the ways to a conclusion.
 */
import type { Grid } from '../grid/grid.ts';
import { printConclusion } from '../grid/notation/print.ts';
import type { Conclusion } from '../grid/terms.ts';
import type { Way, Ways } from '../plan/ways.ts';
import type { ReportedWay, WaysReport } from './plan-report.ts';
import { writtenArgument } from './reported-argument.ts';

/** `excluded`: arguments that are known already, each as its sets in notation; they are left out. */
export function reportOfWays(
  scene: string,
  step: string | undefined,
  asked: {
    readonly grid: Grid;
    readonly wanted: readonly Conclusion[];
    readonly found: Ways;
    readonly excluded: readonly (readonly string[])[];
  },
): WaysReport {
  const { grid, wanted, found, excluded } = asked;
  const known = new Set(excluded.map(keyOf));
  const all = found.found.map((way) => reportedWay(grid, way));
  return {
    ways: 1,
    scene,
    ...(step === undefined ? {} : { step }),
    conclusions: wanted.map((conclusion) => printConclusion(grid, conclusion)),
    finished: found.finished,
    found: all.filter(({ sets }) => !known.has(keyOf(sets))),
  };
}

function reportedWay(grid: Grid, { name, otherNames, cost, instance, proves, others }: Way): ReportedWay {
  const print = (conclusion: Conclusion) => printConclusion(grid, conclusion);
  return {
    name,
    otherNames: [...otherNames],
    cost,
    ...writtenArgument(grid, instance),
    proves: proves.map(print),
    alsoRemoves: others.map(print),
  };
}

function keyOf(sets: readonly string[]): string {
  return [...sets].sort().join(' ');
}
