/**
 * What a piece of text is, said in words, when it stands where something else is wanted.
 */

const cell = '(?:r\\d+c\\d+|b\\d+p\\d+)';
const cells = `${cell}(?:\\|${cell})*`;
const digits = '(?:\\d+|\\(\\d+\\))';

/** Tried in this order; each phrase follows the quoted text. */
const kinds: readonly (readonly [pattern: string, phrase: string])[] = [
  ['r\\dc\\d|b\\dp\\d', 'names a cell'],
  [cells, 'names cells'],
  ['(?:\\d|\\(\\d\\))(?:r\\dc\\d|b\\dp\\d)', 'names a candidate'],
  [`${digits}${cells}`, 'names candidates'],
  ['(?:\\d|\\(\\d\\))[rcb]\\d', 'names the places of a digit in a house'],
  [`${digits}[rcb]\\d`, 'names the places of digits in a house'],
  [`${digits}[rcb]\\d+`, 'names the places of digits in houses'],
  ['[rcb]\\d', 'names a house'],
  ['[rcb]\\d+', 'names houses'],
  ['\\d|\\(\\d\\)', 'names a digit alone'],
  [digits, 'names digits alone'],
  [`${digits}?c\\d+r\\d+`, 'puts the column before the row'],
  [`${digits}?r\\d+c`, 'lacks the number of the column'],
  [`${digits}?rc\\d*`, 'lacks the number of the row'],
  [`${digits}?b\\d+p`, 'lacks the position in the box'],
  [`${digits}?bp\\d*`, 'lacks the number of the box'],
  [`${digits}?p\\d+`, 'is a position without its box'],
  [`${cells}(?:<>|≠|=)${digits}|[-−–+]${digits}${cells}`, 'is a conclusion'],
  [`[-−–+]${cells}`, 'has no digit after its sign'],
  [`\\d+\\)(?:${cells})?`, 'closes a bracket that is not open'],
  ['step', 'has no name after it'],
];

const matchers = kinds.map(([pattern, phrase]) => ({ whole: new RegExp(`^(?:${pattern})$`, 'i'), phrase }));

/** A phrase such as `names a house`; undefined where the text is nothing known. */
export function identify(text: string): string | undefined {
  return matchers.find(({ whole }) => whole.test(text))?.phrase;
}
