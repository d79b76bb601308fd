/**
 * Finding arguments of a given name in a position. Finders are not trusted: every conclusion of an instance goes
 * through the kernel before the instance is passed on.
 */
import { membersOf } from '../grid/candidates.ts';
import type { Conclusion } from '../grid/terms.ts';
import { isRedundant, type OneOf, type Position, prove } from '../proof/kernel.ts';
import { type ArgumentName, techniqueNamed } from './all-techniques.ts';
import { recogniseIn } from './judge-name.ts';
import type { Instance, Needless } from './technique.ts';

/** How many candidates a proof of an instance may try, and how many instances of a name are examined. */
const proofBound = 50_000;
const instanceBound = 4_000;

export interface FoundArgument {
  readonly instance: Instance;
  /** How many other instances of the name also prove all the conclusions, as far as the search went. */
  readonly others: number;
}

/** The instances of a name in the position, the simplest first, each with the conclusions that the kernel proves. */
export function* instancesOf(position: Position, name: ArgumentName): Generator<Instance> {
  let left = instanceBound;
  for (const instance of techniqueNamed(name).find(position)) {
    if (--left < 0) return;
    const conclusions = instance.conclusions.filter((conclusion) => isProved(position, instance.sets, conclusion));
    if (conclusions.length > 0) yield { ...instance, conclusions };
  }
}

/**
 * The simplest instance of the name that proves all conclusions that are not redundant; undefined if there is none.
 * Arguments with a set that nothing needs bear the name too: where these are to be `kept`, they are tried after all others.
 */
export function findArgument(
  position: Position,
  name: ArgumentName,
  conclusions: readonly Conclusion[],
  needless: Needless = 'left out',
): FoundArgument | undefined {
  const found = findAmong(position, name, conclusions, 'left out');
  return found ?? (needless === 'kept' ? findAmong(position, name, conclusions, needless) : undefined);
}

function findAmong(
  position: Position,
  name: ArgumentName,
  conclusions: readonly Conclusion[],
  needless: Needless,
): FoundArgument | undefined {
  const technique = techniqueNamed(name);
  const wanted = conclusions.filter((conclusion) => !isRedundant(position, conclusion));
  if (wanted.length === 0) return undefined;
  const keys = wanted.map(keyOf);
  let best: Instance | undefined;
  let count = 0;
  let left = instanceBound;
  for (const instance of technique.find(position, wanted, needless)) {
    if (--left < 0) break;
    if (!wanted.every((conclusion) => isProved(position, instance.sets, conclusion))) continue;
    const listed = new Set(instance.conclusions.map(keyOf));
    const shape = { ...instance, position, chains: [], conclusions: wanted };
    if (!keys.every((key) => listed.has(key)) && recogniseIn(technique, shape) === undefined) continue;
    count++;
    if (best === undefined || instance.sets.length < best.sets.length) best = instance;
  }
  return best === undefined ? undefined : { instance: best, others: count - 1 };
}

function isProved(position: Position, sets: readonly OneOf[], conclusion: Conclusion): boolean {
  return prove(position, sets, conclusion, proofBound).kind === 'proved';
}

function keyOf(conclusion: Conclusion): string {
  return conclusion.kind === 'impossible' ? `-${conclusion.candidate}` : membersOf(conclusion.candidates).join();
}
