/**
 * `proofreel alternatives`: other named arguments for the conclusions of a step, or for a question about a puzzle.
 */

import { startPosition } from '../check/start-position.ts';
import type { CheckedStep } from '../check/verdict.ts';
import { difference, has, membersOf } from '../grid/candidates.ts';
import { parseConclusions } from '../grid/notation/conclusions.ts';
import { printConclusion } from '../grid/notation/print.ts';
import type { Conclusion } from '../grid/terms.ts';
import { checkScene } from '../lesson/check-scene.ts';
import { close } from '../plan/free-moves.ts';
import { waysIn } from '../plan/ways.ts';
import { isRedundant, oneOf, type Position, takeAsRead } from '../proof/kernel.ts';
import { printAlternatives } from '../report/print-plan.ts';
import { reportOfWays } from '../report/report-of-ways.ts';
import { nearestWords } from '../scene/nearest-word.ts';
import type { TeachingCosts } from '../techniques/teaching.ts';
import type { AskedPosition, alternatives as verb } from '../verbs/alternatives.ts';
import { exitStatus } from '../verbs/exit-status.ts';
import { UsageError } from '../verbs/usage-error.ts';
import type { CallOf } from '../verbs/verb.ts';
import { costsFor } from './audience.ts';
import { type GivenPuzzle, readGivenPuzzle } from './given-puzzle.ts';
import { untilPassed } from './searched-plan.ts';
import { costsFrom } from './teaching-costs.ts';
import type { Terminal } from './terminal.ts';

type Call = CallOf<typeof verb>;

interface Question {
  readonly position: Position;
  readonly wanted: readonly Conclusion[];
  /** The step's own argument. */
  readonly own: CheckedStep['argument'] | undefined;
}

export async function alternatives(call: Call, terminal: Terminal): Promise<number> {
  const { given, seconds } = call;
  if (call.step !== undefined && call.at !== undefined)
    throw new UsageError('both --step and --at are given; --step names a step of a scene, --at a position of a puzzle');
  const table = costsFrom(call.costs, terminal);
  if (table === undefined) return exitStatus.unusable;
  const costs = costsFor(table, call);
  const read = readGivenPuzzle(given, terminal);
  if (read === undefined) return exitStatus.unusable;
  if (call.step === undefined && call.at === undefined && read.scene !== undefined)
    terminal.err('proofreel: at the start of the puzzle; --step ID asks about a step of the scene\n');
  const question = call.step === undefined ? askedOfPuzzle(read, call, costs) : askedOfStep(given, read, call);
  const { position, wanted, own } = question;
  const ownSets = own === undefined ? [] : [own.sets.map(({ name }) => name)];
  const found = waysIn(position, { costs, wanted, keepGoing: untilPassed(seconds) });
  const report = reportOfWays(given, call.step, { grid: position.grid, wanted, found, excluded: ownSets });
  terminal.out(call.json ? `${JSON.stringify(report, undefined, 2)}\n` : printAlternatives(report, terminal.outPaint));
  return exitStatus.sound;
}

function askedOfStep(given: string, read: GivenPuzzle, call: Call): Question {
  const { scene, puzzle } = read;
  if (scene === undefined)
    throw new UsageError(`--step goes with a scene; ${given} is a puzzle: ask with --at and --so`);
  const steps = checkScene(scene.scene).steps;
  const step = steps.find((each) => each.step.id === call.step);
  if (step === undefined) throw new UsageError(noStep(call.step ?? '', steps));
  const position = positionBefore(startPosition(puzzle, puzzle.uniqueness === 'allowed'), step);
  const own = step.conclusions.filter(({ origin }) => origin === 'so').map(({ conclusion }) => conclusion);
  const concluded = own.length > 0 ? own : step.conclusions.slice(0, 1).map(({ conclusion }) => conclusion);
  if (concluded.length === 0)
    throw new UsageError(`step ${step.step.id} concludes nothing, so there are no alternatives to list`);
  const wanted = call.so === undefined ? concluded : conclusionsOf(call.so, '--so', position);
  return { position, wanted: fresh(position, wanted, read), own: step.argument };
}

function askedOfPuzzle(read: GivenPuzzle, call: Call, costs: TeachingCosts): Question {
  const position = reached(read, call.at, costs);
  const wanted = call.so === undefined ? [] : conclusionsOf(call.so, '--so', position);
  return { position, wanted: fresh(position, wanted, read), own: undefined };
}

/** The conclusions that are not redundant. Throws for false ones, which nothing proves. */
function fresh(position: Position, wanted: readonly Conclusion[], { solution }: GivenPuzzle): readonly Conclusion[] {
  const { grid } = position;
  for (const conclusion of wanted) {
    const isFalse =
      conclusion.kind === 'impossible'
        ? solution.includes(conclusion.candidate)
        : !membersOf(conclusion.candidates).some((each) => solution.includes(each));
    if (isFalse)
      throw new UsageError(`${printConclusion(grid, conclusion)} disagrees with the solution: nothing proves it`);
  }
  const left = wanted.filter((conclusion) => !isRedundant(position, conclusion));
  const [first] = wanted;
  if (first !== undefined && left.length === 0)
    throw new UsageError(
      `${printConclusion(grid, first)} is already known in this position; there is nothing to prove`,
    );
  return left;
}

/** The start of the puzzle with the conclusions of `--at` taken as read. */
function reached({ start, solution }: GivenPuzzle, at: AskedPosition | undefined, costs: TeachingCosts): Position {
  if (at === undefined) return start;
  const conclusions = at.conclusions === '' ? [] : conclusionsOf(at.conclusions, '--at', start);
  for (const conclusion of conclusions) {
    const isRight =
      conclusion.kind === 'impossible'
        ? !solution.includes(conclusion.candidate)
        : membersOf(conclusion.candidates).some((each) => solution.includes(each));
    if (!isRight)
      throw new UsageError(`--at ${printConclusion(start.grid, conclusion)} disagrees with the solution; leave it out`);
  }
  const position = conclusions.reduce(takeAsRead, start);
  return at.afterSingles ? close(position, costs.free) : position;
}

function conclusionsOf(text: string, option: string, { grid }: Position): readonly Conclusion[] {
  const reading = parseConclusions(grid, text);
  if (!reading.ok) throw new UsageError(`${option} "${text}": ${reading.faults[0]?.message ?? 'no conclusions'}`);
  return reading.value.map(({ conclusion }) => conclusion);
}

/** The position in which the step begins: all removals and placements up to there, taken as read. */
function positionBefore(start: Position, { placedBefore, possibleBefore }: CheckedStep): Position {
  const { grid } = start;
  const placed = membersOf(difference(placedBefore, start.placed)).map((candidate) => oneOf(grid, candidate));
  const withPlaced = placed.reduce(takeAsRead, start);
  const gone = membersOf(difference(withPlaced.possible, possibleBefore));
  return gone
    .map((candidate): Conclusion => ({ kind: 'impossible', candidate }))
    .reduce(
      (position, each) =>
        each.kind === 'impossible' && has(position.possible, each.candidate) ? takeAsRead(position, each) : position,
      withPlaced,
    );
}

function noStep(id: string, steps: readonly CheckedStep[]): string {
  const ids = steps.map((each) => each.step.id);
  const [nearest] = nearestWords(id, ids);
  return `the scene has no step ${id}${nearest === undefined ? `; its steps are ${ids.join(', ')}` : `; did you mean ${nearest}?`}`;
}
