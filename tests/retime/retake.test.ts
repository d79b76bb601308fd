import { describe, expect, it } from 'vitest';
import { readScene } from '../../src/lesson/read-scene.ts';
import { lostWords } from '../../src/retime/lost-words.ts';
import { retimedScene } from '../../src/retime/retimed-scene.ts';
import { timesOf, writtenLike } from '../../src/retime/written-times.ts';
import { compare, fraction, toNumber } from '../../src/scene/fraction.ts';
import { readNarration } from '../../src/timeline/narration.ts';
import { retakeOf } from '../../src/timeline/retake.ts';
import { frameAtTime } from '../../src/timeline/seconds.ts';

/** A narration as JSON words: `word@seconds`, or words without a time, each a third of a second after the one before. */
function spoken(text: string, name = 'talk.json', apart = 1 / 3) {
  let at = 0;
  const words = text.split(/\s+/).map((word) => {
    const [, said = word, given] = /^(.*)@([\d.]+)$/.exec(word) ?? [];
    at = given === undefined ? at + apart : Number(given);
    const start = Math.round(at * 1000) / 1000;
    return { word: said, start, end: start + 0.2 };
  });
  return { words, narration: readNarration(JSON.stringify(words), name).narration };
}

const tale =
  'Look@1 at row three. The five can go here or here, and nowhere else. Now@12 the box: two of those share it, so they are not both five. That@24 leaves one end, and row three column five loses its five. So@40 the four goes in.';

function scene(body: string, video = '  rate: 30000/1001\n') {
  const text = `# The head of it all\nproofreel: 1\npuzzle:\n  boxes: 2x2\n  givens: 1.34 3412 2143 432.   # nearly full\nvideo:\n${video}${body}`;
  const read = readScene(text);
  if (read.scene === undefined) throw new Error(read.diagnostics.map(({ message }) => message).join('; '));
  return { text, scene: read.scene };
}

