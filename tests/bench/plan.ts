/**
 * The plan, timed: finding all instances of each family of arguments over generated positions; then the first complete
 * path and the whole search, over puzzles of 17 givens (tests/data) and over generated ones that singles do not carry.
 * Beside each a checksum of what was found, so that a faster run that finds otherwise shows; the search itself ends by the
 * clock, so that its checksum is that of the first paths.
 *
 * `POSITIONS=1000 PUZZLES=500 SECONDS=10` for the long run; the usual one takes a minute or two.
 */
import { createHash } from 'node:crypto';
import { readFileSync } from 'node:fs';
import { cpus } from 'node:os';
import { digit } from '../../src/grid/geometry.ts';
import { candidateAt, type Grid, gridOf } from '../../src/grid/grid.ts';
import { firstPath } from '../../src/plan/first-path.ts';
import { close } from '../../src/plan/free-moves.ts';
import { sumOf } from '../../src/plan/least-path.ts';
import { argumentKey, isSolved, moveOf } from '../../src/plan/move.ts';
import { planFor } from '../../src/plan/plan.ts';
import { begin, type Position } from '../../src/proof/kernel.ts';
import { type ArgumentName, namesInFamily, techniqueNamed } from '../../src/techniques/all-techniques.ts';
import { families } from '../../src/techniques/technique.ts';
import { costs } from '../plan/costs.ts';
import { chanceFrom } from '../random.ts';
import { generatedPuzzle } from '../techniques/generated-positions.ts';

const positions = Number(process.env.POSITIONS ?? 40);
const puzzles = Number(process.env.PUZZLES ?? 20);
const seconds = Number(process.env.SECONDS ?? 2);
/** As many instances of a name as a plan looks at. */
const instanceBound = 1_000;

export async function run(): Promise<void> {
  console.log(`the plan; ${cpus()[0]?.model ?? 'unknown processor'}, ${cpus().length} cores, Node ${process.version}`);
  const grid = gridOf('3x3');
  familiesTimed(grid);
  const sparse = sparsePuzzles(grid);
  plans(`puzzles of 17 givens`, sparse.slice(0, puzzles));
  plans('generated puzzles that singles do not carry', hardPuzzles(grid, puzzles));
}

/** Positions as a search meets them: closed under singles, and half of them under the least costly arguments as well. */
function familiesTimed(grid: Grid): void {
  const easyNames: ArgumentName[] = [
    ...costs.free,
    'pointing pair',
    'pointing triple',
    'claiming',
    'naked pair',
    'hidden pair',
  ];
  const met = hardPuzzles(grid, positions).map((start, index) =>
    close(start, index % 2 === 0 ? costs.free : easyNames),
  );
  const all = met.filter((position) => !isSolved(position));
  console.log(`  all instances over ${all.length} positions, CPU time a position:`);
  let sum = 0;
  for (const family of families) {
    const hash = createHash('sha256');
    let found = 0;
    const began = cpuMs();
    for (const position of all) {
      for (const name of namesInFamily(family)) {
        let left = instanceBound;
        for (const instance of techniqueNamed(name).find(position)) {
          found++;
          const move = moveOf(name, 0, instance);
          hash.update(move === undefined ? '' : `${name} ${argumentKey(move)};`);
          if (--left === 0) break;
        }
      }
    }
    const ms = (cpuMs() - began) / all.length;
    sum += ms;
    console.log(
      `    ${family.padEnd(20)}${ms.toFixed(1).padStart(8)} ms ${String(found).padStart(7)} found  ${digest(hash)}`,
    );
  }
  console.log(`    ${'together'.padEnd(20)}${sum.toFixed(1).padStart(8)} ms`);
}

function plans(what: string, starts: readonly Position[]): void {
  const firsts: number[] = [];
  const costsFound: number[] = [];
  const hash = createHash('sha256');
  let reached = 0;
  for (const start of starts) {
    const began = cpuMs();
    const first = firstPath(start, { costs, keepGoing: () => true, isReached: isSolved });
    firsts.push(cpuMs() - began);
    if (first.kind === 'reached') reached++;
    hash.update(`${first.kind} ${sumOf(first.moves)};`);
  }
  const wholes: number[] = [];
  let least = 0;
  let improved = 0;
  for (const start of starts) {
    const began = cpuMs();
    let first: number | undefined;
    const onBetter = ({ cost }: { readonly cost: number }) => {
      first ??= cost;
    };
    const plan = planFor(start, { costs, keepGoing: () => cpuMs() - began < 1000 * seconds, onBetter });
    wholes.push(cpuMs() - began);
    costsFound.push(plan.cost);
    if (plan.outcome === 'least') least++;
    if (first !== undefined && plan.cost < first) improved++;
  }
  const share = (count: number) => `${count} of ${starts.length} (${((100 * count) / starts.length).toFixed(0)} %)`;
  console.log(`  ${what}: carried through ${share(reached)} (${digest(hash)})`);
  console.log(
    `    first complete path: median ${median(firsts).toFixed(0)} ms of CPU, nine in ten below ${quantile(firsts, 0.9).toFixed(0)} ms`,
  );
  console.log(
    `    within ${seconds} s of CPU: proved least ${share(least)}, less costly than the first path ${share(improved)}; median ${median(wholes).toFixed(0)} ms, median cost ${median(costsFound)}`,
  );
}

function sparsePuzzles(grid: Grid): Position[] {
  const lines = readFileSync(new URL('../data/minimum-17.txt', import.meta.url), 'utf8')
    .trim()
    .split('\n');
  return lines.map((line) => {
    const givens = grid.cells.flatMap((cell) =>
      line[cell] === '0' ? [] : [candidateAt(grid, cell, digit(grid, Number(line[cell])))],
    );
    return begin(grid, givens, { oneSolution: true });
  });
}

function hardPuzzles(grid: Grid, count: number): Position[] {
  const found: Position[] = [];
  for (let seed = 1; found.length < count; seed++) {
    const { position } = generatedPuzzle(grid, chanceFrom(seed));
    if (!isSolved(close(position, costs.free))) found.push(position);
  }
  return found;
}

/** CPU time of this process: on a machine that is shared, the clock on the wall says little. */
function cpuMs(): number {
  const { user, system } = process.cpuUsage();
  return (user + system) / 1000;
}

function median(times: readonly number[]): number {
  return quantile(times, 0.5);
}

function quantile(times: readonly number[], part: number): number {
  return times.toSorted((a, b) => a - b)[Math.floor(times.length * part)] ?? 0;
}

function digest(hash: ReturnType<typeof createHash>): string {
  return hash.digest('hex').slice(0, 12);
}
