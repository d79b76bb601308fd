import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { readScene } from '../../src/lesson/read-scene.ts';
import { schedule } from '../../src/lesson/schedule.ts';
import { compare, type Fraction, fraction, subtract } from '../../src/scene/fraction.ts';
import { readNarration } from '../../src/timeline/narration.ts';
import { timeOfFrame } from '../../src/timeline/seconds.ts';
import { timed } from './timed-scene.ts';

const ntsc = '  rate: 30000/1001\n';
const talk = `WEBVTT

intro
00:01.000 --> 00:05.000
Look at the corner here.

00:10.000 --> 00:20.000
It is <00:12.000>here <00:14.500>or here, twenty-one cells.
`;

function file(name: string): string {
  return readFileSync(new URL(`../../scenes/${name}`, import.meta.url), 'utf8');
}

describe('each way to write a time', () => {
  // Step `a` begins at 2 s; the beat's `at` is looked up, and its frame worked out by hand.
  const rows: readonly (readonly [at: string, video: string, frame: number])[] = [
    ['12.5', '  rate: 24\n', 300],
    ['12.5s', '  rate: 60\n', 750],
    ['0:12.5', ntsc, 375], // 374.6
    ['1:00:00', ntsc, 107_892],
    ['00:00:12:12', '  rate: 25\n', 312],
    ['00:01:00;02', ntsc, 1800],
    ['00:01:00:02', ntsc, 1802],
    ['01:00:02:12', '  rate: 25\n  timecode: 01:00:00:00\n', 62],
    ['01:00:10;00', `${ntsc}  timecode: 01:00:00;00\n`, 300],
    ['00:00:10:00', '  rate: 25\n  timecode: 23:59:50:00\n', 500], // past midnight
    ['+1.5', '  rate: 25\n', 88], // 2 s + 1.5 s = 87.5 frames
    ['cue 2', '  rate: 25\n', 250],
    ['cue 2 +0.5', '  rate: 25\n', 263], // 262.5
    ['words "here or here"', '  rate: 25\n', 300], // its own timestamp
    ['words "or here"', '  rate: 25\n', 363], // 14.5 s, 362.5
    ['words 2 "here"', '  rate: 25\n', 300], // the first is in the cue before
    ['words "21 cells"', '  rate: 25\n', 385], // after 20 of the cue's 37 characters: 15.405 s
    ['words "no such" or 4:12', '  rate: 25\n', 6300],
    ['words "here or" or 4:12', '  rate: 25\n', 300],
  ];
  it.each(rows)('%s with %j', (at, video, frame) => {
    const steps = `  - id: a\n    at: 2\n    until: 2:00:00\n    show:\n      - {outline: b1, at: ${at}}\n`;
    const { schedule: made, diagnostics } = timed({ video, steps, narration: talk });
    expect(diagnostics.filter((fault) => !fault.includes('phrase-twice'))).toEqual([]);
    expect(made.steps[0]!.beats[0]!.from).toBe(frame);
  });

  it('a step counts +1.5 from the start of the step before', () => {
    const { schedule: made } = timed({ steps: '  - id: a\n    at: 2\n  - id: b\n    at: +1.5\n    until: +2\n' });
    expect(made.steps.map(({ from, until }) => [from, until])).toEqual([
      [50, 88],
      [88, 138],
    ]);
  });

  it('sums are rounded once: 1.02 s and 0.02 s after it are frames 26 and 26 at 25', () => {
    const { schedule: made } = timed({
      steps: '  - id: a\n    at: 1.02\n    show:\n      - {outline: b1, at: +0.02}\n',
    });
    expect([made.steps[0]!.from, made.steps[0]!.beats[0]!.from]).toEqual([26, 26]);
  });
});