describe('a retake, with words put in, left out and spoken slower', () => {
  const before = spoken(tale);
  // A sentence before all, a word left out ("else"), a clause put in, the end spoken at three quarters of the speed.
  const retold = before.words.flatMap(({ word, start }, index) => {
    if (word === 'else.') return [];
    const slower = index > 40 ? 25 + (start - 25) * (4 / 3) : start;
    const later = slower + 4.7 + (start >= 12 ? 3.19 : 0);
    return word === 'Now'
      ? [`Well@${(later - 3).toFixed(3)}`, 'as', 'ever,', `Now@${later.toFixed(3)}`]
      : [`${word}@${later.toFixed(3)}`];
  });
  const after = spoken(`Welcome@0.5 back to all of you here. ${retold.join(' ')}`, 'again.json');
  const retake = retakeOf(before.narration, after.narration);
  const rate = fraction(30_000, 1001);

  it('every mark lies within one frame of its word’s new time', () => {
    const marked = before.words.filter(({ word }) => word !== 'else.');
    const steps = marked
      .map(({ word, start }, index) => `  - {id: s${index}, at: ${start}}   # at "${word}", by hand\n`)
      .join('');
    const { text, scene: read } = scene(`steps:\n${steps}`);
    const retimed = retimedScene(read, text, retake.move);
    const again = readScene(retimed.text).scene!;
    const moved = timesOf(again, retimed.text).written.map(({ seconds }) => seconds);
    expect(moved.length).toBe(marked.length);
    let at = 0;
    for (const [index, { word }] of marked.entries()) {
      at = after.words.findIndex((each, place) => place >= at && each.word === word && place >= 7 + index);
      const due = fraction(Math.round(after.words[at]!.start * 1000), 1000);
      expect(
        Math.abs(frameAtTime(rate, moved[index]!) - frameAtTime(rate, due)),
        `${word} ${index}`,
      ).toBeLessThanOrEqual(1);
      at++;
    }
    expect(retimed.times.filter(({ lost }) => lost !== undefined)).toEqual([]);
  });

  it('a mark in a pause keeps its part of it, one just before a word stays just before it', () => {
    const now = (word: string) => after.words.find((each) => each.word === word)!.start;
    expect(toNumber(retake.move(fraction(119, 10)).seconds)).toBeCloseTo(now('Now') - 0.1);
    const [so, first] = [before.words.find(({ word }) => word === 'So')!, retake.move(fraction(39))];
    expect(toNumber(first.seconds)).toBeLessThan(now('So'));
    expect(toNumber(retake.move(fraction(so.start)).seconds)).toBeCloseTo(now('So'));
  });

  it('a fifth of a second before a word is not just before it, and less is', () => {
    const { move } = retakeOf(spoken('One@0 two@10 three@20').narration, spoken('One@0 two@20 three@30').narration);
    expect(toNumber(move(fraction(98, 10)).seconds)).toBeCloseTo(19.6, 9);
    expect(toNumber(move(fraction(981, 100)).seconds)).toBeCloseTo(19.81, 9);
  });

  it('a title before the first word stays; what comes after the last word keeps its distance', () => {
    expect(toNumber(retake.move(fraction(1, 2)).seconds)).toBe(0.5);
    expect(toNumber(retake.move(fraction(0)).seconds)).toBe(0);
    const [old, now] = [before.words.at(-1)!, after.words.at(-1)!];
    expect(toNumber(retake.move(fraction(60)).seconds)).toBeCloseTo(60 - old.start + now.start);
  });

  it('a mark on a word that is no longer spoken goes between its neighbours, and is named', () => {
    const { start } = before.words.find(({ word }) => word === 'else.')!;
    const moved = retake.move(fraction(Math.round(start * 1000), 1000));
    expect(moved.lost).toBe('else.');
    const [nowhere, well] = ['nowhere', 'Well'].map((word) => after.words.find((each) => each.word === word)!.start);
    expect(toNumber(moved.seconds)).toBeGreaterThan(nowhere!);
    expect(toNumber(moved.seconds)).toBeLessThanOrEqual(well!);
  });

  it('later times of a scene never come before earlier ones', () => {
    const steps = Array.from({ length: 600 }, (_, tenth) => `  - {id: s${tenth}, at: ${tenth / 10}}\n`).join('');
    const { text, scene: read } = scene(`steps:\n${steps}`);
    const { times } = retimedScene(read, text, retake.move);
    expect(times.length).toBe(600);
    for (const [index, { to }] of times.entries())
      expect(compare(times[index - 1]?.to ?? fraction(0), to)).toBeLessThanOrEqual(0);
  });
});

