/** What is said of an argument, whole, as one would read it aloud: of a few names pinned, of all names looked through. */
import { readdirSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { saidOfPage } from './said-of-page.ts';

const rows: readonly (readonly [page: string, language: string, say: string])[] = [
  [
    'pointing-pair',
    'en',
    'In box six, an eight can only go where it meets row five. So there cannot be an eight in row five, column four.',
  ],
  [
    'naked-pair',
    'en',
    'Between them, column eight, rows one and eight have only three and eight left. They use up both, so there cannot be a three in column eight, rows three and nine.',
  ],
  [
    'hidden-pair',
    'en',
    'In row two, eight and nine can only go in columns two and seven. Two digits, two cells: they need those cells for themselves. So there cannot be a two in row two, column two, or a four in row two, column seven.',
  ],
  [
    'x-wing',
    'en',
    'In rows eight and nine, the threes can only go in columns six and eight. So columns six and eight get their threes from there, and there cannot be a three in column eight, rows one and three.',
  ],
  [
    'turbot-fish',
    'en',
    'If row three, column two is not a nine, then row two, column two is; then row two, column eight is not, so row three, column eight is. So one end or the other holds. Either way, there cannot be a nine in row three, columns four and five.',
  ],
  [
    'xyz-wing',
    'en',
    'Row four, column seven is a six, a nine or an eight. If it is a six, row four, column eight is an eight; if it is a nine, row nine, column seven is an eight. One of the three is an eight in any case, so there cannot be an eight in row five, column seven.',
  ],
  [
    'unique-rectangle-type-1',
    'en',
    'If rows two and three, columns one and nine held only three and seven, these could be swapped, and the puzzle would have two solutions. One cell alone can prevent it. So there cannot be a three or a seven in row two, column one.',
  ],
  [
    'death-blossom',
    'en',
    'What if row six, column nine were a four? Then row eight, column nine is an eight; row eight, column four is a one; row five, column nine is a five; row five, column three is a seven; row five, column four is an eight. But now row five, column seven has no digit left. So there cannot be a four in row six, column nine.',
  ],
  [
    'xy-wing',
    'de',
    'Zeile neun, Spalte vier ist eine Eins oder eine Sieben. Ist sie eine Eins, so ist Zeile neun, Spalte eins eine Fünf; ist sie eine Sieben, so ist Zeile acht, Spalte fünf eine Fünf. So oder so steht in Zeile acht, Spalte eins, und Zeile neun, Spalte fünf keine Fünf.',
  ],
];

const languages = readdirSync(new URL('../../assets/phrases/', import.meta.url)).map((name) =>
  name.replace('.yaml', ''),
);

describe('what is said', () => {
  it.each(rows)('%s (%s)', (page, language, say) => {
    expect(saidOfPage(page, language)).toBe(say);
  });

  const pages = readdirSync(new URL('../../scenes/names/', import.meta.url)).filter((name) => name.endsWith('.yaml'));
  it.each(languages)('of every name is whole sentences (%s)', (language) => {
    const said = pages.map((page) => [page, saidOfPage(page.replace('.yaml', ''), language)] as const);
    expect(said.filter(([, say]) => say !== undefined).length).toBeGreaterThan(70);
    const torn = said.filter(([, say]) => say !== undefined && !isWhole(say));
    expect(torn).toEqual([]);
  });
});

/** Every sentence begins with a capital and ends with a stop; no slot is left open, none was filled with nothing. */
function isWhole(say: string): boolean {
  const sentences = say.split(/(?<=[.?]) /);
  return (
    !/[{}]|undefined|\s{2}|\s[.,;?]|,,|\bund und\b|\band and\b/.test(say) &&
    sentences.every((sentence) => /^\p{Lu}[^.?]*[.?]$/u.test(sentence))
  );
}
