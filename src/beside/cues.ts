/**
 * What is said, as captions: cues of one or two lines that follow one another and never overlap. No sentence is on
 * screen before it is said: otherwise readers would know the digit before the voice reaches it.
 */
import { beginsSentence, breakBefore, never } from './breaks.ts';
import { lengthOf, limits, type TextCue } from './cue.ts';
import { inTime, type UntimedCue } from './cue-times.ts';
import type { SaidWord } from './spoken.ts';

/** A silence at which a cue ends, in milliseconds. */
const pause = 800;
/** Sentences that begin within this time, in milliseconds, seem simultaneous to eye and ear: six frames at 30. */
const atOnce = 200;

/** The cues of everything said before `end`, in milliseconds. */
export function captionCues(words: readonly SaidWord[], end: number): TextCue[] {
  const spoken = oneAfterAnother(words).filter((word) => word.from < end);
  return inTime(passagesOf(spoken).flatMap(splitPassage), end);
}

/** Spreads words said at the same time a millisecond apart, so that every cue has a time of its own. */
function oneAfterAnother(words: readonly SaidWord[]): SaidWord[] {
  let latest = -1;
  return words.map((word) => {
    latest = Math.max(word.from, latest + 1);
    return { ...word, from: latest, to: Math.max(word.to, latest) };
  });
}

/** Sentences, and parts of one that are separated by a pause. */
function passagesOf(words: readonly SaidWord[]): SaidWord[][] {
  const passages: SaidWord[][] = [];
  for (const [index, word] of words.entries()) {
    const [passage, before] = [passages.at(-1), words[index - 1]];
    const goesOn = before !== undefined && word.from - before.to < pause && word.name === undefined;
    const isNew = beginsSentence(words, index) && word.from - (passage?.[0]?.from ?? 0) > atOnce;
    if (passage !== undefined && goesOn && !isNew) passage.push(word);
    else passages.push([word]);
  }
  return passages;
}

interface Cut {
  readonly cost: number;
  readonly lines: readonly string[];
}

/** The cues of a passage, with the least total cost of its breaks (dynamic programming over the words). */
function splitPassage(words: readonly SaidWord[]): UntimedCue[] {
  const best: { cost: number; from: number; lines: readonly string[] }[] = [{ cost: 0, from: 0, lines: [] }];
  for (let until = 1; until <= words.length; until++) {
    best[until] = { cost: Number.POSITIVE_INFINITY, from: until - 1, lines: [] };
    for (let from = until - 1; from >= 0; from--) {
      const cut = cutOf(words, from, until);
      if (cut === undefined) break;
      const cost = best[from]!.cost + cut.cost;
      if (cost < best[until]!.cost) best[until] = { cost, from, lines: cut.lines };
    }
  }
  const cues: UntimedCue[] = [];
  for (let until = words.length; until > 0; ) {
    const { from, lines } = best[until]!;
    const [first, last] = [words[from]!, words[until - 1]!];
    cues.push({ name: first.name, from: first.from, to: last.to, lines, goesOn: from > 0 });
    until = from;
  }
  return cues.reverse();
}

/** The cost of a cue of these words; undefined if two lines do not hold them. */
function cutOf(words: readonly SaidWord[], from: number, until: number): Cut | undefined {
  const text = textOf(words, from, until);
  const length = lengthOf(text);
  if (until - from > 1 && length > limits.lines * limits.lineLength + 1) return undefined;
  const broken = length <= limits.lineLength ? { cost: 0, lines: [text] } : inTwo(words, from, until);
  if (broken === undefined) return until - from === 1 ? { cost: never, lines: [text] } : undefined;
  const time = Math.max(1, words[until - 1]!.to - words[from]!.from);
  const speed = (1000 * length) / time;
  let cost = 6 + broken.cost + 3 * breakBefore(words, until);
  for (let index = from + 1; index < until; index++) if (breakBefore(words, index) === 0) cost += 4;
  if (length < limits.lineLength / 2) cost += 8;
  if (time < limits.shortest) cost += 10;
  if (time > limits.longest) cost += (time - limits.longest) / 250;
  cost += Math.max(0, speed - limits.charactersASecond) + Math.max(0, speed - limits.easyCharactersASecond);
  return { cost, lines: broken.lines };
}

/** The best break into two lines, the lower one preferably longer; undefined if two lines do not hold the words. */
function inTwo(words: readonly SaidWord[], from: number, until: number): Cut | undefined {
  let best: Cut | undefined;
  for (let index = from + 1; index < until; index++) {
    const lines = [textOf(words, from, index), textOf(words, index, until)];
    const [upper, lower] = lines.map(lengthOf) as [number, number];
    if (upper > limits.lineLength || lower > limits.lineLength) continue;
    const cost = breakBefore(words, index) + Math.abs(upper - lower) / 6 + (upper > lower ? 1 : 0);
    if (best === undefined || cost < best.cost) best = { cost, lines };
  }
  return best;
}

function textOf(words: readonly SaidWord[], from: number, until: number): string {
  return words
    .slice(from, until)
    .map(({ text, spaced }, index) => (spaced && index > 0 ? ` ${text}` : text))
    .join('');
}
