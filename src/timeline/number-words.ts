/**
 * English numbers in words, as figures: `twenty one` is `21`, `sevens` is `7s`, `third` is `3rd`.
 */

/** `suffix`: `s` of a plural, or the `th` of an ordinal; nothing may follow such a word within a number. */
interface NumberWord {
  readonly value: number;
  readonly suffix: '' | 's' | 'th';
}

const units = 'one two three four five six seven eight nine'.split(' ');
const teens = 'ten eleven twelve thirteen fourteen fifteen sixteen seventeen eighteen nineteen'.split(' ');
const tens = 'twenty thirty forty fifty sixty seventy eighty ninety'.split(' ');
const ordinalUnits = 'first second third fourth fifth sixth seventh eighth ninth'.split(' ');
const ordinalTeens =
  'tenth eleventh twelfth thirteenth fourteenth fifteenth sixteenth seventeenth eighteenth nineteenth'.split(' ');

const numberWords: ReadonlyMap<string, NumberWord> = new Map<string, NumberWord>([
  ...['zero', 'nought'].map((word) => [word, { value: 0, suffix: '' }] as const),
  ...['zeros', 'zeroes', 'noughts'].map((word) => [word, { value: 0, suffix: 's' }] as const),
  ...[...units, ...teens].flatMap((word, index) => [
    [word, { value: index + 1, suffix: '' }] as const,
    [plural(word), { value: index + 1, suffix: 's' }] as const,
  ]),
  ...[...ordinalUnits, ...ordinalTeens].map((word, index) => [word, { value: index + 1, suffix: 'th' }] as const),
  ...tens.flatMap((word, index) => [
    [word, { value: 20 + 10 * index, suffix: '' }] as const,
    [word.replace(/y$/, 'ies'), { value: 20 + 10 * index, suffix: 's' }] as const,
    [word.replace(/y$/, 'ieth'), { value: 20 + 10 * index, suffix: 'th' }] as const,
  ]),
  ['hundred', { value: 100, suffix: '' }],
  ['hundreds', { value: 100, suffix: 's' }],
  ['hundredth', { value: 100, suffix: 'th' }],
  ['thousand', { value: 1000, suffix: '' }],
  ['thousands', { value: 1000, suffix: 's' }],
  ['thousandth', { value: 1000, suffix: 'th' }],
]);

/**
 * The number that begins at `words[at]` (lower case, no punctuation), as long as possible, in figures: `one hundred and
 * twenty` is four words long and `120`. Undefined if no number begins there; `hundred` and `thousand` do not begin one.
 * Below a million.
 */
export function figuresAt(
  words: readonly string[],
  at: number,
): { readonly figures: string; readonly length: number } | undefined {
  const first = numberWords.get(words[at] ?? '');
  if (first === undefined || first.value >= 100) return undefined;
  let thousands = 0;
  let below = first.value;
  let last = first;
  let length = 1;
  while (last.suffix === '') {
    const skip = last.value >= 100 && words[at + length] === 'and' ? 1 : 0;
    const next = numberWords.get(words[at + length + skip] ?? '');
    if (next === undefined || !mayFollow(last, next, below, thousands) || (skip === 1 && next.value >= 100)) break;
    if (next.value === 100) below *= 100;
    else if (next.value === 1000) [thousands, below] = [below, 0];
    else below += next.value;
    last = next;
    length += 1 + skip;
  }
  const value = thousands * 1000 + below;
  return { figures: `${value}${last.suffix === 'th' ? ordinalEnding(value) : last.suffix}`, length };
}

function mayFollow(last: NumberWord, next: NumberWord, below: number, thousands: number): boolean {
  if (next.value === 100) return last.value >= 1 && last.value <= 9 && below === last.value;
  if (next.value === 1000) return thousands === 0 && below > 0 && last.value !== 1000;
  if (next.value === 0) return false;
  if (last.value >= 100) return true;
  return last.value >= 20 && next.value <= 9;
}

function plural(word: string): string {
  return word.endsWith('x') ? `${word}es` : `${word}s`;
}

function ordinalEnding(value: number): string {
  if (Math.floor(value / 10) % 10 === 1) return 'th';
  return ['th', 'st', 'nd', 'rd'][value % 10] ?? 'th';
}
