/**
 * The judge, timed: kernel decisions a second; `check` on a lesson of sixty steps, split into the start of Node, reading
 * and proving; and all finders over generated positions, the slowest named. Each prints a checksum of what was decided,
 * so that a faster run that decides otherwise shows. `POSITIONS=1000` sets how many positions the finders look at.
 */
import { execFileSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { readFileSync } from 'node:fs';
import { cpus } from 'node:os';
import { proposeStep } from '../../src/check/propose.ts';
import { difference, membersOf } from '../../src/grid/candidates.ts';
import { countOf } from '../../src/grid/counting.ts';
import { digit } from '../../src/grid/geometry.ts';
import { candidateAt, type Grid, gridOf } from '../../src/grid/grid.ts';
import { possibleFrom, solutionsOf } from '../../src/grid/solutions.ts';
import type { Conclusion } from '../../src/grid/terms.ts';
import { checkScene } from '../../src/lesson/check-scene.ts';
import { readScene } from '../../src/lesson/read-scene.ts';
import { begin, type Position, prove, takeAsRead } from '../../src/proof/kernel.ts';
import { stepText } from '../../src/scene/step-text.ts';
import { allTechniques } from '../../src/techniques/all-techniques.ts';
import { instancesOf } from '../../src/techniques/find-argument.ts';
import { namesInTeachingOrder } from '../../src/techniques/simplest.ts';
import { randomConclusion, randomPosition, randomSets, randomSolution } from '../proof/positions.ts';
import { chanceFrom } from '../random.ts';

const puzzles = readFileSync(new URL('../data/minimum-17.txt', import.meta.url), 'utf8')
  .trim()
  .split('\n');
const lessonSteps = 60;
/** Finders are lazy: what a fix, or a step that only names its argument, asks for is the first few. */
const firstInstances = 3;
const easyNames = namesInTeachingOrder.slice(0, namesInTeachingOrder.indexOf('XY-wing') + 1);

export async function run(): Promise<void> {
  console.log(`the judge; ${cpus()[0]?.model ?? 'unknown processor'}, ${cpus().length} cores, Node ${process.version}`);
  decisions();
  lesson();
  finders(Number(process.env.POSITIONS ?? 200));
}

/** Random positions, sets and conclusions, made beforehand. */
function decisions(): void {
  const grid = gridOf('3x3');
  const questions = Array.from({ length: 40 }, (_, index) => {
    const chance = chanceFrom(index + 1);
    const position = randomPosition(grid, randomSolution(grid, chance), chance);
    return Array.from({ length: 25 }, () => {
      const sets = randomSets(position, 1 + chance.below(8), chance);
      return { position, sets, conclusion: randomConclusion(position, sets, chance) };
    });
  }).flat();
  const hash = createHash('sha256');
  const began = performance.now();
  for (const { position, sets, conclusion } of questions) hash.update(prove(position, sets, conclusion).kind);
  const seconds = (performance.now() - began) / 1000;
  console.log(
    `  kernel: ${Math.round(questions.length / seconds)} decisions a second (${questions.length}; ${digest(hash)})`,
  );
}

/** Solves puzzles by the simplest named arguments until a lesson of sixty steps is had, then checks it. */
function lesson(): void {
  const text = lessonText();
  const nodeStart = fastest(5, () => execFileSync(process.execPath, ['-e', '0']));
  const reading = fastest(5, () => readScene(text));
  const { scene } = readScene(text);
  if (scene === undefined) throw new Error('the lesson cannot be read');
  const proving = fastest(5, () => checkScene({ ...scene, advice: { simpler: false, open: false, mostCases: 1000 } }));
  const advising = fastest(3, () => checkScene(scene));
  const verdicts = checkScene(scene)
    .steps.map((step) => step.verdict)
    .join();
  const hash = createHash('sha256').update(verdicts);
  console.log(
    `  check of ${scene.steps.length} steps (${digest(hash)}): start of Node ${nodeStart.toFixed(0)} ms, reading ${reading.toFixed(0)} ms, proving ${proving.toFixed(0)} ms`,
  );
  console.log(
    `    proving over the start of Node: ${(proving / nodeStart).toFixed(2)}; with advice ${(advising / nodeStart).toFixed(2)}`,
  );
}

function lessonText(): string {
  for (const puzzle of puzzles) {
    const grid = gridOf('3x3');
    const [start, solution] = startOf(grid, puzzle);
    let position = start;
    const steps: string[] = [];
    while (steps.length < lessonSteps) {
      const next = nextStep(position, solution);
      if (next === undefined) break;
      steps.push(stepText(next.step, `step-${steps.length + 1}`));
      position = takeAsRead(position, next.conclusion);
    }
    if (steps.length < lessonSteps) continue;
    const items = steps.map((step) => step.replace(/^/gm, '  ')).join('\n');
    return `proofreel: 1\npuzzle:\n  givens: |\n    ${puzzle}\nsteps:\n${items}\n`;
  }
  throw new Error('no puzzle gives a lesson of sixty steps');
}

function startOf(grid: Grid, puzzle: string): readonly [Position, ReturnType<typeof solutionsOf>[number]] {
  const digits = [...puzzle].map((symbol) => (symbol === '0' ? undefined : digit(grid, Number(symbol))));
  const givens = grid.cells.flatMap((cell) => {
    const given = digits[cell];
    return given === undefined ? [] : [candidateAt(grid, cell, given)];
  });
  const [solution] = solutionsOf(grid, possibleFrom(grid, digits), 1);
  if (solution === undefined) throw new Error('a puzzle without a solution');
  return [begin(grid, givens, { oneSolution: true }), solution];
}

/** A removal by the simplest argument that there is for the first candidates that are not true. */
function nextStep(position: Position, solution: ReturnType<typeof solutionsOf>[number]) {
  const untrue = membersOf(difference(position.possible, solution));
  for (const candidate of untrue) {
    const conclusion: Conclusion = { kind: 'impossible', candidate };
    const step = proposeStep(position, conclusion, easyNames);
    if (step !== undefined) return { step, conclusion };
  }
  return undefined;
}

function finders(count: number): void {
  const grid = gridOf('3x3');
  const times: { readonly name: string; readonly ms: number }[] = [];
  const slowest: { ms: number; name: string } = { ms: 0, name: '' };
  let instances = 0;
  const perTechnique = new Map<string, number>();
  for (let index = 0; index < count; index++) {
    const chance = chanceFrom(index + 7);
    const position = randomPosition(grid, randomSolution(grid, chance), chance);
    const began = performance.now();
    for (const { name, find } of allTechniques) {
      if (find === undefined) continue;
      const start = performance.now();
      let left = firstInstances;
      for (const _ of instancesOf(position, name)) {
        instances++;
        if (--left === 0) break;
      }
      perTechnique.set(name, (perTechnique.get(name) ?? 0) + performance.now() - start);
    }
    const ms = performance.now() - began;
    times.push({ name: `seed ${index + 7} (${countOf(position.possible)} candidates)`, ms });
    if (ms > slowest.ms) Object.assign(slowest, { ms, name: times.at(-1)?.name });
  }
  const sorted = times.map((time) => time.ms).sort((a, b) => a - b);
  const worst = [...perTechnique].sort((a, b) => b[1] - a[1]).slice(0, 5);
  console.log(
    `  the first ${firstInstances} instances of every name over ${count} positions: median ${(sorted[sorted.length >> 1] ?? 0).toFixed(1)} ms, ${instances} instances`,
  );
  console.log(`    slowest: ${slowest.name}, ${slowest.ms.toFixed(0)} ms`);
  console.log(`    most time in: ${worst.map(([name, ms]) => `${name} ${(ms / count).toFixed(1)} ms`).join(', ')}`);
}

/** The fastest of some rounds, in milliseconds. */
function fastest(rounds: number, act: () => unknown): number {
  let best = Number.POSITIVE_INFINITY;
  for (let round = 0; round < rounds; round++) {
    const began = performance.now();
    act();
    best = Math.min(best, performance.now() - began);
  }
  return best;
}

function digest(hash: ReturnType<typeof createHash>): string {
  return hash.digest('hex').slice(0, 12);
}
