/**
 * One step of a scene fixed: the ways are tried one after the other, the mildest first, and each is read and checked again
 * with the whole scene. The first is taken that makes the step sound and spares every step that was sound already. A way
 * that makes the step only better is carried on from; so a step may take several.
 */
import { edited } from '../check/scene-text.ts';
import { arguedOtherwise, type TextFix, textFixes, wholeTakenOut } from '../check/text-fixes.ts';
import type { CheckedScene, CheckedStep } from '../check/verdict.ts';
import type { Purpose } from '../check/walk.ts';
import { checkScene } from './check-scene.ts';
import { readScene } from './read-scene.ts';
import { payingFor } from './spared.ts';

export interface FixedStep {
  readonly text: string;
  /** What was done, one after the other. */
  readonly what: readonly string[];
  /** The steps that were sound and are not spared: none, if that could be helped. */
  readonly paying: readonly string[];
}

/** At most this many texts are checked for one step. */
const triesBound = 120;

interface Search {
  readonly id: string;
  readonly before: CheckedScene;
  triesLeft: number;
  /** Of what makes the step sound at the cost of others, what costs the fewest. */
  atLeastCost: FixedStep | undefined;
}

interface Reached {
  readonly text: string;
  readonly what: readonly string[];
}

/** Fixes the step of this id; undefined if it is in flow style, or if the text without it cannot be read. */
export function fixStep(text: string, before: CheckedScene, id: string): FixedStep | undefined {
  const search: Search = { id, before, triesLeft: triesBound, atLeastCost: undefined };
  const start: Reached = { text, what: [] };
  const sparing = fixFrom(search, start) ?? argueOtherwise(search, start);
  if (sparing !== undefined) return sparing;
  const without = takeOut(search, start);
  const [first] = [search.atLeastCost, without]
    .filter((each) => each !== undefined)
    .toSorted((a, b) => a.paying.length - b.paying.length);
  return first;
}

/** Goes on from a text until the step is sound; undefined if none of the ways from there spares the others. */
function fixFrom(search: Search, from: Reached): FixedStep | undefined {
  const { scene, step } = withFixes(from.text, { kind: 'fixing', step: search.id });
  if (scene === undefined || step === undefined) return undefined;
  const better: Reached[] = [];
  for (const fix of textFixes(from.text, scene, step)) {
    const tried = tryFix(search, from, fix);
    if (tried === undefined) continue;
    if (tried.step.sound) {
      if (tried.paying.length === 0) return tried;
      keepCheapest(search, tried);
    } else if (tried.paying.length === 0 && faultsOf(tried.step) < faultsOf(step)) better.push(tried);
  }
  for (const each of better) {
    const found = fixFrom(search, each);
    if (found !== undefined) return found;
  }
  return undefined;
}

function argueOtherwise(search: Search, from: Reached): FixedStep | undefined {
  const { step } = withFixes(from.text, { kind: 'arguing otherwise', step: search.id });
  if (step === undefined) return undefined;
  for (const fix of arguedOtherwise(from.text, step)) {
    const tried = tryFix(search, from, fix);
    if (!tried?.step.sound) continue;
    if (tried.paying.length === 0) return tried;
    keepCheapest(search, tried);
  }
  return undefined;
}

function takeOut(search: Search, from: Reached): FixedStep | undefined {
  const step = stepOf(search.before, search.id);
  const fix = step && wholeTakenOut(from.text, step);
  if (fix === undefined) return undefined;
  const text = edited(from.text, fix.edits);
  const after = checkedText(text, { kind: 'verdicts' });
  return after && { text, what: [fix.what], paying: payingFor(search.id, search.before, after) };
}

/** The step after the fix; undefined if the text cannot be read then, or is as it was. */
function tryFix(
  search: Search,
  from: Reached,
  { what, edits }: TextFix,
): (FixedStep & { readonly step: CheckedStep }) | undefined {
  if (search.triesLeft-- <= 0) return undefined;
  const text = edited(from.text, edits);
  const after = text === from.text ? undefined : checkedText(text, { kind: 'verdicts' });
  const step = after && stepOf(after, search.id);
  if (after === undefined || step === undefined) return undefined;
  // Known already when it is said, the step would be sound and show nothing; a cascade may name what was shown just before.
  const { cascade, fails } = stepOf(search.before, search.id)!.step;
  if (step.verdict === 'redundant' && !fails && cascade.length === 0) return undefined;
  return { text, what: [...from.what, what], paying: payingFor(search.id, search.before, after), step };
}

function keepCheapest(search: Search, { text, what, paying }: FixedStep): void {
  if (search.atLeastCost === undefined || paying.length < search.atLeastCost.paying.length)
    search.atLeastCost = { text, what, paying };
}

function withFixes(text: string, purpose: Purpose & { readonly step: string }) {
  const scene = checkedText(text, purpose);
  return { scene, step: scene && stepOf(scene, purpose.step) };
}

/** The scene of the text, checked; undefined if it cannot be used. */
export function checkedText(text: string, purpose: Purpose): CheckedScene | undefined {
  const { scene } = readScene(text);
  if (scene === undefined) return undefined;
  const checked = checkScene(scene, purpose);
  return checked.errors.length > 0 ? undefined : checked;
}

function stepOf({ steps }: CheckedScene, id: string): CheckedStep | undefined {
  return steps.find(({ step }) => step.id === id);
}

function faultsOf(step: CheckedStep): number {
  const conclusions = step.conclusions.filter((each) => each.verdict === 'unproved' || each.verdict === 'false').length;
  const links = step.links.filter((link) => !link.holds).length;
  return conclusions + links + step.faults.length + (step.name?.judged === 'misnamed' ? 1 : 0);
}
