/**
 * A plan as text: free steps grouped, each other step with its argument, what it concludes, what it rests on and opens.
 */
import { compactly } from '../grid/notation/compact.ts';
import { asShown } from '../grid/notation/shown.ts';
import type { PlanReport, ReportedPlanStep, ReportedWay, WaysReport } from './plan-report.ts';
import type { Paint } from './print-report.ts';

/** The lines of a plan, each ended by a line feed. `position` is drawn if the path ends short of the goal. */
export function printPlan(report: PlanReport, position: readonly string[], paint: Paint): string {
  const lines = [headline(report, paint), ...(needsProof(report) ? [paint.dim(`       ${report.proof}`)] : []), ''];
  for (const run of runsOf(report.steps)) {
    const [first] = run;
    if (first === undefined) continue;
    lines.push(...(first.cost === 0 ? freeLines(run, paint) : hardLines(first, reachesGoal(report), paint)));
  }
  if (!reachesGoal(report)) {
    lines.push('', paint.bold('Here it ends:'), ...position.map((line) => `  ${line}`));
  }
  return `${lines.join('\n')}\n`;
}

/** Whether the headline alone would claim too much, or not say why it claims so little. */
function needsProof({ outcome, hard }: PlanReport): boolean {
  return hard > 0 && reachesGoal({ outcome });
}

/** Whether the path leads to the goal. */
export function reachesGoal({ outcome }: Pick<PlanReport, 'outcome'>): boolean {
  return outcome === 'least' || outcome === 'found';
}

function headline({ outcome, hard, cost, atLeast, until, steps }: PlanReport, paint: Paint): string {
  const sum = `${counted(hard, 'argument')}, cost ${figure(cost)}`;
  const free = freeWord(steps);
  switch (outcome) {
    case 'least':
      return hard === 0
        ? `${paint.green(paint.bold('least'))}  ${until === undefined ? `${free} solve the puzzle` : `${free} lead to ${asShown(compactly(until).join(' '))}`}`
        : `${paint.green(paint.bold('least'))}  ${sum}; proved to be the least`;
    case 'found':
      return `${paint.yellow(paint.bold('found'))}  ${sum}; the best path found; no path costs less than ${figure(atLeast)}`;
    case 'stuck':
      return `${paint.red(paint.bold('stuck'))}  after ${sum}: no named argument leads on`;
    case 'unfinished':
      return `${paint.red(paint.bold('unfinished'))}  after ${sum}: time ran out first; give it longer with --seconds`;
  }
}

/** What the steps that cost nothing are called: with the table that comes with proofreel they are singles. */
export function freeWord(steps: readonly Pick<ReportedPlanStep, 'name' | 'cost'>[]): string {
  const isSingle = (name: string) => ['full house', 'hidden single', 'naked single'].includes(name);
  return steps.every(({ name, cost }) => cost > 0 || isSingle(name)) ? 'singles' : 'free steps';
}

/** Consecutive free steps together, every other step separately. */
function runsOf(steps: readonly ReportedPlanStep[]): ReportedPlanStep[][] {
  const runs: ReportedPlanStep[][] = [];
  for (const step of steps) {
    const last = runs.at(-1);
    if (step.cost === 0 && last?.[0]?.cost === 0) last.push(step);
    else runs.push([step]);
  }
  return runs;
}

function freeLines(run: readonly ReportedPlanStep[], paint: Paint): string[] {
  const [first, last] = [run[0]!.number, run.at(-1)!.number];
  const numbers = first === last ? `${first}` : `${first}-${last}`;
  const texts = run.flatMap((step) => compactly(step.conclusions).map(asShown));
  return [
    paint.dim(`${numbers.padStart(5)}  ${freeWord(run)}: ${counted(run.length, 'step')}`),
    ...wrapped(texts, 9).map(paint.dim),
  ];
}

function hardLines(step: ReportedPlanStep, reaches: boolean, paint: Paint): string[] {
  const lines = [
    `${String(step.number).padStart(5)}  ${paint.bold(step.name)}  ${argumentText(step)} so ${asShown(compactly(step.conclusions).join(' '))}  ${paint.dim(`(cost ${figure(step.cost)})`)}`,
  ];
  const on = step.restsOn.length === 0 ? 'rests only on the givens' : `rests on ${ranges(step.restsOn)}`;
  const idle = reaches ? 'it ends the solve' : 'nothing rests on it yet';
  const opens = step.opens.length === 0 ? idle : `opens ${ranges(step.opens)}`;
  lines.push(paint.dim(`       ${on}; ${opens}`));
  return lines;
}

/** Other arguments for a conclusion, as text. */
export function printAlternatives(report: WaysReport, paint: Paint): string {
  const asked =
    report.conclusions.length === 0 ? 'in this position' : `for ${asShown(compactly(report.conclusions).join(' '))}`;
  const other = report.step === undefined ? '' : ` other than the argument of step ${report.step}`;
  const short = report.finished ? '' : ', as far as was searched before time ran out';
  const { found } = report;
  const head =
    found.length === 0
      ? paint.bold(`No alternative ${asked}${other} under the names of the table${short}.`)
      : paint.bold(`${counted(found.length, 'alternative')} ${asked}${other}, simplest first${short}:`);
  return `${[head, ...found.flatMap((way) => wayLines(way, report, paint))].join('\n')}\n`;
}

function wayLines(way: ReportedWay, { conclusions }: WaysReport, paint: Paint): string[] {
  const also = way.otherNames.length === 0 ? '' : paint.dim(`, also ${way.otherNames.join(', ')}`);
  const lines = [
    `  ${paint.bold(way.name)}${also}  ${paint.dim(`(cost ${figure(way.cost)})`)}`,
    `      ${argumentText(way)}`,
  ];
  if (way.proves.length < conclusions.length)
    lines.push(`      proves ${asShown(compactly(way.proves).join(' '))} of them`);
  if (way.alsoRemoves.length > 0) {
    const verb = conclusions.length === 0 ? 'proves' : 'also proves';
    lines.push(paint.dim(`      ${verb} ${asShown(compactly(way.alsoRemoves).join(' '))}`));
  }
  return lines;
}

/** As a scene would name it: the chain, the pattern with what else is used, or the sets. */
export function argumentText({ sets, chain, deadly }: Pick<ReportedPlanStep, 'sets' | 'chain' | 'deadly'>): string {
  if (chain !== undefined) return deadly === undefined ? chain : `${chain}, deadly ${deadly}`;
  return sets.join(' ');
}

/** Prints `1 2 3 7` as `1-3 7`. */
export function ranges(numbers: readonly number[]): string {
  const runs: [number, number][] = [];
  for (const number of numbers) {
    const last = runs.at(-1);
    if (last !== undefined && last[1] === number - 1) last[1] = number;
    else runs.push([number, number]);
  }
  return runs.map(([from, to]) => (from === to ? `${from}` : `${from}-${to}`)).join(' ');
}

function figure(cost: number): string {
  return String(Number(cost.toFixed(3)));
}

function counted(count: number, word: string): string {
  return `${count} ${word}${count === 1 ? '' : 's'}`;
}

/** Words in indented lines of limited width. */
function wrapped(words: readonly string[], perLine: number): string[] {
  const lines: string[] = [];
  for (let at = 0; at < words.length; at += perLine) lines.push(`       ${words.slice(at, at + perLine).join(' ')}`);
  return lines;
}
