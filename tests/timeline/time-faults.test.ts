/**
 * What is wrong with times, told at its place. Each fixture carries its expected faults below the lines that they
 * speak of.
 */
import { expect, it } from 'vitest';
import { timeCodes } from '../../src/scene/codes.ts';
import { fraction } from '../../src/scene/fraction.ts';
import { type Fixture, talk, timed, withoutExpectations } from './timed-scene.ts';

const rows: readonly (readonly [name: string, fixture: Fixture])[] = [
  [
    'a step before the step before it',
    {
      steps: `  - id: a
    at: 0:20
  - id: b
    at: 0:10
#       ^^^^ error time-goes-back: the step begins at 0:10.00, before the step before it, "a", begins (0:20.00); give a later time
  - id: c
    at: 0:30
`,
    },
  ],
  [
    'a step before one without a time',
    {
      steps: `  - id: a
  - id: b
  - id: c
    at: 3
#       ^ error time-goes-back: "b", begins (0:04.00); give "b" an "at" too
`,
    },
  ],
  [
    'a step before the end of the one before it',
    {
      steps: `  - id: a
    until: 9
  - id: b
    at: 8
#       ^ error time-goes-back: "a", ends (0:09.00)
`,
    },
  ],
  [
    'a step before the last beat of the one before it',
    {
      steps: `  - id: a
    show:
      - {outline: b1, at: 9}
  - id: b
    at: +8
#       ^^ error time-goes-back: before the last beat or item of "a", the step before it, has begun (0:09.00); give a later time, or an earlier one there (5: this is at 0:09.00)
`,
    },
  ],
  [
    'a beat before its step, and one before the beat before it',
    {
      steps: `  - id: a
    at: 5
    show:
      - {outline: b1, at: 4}
#                         ^ error time-goes-back: this beat is at 0:04.00, before its step begins (0:05.00)
      - {outline: b2, at: 8}
      - {outline: b3, at: 7}
#                         ^ error time-goes-back: this beat is at 0:07.00, before the beat before it comes (0:08.00)
`,
    },
  ],
  [
    'an item before the item before it',
    {
      steps: `  - id: a
    pencil:
      - {pencil: 2r1c2, at: 8}
    cascade:
      - {cascade: r1c2=2, at: 7}
#                             ^ error time-goes-back: this item is at 0:07.00, before the item before it
`,
    },
  ],
  [
    'an end before the start, and before a beat',
    {
      steps: `  - id: a
    at: 5
    until: 4
#          ^ error time-goes-back: ends at 0:04.00, before the step begins (0:05.00)
  - id: b
    at: 10
    until: words "it is here"
#          ^^^^^^^^^^^^^^^^^^ error phrase-not-found: "it is here" is not spoken from 0:17.00 on
    show:
      - {outline: b1, at: +7}
`,
      narration: talk,
    },
  ],
  [
    'a beat after its step',
    {
      steps: `  - id: a
    show:
      - {outline: b1, at: 11}
#                         ^^ error time-past-step: this beat is at 0:11.00, after its step has ended (0:10.00)
  - id: b
    at: 10
    until: 20
    show:
      - {outline: b1, at: +11}
#                         ^^^ error time-past-step: 0:21.00, after its step has ended (0:20.00)
`,
    },
  ],
  [
    'past the end of the video',
    {
      video: '  rate: 25\n  length: 0:30\n',
      steps: `  - id: a
    show:
      - {outline: b1, at: 31}
#                         ^^ error time-past-end: this beat is at 0:31.00, and the video, by "length", ends at 0:30.00; give an earlier time, or a greater "length"
  - id: b
    at: 0:30
#       ^^^^ error time-past-end: step "b" begins at 0:30.00
  - id: c
    until: 40
#          ^^ error time-past-end: the step ends at 0:40.00
`,
    },
  ],
  [
    'the last frame is not past the end, and a step may end with the video',
    {
      video: '  rate: 25\n  length: 0:30\n',
      steps: `  - id: a
    at: 29.96
    until: 0:30
    show:
      - {outline: b1, at: 29.96}
`,
    },
  ],
  [
    'steps without times run past the end',
    {
      video: '  rate: 25\n  audio: a.wav\n',
      options: { audioSeconds: fraction(6) },
      steps: `  - id: a
  - id: b
  - id: c
#       ^ error time-past-end: step "c" begins at 0:08.00, and the video, as long as its audio, ends at 0:06.00
`,
    },
  ],
  [
    'a step without a time begins on the very frame with which the video ends',
    {
      video: '  rate: 25\n  audio: a.wav\n',
      options: { audioSeconds: fraction(4) },
      steps: `  - id: a
  - id: b
#       ^ error time-past-end: step "b" begins at 0:04.00, and the video, as long as its audio, ends at 0:04.00
`,
    },
  ],
  [
    'no narration',
    {
      steps: `  - id: a
    at: cue intro
#       ^^^^^^^^^ error no-narration: narration: talk.vtt
    show:
      - {outline: b1, at: words "here"}
#                         ^^^^^^^^^^^^ error no-narration: words "..." or 4:12
      - {outline: b1, at: words "here" or 2}
`,
    },
  ],
  [
    'no such cue',
    {
      steps: `  - id: a
    at: cue intor
#       ^^^^^^^^^ error cue-not-found: talk.vtt has no cue "intor"; did you mean "intro"?
  - id: b
    at: cue 7
#       ^^^^^ error cue-not-found: it has 2, numbered from 1, named "intro", "middle"
`,
      narration: talk,
    },
  ],
  [
    'words of a narration without words',
    {
      steps: `  - id: a
    show:
      - {outline: b1, at: words "look at a corner"}
#                         ^^^^^^^^^^^^^^^^^^^^^^^^ error phrase-not-found: where this time must lie; the narration has no words at all
`,
      narration: 'WEBVTT\n',
    },
  ],
  [
    'a step past the end, and nothing about the steps after it that would stand without it',
    {
      steps: `  - id: a
    at: cue intro
  - id: b
    at: 2:00
#       ^^^^ error time-past-end: step "b" begins at 2:00.00
    show:
      - {outline: b1, at: words "here or it"}
  - id: c
    at: 0:15
    until: 0:20
`,
      narration: talk,
      video: '  length: 30\n',
    },
  ],
  [
    'words that are not spoken, or spoken elsewhere, or not so often',
    {
      steps: `  - id: a
    at: cue intro
    show:
      - {outline: b1, at: words "look at a corner"}
#                         ^^^^^^^^^^^^^^^^^^^^^^^^ error phrase-not-found: the nearest words are "Look at the corner" at 0:01.00
      - {outline: b1, at: words "this ends"}
#                         ^^^^^^^^^^^^^^^^^ error phrase-not-found: is not spoken between 0:01.00 and 0:10.00, where this time must lie; it is spoken at
  - id: b
    at: cue middle
    show:
      - {outline: b1, at: words "look at the corner"}
#                         ^^^^^^^^^^^^^^^^^^^^^^^^^^ error phrase-not-found: from 0:10.00 on, where this time must lie; it is spoken at 0:01.00
      - {outline: b1, at: words 3 "here"}
#                         ^^^^^^^^^^^^^^ error phrase-not-found: "here" is not spoken 3 times from 0:10.00 on, where this time must lie, but 2 times, first at 0:11.40
`,
      narration: talk,
    },
  ],
  [
    'words that a beat of the step before has left behind',
    {
      steps: `  - id: a
    show:
      - {outline: b1, at: words "ends it"}
  - id: b
    at: words "it is"
#       ^^^^^^^^^^^^^ error phrase-not-found: (5: the words must come after this, at 0:18.12)
`,
      narration: talk,
    },
  ],
  [
    'words that are spoken again within the step',
    {
      steps: `  - id: a
    at: cue intro
    show:
      - {outline: b1, at: words "here"}
  - id: b
    at: words "it is"
#       ^^^^^^^^^^^^^ warning phrase-twice: "it is" is spoken again within this step
    show:
      - {outline: b1, at: words "here"}
#                         ^^^^^^^^^^^^ warning phrase-twice: spoken again within this step, at 0:14.64; the first place, at 0:11.40, is used
      - {outline: b1, at: words 2 "here"}
`,
      narration: talk,
    },
  ],
  [
    'a sentence that is not spoken',
    {
      steps: `  - id: a
    say: Look at that corner there.
#        ^^^^^^^^^^^^^^^^^^^^^^^^^^ warning say-not-found: the nearest words are "Look at the corner here." at 0:01.00; give the step an "at"
`,
      narration: talk,
    },
  ],
  [
    'a sentence that is spoken with a word changed, and the one after it as it is',
    {
      steps: `  - id: a
    say: Um, look at this corner here.
#        ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^ warning said-otherwise: step "a" says "Um, look at this corner here.", and talk.vtt has "Look at the corner here." at 0:01.00, where the step begins
  - id: b
    say: This ends it.
`,
      narration: talk,
    },
  ],
  [
    'a question that holds too long, and one that holds a timed beat back',
    {
      steps: `  - id: a
    until: 4
    show:
      - {ask: Where?}
#       ^^^^^^^^^^^^^ error hold-too-long: this question holds the beats after it until 0:05.00, and its step ends at 0:04.00
      - {outline: b1}
  - id: b
    until: 20
    show:
      - {ask: Where?, hold: 3}
      - {outline: b1, at: +2}
#                         ^^ warning held-back: this beat is at 0:06.00, and the question before it holds it back until 0:07.00
`,
    },
  ],
  [
    'what is never seen',
    {
      steps: `  - id: a
    show:
      - {outline: b1, at: 5}
#                         ^ warning never-seen: this beat begins on the frame on which its step ends (0:05.00)
  - id: b
    at: 5
#       ^ warning never-seen: step "b" begins and ends on one frame (0:05.00)
  - id: c
    at: 5
`,
    },
  ],
  [
    'timecodes that do not fit',
    {
      video: '  rate: 30000/1001\n  timecode: 01:00:00;00\n',
      steps: `  - id: a
    at: 00:59:00;02
#       ^^^^^^^^^^^ error time-before-start: 00:59:00;02 is before the video's first frame, which is labelled 01:00:00;00
  - id: b
    at: 01:00:20:00
#       ^^^^^^^^^^^ warning mixed-timecode: was 01:00:20;00 meant?
`,
    },
  ],
  [
    'no frame at all',
    {
      video: `  rate: 25
  length: 0
#         ^ error no-length: the video would have no frame
`,
      steps: '  - id: a\n',
    },
  ],
  [
    'a start after the footage',
    {
      video: `  rate: 25
  footage: {file: f.mp4, start: 10}
#                               ^^ error no-length: the footage lasts 0:05.00, and "start" is after its end
`,
      options: { footageSeconds: fraction(5) },
      steps: '  - id: a\n',
    },
  ],
  [
    'a board that moves back, or past the end',
    {
      video: `  rate: 25
  length: 10
  board:
    - {left: 0, top: 0, side: 700, at: 0}
    - {hidden: true, at: 5}
    - {left: 0, top: 0, side: 700, at: 4}
#                                      ^ error time-goes-back: the board moves at 0:04.00, before the previous place begins (0:05.00)
    - {hidden: true, at: 12}
#                        ^^ error time-past-end: the board moves at 0:12.00
`,
      steps: '  - id: a\n',
    },
  ],
  [
    'gone before it is struck',
    {
      steps: `  - id: a
    from: r1c2
    so: r1c2<>1
    show:
      - {strike: all, at: 3, gone: 2}
#                                  ^ error time-goes-back: the candidates are gone at 0:02.00, before they are struck (0:03.00)
`,
    },
  ],
];

