import { describe, expect, it } from 'vitest';
import { fractionFromDecimal, toNumber } from '../../src/scene/fraction.ts';
import { readNarration } from '../../src/timeline/narration.ts';

/** Cues as `identifier|number start-end text`, words with their own stamps as `word@seconds`. */
function read(text: string, name = 'talk.vtt') {
  const { narration, faults } = readNarration(text, name);
  return {
    cues: narration.cues.map((cue) => {
      const [start, end] = [toNumber(cue.start), toNumber(cue.end)];
      return `${cue.identifier ?? ''}|${cue.number} ${start}-${end} ${cue.text.replaceAll('\n', '/')}`;
    }),
    stamped: narration.cues.flatMap((cue) =>
      cue.words.flatMap((word) => (word.start === undefined ? [] : [`${word.text}@${toNumber(word.start)}`])),
    ),
    faults: faults.map((fault) => `${fault.line}: ${fault.message}`),
    narration,
  };
}

describe('WebVTT', () => {
  const rows: readonly (readonly [name: string, text: string, cues: readonly string[]])[] = [
    ['a bare cue', 'WEBVTT\n\n00:01.000 --> 00:02.500\nYes', ['|1 1-2.5 Yes']],
    ['hours', 'WEBVTT\n\n101:00:01.000 --> 101:00:02.000\nYes', ['|1 363601-363602 Yes']],
    [
      'an identifier and settings',
      'WEBVTT\n\nintro\n00:01.000 --> 00:02.000 align:start position:10%\nYes',
      ['intro|1 1-2 Yes'],
    ],
    [
      'CRLF and a byte order mark',
      '\uFEFFWEBVTT\r\n\r\n00:01.000 --> 00:02.000\r\nTwo\r\nlines\r\n',
      ['|1 1-2 Two/lines'],
    ],
    ['CR alone', 'WEBVTT\r\r00:01.000 --> 00:02.000\rYes', ['|1 1-2 Yes']],
    [
      'NOTE, STYLE and REGION',
      'WEBVTT - a title\nKind: captions\n\nSTYLE\n::cue {}\n\nREGION\nid:a\n\nNOTE words\nmore\n\nNOTE\n\n00:01.000 --> 00:02.000\nYes',
      ['|1 1-2 Yes'],
    ],
    [
      'escapes',
      'WEBVTT\n\n00:01.000 --> 00:02.000\na &amp;lt; &lt;b&gt; &#233;&#xe9; & &nope;',
      ['|1 1-2 a &lt; <b> éé & &nope;'],
    ],
    [
      'inline tags',
      'WEBVTT\n\n00:01.000 --> 00:02.000\n<v Ann Other>One <b>two</b> <c.loud.red>three</c> <lang en>four</lang>',
      ['|1 1-2 One two three four'],
    ],
    [
      'a time line ends the cue before it',
      'WEBVTT\n\n00:01.000 --> 00:02.000\na\n00:03.000 --> 00:04.000\nb',
      ['|1 1-2 a', '|2 3-4 b'],
    ],
    ['no blank line after the header', 'WEBVTT\n00:01.000 --> 00:02.000\na', ['|1 1-2 a']],
    [
      'cues out of order are sorted and keep their numbers',
      'WEBVTT\n\n00:03.000 --> 00:04.000\nb\n\n00:01.000 --> 00:02.000\na',
      ['|2 1-2 a', '|1 3-4 b'],
    ],
    ['a cue without text', 'WEBVTT\n\nend\n00:01.000 --> 00:02.000\n', ['end|1 1-2 ']],
  ];
  it.each(rows)('%s', (_, text, cues) => {
    expect(read(text)).toMatchObject({ cues, faults: [] });
  });

  it('times are exact', () => {
    const [cue] = read('WEBVTT\n\n00:00:00.100 --> 00:00:00.300\na').narration.cues;
    expect(cue).toMatchObject({ start: fractionFromDecimal('0.1'), end: fractionFromDecimal('0.3') });
  });

  it('word timestamp tags belong to the word after them, and none to the syllables', () => {
    const text =
      'WEBVTT\n\n00:01.000 --> 00:04.000\nThe <00:01.500>lamp<00:02.000>light\n<00:02.500><c>in</c> <00:03.000> here and';
    expect(read(text)).toMatchObject({ stamped: ['lamplight@1.5', 'in@2.5', 'here@3'], faults: [] });
  });

  it('words lie where their offsets say', () => {
    const [cue] = read('WEBVTT\n\n00:01.000 --> 00:04.000\n Now <00:01.500><b>look</b>\nup. ').narration.cues;
    expect(cue!.words.map((word) => cue!.text.slice(word.from, word.to))).toEqual(['Now', 'look', 'up.']);
  });
});

