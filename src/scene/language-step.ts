/**
 * The keys of a step.
 */
import type { BeatDefinition } from './beats.ts';
import type { ReadOf } from './definition.ts';
import {
  becauseText,
  cascadeItems,
  chainTexts,
  deadlyText,
  fromText,
  onlyItems,
  pencilItems,
  soText,
} from './language-argument.ts';
import { stepEnd, stepTime } from './language-times.ts';
import { name, sentence, yesOrNo } from './language-values.ts';
import { anyListOf, keys, optional } from './structures.ts';

/** A step, whose `show` has these beats. */
export const stepDefinition = (beat: BeatDefinition) =>
  keys('a step', 'One step of the lesson.', {
    id: name('The name of the step: letters, digits, hyphens; each once.'),
    at: optional(stepTime()),
    until: optional(stepEnd()),
    title: optional(sentence('The heading shown on screen.')),
    say: optional(sentence('The sentence said: for captions and slide notes, and to find its time in the narration.')),
    chapter: optional(sentence('The name of the chapter that starts here.')),
    because: optional(becauseText()),
    called: optional(
      sentence('A name shown for the argument; one that the trade knows must be right, as with because.'),
    ),
    from: optional(fromText()),
    chain: optional(chainTexts()),
    deadly: optional(deadlyText()),
    so: optional(soText()),
    only: optional(onlyItems()),
    pencil: optional(pencilItems()),
    cascade: optional(cascadeItems()),
    fails: optional(
      yesOrNo(
        'true: this looks like an argument and is not; right exactly if each of its conclusions has a counterexample.',
      ),
    ),
    show: optional(anyListOf(beat, 'What is drawn, and when; without it the claim draws itself.')),
  });

/** A step as written. */
export type StepMap = ReadOf<ReturnType<typeof stepDefinition>>;