describe('the text of a scene', () => {
  const later = (seconds: Parameters<ReturnType<typeof retakeOf>['move']>[0]) => ({
    seconds: { numerator: seconds.numerator * 2n + seconds.denominator * 3n, denominator: seconds.denominator * 2n },
    lost: undefined,
  });

  it('changes in its times alone: every form keeps its form, comments and layout stay', () => {
    const made = scene(
      `steps:
  # --- the first ---
  - id: a
    at: 0:02.5      # seconds and minutes
    until:   "12.25s"
    say: "At 0:02 we begin: 12.5 of it"
    show:
      - {outline: b1, at: '3'}   # in quotes
      - {outline: b2, at: +1.5}
      - {outline: b3, at: words "we begin" or 0:04}
  - {id: b, at: cue intro +0.5}
  - id: c
    at:
      1:00:02
    show:
      - outline: b1
        at: >-
          1:00:03.5
`,
      '  rate: 25\n  length: 2:00:00   # all of it\n  narration: talk.vtt\n',
    );
    const { text, times, afterSteps, onNarration } = retimedScene(made.scene, made.text, later);
    expect(text).toBe(
      made.text
        .replace('at: 0:02.5 ', 'at: 0:04.00 ')
        .replace('"12.25s"', '"13.75s"')
        .replace("at: '3'", "at: '4.50'")
        .replace('or 0:04', 'or 0:05.50')
        .replace('      1:00:02\n', '      1:00:03.50\n')
        .replace('1:00:03.5\n', '1:00:05.00\n')
        .replace('2:00:00 ', '2:00:01.50 '),
    );
    expect([times.length, afterSteps, onNarration]).toEqual([7, 1, 2]);
  });

  it('timecodes count from the first frame’s, drop-frame ones by their labels (SMPTE ST 12-1)', () => {
    const made = scene(
      'steps:\n  - {id: a, at: "01:00:58;15"}\n  - {id: b, at: "01:01:00:00"}\n',
      '  rate: 30000/1001\n  timecode: 01:00:00;00\n',
    );
    // A second and a half is 44.96 frames: label 01:00:58;15 is frame 1755, and frame 1800 is 01:01:00;02.
    const { text } = retimedScene(made.scene, made.text, later);
    expect(text).toContain('{id: a, at: "01:01:00;02"}');
  });

  it('moves places of the board, of versions too, and items, but not the start of the footage', () => {
    const made = scene(
      `versions:
  upright: {size: 180x320, board: [{left: 3, top: 1, side: 80, at: 0}, {left: 9, top: 1, side: 80, at: 0:09}]}
steps:
  - id: a
    only:
      - {only: 2r1 in r1c2, at: 2}
    so: r1c2=2
`,
      '  rate: 25\n  board: [{left: 3, top: 1, side: 80, at: 0}, {hidden: true, at: 5}]\n  footage: {file: x.mp4, start: 0:12}\n',
    );
    const { text } = retimedScene(made.scene, made.text, later);
    expect(text).toBe(
      made.text
        .replaceAll('at: 0}', 'at: 1.50}')
        .replace('at: 5}', 'at: 6.50}')
        .replace('at: 0:09', 'at: 0:10.50')
        .replace('at: 2}', 'at: 3.50}'),
    );
  });

  it('a time that stays on its frame keeps its text', () => {
    const made = scene('steps:\n  - {id: a, at: 1.001}\n  - {id: b, at: 0:02}\n');
    const { text } = retimedScene(made.scene, made.text, (seconds) => ({ seconds, lost: undefined }));
    expect(text).toBe(made.text);
  });
});

describe('words that are no longer spoken', () => {
  it('sentences, cues, phrases and single words, each at its place', () => {
    const before = readNarration(
      'WEBVTT\n\nintro\n00:01.000 --> 00:04.000\nLook at the corner here.\n\nend\n00:06.000 --> 00:09.000\nIt has one place left.\n',
      'a.vtt',
    ).narration;
    const after = readNarration(
      'WEBVTT\n\nbegin\n00:01.000 --> 00:04.000\nWatch what happens in row two.\n\nend\n00:06.000 --> 00:09.000\nIt has one place left.\n',
      'b.vtt',
    ).narration;
    const { text, scene: read } = scene(
      `steps:
  - {id: a, at: cue intro, say: Look at the corner here.}
  - {id: b, at: 2.2, show: [{outline: b1, at: words "corner here"}]}
  - {id: c, at: cue end, say: It has one place left.}
`,
      '  rate: 25\n  narration: a.vtt\n',
    );
    const retake = retakeOf(before, after);
    const retimed = retimedScene(read, text, retake.move);
    const lost = lostWords(read, text, retimed, retake, after).map(({ step, message }) => `${step}: ${message}`);
    expect(lost).toEqual([
      'a: b.vtt has no cue "intro"',
      'a: what the step says is not spoken in b.vtt',
      expect.stringMatching(/^b: the word at which this beginning was, "(the|corner)", is no longer spoken/),
      expect.stringMatching(/^b: the words "corner here" are not spoken in b\.vtt; the nearest are /),
    ]);
  });
});

it('a time is written with as many decimals as its frame needs, two at least', () => {
  const writtenAt = (rate: number, frame: number) =>
    writtenLike('1.5', fraction(frame, rate), scene('steps: [{id: a}]\n', `  rate: ${rate}/1\n`).scene);
  expect(writtenAt(25, 26)).toBe('1.04');
  expect(writtenAt(240, 241)).toBe('1.004');
  expect(writtenAt(240, 240)).toBe('1.00');
});