describe('what is broken is told with its line, and the rest is used', () => {
  const rows: readonly (readonly [name: string, text: string, cues: readonly string[], faults: readonly RegExp[]])[] = [
    ['no signature', '\n00:01.000 --> 00:02.000\na', ['|1 1-2 a'], [/^1: .*WEBVTT/]],
    [
      'a comma',
      'WEBVTT\n\nx\n00:01,000 --> 00:02.000\na\n\n00:03.000 --> 00:04.000\nb',
      ['|2 3-4 b'],
      [/^4: .*full stop/],
    ],
    [
      'an end before the start',
      'WEBVTT\n\n00:02.000 --> 00:01.000\na\n\n00:03.000 --> 00:04.000\nb',
      ['|2 3-4 b'],
      [/^3: .*00:01\.000.*later/],
    ],
    ['seventy seconds', 'WEBVTT\n\n00:70.000 --> 00:80.000\na', [], [/^3: "00:70\.000" is not a time/]],
    ['half an arrow', 'WEBVTT\n\n00:01.000 -->\na\n\n00:03.000 --> 00:04.000\nb', ['|2 3-4 b'], [/^3: no times/]],
    [
      'a text outside of cues',
      'WEBVTT\n\nhello\nthere\n\n00:03.000 --> 00:04.000\nb',
      ['|1 3-4 b'],
      [/^3: a text without a time line/],
    ],
    ['an open tag', 'WEBVTT\n\n00:01.000 --> 00:02.000\na\nb < c', ['|1 1-2 a/b '], [/^5: .*&lt;/]],
    ['a stamp that is none', 'WEBVTT\n\n00:01.000 --> 00:02.000\na <00:1.5>b', ['|1 1-2 a b'], [/^4: <00:1\.5>/]],
    [
      'a stamp that goes back',
      'WEBVTT\n\n00:01.000 --> 00:02.000\na <00:01.500>b <00:01.200>c',
      ['|1 1-2 a b c'],
      [/^4: <00:01\.200> goes back/],
    ],
    [
      'a stamp past the end',
      'WEBVTT\n\n00:01.000 --> 00:02.000\na\n<00:02.500>b',
      ['|1 1-2 a/b'],
      [/^5: .*after the end/],
    ],
    [
      'one identifier twice',
      'WEBVTT\n\na\n00:01.000 --> 00:02.000\nx\n\na\n00:03.000 --> 00:04.000\ny',
      ['a|1 1-2 x', 'a|2 3-4 y'],
      [/^7: .*line 3/],
    ],
  ];
  it.each(rows)('WebVTT: %s', (_, text, cues, faults) => {
    const got = read(text);
    expect(got.cues).toEqual(cues);
    expect(got.faults).toHaveLength(faults.length);
    for (const [index, fault] of faults.entries()) expect(got.faults[index]).toMatch(fault);
  });

  const srt: readonly (readonly [name: string, text: string, cues: readonly string[], faults: readonly RegExp[]])[] = [
    [
      'numbers, tags, CRLF',
      '1\r\n00:00:01,000 --> 00:00:02,500\r\n<i>One</i> {\\an8}a < b\r\ntwo\r\n\r\n2\r\n00:00:03,000 --> 00:00:04,000\r\nthree\r\n',
      ['1|1 1-2.5 One a < b/two', '2|2 3-4 three'],
      [],
    ],
    [
      'no number',
      '00:00:01,000 --> 00:00:02,000\na\n\n\n7\n00:00:03.000 --> 00:00:04.000 X1:40\nb',
      ['|1 1-2 a', '7|2 3-4 b'],
      [],
    ],
    ['a text alone', 'a\n\n2\n00:00:03,000 --> 00:00:04,000\nb', ['2|2 3-4 b'], [/^1: no time line/]],
    ['one digit after the comma', '1\n00:00:01,5 --> 00:00:02,000\na', [], [/^2: "00:00:01,5" is not a time of SRT/]],
    ['an end at the start', '1\n00:00:01,000 --> 00:00:01,000\na', [], [/^2: .*later/]],
  ];
  it.each(srt)('SRT: %s', (_, text, cues, faults) => {
    const got = read(text, 'talk.srt');
    expect(got.cues).toEqual(cues);
    expect(got.faults).toHaveLength(faults.length);
    for (const [index, fault] of faults.entries()) expect(got.faults[index]).toMatch(fault);
  });

  const json: readonly (readonly [
    name: string,
    text: string,
    cues: readonly string[],
    stamped: readonly string[],
    faults: readonly RegExp[],
  ])[] = [
    [
      'sentences',
      '[{"word": " The", "start": 0.1, "end": 0.3}, {"word":"end.","start":0.3,"end":0.7},\n{"word":"Yes","start":1,"end":1.5}]',
      ['|1 0.1-0.7 The end.', '|2 1-1.5 Yes'],
      ['The@0.1', 'end.@0.3', 'Yes@1'],
      [],
    ],
    [
      'a pause',
      '[{"word":"a","start":0,"end":0.5},{"word":"b","start":1.5,"end":2}]',
      ['|1 0-0.5 a', '|2 1.5-2 b'],
      ['a@0', 'b@1.5'],
      [],
    ],
    [
      'broken items',
      '[\n{"word":"a","start":0,"end":1},\n{"word":"b","start":"1","end":2},\n{"start":1,"end":2},\n{"word":"c" "start":1},\n[1],\n{"word":"d","start":1,"end":0},\n{"word":"e","start":2},\n{"word":"f","start":0.5,"end":2},\n{"word":"g","start":0.4,"end":2}\n]',
      ['|1 0-2 a f'],
      ['a@0', 'f@0.5'],
      [
        /^3: "b" has no "start"/,
        /^4: the word itself/,
        /^5: this is not JSON/,
        /^6: the word itself/,
        /^7: "d" ends before/,
        /^8: "e" has no "end"/,
        /^10: "g" starts before/,
      ],
    ],
    ['a map', '{"words": []}', [], [], [/^1: a list of words begins/]],
    [
      'cut off',
      '[{"word":"a","start":0,"end":1},\n{"word":"b","sta',
      ['|1 0-1 a'],
      ['a@0'],
      [/^2: the list of words is not closed/],
    ],
    ['brackets in strings', '[{"word":"a]},\\"[","start":1e-7,"end":1}]', ['|1 1e-7-1 a]},"['], ['a]},"[@1e-7'], []],
  ];
  it.each(json)('JSON: %s', (_, text, cues, stamped, faults) => {
    const got = read(text, 'talk.json');
    expect(got.cues).toEqual(cues);
    expect(got.stamped).toEqual(stamped);
    expect(got.faults).toHaveLength(faults.length);
    for (const [index, fault] of faults.entries()) expect(got.faults[index]).toMatch(fault);
  });

  it('JSON: decimals are exact', () => {
    const [cue] = read('[{"word":"a","start":0.1,"end":123456.789}]', 'x.json').narration.cues;
    expect(cue).toMatchObject({ start: fractionFromDecimal('0.1'), end: fractionFromDecimal('123456.789') });
  });

  it('an empty file is an empty narration', () => {
    expect(read('', 'talk.srt')).toMatchObject({ cues: [], faults: [] });
    expect(read('', 'talk.vtt')).toMatchObject({ cues: [], faults: [expect.stringMatching(/^1: /)] });
  });
});

describe('a file that is no narration', () => {
  it('is told in one line where it is no text', () => {
    const reading = readNarration('\u0000\u0000 ftyp\n\nisom\n\navc1', 'talk.mp4');
    expect(reading.narration.cues).toEqual([]);
    expect(reading.faults).toEqual([
      { line: 1, message: 'this is not text; a narration is WebVTT, SRT, or JSON words' },
    ]);
  });

  it('is told by its first faults where all of it is broken', () => {
    const text = Array.from({ length: 300 }, (_, line) => `verse ${line}`).join('\n\n');
    const { faults } = readNarration(text, 'talk.srt');
    expect(faults).toHaveLength(21);
    expect(faults.at(-1)).toEqual({
      line: 41,
      message: '280 more places from here on cannot be read; fix the ones before first',
    });
  });
});
