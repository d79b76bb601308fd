import { describe, expect, it } from 'vitest';
import { sentencesOf } from '../../src/timeline/said.ts';
import { timed } from './timed-scene.ts';

describe('the sentences of a text', () => {
  const rows: readonly (readonly [text: string, sentences: readonly string[]])[] = [
    ['Look here.', ['Look here.']],
    ['Look here. And there!', ['Look here.', 'And there!']],
    ['It takes 2.5 seconds. Really?', ['It takes 2.5 seconds.', 'Really?']],
    ['He said "Look." Then he left', ['He said "Look."', 'Then he left']],
    ['看这里。再看那里。', ['看这里。', '再看那里。']],
    ['هل ترى؟ نعم.', ['هل ترى؟', 'نعم.']],
    ['   ', []],
  ];
  for (const [text, sentences] of rows) {
    it(JSON.stringify(text), () => expect(sentencesOf(text)).toEqual(sentences));
  }
});

describe('what is said', () => {
  it('without a narration: the sentences of each step, as long as their part of the letters', () => {
    // Ten letters and thirty, over four seconds of 25 frames: 25 and 75.
    const steps = '  - {id: a, at: 2, until: 6, say: "Ten chars. These are about 30 characters."}\n';
    expect(timed({ steps, video: '  rate: 25\n  length: 10\n' }).schedule.said).toEqual([
      { text: 'Ten chars.', from: 50, until: 75 },
      { text: 'These are about 30 characters.', from: 75, until: 150 },
    ]);
  });

  it('with one: its cues at their own times, never two at once', () => {
    const narration = 'WEBVTT\n\n00:01.000 --> 00:05.000\nLook at\nthis.\n\n00:04.000 --> 00:06.000\nAnd this.\n';
    const steps = '  - {id: a, at: 0, say: Something else}\n';
    expect(timed({ steps, narration, video: '  rate: 25\n  length: 10\n' }).schedule.said).toEqual([
      { text: 'Look at this.', from: 25, until: 100 },
      { text: 'And this.', from: 100, until: 150 },
    ]);
  });

  it('ends with the video', () => {
    const narration = 'WEBVTT\n\n00:01.000 --> 00:05.000\nLook.\n\n00:06.000 --> 00:07.000\nLate.\n';
    const steps = '  - {id: a, at: 0}\n';
    expect(timed({ steps, narration, video: '  rate: 25\n  length: 3\n' }).schedule.said).toEqual([
      { text: 'Look.', from: 25, until: 75 },
    ]);
  });
});
