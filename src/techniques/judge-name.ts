/**
 * Whether the name given to an argument fits it, and which names do.
 *
 * A name is a statement about shape. It fits if it fits the whole argument, or if for every conclusion it fits a part
 * of the argument that this conclusion needs: superfluous sets do not spoil a name, nor do by-product conclusions of
 * the shape. If a chain is given, it is drawn as it is given, and the name must fit all of it.
 */
import { union } from '../grid/candidates.ts';
import type { Conclusion } from '../grid/terms.ts';
import { isRedundant, type OneOf } from '../proof/kernel.ts';
import { type ArgumentName, allTechniques, type Technique, techniqueNamed } from './all-techniques.ts';
import { minimalParts } from './minimal-argument.ts';
import { bestOf, fits, worstOf } from './recognition.ts';
import type { Recognition, Shape } from './technique.ts';
import { writtenOrder } from './written-chain.ts';

export interface NameJudgement {
  /** `not judged`: there is no conclusion that a name could fit. */
  readonly judged: 'fits' | 'misnamed' | 'not judged';
  /** All names that fit, the most specific first, including the given one if it fits only loosely. */
  readonly fits: readonly ArgumentName[];
  /** How the given name is not quite right, if it fits only loosely. */
  readonly warning: string | undefined;
}

/** `count`: the number that the name was written with, where it counts something (the 3 of BUG+3). */
export function judgeName(shape: Shape, given: ArgumentName, count?: number): NameJudgement {
  const reading = readingOf(shape);
  const technique = techniqueNamed(given);
  const answer = recogniseAnywhere(technique, reading);
  // If the given name fits, names that fit except for by-products are not worth the search.
  const recognise = answer === undefined ? recogniseAnywhere : recogniseStrictly;
  const names = allTechniques
    .filter((each) => (each === technique ? answer !== undefined : recognise(each, reading)?.kind === 'fits'))
    .map((each) => each.name);
  const miscount = count === undefined ? undefined : technique.miscounted?.(shape, count);
  const canBeJudged = reading.whole.conclusions.length > 0;
  return {
    judged: !canBeJudged ? 'not judged' : answer === undefined ? 'misnamed' : 'fits',
    fits: names,
    warning: answer === undefined ? undefined : (miscount ?? (answer.kind === 'loosely' ? answer.warning : undefined)),
  };
}

/** Whether the technique's name fits the argument, or the parts of it that its conclusions need. */
export function recogniseIn(technique: Technique, shape: Shape): Recognition {
  return recogniseAnywhere(technique, readingOf(shape));
}

/** The whole argument and, for conclusions that need only a part of it, these parts. */
interface Reading {
  readonly whole: Shape;
  /** Computed when first asked for; empty if every conclusion needs all sets. */
  readonly apart: () => readonly Apart[];
}

/** Conclusions that need the same parts of the argument, or all of it. */
interface Apart {
  readonly conclusions: readonly Conclusion[];
  /** The parts with fewer sets; only the whole if there are none. */
  readonly parts: readonly Omit<Shape, 'conclusions'>[];
}

function readingOf(shape: Shape): Reading {
  const stated = shape.conclusions.length > 0 ? shape.conclusions : whatItsEndsSay(shape);
  const fresh = stated.filter((conclusion) => !isRedundant(shape.position, conclusion));
  const whole = { ...shape, conclusions: fresh.length === 0 ? stated : fresh };
  let known: readonly Apart[] | undefined;
  return {
    whole,
    apart: () => {
      known ??= apartIn(whole, fresh);
      return known;
    },
  };
}

/** A chain without a conclusion says that one of its ends is true. */
function whatItsEndsSay(shape: Shape): readonly Conclusion[] {
  const order = writtenOrder(shape);
  return order === undefined ? [] : [{ kind: 'one-of', candidates: union(order[0]!.near, order.at(-1)!.far) }];
}

function apartIn(whole: Shape, fresh: readonly Conclusion[]): Apart[] {
  const byParts = new Map<string, { conclusions: Conclusion[]; parts: Apart['parts'] }>();
  for (const conclusion of fresh) {
    const parts = minimalParts(whole.position, whole.sets, conclusion).filter(
      (part) => part.length < whole.sets.length,
    );
    const key = parts.map((part) => part.map((set) => whole.sets.indexOf(set)).join()).join(' ');
    const same = byParts.get(key);
    if (same !== undefined) same.conclusions.push(conclusion);
    else
      byParts.set(key, {
        conclusions: [conclusion],
        parts: parts.length === 0 ? [whole] : parts.map((part) => partOf(whole, part)),
      });
  }
  const found = [...byParts.values()];
  return found.some(({ parts }) => parts[0] !== whole) ? found : [];
}

function partOf(whole: Shape, sets: readonly OneOf[]): Omit<Shape, 'conclusions'> {
  const keepsGuardians = sets.some((set) => set.source.kind === 'guardians');
  return { position: whole.position, sets, chains: [], deadly: keepsGuardians ? whole.deadly : undefined };
}

/**
 * With more sets than this, and no chain to give their order, no order is searched for: that search explodes, and only
 * one name fits an argument of that size.
 */
const mostSetsUnstrung = 14;

function seenIn(technique: Technique, shape: Shape): Recognition {
  const isTooLarge = shape.chains.length === 0 && shape.sets.length > mostSetsUnstrung;
  return isTooLarge && technique.name !== 'forcing net' ? undefined : technique.recognise(shape);
}

/** The whole with all its conclusions, or a part for every conclusion. */
function recogniseStrictly(technique: Technique, reading: Reading): Recognition {
  const { whole } = reading;
  if (whole.conclusions.length === 0) return undefined;
  const together = seenIn(technique, whole);
  if (together?.kind === 'fits') return together;
  const apart = whole.chains.length > 0 ? [] : reading.apart();
  const inParts = apart.length === 0 ? undefined : recogniseInParts(technique, apart);
  return inParts?.kind === 'fits' ? inParts : (together ?? inParts);
}

/** As above, or the whole with one of its conclusions: the others are then by-products of it. */
function recogniseAnywhere(technique: Technique, reading: Reading): Recognition {
  const { whole } = reading;
  const strictly = recogniseStrictly(technique, reading);
  if (strictly?.kind === 'fits' || whole.conclusions.length < 2) return strictly;
  const withOne = bestOf(whole.conclusions, (each) => seenIn(technique, { ...whole, conclusions: [each] }));
  return withOne?.kind === 'fits' ? withOne : (strictly ?? withOne);
}

function recogniseInParts(technique: Technique, apart: readonly Apart[]): Recognition {
  const bearers: (readonly OneOf[])[] = [];
  const answers = apart.map((group) =>
    worstOf(group.conclusions, (conclusion) =>
      bestOf(group.parts, (part) => {
        const answer = seenIn(technique, { ...part, conclusions: [conclusion] });
        if (answer !== undefined) bearers.push(part.sets);
        return answer;
      }),
    ),
  );
  const isByProduct = (group: Apart) =>
    group.parts.some((part) => bearers.some((bearer) => part.sets.every((set) => bearer.includes(set))));
  return worstOf(apart, (group) => answers[apart.indexOf(group)] ?? (isByProduct(group) ? fits : undefined));
}
