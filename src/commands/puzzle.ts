/**
 * `proofreel puzzle`: new puzzles that need exactly the arguments asked for.
 */

import { writeFile } from 'node:fs/promises';
import { resolve } from 'node:path';
import { startPosition } from '../check/start-position.ts';
import { skeletonOf } from '../draft/draft.ts';
import { type Grid, gridOf } from '../grid/grid.ts';
import { writeAtomically } from '../output/machine/atomic-write.ts';
import { planFor } from '../plan/plan.ts';
import { chanceFrom } from '../puzzles/chance.ts';
import { type Attempt, attempts, type LeastPlan, lockedNames, printGivens, type Wish } from '../puzzles/new-puzzle.ts';
import { canonicalName, nearestNames } from '../scene/argument-names.ts';
import type { ArgumentName } from '../techniques/all-techniques.ts';
import type { TeachingCosts } from '../techniques/teaching.ts';
import { exitStatus } from '../verbs/exit-status.ts';
import type { puzzle as verb } from '../verbs/puzzle.ts';
import { UsageError } from '../verbs/usage-error.ts';
import type { CallOf } from '../verbs/verb.ts';
import { costsFor } from './audience.ts';
import { refuseTarget } from './put-text.ts';
import { costsFrom } from './teaching-costs.ts';
import type { Terminal } from './terminal.ts';

type Call = CallOf<typeof verb>;

/**
 * How often a plan may ask whether to continue: a count, so that a seed gives the same puzzles on fast and slow
 * machines.
 */
const planSteps = 3000;

type Found = Extract<Attempt, { kind: 'found' }>;

export async function puzzle(call: Call, terminal: Terminal): Promise<number> {
  const table = costsFrom(call.costs, terminal);
  if (table === undefined) return exitStatus.unusable;
  const costs = costsFor(table, call);
  const wish = wishOf(call, costs);
  const { count, seconds } = call;
  // Chosen from the clock if none is given; always printed, so that the puzzle can be made again.
  const seed = call.seed ?? Date.now() % 1_000_000;
  checkOut(call.out, count);
  if (call.out !== undefined) refuseTarget(call.out, {});
  const found = search(wish, { count, seconds, seed, costs: withEasyPart(wish, costs) }, terminal);
  if (call.out === undefined) terminal.out(found.map(({ givens }) => `${printGivens(givens)}\n`).join(''));
  else if (found[0] !== undefined) await writeSkeleton(call.out, wish.grid, found[0]);
  return found.length === count ? exitStatus.sound : exitStatus.unusable;
}

function wishOf(call: Call, costs: TeachingCosts): Wish {
  const needs = (call.needs ?? '')
    .split(',')
    .flatMap((text) => (text.trim() === '' ? [] : [needOf(text.trim(), costs)]));
  const locked = call.rest === 'locked';
  const idle = needs.find((name) => costs.free.includes(name) || (locked && lockedNames.includes(name)));
  if (idle !== undefined)
    throw new UsageError(`--needs ${idle}: that belongs to the easy part here; ask for what goes beyond it`);
  return {
    grid: gridOf(call.size),
    needs,
    locked,
    symmetry: call.symmetry,
    minimal: call.minimal,
  };
}

function needOf(text: string, costs: TeachingCosts): ArgumentName {
  const name = canonicalName(text);
  if (name === undefined) {
    const [near] = nearestNames(text);
    throw new UsageError(
      `--needs ${text}: no argument is called that${near === undefined ? '' : `; did you mean ${near}?`}`,
    );
  }
  const isKnown = costs.free.includes(name) || costs.names.some((each) => each.name === name);
  if (!isKnown)
    throw new UsageError(
      `--needs ${name}: no plan takes it, since the table of teaching costs has no line for it, or the audience does not know it`,
    );
  return name;
}

