/**
 * An argument that was found, as a step that can be pasted into a scene: it is parsed again from its text, and offered
 * only if it proves its conclusion and its name fits.
 */

import { parseChain } from '../grid/notation/chain.ts';
import { parseConclusions } from '../grid/notation/conclusions.ts';
import { parseDeadly } from '../grid/notation/deadly.ts';
import { printChain, printConclusions } from '../grid/notation/print.ts';
import { parseSets } from '../grid/notation/sets.ts';
import type { Conclusion, Reading } from '../grid/terms.ts';
import type { Position } from '../proof/kernel.ts';
import type { Located } from '../scene/scene.ts';
import type { ProposedStep } from '../scene/step-text.ts';
import type { ArgumentName } from '../techniques/all-techniques.ts';
import { type FoundArgument, findArgument } from '../techniques/find-argument.ts';
import { namesInTeachingOrder } from '../techniques/simplest.ts';
import { buildFound } from './argument.ts';
import { type Claim, evaluate } from './claim.ts';
import { bearsName } from './name.ts';

/** A placement is explained by a single, no matter what else would prove it. */
const singles: readonly ArgumentName[] = ['full house', 'hidden single', 'naked single'];

/** The simplest named argument that proves the conclusion, written as a step; undefined if none is found. */
export function proposeStep(
  position: Position,
  conclusion: Conclusion,
  names: readonly ArgumentName[] = namesInTeachingOrder,
): ProposedStep | undefined {
  return proposeStepFor(position, [conclusion], names);
}

/** The simplest of these named arguments that proves all the conclusions; undefined for none of them, or if none does. */
export function proposeStepFor(
  position: Position,
  conclusions: readonly Conclusion[],
  names: readonly ArgumentName[] = namesInTeachingOrder,
): ProposedStep | undefined {
  if (conclusions.length === 0) return undefined;
  const isPlacing = conclusions.some(({ kind }) => kind === 'one-of');
  for (const name of isPlacing ? singles.filter((each) => names.includes(each)) : names) {
    const found = findArgument(position, name, conclusions);
    if (found === undefined) continue;
    const step = waysToWrite(position, name, found, conclusions).find((each) => holdsAsWritten(position, each));
    if (step !== undefined) return step;
  }
  return undefined;
}

/** By its chain, if it has one; by its sets only. */
function waysToWrite(
  position: Position,
  because: ArgumentName,
  found: FoundArgument,
  conclusions: readonly Conclusion[],
): readonly ProposedStep[] {
  const { chain } = found.instance;
  const { sets } = buildFound(position, found);
  const deadly = sets.find((named) => named.set.source.kind === 'guardians');
  const named = sets.filter((each) => each !== deadly).map((each) => each.name);
  const common = {
    because,
    deadly: deadly?.name.replace(/^deadly /, ''),
    so: printConclusions(position.grid, conclusions).join(' '),
  };
  const bySets = { ...common, from: named.length > 0 ? named.join(' ') : undefined, chain: undefined };
  if (chain === undefined) return [bySets];
  return [{ ...common, from: undefined, chain: printChain(position.grid, { ...chain, concludes: [] }) }, bySets];
}

/** Whether the step, parsed as it would be in a scene, is sound in the position and its name fits. */
export function holdsAsWritten(position: Position, step: ProposedStep): boolean {
  const read = <T>(text: string | undefined, parse: (grid: Position['grid'], text: string) => Reading<T>) => {
    const reading = text === undefined ? undefined : parse(position.grid, text);
    return reading?.ok === true ? reading.value : undefined;
  };
  const [chain, deadly] = [read(step.chain, parseChain), read(step.deadly, parseDeadly)];
  const claim: Claim = {
    origin: 'so',
    item: 0,
    given: {
      from: (read(step.from, parseSets) ?? []).map(({ name }) => located(name)),
      chains: chain === undefined ? [] : [located(chain)],
      deadly: deadly === undefined ? undefined : located(deadly),
    },
    because: step.because,
    allowed: undefined,
    concludes: {
      kind: 'listed',
      conclusions: (read(step.so, parseConclusions) ?? []).map(({ conclusion }) => conclusion),
    },
  };
  const evaluated = evaluate(position, claim, new Map());
  const { links, faults } = evaluated.argument;
  return (
    evaluated.conclusions.length > 0 &&
    evaluated.conclusions.every(({ outcome }) => outcome.kind === 'proved') &&
    links.every((link) => link.holds) &&
    faults.length === 0 &&
    bearsName(position, step.because, claim, evaluated)
  );
}

/** A value that is not in any file yet. */
function located<T>(value: T): Located<T> {
  return { value, span: { start: 0, end: 0 } };
}