describe('how many frames the video has', () => {
  const minute = fraction(60);
  const rows: readonly (readonly [
    name: string,
    video: string,
    options: { audioSeconds?: Fraction; footageSeconds?: Fraction },
    frames: number,
  ])[] = [
    ['length at 24', '  rate: 24\n  length: 1:00\n', {}, 1440],
    ['length at 25', '  rate: 25\n  length: 1:00\n', {}, 1500],
    ['length at 30000/1001', `${ntsc}  length: 1:00\n`, {}, 1798],
    ['length at 60', '  rate: 60\n  length: 1:00\n', {}, 3600],
    [
      'length comes before footage and audio',
      '  rate: 60\n  length: 10\n  footage: f.mp4\n  audio: a.wav\n',
      { audioSeconds: minute, footageSeconds: minute },
      600,
    ],
    [
      'footage before audio',
      '  rate: 25\n  footage: f.mp4\n  audio: a.wav\n',
      { audioSeconds: fraction(30), footageSeconds: minute },
      1500,
    ],
    [
      'footage from its start on',
      '  rate: 25\n  footage: {file: f.mp4, start: 0:12}\n',
      { footageSeconds: minute },
      1200,
    ],
    ['audio', `${ntsc}  audio: a.wav\n`, { audioSeconds: minute }, 1798],
    ['the last step', '  rate: 25\n', {}, 100],
    [
      'a timecode is the label after the last frame',
      '  rate: 25\n  timecode: 01:00:00:00\n  length: 01:00:10:00\n',
      {},
      250,
    ],
  ];
  it.each(rows)('%s', (_, video, options, frames) => {
    const { schedule: made, diagnostics } = timed({ video, steps: '  - id: a\n', options });
    expect(diagnostics).toEqual([]);
    expect(made.frameCount).toBe(frames);
    expect(made.steps[0]).toMatchObject({ from: 0, until: frames });
  });
});

describe('steps without times', () => {
  it('lasts as long as it is said, at 150 words a minute, and four seconds at least', () => {
    const twenty = 'one word '.repeat(10).trim();
    const { schedule: made } = timed({
      steps: `  - id: a\n    say: ${twenty}\n  - id: b\n    say: Yes - yes.\n  - id: c\n    at: 14\n`,
    });
    expect(made.steps.map(({ from, until }) => [from, until])).toEqual([
      [0, 200],
      [200, 350],
      [350, 450],
    ]);
  });

  it('never less than its marks take to be drawn', () => {
    const steps = `  - id: a\n    show:\n${'      - {outline: b1}\n'.repeat(9)}`;
    const strokesOf = () => fraction(2);
    expect(timed({ steps }).schedule.frameCount).toBe(225);
    expect(timed({ steps, options: { strokesOf } }).schedule.frameCount).toBe(450);
  });

  it('begins where its sentence is spoken', () => {
    const steps = '  - id: a\n    say: Look at the corner here\n  - id: b\n    say: here or here - 21 cells\n';
    const { schedule: made, diagnostics } = timed({ steps, narration: talk });
    expect(diagnostics).toEqual([]);
    expect(made.steps.map((step) => step.from)).toEqual([25, 300]);
  });

  it('a question lengthens its step by its hold', () => {
    const steps = '  - id: a\n    show:\n      - {ask: Where?, hold: 7}\n      - {outline: b1}\n';
    const { schedule: made } = timed({ steps });
    expect(made.steps[0]!.beats.map((beat) => beat.from)).toEqual([0, 175]);
    expect(made.frameCount).toBe(200);
  });
});

describe('items', () => {
  it('one after the other in the order only, pencil, cascade, each conclusion of a cascade by itself', () => {
    const steps =
      '  - id: a\n    until: 10\n    only: 2r1 in r1c2\n    pencil: 2r1c2\n    cascade:\n      - r1c2=2 r4c4=1\n';
    const { schedule: made } = timed({ steps });
    expect(made.steps[0]).toMatchObject({ only: [0], pencil: [63], cascade: [[125, 188]], claimUntil: 250 });
  });

  it('from their own times on', () => {
    const steps =
      '  - id: a\n    at: 2\n    until: 10\n    cascade:\n      - {cascade: r1c2=2, at: +1}\n      - {cascade: r4c4=1, at: 6}\n';
    expect(timed({ steps }).schedule.steps[0]).toMatchObject({ cascade: [[75], [150]] });
  });

  it('after what the step argues', () => {
    const claim = '  - id: a\n    until: 10\n    from: r1c2\n    so: r1c2=2\n    cascade: r4c4=1\n';
    // A second and three quarters for a set and what is about it, a quarter for a conclusion; half a second for the item.
    expect(timed({ steps: claim }).schedule.steps[0]).toMatchObject({ cascade: [[200]], claimUntil: 200 });
    const shown = `${claim}    show:\n      - {place: all, at: 4}\n`;
    expect(timed({ steps: shown }).schedule.steps[0]).toMatchObject({ beats: [{ from: 100 }], cascade: [[125]] });
  });
});

