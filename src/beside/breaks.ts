/**
 * Where a line or a cue may end: best after a sentence, well after a clause or before a word that begins one, badly
 * after a word that leans on the next, and never within the name of a cell or between a number and its noun.
 * Common practice of broadcasters' guides; the weights are our own.
 */
import type { SaidWord } from './spoken.ts';

/** A break that is used only if a line would not hold what it keeps together. */
export const never = 1000;

const numbers = new Set(
  'no one two three four five six seven eight nine ten ones twos threes fours fives sixes sevens eights nines first second third fourth fifth sixth seventh eighth ninth'.split(
    ' ',
  ),
);
/** They begin a clause, or join two words. */
const joiners = new Set(['and', 'or', 'but', 'nor']);
const beginners = new Set(
  'and or but nor so because that which who if then where when while since as than until'.split(' '),
);
const prepositions = new Set(
  'in of on at to from with by for into along across between through after before under over'.split(' '),
);
const leaning = new Set(
  'a an the this that these those its their his her my our your no not is are was be has have had can cannot could must may will would only both each every all'.split(
    ' ',
  ),
);

/** The cost of a break before the word with this index; 0 is best. */
export function breakBefore(words: readonly SaidWord[], index: number): number {
  const [before, after] = [words[index - 1], words[index]];
  if (before === undefined || after === undefined) return 0;
  if (!after.spaced) return 12;
  const ending = before.text.replace(/["')\]\u2019\u201D\u00BB\u200E\u200F]+$/, '');
  if (!/[\p{L}\p{N}]/u.test(after.text)) return never;
  if (/[.?!\u2026\u3002\u061F]$/.test(ending)) return 0;
  if (/[;:\u2013\u2014\u061B]$/.test(ending) || ending === '-') return 1;
  if (/[,\u060C\u3001]$/.test(ending)) return 2;
  const [last, next] = [plain(before.text), plain(after.text)];
  if (keepsTogether(last, next)) return never;
  const leans = leaning.has(last) || prepositions.has(last) || beginners.has(last) ? 10 : 0;
  if (beginners.has(next)) return (joiners.has(next) ? 6 : 4) + leans;
  if (prepositions.has(next)) return 7 + leans;
  return 10 + leans;
}

/**
 * Whether a sentence begins at the word with this index: after the end of one, and with a capital letter, a figure, a
 * cell's name or a letter of a script that has no capitals. So `e.g. in row two` is one sentence.
 */
export function beginsSentence(words: readonly SaidWord[], index: number): boolean {
  const after = words[index];
  if (after === undefined) return false;
  if (index === 0) return true;
  if (!after.spaced || breakBefore(words, index) !== 0) return false;
  const word = after.text.replace(/^[^\p{L}\p{N}]+/u, '');
  return /^\P{Ll}/u.test(word) || /^r\d/.test(word);
}

/** Whether a break between these two would part the name of a cell, or a number and its noun. */
function keepsTogether(last: string, next: string): boolean {
  const [lastCounts, nextCounts] = [isNumber(last), isNumber(next)];
  if (/^(row|rows|column|columns|col|box|boxes|cell|cells|house|digit|step|r|c|b)$/.test(last) && nextCounts)
    return true;
  if (/^r\d+$/.test(last) && /^c\d+$/.test(next)) return true;
  if (lastCounts && /^(column|columns|col|c)$/.test(next)) return true;
  return lastCounts && !nextCounts && !beginners.has(next) && !prepositions.has(next) && !leaning.has(next);
}

function isNumber(word: string): boolean {
  return numbers.has(word) || /^\d+(s|st|nd|rd|th)?$/.test(word);
}

function plain(word: string): string {
  return word.toLowerCase().replace(/[^\p{L}\p{N}\p{M}-]/gu, '');
}
