/**
 * Counting solutions up to two: the 500 puzzles of 17 givens (tests/data), by the project's search, by a general exact
 * cover library and by a general satisfiability library. All three must give the same solutions, or the run fails.
 *
 * Run by itself with `npx tsx tests/bench/counting.ts`.
 */
import { createHash } from 'node:crypto';
import { readFileSync } from 'node:fs';
import { cpus } from 'node:os';
import { pathToFileURL } from 'node:url';
import { type Candidates, membersOf } from '../../src/grid/candidates.ts';
import { digitOf, type Grid, gridOf } from '../../src/grid/grid.ts';
import { possibleFrom, solutionsOf } from '../../src/grid/solutions.ts';
import { givensFrom } from '../grid/givens.ts';
import { exactCoverOn, type Oracle, satisfiabilityOn } from '../grid/solution-oracles.ts';

interface Contender {
  readonly name: string;
  readonly solve: Oracle;
  /** The fastest round counts; the first ones warm up. */
  readonly rounds: number;
}

/** Times each contender, prints times, ratios and a checksum; sets the exit status to 1 where they disagree. */
export async function run(): Promise<void> {
  const grid = gridOf('3x3');
  const lines = readFileSync(new URL('../data/minimum-17.txt', import.meta.url), 'utf8')
    .trim()
    .split('\n');
  const puzzles = lines.map((line) => possibleFrom(grid, givensFrom(grid, line)));
  const contenders: readonly Contender[] = [
    { name: 'proofreel', solve: (possible, most) => solutionsOf(grid, possible, most).map(membersOf), rounds: 20 },
    { name: 'dancing-links 4.3.10 (exact cover)', solve: exactCoverOn(grid), rounds: 10 },
    { name: 'logic-solver 2.0.1 (MiniSat)', solve: satisfiabilityOn(grid), rounds: 1 },
  ];
  console.log(`counting solutions to two, ${puzzles.length} puzzles of 17 givens`);
  console.log(`${cpus()[0]?.model ?? 'unknown processor'}, Node ${process.version}`);
  const results = contenders.map((contender) => ({ ...contender, ...timed(grid, puzzles, contender) }));
  const ours = results[0]!;
  for (const { name, microseconds } of results) {
    const ratio = (microseconds / ours.microseconds).toFixed(1);
    console.log(`${name.padEnd(36)}${microseconds.toFixed(1).padStart(9)} µs a puzzle${ratio.padStart(8)} x`);
  }
  console.log(`checksum of the solutions: ${checksum(ours.answers)}`);
  for (const { name, answers } of results) {
    const differing = answers.findIndex((answer, index) => answer !== ours.answers[index]);
    if (differing < 0) continue;
    console.log(
      `${name} disagrees on puzzle ${differing + 1}: "${answers[differing]}", not "${ours.answers[differing]}"`,
    );
    process.exitCode = 1;
  }
}

/** Each puzzle's solutions as digits, and the fastest round's time for one puzzle, making of answers not included. */
function timed(grid: Grid, puzzles: readonly Candidates[], { solve, rounds }: Contender) {
  const found = puzzles.map((puzzle) => solve(puzzle, 2));
  let fastest = Number.POSITIVE_INFINITY;
  for (let round = 0; round < rounds; round++) {
    const before = performance.now();
    for (const puzzle of puzzles) solve(puzzle, 2);
    fastest = Math.min(fastest, performance.now() - before);
  }
  const answers = found.map((solutions) =>
    solutions.map((all) => all.map((each) => digitOf(grid, each)).join('')).join(' '),
  );
  return { answers, microseconds: (1000 * fastest) / puzzles.length };
}

function checksum(answers: readonly string[]): string {
  return createHash('sha256').update(answers.join('\n')).digest('hex').slice(0, 16);
}

if (import.meta.url === pathToFileURL(process.argv[1] ?? '').href) await run();