const reached = new Set<string>();

it.each(rows)('%s', (_, fixture) => {
  const video = withoutExpectations(fixture.video ?? '  rate: 25\n');
  const steps = withoutExpectations(fixture.steps);
  const { diagnostics, codes } = timed({ ...fixture, video: video.text, steps: steps.text });
  for (const code of codes) reached.add(code);
  // Lines of `steps` are counted on from those of `video`, and one for the key between them.
  const shift = video.text.split('\n').length;
  const expected = [
    ...video.expected,
    ...steps.expected.map(({ place, part }) => ({ place: shifted(place, shift), part })),
  ];
  expect(diagnostics.map((fault) => fault.replace(/:(?= ).*$/, ''))).toEqual(expected.map(({ place }) => place));
  for (const [index, { part }] of expected.entries()) expect(diagnostics[index]).toContain(part);
});

it('reach every code of times but that of pictures, which `tests/commands/flash-warnings.test.ts` draws', () => {
  expect(Object.keys(timeCodes).filter((code) => !reached.has(code))).toEqual(['flashes']);
});

it('a narration that could not be read is not reported again', () => {
  const video = '  rate: 25\n  narration: talk.vtt\n';
  expect(timed({ video, steps: '  - id: a\n    at: cue intro\n' }).diagnostics).toEqual([]);
});

function shifted(place: string, lines: number): string {
  const [line, rest] = [place.slice(0, place.indexOf(':')), place.slice(place.indexOf(':'))];
  return `${Number(line) + lines}${rest}`;
}
