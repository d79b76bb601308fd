import fc from 'fast-check';
import { parseText } from 'media-captions';
import { describe, expect, it } from 'vitest';
import { type TreeNode, WebVTTParser } from 'webvtt-parser';
import { lengthOf, limits, speedOf, type TextCue } from '../../src/beside/cue.ts';
import { remarksOnCues } from '../../src/beside/cue-remarks.ts';
import { captionCues } from '../../src/beside/cues.ts';
import { printCues } from '../../src/beside/print-cues.ts';
import { milliseconds, saidInNarration, saidInSteps } from '../../src/beside/spoken.ts';
import { readNarration } from '../../src/timeline/narration.ts';
import { timeOfFrame } from '../../src/timeline/seconds.ts';
import { timed } from '../timeline/timed-scene.ts';
import { lessonNames, lessonOf } from './lessons.ts';

function captionsOf(name: string): readonly TextCue[] {
  const { scene, schedule, narration } = lessonOf(name);
  const words = narration === undefined ? saidInSteps(scene, schedule) : saidInNarration(narration);
  return captionCues(words, milliseconds(timeOfFrame(schedule.rate, schedule.frameCount)));
}

/** Captions of one narration cue of this length in seconds. */
function linesOf(text: string, seconds = Math.max(2, text.length / 14)): string[] {
  const end = new Date(seconds * 1000).toISOString().slice(11, 23);
  const { narration } = readNarration(`WEBVTT\n\n00:00:00.000 --> ${end}\n${text}\n`, 'x.vtt');
  return captionCues(saidInNarration(narration), seconds * 1000).flatMap(({ lines }) => [lines.join(' / ')]);
}

describe('the limits, on the lessons of scenes/ (common practice of broadcasters)', () => {
  it.each(lessonNames)('%s', (name) => {
    const cues = captionsOf(name);
    expect(cues.length).toBeGreaterThan(0);
    for (const [index, cue] of cues.entries()) {
      expect(cue.lines.length).toBeLessThanOrEqual(2);
      for (const line of cue.lines) expect(lengthOf(line)).toBeLessThanOrEqual(42);
      expect(speedOf(cue)).toBeLessThanOrEqual(limits.charactersASecond + 0.05);
      expect(cue.from).toBeLessThan(cue.to);
      expect(cue.from).toBeGreaterThanOrEqual(cues[index - 1]?.to ?? 0);
      // No name of a cell, and no number with its noun, is parted (by a second reading of the words).
      const lines = [...cue.lines, cues[index + 1]?.lines[0] ?? ''];
      for (const [at, line] of cue.lines.entries()) {
        const next = lines[at + 1];
        expect(`${line} | ${next}`).not.toMatch(
          /\b(row|column|box) \| (one|two|three|four|five|six|seven|eight|nine|\d)\b/i,
        );
        expect(`${line} | ${next}`).not.toMatch(
          /\b(two|three|four|five|six|seven|eight|nine) \| (cells?|digits?|places?|boxes)\b/i,
        );
      }
    }
  });

  it('every word is there, in order', () => {
    for (const name of lessonNames) {
      const { scene, narration } = lessonOf(name);
      const said = narration?.cues.map(({ text }) => text) ?? scene.steps.map((step) => step.say?.value ?? '');
      const words = (text: string) => text.split(/\s+/).filter((word) => word !== '');
      expect(
        words(
          captionsOf(name)
            .map(({ lines }) => lines.join(' '))
            .join(' '),
        ),
      ).toEqual(words(said.join(' ')));
    }
  });
});

