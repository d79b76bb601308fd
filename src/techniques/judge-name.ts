/**
 * Whether an argument bears the name that it was given, and which names it bears.
 *
 * A name is a statement about shape. It fits if it fits the whole argument with all its conclusions, or if for every
 * conclusion it fits the whole or a part of the argument that this conclusion needs: sets that nothing needs spoil no name.
 */
import type { Conclusion } from '../grid/terms.ts';
import type { OneOf } from '../proof/kernel.ts';
import { isSpent } from '../proof/kernel.ts';
import { allTechniques, techniqueNamed } from './all-techniques.ts';
import { minimalParts } from './minimal-argument.ts';
import { bestOf, worstOf } from './recognition.ts';
import type { Recognition, Shape, Technique } from './technique.ts';

export interface NameJudgement {
  /** `not judged`: there is no recogniser of that name. */
  readonly judged: 'fits' | 'misnamed' | 'not judged';
  /** All names that fit, the most special first, the given one among them if it fits but loosely. */
  readonly fits: readonly string[];
  /** In what the given name is not quite right, where it fits but loosely. */
  readonly warning: string | undefined;
}

/** Judges a name in its canonical spelling. */
export function judgeName(shape: Shape, given: string): NameJudgement {
  const reading = readingOf(shape);
  const technique = techniqueNamed(given);
  const answer = technique === undefined ? undefined : recogniseAnywhere(technique, reading);
  const fits = allTechniques
    .filter((each) => (each === technique ? answer !== undefined : recogniseAnywhere(each, reading)?.kind === 'fits'))
    .map((each) => each.name);
  return {
    judged: technique === undefined ? 'not judged' : answer === undefined ? 'misnamed' : 'fits',
    fits,
    warning: answer?.kind === 'loosely' ? answer.warning : undefined,
  };
}

/** All names that fit the argument without a warning, the most special first. */
export function namesOf(shape: Shape): readonly string[] {
  const reading = readingOf(shape);
  return allTechniques.filter((each) => recogniseAnywhere(each, reading)?.kind === 'fits').map((each) => each.name);
}

/** Whether the argument, or the parts of it that its conclusions need, bears the technique's name. */
export function recogniseIn(technique: Technique, shape: Shape): Recognition {
  return recogniseAnywhere(technique, readingOf(shape));
}

/** The whole, and for each conclusion that says something new the whole with that one alone and the parts that it needs. */
interface Reading {
  readonly whole: Shape;
  readonly byConclusion: () => readonly (readonly Shape[])[];
}

function readingOf(shape: Shape): Reading {
  const telling = shape.conclusions.filter((conclusion) => !isSpent(shape.position, conclusion));
  const whole = telling.length === 0 ? shape : { ...shape, conclusions: telling };
  let parts: readonly (readonly Shape[])[] | undefined;
  const byConclusion = () => {
    parts ??= telling.map((conclusion) => [
      { ...whole, conclusions: [conclusion] },
      ...minimalParts(shape.position, shape.sets, conclusion)
        .filter((sets) => sets.length < shape.sets.length)
        .map((sets) => partOf(shape, sets, conclusion)),
    ]);
    return parts;
  };
  return { whole, byConclusion };
}

function partOf(shape: Shape, sets: readonly OneOf[], conclusion: Conclusion): Shape {
  const keepsGuardians = sets.some((set) => set.source.kind === 'guardians');
  return {
    position: shape.position,
    sets,
    chains: [],
    deadly: keepsGuardians ? shape.deadly : undefined,
    conclusions: [conclusion],
  };
}

function recogniseAnywhere(technique: Technique, reading: Reading): Recognition {
  const asWhole = technique.recognise(reading.whole);
  if (asWhole?.kind === 'fits' || reading.whole.sets.length === 0) return asWhole;
  const shapes = reading.byConclusion();
  if (shapes.length === 0) return asWhole;
  const inParts = worstOf(shapes, (each) => bestOf(each, (shape) => technique.recognise(shape)));
  return inParts?.kind === 'fits' ? inParts : (asWhole ?? inParts);
}
