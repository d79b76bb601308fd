/**
 * What is said, as captions: cues of one or two lines that follow one another and never overlap.
 *
 * Limits, common practice of broadcasters: two lines of 42 characters, 17 characters a second where there is time for it
 * and 20 at the most, a second on screen at least and seven at the most.
 */
import { breakBefore, never } from './breaks.ts';
import type { SaidWord } from './spoken.ts';

/** On screen from `from` to `to`, in milliseconds. */
export interface TextCue {
  readonly name: string | undefined;
  readonly from: number;
  readonly to: number;
  /** One or two. */
  readonly lines: readonly string[];
}

export const limits = {
  lineLength: 42,
  lines: 2,
  charactersASecond: 20,
  easyCharactersASecond: 17,
  shortest: 1000,
  longest: 7000,
} as const;

/** A silence at which a cue ends, and one that is so short that the picture would flicker if the cue went. */
const [pause, flicker] = [800, 500];
/** How far a cue may begin before its first word, or after it, to be on screen for long enough. */
const mostMoved = 500;

/** The cues of all that is said before `end`, in milliseconds. */
export function captionCues(words: readonly SaidWord[], end: number): TextCue[] {
  const told = words.filter((word) => word.from < end);
  const cues = stretchesOf(told).flatMap(splitStretch);
  return inTime(cues, end);
}

/** Characters as they are read: without marks of direction, a letter with its accents as one. */
export function lengthOf(text: string): number {
  return [...text.normalize('NFC')].filter((sign) => !/[\p{M}\p{Cf}]/u.test(sign)).length;
}

/** Characters a second. */
export function speedOf({ lines, from, to }: TextCue): number {
  return (1000 * lengthOf(lines.join(' '))) / Math.max(1, to - from);
}

/** What is said without a pause, or by one step. */
function stretchesOf(words: readonly SaidWord[]): SaidWord[][] {
  const stretches: SaidWord[][] = [];
  let before: SaidWord | undefined;
  for (const word of words) {
    const goesOn = before !== undefined && word.from - before.to < pause && word.name === undefined;
    if (goesOn) stretches.at(-1)!.push(word);
    else stretches.push([word]);
    before = word;
  }
  return stretches;
}

interface Cut {
  readonly cost: number;
  readonly lines: readonly string[];
}

/** The cues of a stretch with the least cost of all its breaks, by the costs of everything before them. */
function splitStretch(words: readonly SaidWord[]): TextCue[] {
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
  const cues: TextCue[] = [];
  for (let until = words.length; until > 0; ) {
    const { from, lines } = best[until]!;
    cues.push({ name: words[from]!.name, from: words[from]!.from, to: words[until - 1]!.to, lines });
    until = from;
  }
  return cues.reverse();
}

/** What it costs to make a cue of these words; undefined where two lines do not hold them. */
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

/** The best break into two lines, the lower one rather the longer; undefined where no two lines hold the words. */
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

/** The cues long enough on screen to be read, as far as those around them leave room. */
function inTime(cues: readonly TextCue[], end: number): TextCue[] {
  const froms = cues.map(({ from }) => from);
  const needs = cues.map((cue) => Math.ceil((1000 * lengthOf(cue.lines.join(' '))) / limits.charactersASecond));
  const tos = cues.map((cue, index) => {
    const easy = Math.ceil((1000 * lengthOf(cue.lines.join(' '))) / limits.easyCharactersASecond);
    const next = froms[index + 1] ?? end;
    const wanted = Math.max(cue.to, cue.from + easy, cue.from + limits.shortest);
    return Math.min(next - wanted < flicker && index + 1 < cues.length ? next : wanted, next, end);
  });
  for (let index = 0; index < cues.length; index++) {
    const short = () => needs[index]! - (tos[index]! - froms[index]!);
    if (short() <= 0) continue;
    const before = tos[index - 1] ?? 0;
    const free = Math.max(0, froms[index]! - before);
    froms[index]! -= Math.min(short(), free, mostMoved);
    if (short() > 0 && index > 0 && tos[index - 1] === froms[index]) {
      const spare = tos[index - 1]! - froms[index - 1]! - needs[index - 1]!;
      const moved = Math.max(0, Math.min(short(), spare, mostMoved - (cues[index]!.from - froms[index]!)));
      froms[index]! -= moved;
      tos[index - 1]! -= moved;
    }
    if (short() > 0 && index + 1 < cues.length && tos[index] === froms[index + 1]) {
      const spare = tos[index + 1]! - froms[index + 1]! - needs[index + 1]!;
      const moved = Math.max(0, Math.min(short(), spare, mostMoved));
      froms[index + 1]! += moved;
      tos[index]! += moved;
    }
  }
  return cues.flatMap((cue, index) => {
    const [from, to] = [froms[index]!, tos[index]!];
    return to > from ? [{ ...cue, from, to }] : [];
  });
}
