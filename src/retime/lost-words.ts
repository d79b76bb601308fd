/**
 * What in a scene depends on words that are no longer spoken in a re-recorded narration.
 */

import { findCue } from '../scene/anchor-cue.ts';
import type { DependentTime } from '../scene/anchors.ts';
import type { Span } from '../scene/diagnostic.ts';
import type { Scene } from '../scene/scene.ts';
import type { Narration } from '../timeline/narration.ts';
import { findPhrase, nearestSpoken, type SpokenText, spokenText } from '../timeline/phrases.ts';
import type { Retake } from '../timeline/retake.ts';
import { printSeconds } from '../timeline/seconds.ts';
import { spokenAlike } from '../timeline/spoken-alike.ts';
import { formsOf } from '../timeline/word-forms.ts';
import type { RetimedScene } from './retimed-scene.ts';
import { timesOf } from './written-times.ts';

/** A remark about a place in the scene's text. */
export interface LostWords {
  readonly step: string | undefined;
  readonly span: Span;
  readonly message: string;
}

/** In the order of the text. */
export function lostWords(
  scene: Scene,
  text: string,
  retimed: RetimedScene,
  retake: Retake,
  after: Narration,
): readonly LostWords[] {
  const spoken = spokenText(after);
  return [
    ...lostSentences(scene, retake, after),
    ...retimed.times.flatMap(({ step, span, what, lost, to }): LostWords[] => {
      if (lost === undefined) return [];
      const message = `the word at which this ${what} was, "${lost}", is no longer spoken; it is put between the words around it, at ${printSeconds(to)}`;
      return [{ step, span, message }];
    }),
    ...lostAnchors(scene, text, spoken, after),
  ].sort((a, b) => a.span.start - b.span.start);
}

/** Steps whose sentence was spoken, and of whose words more than half are no longer spoken. */
function lostSentences(scene: Scene, { words }: Retake, after: Narration): LostWords[] {
  const forms = formsOf(words.map(({ text }) => text));
  return scene.steps.flatMap((step): LostWords[] => {
    if (step.say === undefined) return [];
    const place = spokenAlike(forms, step.say.value);
    if (place === undefined) return [];
    const said = words.slice(place.first, place.last + 1);
    const lost = said.filter(({ now }) => now === undefined).length;
    if (2 * lost <= said.length) return [];
    const how = lost === said.length ? 'is not spoken' : `is spoken without ${lost} of its ${said.length} words`;
    return [{ step: step.id, span: step.say.span, message: `what the step says ${how} in ${after.name}` }];
  });
}

/** Cues and words that the new narration does not have. */
function lostAnchors(scene: Scene, text: string, spoken: SpokenText, after: Narration): LostWords[] {
  return timesOf(scene, text).staying.flatMap(({ time, span, step }): LostWords[] => {
    const message = whyLost(time, spoken, after);
    return message === undefined ? [] : [{ step, span, message }];
  });
}

function whyLost(time: DependentTime, spoken: SpokenText, after: Narration): string | undefined {
  switch (time.kind) {
    case 'after':
      return undefined;
    case 'cue':
      return findCue(after, time.cue) === undefined ? `${after.name} has no cue "${time.cue}"` : undefined;
    case 'words': {
      if (findPhrase(spoken, time.words).length > 0) return undefined;
      const near = nearestSpoken(spoken, time.words);
      const nearest = near === undefined ? '' : `; the nearest are "${near.text}" at ${printSeconds(near.seconds)}`;
      return `the words "${time.words}" are not spoken in ${after.name}${nearest}`;
    }
    default:
      return time satisfies never;
  }
}
