/**
 * What is said, as text on the frame: the narration's own cues at their own times; without a narration what each step
 * says, sentence by sentence over the step's time, each in proportion to its letters.
 */
import { add, fraction } from '../scene/fraction.ts';
import type { TimedScene } from '../scene/scene.ts';
import { frameAt, type Said } from './film.ts';
import type { Narration } from './narration.ts';
import { frameAtTime, nearestFrame } from './seconds.ts';
import type { ScheduledStep } from './step-frames.ts';

/** In order of `from`; never two at the same time, and none without a frame of its own. */
export function saidOf(
  scene: TimedScene,
  steps: readonly ScheduledStep[],
  narration: Narration | undefined,
  frameCount: number,
): Said[] {
  const said = narration === undefined ? steps.flatMap((step) => saidIn(scene, step)) : cuesOf(scene, narration);
  return said
    .map((each, index): Said => {
      const next = said[index + 1]?.from ?? frameCount;
      return { ...each, until: frameAt(Math.min(each.until, next, frameCount)) };
    })
    .filter(({ from, until }) => from < until);
}

/**
 * The sentences of a text. One ends with a full stop, question or exclamation mark before a space (in Chinese and
 * Japanese before anything), its closing quotes and brackets included.
 */
export function sentencesOf(text: string): string[] {
  const ends = /[.!?…؟]+["'”’»)\]]*(?=\s|$)|[。！？]+[”’」』）]*/gu;
  const sentences: string[] = [];
  let from = 0;
  for (const match of text.matchAll(ends)) {
    const to = match.index + match[0].length;
    sentences.push(text.slice(from, to).trim());
    from = to;
  }
  return [...sentences, text.slice(from).trim()].filter((sentence) => sentence !== '');
}

function saidIn(scene: TimedScene, { id, from, until }: ScheduledStep): Said[] {
  const text = scene.steps.find((step) => step.id === id)?.say?.value;
  if (text === undefined) return [];
  const sentences = sentencesOf(text);
  const letters = sentences.reduce((sum, sentence) => sum + sentence.length, 0);
  const after = (count: number) => nearestFrame(add(fraction(from), fraction((until - from) * count, letters)));
  let before = 0;
  return sentences.map((sentence) => {
    const begin = after(before);
    before += sentence.length;
    return { text: sentence, from: begin, until: after(before) };
  });
}

function cuesOf({ video: { rate } }: Pick<TimedScene, 'video'>, { cues }: Narration): Said[] {
  return cues.map(({ text, start, end }) => ({
    text: text.replace(/\s+/g, ' ').trim(),
    from: frameAtTime(rate, start),
    until: frameAtTime(rate, end),
  }));
}
