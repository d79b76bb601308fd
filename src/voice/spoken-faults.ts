/**
 * Warnings where the voice says something else than its step claims or shows: "row three column five" while the mark lies
 * on r5c3, "X-wing" over a swordfish.
 */
import type { CheckedScene, CheckedStep } from '../check/verdict.ts';
import type { Diagnostic } from '../scene/diagnostic.ts';
import type { Film } from '../timeline/film.ts';
import type { Narration } from '../timeline/narration.ts';
import { startOfWord } from '../timeline/phrases.ts';
import type { Schedule } from '../timeline/schedule.ts';
import { frameAtTime, printFrame } from '../timeline/seconds.ts';
import { timeWarning } from '../timeline/time-faults.ts';
import { contradictionOf } from './contradictions.ts';
import { involvedBySteps } from './involved.ts';
import { statementsIn } from './statements.ts';

interface SpokenWord {
  readonly text: string;
  readonly frame: number;
}

/** One warning for each contradiction, in the order in which they are spoken, at the step that is on screen then. */
export function spokenFaults(
  { scene, steps }: CheckedScene,
  schedule: Schedule,
  film: Film,
  narration: Narration | undefined,
): Diagnostic[] {
  const involved = involvedBySteps(film, steps);
  const spoken = narration === undefined ? wordsOfSteps(schedule) : wordsOf(narration, schedule);
  return sentencesOf(spoken).flatMap((sentence): Diagnostic[] => {
    const statements = statementsIn(
      sentence.map(({ text }) => text),
      film.grid,
    );
    return statements.flatMap((statement): Diagnostic[] => {
      const { frame } = sentence[statement.words[0]]!;
      const at = schedule.steps.findLastIndex(({ from, until }) => from <= frame && frame < until);
      const step = steps[at];
      if (step === undefined || !step.sound || step.step.fails) return [];
      const found = contradictionOf(statement, {
        grid: film.grid,
        step,
        own: involved[at]!,
        around: [involved[at - 1], involved[at + 1]].flatMap((each) => each ?? []),
        earlierNames: namesOf(steps.slice(0, at)),
        nextNames: namesOf(steps.slice(at + 1, at + 2)),
      });
      if (found === undefined) return [];
      const words = sentence.slice(statement.words[0], statement.words[1] + 1).map(({ text }) => text);
      const message = `"${trimmed(words)}" is spoken at ${printFrame(schedule.rate, frame)}: ${found.message}`;
      const span = narration === undefined ? (step.step.say?.span ?? step.step.idSpan) : step.step.idSpan;
      return [timeWarning(found.code, scene.steps[at]?.id === step.step.id ? span : step.step.idSpan, message)];
    });
  });
}

function namesOf(steps: readonly CheckedStep[]): ReadonlySet<string> {
  return new Set(steps.flatMap(({ name }) => name?.fits ?? []));
}

function trimmed(words: readonly string[]): string {
  return words.join(' ').replace(/^[^\p{L}\p{N}]+|[^\p{L}\p{N}]+$/gu, '');
}

function wordsOf({ cues }: Narration, { rate }: Schedule): SpokenWord[] {
  return cues.flatMap((cue) =>
    cue.words.map(({ text }, index) => ({ text, frame: frameAtTime(rate, startOfWord(cue, index)) })),
  );
}

/** Without a narration: what the steps say, each sentence at its own time. */
function wordsOfSteps({ said }: Schedule): SpokenWord[] {
  return said.flatMap(({ text, from }) =>
    text
      .split(/\s+/)
      .filter((word) => word !== '')
      .map((word) => ({ text: word, frame: from })),
  );
}

function sentencesOf(words: readonly SpokenWord[]): SpokenWord[][] {
  const sentences: SpokenWord[][] = [[]];
  for (const word of words) {
    sentences.at(-1)!.push(word);
    if (/[.?!\u2026]["')\u201d\u2019]*$/.test(word.text)) sentences.push([]);
  }
  return sentences.filter(({ length }) => length > 0);
}
