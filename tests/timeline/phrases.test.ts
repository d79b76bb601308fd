import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { fraction, toNumber } from '../../src/scene/fraction.ts';
import { readNarration } from '../../src/timeline/narration.ts';
import { findPhrase, nearestSpoken, spokenText } from '../../src/timeline/phrases.ts';

function spokenAs(said: string) {
  return spokenText(readNarration(`WEBVTT\n\n00:00.000 --> 00:10.000\n${said}`, 'x.vtt').narration);
}

describe('what is the same phrase', () => {
  const same: readonly (readonly [phrase: string, said: string])[] = [
    ['either here or here', 'Either here,   or here!'],
    ['the sevens', 'the 7s'],
    ['the 7s', 'the sevens'],
    ["the 7's", 'the sevens'],
    ['sixes', '6s'],
    ['twenty one', '21'],
    ['twenty-one', '21'],
    ['21', 'twenty-one'],
    ['twenty one', 'twenty-one'],
    ['twenty one', 'Twenty, one'],
    ['a hundred cells', 'a hundred cells'],
    ['one hundred and twenty', '120'],
    ['three hundred four', '304'],
    ['two thousand twenty five', '2,025'],
    ['the third box', 'the 3rd box'],
    ['twenty-first', '21st'],
    ['the 12th', 'the twelfth'],
    ['X-wing', 'x wing'],
    ['X wing', 'X-Wing'],
    ['xwing', 'X-wing'],
    ["it isn't", 'it isn\u2019t'],
    ['row four', 'row\nfour'],
    ['no - not here', 'no, not here'],
    ['r3c5', 'R3C5'],
    ['four five', '4, 5'],
    ['caf\u00E9', 'cafe\u0301'],
    [
      '\u05E9\u05DC\u05D5\u05E9\u05D4 \u05EA\u05D0\u05D9\u05DD',
      '\u200F\u05E9\u05DC\u05D5\u05E9\u05D4 \u05EA\u05D0\u05D9\u05DD.\u200E',
    ],
  ];
  it.each(same)('%j is %j', (phrase, said) => {
    expect(findPhrase(spokenAs(said), phrase)).toHaveLength(1);
  });

  const different: readonly (readonly [phrase: string, said: string])[] = [
    ['eitherhere', 'either here'],
    ['in to', 'into'],
    ['four five', '45'],
    ['here', 'there'],
    ['seven', 'sevens'],
    ['seven', 'seventh'],
    ['one', 'twenty-one'],
    ['twenty', 'twenty one'],
    ['2 1', 'twenty one'],
    ['...', 'words ...'],
    ['', 'words'],
  ];
  it.each(different)('%j is not in %j', (phrase, said) => {
    expect(findPhrase(spokenAs(said), phrase)).toEqual([]);
  });

  it('places do not overlap', () => {
    expect(findPhrase(spokenAs('here or here or here or here'), 'here or here')).toHaveLength(2);
  });
});

describe('when it is said', () => {
  const lesson = spokenText(
    readNarration(readFileSync(new URL('../../scenes/lamp-room.vtt', import.meta.url), 'utf8'), 'lamp-room.vtt')
      .narration,
  );

  it("at the word's own timestamp", () => {
    expect(findPhrase(lesson, 'can go here or here').map((place) => toNumber(place.seconds))).toEqual([40.92]);
    expect(findPhrase(lesson, 'If this end is not 5').map((place) => place.seconds)).toEqual([fraction(99_985, 1000)]);
  });

  it('in proportion to the characters before it in its cue, line breaks counted as one', () => {
    const cue =
      'Start with the sixes in the middle box.\nThey can only be here or here, both in row\nfour. One of the two is true, so the rest\nof row four has no six.';
    const before = cue.indexOf('be here');
    expect(findPhrase(lesson, 'be here or here').map((place) => place.seconds)).toEqual([
      fraction(21n * BigInt(cue.length) * 10n + 136n * BigInt(before), BigInt(cue.length) * 10n),
    ]);
  });

  it('across a cue border', () => {
    const text = 'WEBVTT\n\n00:00.000 --> 00:04.000\nall four\n\n00:04.000 --> 00:08.000\nfives go';
    const places = findPhrase(spokenText(readNarration(text, 'x.vtt').narration), 'four fives');
    expect(places).toEqual([{ seconds: fraction(2), text: 'four fives' }]);
  });

  it('a word without a stamp stays between the stamps around it', () => {
    const text = 'WEBVTT\n\n00:00.000 --> 00:10.000\nab <00:08.000>cd ef <00:09.000>gh';
    const spoken = spokenText(readNarration(text, 'x.vtt').narration);
    expect(spoken.words.map((word) => toNumber(word.seconds))).toEqual([0, 8, 8, 9]);
  });

  it('the nearest words to a phrase that is not said', () => {
    expect(nearestSpoken(lesson, 'the rest of row for')).toMatchObject({ text: 'the rest of row four' });
    expect(nearestSpoken(lesson, 'either here and here', { until: fraction(40) })).toMatchObject({
      text: expect.stringContaining('here or here'),
    });
    expect(nearestSpoken(lesson, 'x', { from: fraction(500) })).toBeUndefined();
  });
});
