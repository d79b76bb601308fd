/**
 * Finds where a sentence is spoken, even if not quite as written, by the word alignment with the least difference.
 *
 * Costs: half a point for a word spelt much like the one spoken, one for any other word that is replaced, left out or
 * added, two for another number or cell; fillers are free. The sentence may begin and end anywhere in what is spoken.
 * Method:
 * Sellers, *The theory and computation of evolutionary distances: pattern recognition*, J. Algorithms 1(4), 1980 (from
 * memory), over words instead of letters.
 */
import { distance } from 'fastest-levenshtein';
import { formsOf, type WordForm } from './word-forms.ts';

/** A sequence of spoken words, by their indices, and how far it differs. */
export interface Alike {
  readonly first: number;
  readonly last: number;
  /** Words that differ; a word that is spelt much the same counts half. */
  readonly differing: number;
}

/** In half points. */
const [free, nearly, other, otherNumber] = [0, 1, 2, 4];

/**
 * The sequence of words most like the sentence, the first of several: undefined if more than a quarter of the
 * sentence's words differ (of three words, half a one may; of fewer, none). `spoken` are the forms of what is spoken,
 * in order.
 */
export function spokenAlike(spoken: readonly WordForm[], sentence: string): Alike | undefined {
  const count = formsOf(sentence.split(/\s+/)).filter((each) => !each.filler).length;
  const found = count === 0 ? undefined : spokenMostAlike(spoken, sentence);
  const most = count < 3 ? 0 : Math.floor(count / 2) / 2;
  return found === undefined || found.differing > most ? undefined : found;
}

/** The sequence of words most like the sentence, however much it differs; undefined if no word is similar. */
export function spokenMostAlike(spoken: readonly WordForm[], sentence: string): Alike | undefined {
  const end = bestEnd(spoken, formsOf(sentence.split(/\s+/)));
  if (end === undefined) return undefined;
  return { first: spoken[end.begin]!.first, last: spoken[end.at]!.last, differing: end.cost / 2 };
}

/**
 * The spoken word at which the alignment of least cost ends, the one at which it begins, and that cost. Row by row over
 * the spoken words; each cell carries where its alignment's first pair of words is, so that no backtracking table is
 * kept.
 */
function bestEnd(
  spoken: readonly WordForm[],
  wanted: readonly WordForm[],
): { readonly at: number; readonly begin: number; readonly cost: number } | undefined {
  const likeness = likenessOf(wanted);
  const width = wanted.length + 1;
  let costs = new Int32Array(width);
  /** -1: no word has been paired yet. */
  let begins = new Int32Array(width).fill(-1);
  for (let index = 0; index < wanted.length; index++) costs[index + 1] = costs[index]! + leftOut(wanted[index]!);
  let best: { at: number; begin: number; cost: number } | undefined;
  for (const [at, word] of spoken.entries()) {
    const [nextCosts, nextBegins] = [new Int32Array(width), new Int32Array(width).fill(-1)];
    const added = leftOut(word);
    const pairing = likeness(word.form);
    for (let index = 1; index < width; index++) {
      const paired = pairing[index - 1]!;
      const together = costs[index - 1]! + paired;
      const unspoken = nextCosts[index - 1]! + leftOut(wanted[index - 1]!);
      // A word before the first pair is outside the sequence.
      const extra = costs[index]! + (begins[index] === -1 ? free : added);
      const least = Math.min(together, unspoken, extra);
      nextCosts[index] = least;
      const before = begins[index - 1]!;
      if (least === together) nextBegins[index] = before === -1 && paired < other ? at : before;
      else nextBegins[index] = least === unspoken ? nextBegins[index - 1]! : begins[index]!;
    }
    const ending = leastEnding(nextCosts, nextBegins, wanted, pairing);
    if (ending !== undefined && isBetter(ending, best)) best = { at, ...ending };
    [costs, begins] = [nextCosts, nextBegins];
  }
  return best;
}

/** Of two that begin at the same word and cost the same, the longer one: it has the sentence's last words. */
function isBetter(
  ending: { readonly begin: number; readonly cost: number },
  best: { readonly begin: number; readonly cost: number } | undefined,
): boolean {
  if (best === undefined || ending.cost < best.cost) return true;
  return ending.cost === best.cost && ending.begin === best.begin;
}

/**
 * The alignment of least cost that ends with this spoken word as a pair; the remaining words of the sentence are left
 * out.
 */
function leastEnding(
  costs: Int32Array,
  begins: Int32Array,
  wanted: readonly WordForm[],
  pairing: Int32Array,
): { readonly begin: number; readonly cost: number } | undefined {
  let rest = 0;
  let best: { begin: number; cost: number } | undefined;
  for (let index = wanted.length; index >= 1; index--) {
    if (pairing[index - 1]! < other && begins[index]! >= 0) {
      const cost = costs[index]! + rest;
      if (best === undefined || cost < best.cost) best = { begin: begins[index]!, cost };
    }
    rest += leftOut(wanted[index - 1]!);
  }
  return best;
}

function leftOut({ filler }: WordForm): number {
  return filler ? free : other;
}

/**
 * By spoken form: the cost of having it instead of each word of the sentence. Cached, since few different words are
 * spoken.
 */
function likenessOf(wanted: readonly WordForm[]): (form: string) => Int32Array {
  const known = new Map<string, Int32Array>();
  return (form) => {
    const found = known.get(form) ?? Int32Array.from(wanted, (each) => unlikeness(each.form, form));
    known.set(form, found);
    return found;
  };
}

/**
 * Zero for the same form; words of four letters and more are spelt similarly if at most a third of the letters differ.
 */
function unlikeness(a: string, b: string): number {
  if (a === b) return free;
  if (/\p{N}/u.test(a) || /\p{N}/u.test(b)) return otherNumber;
  const longest = Math.max(a.length, b.length);
  // For most words the lengths suffice to tell.
  if (longest < 4 || 3 * Math.abs(a.length - b.length) > longest) return other;
  return 3 * distance(a, b) <= longest ? nearly : other;
}
