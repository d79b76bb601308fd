/**
 * The stamp over a step that keeps the scene from being sound: what is wrong with it, short enough for one line.
 */

import type { CheckedStep } from '../check/verdict.ts';
import { asShown } from '../grid/notation/shown.ts';

/** The most characters that can be read on a band across the frame. */
const most = 100;

/** What the stamp says; undefined for a sound step. That the step is not proved is already in the picture. */
export function stampText({ sound, message, step }: CheckedStep): string | undefined {
  if (sound) return undefined;
  return shortened(message === '' ? `step ${step.id} does not hold` : firstSentence(asShown(message)));
}

/** What is wrong comes first; how to fix it is for the author, not for the picture. */
function firstSentence(message: string): string {
  return message.match(/^.*?(?=\. )/s)?.[0] ?? message;
}

/** The sentence up to the end of a clause or, failing that, of a word. */
function shortened(sentence: string): string {
  if (sentence.length <= most) return sentence;
  const clause = sentence.slice(0, most + 1).match(/^.*(?=; )/s)?.[0];
  if (clause !== undefined && clause.length > most / 3) return clause;
  return `${sentence.slice(0, most - 1).replace(/\s+\S*$/, '')}\u2026`;
}