describe('what the recording does', () => {
  it('`gone` is counted from the step, and looked for after its beat', () => {
    const steps =
      '  - id: a\n    at: 2\n    from: r1c2\n    so: r1c2<>1\n    show:\n      - {strike: all, at: +1, gone: +3}\n      - {strike: r1c2, at: 12, gone: words "here"}\n'.replace(
        'strike: r1c2',
        'strike: 1r1c2',
      );
    const { schedule: made } = timed({ steps, narration: talk });
    expect(made.steps[0]!.beats).toEqual([
      { from: 75, gone: 125 },
      { from: 300, gone: 300 },
    ]);
  });

  it('the board moves, and is hidden before its first place', () => {
    const square = '{left: 0, top: 0, side: 700';
    const board = `  rate: 25\n  board:\n    - ${square}, at: 1}\n    - {hidden: true, at: 2}\n    - ${square}, at: cue 2}\n`;
    const { schedule: made, diagnostics } = timed({
      video: board,
      steps: '  - id: a\n    until: 30\n',
      narration: talk,
    });
    expect(diagnostics).toEqual([]);
    expect(made.board.map(({ from, shape }) => [from, shape.kind])).toEqual([
      [0, 'hidden'],
      [25, 'square'],
      [50, 'hidden'],
      [250, 'square'],
    ]);
  });
});

describe('whole lessons', () => {
  it('the lamp room: its steps lie on the cues of its narration', () => {
    const { scene } = readScene(file('lamp-room.yaml'));
    const { narration, faults } = readNarration(file('lamp-room.vtt'), 'lamp-room.vtt');
    expect(faults).toEqual([]);
    const { schedule: made, diagnostics } = schedule(scene!, narration, {});
    expect(diagnostics).toEqual([]);
    expect(made.frameCount).toBe(5694); // 190 s * 30000/1001 = 5694.3
    for (const step of made.steps) {
      const cue = narration.cues.find((other) => other.identifier === step.id)!;
      const off = subtract(timeOfFrame(made.rate, step.from), cue.start);
      const distance = compare(off, fraction(0)) < 0 ? subtract(fraction(0), off) : off;
      expect(compare(distance, fraction(1001, 60_000)), step.id).toBeLessThanOrEqual(0); // half a frame
    }
    const tail = made.steps.find((step) => step.id === 'tail')!;
    // `only` is said at 95.554 s, `If` at 99.985 s, `this cell` at 110.569 s by their own timestamps.
    expect(tail.beats.map((beat) => beat.from)).toEqual(
      ['95.554', '99.985', '110.569'].map((text) => Math.round((Number(text) * 30_000) / 1001)),
    );
    const towers = made.steps.find((step) => step.id === 'towers')!;
    expect(towers.beats[2]!.from).toBe(towers.beats[3]!.from);
    const last = made.steps.at(-1)!;
    expect(last.cascade.flat()).toHaveLength(44);
    expect(last.until).toBe(5694);
  });

  it('first steps: no time at all, so each step lasts as long as its sentence', () => {
    const { scene } = readScene(file('first-steps.yaml'));
    const { schedule: made, diagnostics } = schedule(scene!, undefined, {});
    expect(diagnostics).toEqual([]);
    // 21 words; 10 words, so four seconds; 17 words; 24 digits at half a second each.
    expect(made.steps.map((step) => step.from)).toEqual([0, 210, 310, 480]);
    expect(made.frameCount).toBe(780);
  });
});