describe('no sentence is on screen before it is said', () => {
  /** A second reading of the words: where sentences of our own making begin is known. */
  const said = fc
    .array(
      fc.record({
        words: fc.array(fc.constantFrom('so', 'five', 'r3c5', 'goes', 'nowhere', 'a-rather-long-word-of-it'), {
          minLength: 1,
          maxLength: 30,
        }),
        millisecondsAWord: fc.integer({ min: 0, max: 500 }),
        silence: fc.constantFrom(0, 0, 100, 2000),
      }),
      { minLength: 1, maxLength: 12 },
    )
    .map((sentences) => {
      let at = 1000;
      return sentences.flatMap(({ words, millisecondsAWord, silence }, sentence) => {
        const made = words.map((text, index) => {
          const [from, to] = [at, at + millisecondsAWord];
          at = to;
          const begins = index === 0;
          const written = `${begins ? `S${sentence}` : text}${index === words.length - 1 ? '.' : ''}`;
          return { begins, text: written, spaced: true, from, to, name: undefined };
        });
        at += silence;
        return made;
      });
    });

  it('by chance', () => {
    fc.assert(
      fc.property(said, (words) => {
        const cues = captionCues(words, words.at(-1)!.from + 20_000);
        expect(cues.flatMap(({ lines }) => lines.join(' ').split(' '))).toEqual(words.map(({ text }) => text));
        let index = 0;
        for (const [at, cue] of cues.entries()) {
          expect(cue.lines.length).toBeLessThanOrEqual(limits.lines);
          for (const line of cue.lines) expect(lengthOf(line)).toBeLessThanOrEqual(limits.lineLength);
          expect(cue.from).toBeGreaterThanOrEqual(cues[at - 1]?.to ?? 0);
          expect(cue.to).toBeGreaterThan(cue.from);
          for (const _ of cue.lines.join(' ').split(' ')) {
            const word = words[index++]!;
            // A fifth of a second is at once.
            if (word.begins) expect(cue.from).toBeGreaterThanOrEqual(word.from - 200);
          }
        }
      }),
      { numRuns: 100, seed: 1 },
    );
  });

  it('however fast it is said, and each short one stands as long as the next can spare', () => {
    const text = `WEBVTT

00:01.000 --> 00:01.400
Six?

00:01.400 --> 00:01.800
No!

00:01.800 --> 00:04.000
It must be the seven that goes into r3c5.
`;
    const cues = captionCues(saidInNarration(readNarration(text, 'x.vtt').narration), 60_000);
    expect(cues.map(({ from, to, lines }) => [from, to, ...lines])).toEqual([
      [1000, 1400, 'Six?'],
      [1400, 2162, 'No!'],
      [2162, 4212, 'It must be the seven that goes into r3c5.'],
    ]);
  });

  it('and it is said where that is too fast, or too short, to be read', () => {
    const cue = (from: number, to: number, ...lines: string[]): TextCue => ({ name: undefined, from, to, lines });
    const readable = cue(0, 2000, 'Twenty-nine signs in two secs');
    const fast = [4, 5, 6, 7, 8, 9].map((at) => cue(1000 * at, 1000 * at + 999, 'Twenty-nine signs in a second'));
    expect(remarksOnCues([readable])).toEqual([]);
    expect(remarksOnCues([readable, fast[0]!, cue(9000, 9900, 'No.'), cue(9900, 12_000, 'x'.repeat(39), 'y')])).toEqual(
      [
        'warning: 1 cue comes faster than 20 characters a second, as the words do, and few can read that in time: at 0:04.00 (30)',
        'warning: 1 cue is on screen for less than a second, since the next sentence follows immediately: at 0:09.00',
      ],
    );
    expect(remarksOnCues(fast)).toEqual([
      'warning: 6 cues come faster than 20 characters a second, as the words do, and few can read that in time: at 0:04.00 (30), 0:05.00 (30), 0:06.00 (30), 0:07.00 (30), 0:08.00 (30) and 1 more',
    ]);
  });

  it('an abbreviation is no end of one', () => {
    expect(linesOf('Some cells, e.g. in row two, are open.')).toEqual(['Some cells, e.g. in row two, are open.']);
  });
});

describe('where lines and cues end', () => {
  const rows: readonly (readonly [why: string, text: string, lines: readonly string[]])[] = [
    ['one line', 'Only one place is left.', ['Only one place is left.']],
    [
      'after a clause',
      'In row seven a five can go here, and nowhere else in it.',
      ['In row seven a five can go here, / and nowhere else in it.'],
    ],
    [
      'not within a cell',
      'So the only place left for it in the whole is r3 c5 now.',
      ['So the only place left for it / in the whole is r3 c5 now.'],
    ],
    [
      'not within a cell that is spoken',
      'That leaves the seven nowhere but row three column five then.',
      ['That leaves the seven nowhere / but row three column five then.'],
    ],
    [
      'a dash stands at a line’s end',
      'We have now come all the way to the end – or so it seems.',
      ['We have now come all the way to the end – / or so it seems.'],
    ],
    ['no letters but signs', '♪ ♪', ['♪ ♪']],
    [
      'a word longer than a line',
      `see https://example.org/${'a-very-long-name-of-a-page/'.repeat(3)}`,
      [
        'see https://example.org/a-very-long-',
        'name-of-a-page/a-very-long-name- / of-a-page/a-very-long-name-of-a-page/',
      ],
    ],
  ];
  it.each(rows)('%s', (_, text, lines) => {
    expect(linesOf(text)).toEqual(lines);
  });
  it('two cues where two lines do not hold a sentence, each with its time', () => {
    const lines = linesOf(
      'Four cells, and only four digits between them, so that the other two open cells of the box lose all four of these digits at once.',
      10,
    );
    expect(lines).toEqual([
      'Four cells, / and only four digits between them,',
      'so that the other two open cells of the / box lose all four of these digits at once.',
    ]);
  });
  it('nothing is lost of a text without blanks', () => {
    const text = '数独'.repeat(60);
    const lines = linesOf(text, 30);
    expect(lines.join('').replaceAll(' / ', '')).toBe(text);
  });
  it('a pause ends a cue', () => {
    const text = 'WEBVTT\n\n00:01.000 --> 00:02.000\nOne,\n\n00:04.000 --> 00:05.000\ntwo.\n';
    const cues = captionCues(saidInNarration(readNarration(text, 'x.vtt').narration), 60_000);
    expect(cues.map(({ from, lines }) => [from, lines])).toEqual([
      [1000, ['One,']],
      [4000, ['two.']],
    ]);
  });
});

