import { describe, expect, it } from 'vitest';
import { spokenAlike } from '../../src/timeline/spoken-alike.ts';
import { formsOf } from '../../src/timeline/word-forms.ts';

const split = (text: string) => text.split(/\s+/).filter((word) => word !== '');

describe('words as they are compared', () => {
  const rows: readonly (readonly [string, string])[] = [
    ['R three C five', 'r3c5'],
    ['row three, column five', 'r3c5'],
    ['r3 c5', 'r3c5'],
    ['Row 3 col. 5', 'r3c5'],
    ['7r3c5', '7 r3c5'],
    ['box six and column twenty-one', 'b6 and c21'],
    ['a row of rows', 'a row of rows'],
    ['X-wing', 'x wing'],
    ['sevens', '7s'],
    ['don’t', 'dont'],
    ['— …', ''],
    ['שלוש תאים, ו-5', 'שלוש תאים ו 5'],
  ];
  it.each(rows)('%s', (text, forms) => {
    expect(
      formsOf(split(text))
        .map(({ form }) => form)
        .join(' '),
    ).toBe(forms);
  });

  it('fillers, and a word said twice', () => {
    const forms = formsOf(split('um, so you know the the five is, like, here'));
    expect(forms.filter(({ filler }) => !filler).map(({ form }) => form)).toEqual(['the', '5', 'is', 'here']);
  });
  it('a form knows the words that it stands for', () => {
    expect(formsOf(split('see row three column five here'))[1]).toEqual({
      form: 'r3c5',
      first: 1,
      last: 4,
      filler: false,
    });
  });
});

describe('a sentence found though it is not spoken as written', () => {
  const talk =
    'Let us begin. Um, the seven in row three column five, it um sees both of the towers. So we cross it out. Now then. The seven in r5c5 sees nothing at all.';
  const place = (sentence: string, spoken = talk) => {
    const words = split(spoken);
    const found = spokenAlike(formsOf(words), sentence);
    return found === undefined ? undefined : words.slice(found.first, found.last + 1).join(' ');
  };
  const found: readonly (readonly [why: string, sentence: string, place: string])[] = [
    ['as spoken', 'So we cross it out.', 'So we cross it out.'],
    [
      'cells, fillers, figures, and a word added',
      'The 7 in r3c5 sees both of the towers.',
      'the seven in row three column five, it um sees both of the towers.',
    ],
    [
      'a word left out',
      'The seven in r3c5 sees both of towers.',
      'the seven in row three column five, it um sees both of the towers.',
    ],
    ['another word', 'The seven in r5c5 shows nothing at all.', 'The seven in r5c5 sees nothing at all.'],
    ['spelt otherwise', 'so we cross its out', 'So we cross it out.'],
    ['a filler that was not spoken', 'And so, um, we just cross it out.', 'So we cross it out.'],
    ['its end left out', 'The seven in r5c5 sees nothing at all here.', 'The seven in r5c5 sees nothing at all.'],
  ];
  it.each(found)('%s', (_, sentence, where) => {
    expect(place(sentence)).toBe(where);
  });

  const lost: readonly (readonly [why: string, sentence: string])[] = [
    ['another cell in a short sentence', 'So r4c4 goes out.'],
    ['another cell, which is no slip of the tongue', 'The seven in r5c6 sees nothing.'],
    ['two of five words differ', 'So you cross them out.'],
    ['two words are found as they are, or not at all', 'Let me'],
    ['nothing but fillers', 'um, well'],
    ['no word', '...'],
    ['something else', 'Column two has a place left for its four.'],
  ];
  it.each(lost)('not: %s', (_, sentence) => {
    expect(place(sentence)).toBeUndefined();
  });
  it('nothing is spoken', () => {
    expect(place('So we cross it out.', '')).toBeUndefined();
  });
  it('of two places the one that differs less, and the first of equal ones', () => {
    expect(place('one two four', 'one two three four five one two four')).toBe('one two four');
    expect(spokenAlike(formsOf(split('go to the left now go to the left')), 'go to the left')).toMatchObject({
      first: 0,
    });
  });
  it('takes no longer than a lesson may: a sentence of 60 words in an hour of speech', () => {
    const hour = Array.from({ length: 9000 }, (_, index) => `word${(index * 7919) % 997}`);
    const sentence = hour.slice(8000, 8060).join(' ').replace('word', 'other');
    const begin = performance.now();
    expect(spokenAlike(formsOf(hour), sentence)).toMatchObject({ differing: expect.closeTo(1) });
    expect(performance.now() - begin).toBeLessThan(5000);
  });
});