function checkOut(out: string | undefined, count: number): void {
  if (out === undefined) return;
  if (!/\.ya?ml$/i.test(out)) throw new UsageError(`-o ${out}: a scene is written, so its name ends in .yaml`);
  if (count > 1)
    throw new UsageError('-o writes one scene, and --count asks for several puzzles; leave one of them out');
}

/** What belongs to the easy part costs nothing in the plan. */
function withEasyPart({ locked }: Wish, costs: TeachingCosts): TeachingCosts {
  return locked ? { ...costs, free: [...costs.free, ...lockedNames] } : costs;
}

interface Bounds {
  readonly count: number;
  readonly seconds: number;
  readonly seed: number;
  readonly costs: TeachingCosts;
}

function search(wish: Wish, { count, seconds, seed, costs }: Bounds, terminal: Terminal): readonly Found[] {
  const deadline = performance.now() + seconds * 1000;
  const isLate = () => performance.now() > deadline;
  const found: Found[] = [];
  let [boards, otherwise] = [0, 0];
  for (const attempt of attempts(wish, chanceFrom(seed), leastPlanOf(wish.grid, costs, isLate))) {
    boards++;
    if (attempt.kind === 'less costly otherwise') otherwise++;
    if (terminal.isWatched && boards % 5 === 0) terminal.err(`\r${boards} boards, ${found.length} of ${count} found `);
    if (attempt.kind === 'found' && !isLate()) {
      found.push(attempt);
      printFound(wish, attempt, { seed, boards }, terminal);
    }
    if (found.length === count) return found;
    if (isLate()) break;
  }
  if (terminal.isWatched) terminal.err('\r');
  terminal.err(`proofreel: ${notFound(wish, { seconds, seed, boards, otherwise, found: found.length, count })}\n`);
  return found;
}

function leastPlanOf(grid: Grid, costs: TeachingCosts, isLate: () => boolean): LeastPlan {
  return (givens) => {
    let left = planSteps;
    const start = startPosition({ grid, givens, start: [] }, true);
    const plan = planFor(start, { costs, keepGoing: () => --left > 0 && !isLate() });
    if (plan.outcome !== 'least') return undefined;
    return plan.steps.filter(({ cost }) => cost > 0).map(({ name }) => name);
  };
}

function printFound(
  { needs }: Wish,
  { givens }: Found,
  at: { seed: number; boards: number },
  terminal: Terminal,
): void {
  const count = givens.filter((given) => given !== undefined).length;
  const what = needs.length === 0 ? 'carried by the easy part' : `needs ${needs.join(', ')} and nothing else hard`;
  terminal.err(`${terminal.isWatched ? '\r' : ''}seed ${at.seed}, board ${at.boards}: ${count} givens, ${what}\n`);
}

function notFound(
  { needs, symmetry, minimal, locked, grid }: Wish,
  {
    seconds,
    seed,
    boards,
    otherwise,
    found,
    count,
  }: Record<'seconds' | 'seed' | 'boards' | 'otherwise' | 'found' | 'count', number>,
): string {
  const wanted = needs.length === 0 ? 'such a puzzle' : `a puzzle that needs just ${needs.join(', ')}`;
  const so = found === 0 ? `no ${wanted.replace(/^(a|such a) /, '')}` : `${found} of ${count} puzzles`;
  const why = otherwise === 0 ? '' : `; ${otherwise} could be solved with it, but other arguments cost less there`;
  const ways = [
    `--seconds ${seconds * 5}`,
    'another --seed',
    ...(symmetry === 'none' ? [] : ['--symmetry none']),
    ...(minimal ? ['no --minimal'] : []),
    ...(locked ? [] : ['--rest locked']),
    ...(grid.size < 9 ? ['a larger --size'] : []),
  ];
  return `${so} found in ${seconds} s (seed ${seed}, ${boards} boards)${why}. Try ${ways.join(', ')}`;
}

async function writeSkeleton(out: string, grid: Grid, { givens }: Found): Promise<void> {
  const text = skeletonOf(grid, givens, 'A new puzzle');
  await writeAtomically(resolve(out), (part) => writeFile(part, text));
}