describe('times', () => {
  it('each step’s words begin with it, at 150 words a minute, or as fast as it is short', () => {
    const { scene, schedule } = timed({
      video: '  rate: 25\n  length: 30\n',
      steps:
        '  - {id: a, at: 2, say: One two three four five.}\n  - {id: b, at: 10, say: One two three four., until: 11}\n',
    });
    const words = saidInSteps(scene, schedule);
    expect([words[0]!.from, words[4]!.to, words[5]!.from, words[8]!.to]).toEqual([2000, 4000, 10_000, 11_000]);
    expect(captionCues(words, 30_000).map(({ name }) => name)).toEqual(['a', 'b']);
  });
  it('cues that overlap in the narration do not in the captions', () => {
    const text =
      'WEBVTT\n\n00:01.000 --> 00:06.000\nThis is a long sentence by one.\n\n00:02.000 --> 00:03.000\nAnd this by another.\n';
    const cues = captionCues(saidInNarration(readNarration(text, 'x.vtt').narration), 60_000);
    for (const [index, cue] of cues.entries()) expect(cue.from).toBeGreaterThanOrEqual(cues[index - 1]?.to ?? 0);
    expect(cues.flatMap(({ lines }) => lines).join(' ')).toContain('And this by another.');
  });
  it('what is said after the end of the video is left out, and nothing stands longer than it', () => {
    const text = 'WEBVTT\n\n00:01.000 --> 00:03.000\nIn time.\n\n00:09.000 --> 00:10.000\nToo late.\n';
    const cues = captionCues(saidInNarration(readNarration(text, 'x.vtt').narration), 2500);
    expect(cues).toEqual([{ name: undefined, from: 1000, to: 2500, lines: ['In time.'] }]);
  });
  it('a fast cue takes time from a slow neighbour', () => {
    const text =
      'WEBVTT\n\n00:00.000 --> 00:04.000\nSlowly.\n\n00:04.000 --> 00:05.800\nForty characters are spoken in this time.\n\n00:05.800 --> 00:09.000\nSlow.\n';
    const cues = captionCues(saidInNarration(readNarration(text, 'x.vtt').narration), 60_000);
    expect(Math.max(...cues.map(speedOf))).toBeLessThanOrEqual(20);
  });
});

describe('files', () => {
  const cues: readonly TextCue[] = [
    { name: 'a', from: 0, to: 1000, lines: ['Tom & Jerry <b>say</b> 5 --> 6'] },
    { name: undefined, from: 3_661_001, to: 3_662_500, lines: ['two', 'lines'] },
    { name: 'rtl', from: 3_662_500, to: 3_663_500, lines: ['r3c5 הוא חמש'] },
  ];
  const texts = ['Tom & Jerry <b>say</b> 5 --> 6', 'two\nlines', '\u200Fr3c5 הוא חמש'];
  const leaves = (node: TreeNode): readonly TreeNode[] =>
    node.children === undefined ? [node] : node.children.flatMap(leaves);

  it('WebVTT as webvtt-parser (the W3C algorithm) reads it', () => {
    const read = new WebVTTParser().parse(printCues(cues, 'vtt')) as ReturnType<WebVTTParser['parse']> & {
      errors?: readonly unknown[];
    };
    expect(read.errors ?? []).toEqual([]);
    expect(read.cues.map(({ id, startTime, endTime }) => [id, startTime, endTime])).toEqual([
      ['a', 0, 1],
      ['', 3661.001, 3662.5],
      ['rtl', 3662.5, 3663.5],
    ]);
    expect(
      read.cues.map(({ tree }) =>
        leaves(tree)
          .map(({ value }) => value)
          .join('')
          // It lets the semicolon of a reference stand.
          .replaceAll(';', ''),
      ),
    ).toEqual(texts);
  });
  it.each(['vtt', 'srt'] as const)('%s as media-captions and our own reader read it', async (type) => {
    const printed = printCues(cues, type);
    const read = await parseText(printed, { type });
    expect(read.cues.map(({ startTime, endTime }) => [startTime, endTime])).toEqual([
      [0, 1],
      [3661.001, 3662.5],
      [3662.5, 3663.5],
    ]);
    const own = readNarration(printed, `x.${type}`);
    expect(own.faults).toEqual([]);
    const inSrt = ['Tom & Jerry ‹b>say‹/b> 5 → 6', ...texts.slice(1)];
    expect(own.narration.cues.map(({ text }) => text)).toEqual(type === 'vtt' ? texts : inSrt);
  });
  it.each(lessonNames)('%s: both formats hold the same cues', async (name) => {
    const made = captionsOf(name);
    for (const type of ['vtt', 'srt'] as const) {
      const { cues: read } = await parseText(printCues(made, type), { type });
      // It adds up floating-point seconds.
      const times = read.map(({ startTime, endTime }) => [Math.round(startTime * 1000), Math.round(endTime * 1000)]);
      expect(times).toEqual(made.map(({ from, to }) => [from, to]));
    }
  });
});
