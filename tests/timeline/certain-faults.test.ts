/**
 * A scene whose keys are wrong, and whose times are wrong as well: each fault of the times is told with those of the
 * keys, and none is told that goes with them.
 */
import { describe, expect, it } from 'vitest';
import { certainErrors, checkScene } from '../../src/lesson/check-scene.ts';
import { readScene } from '../../src/lesson/read-scene.ts';
import { certainFaults, schedule } from '../../src/lesson/schedule.ts';
import type { Diagnostic } from '../../src/scene/diagnostic.ts';
import { readNarration } from '../../src/timeline/narration.ts';
import { talk } from './timed-scene.ts';

/** Wrong in its times throughout, and twice in its marks. */
const scene = `proofreel: 1
title: Wrong throughout
puzzle: {boxes: 2x2, givens: 1.34 3412 2143 432.}
video:
  size: 640x360
  rate: 25
  length: 1:10
  timecode: 10:00:00:00
  narration: talk.vtt
  board:
    - {left: 10, top: 10, side: 300, at: 0}
    - {left: 90, top: 10, side: 300, at: 1:30}
steps:
  - id: one
    at: 0:01
    say: Look at the corner here.
    from: r1c2
    so: r1c2=2
    show:
      - {place: all, at: cue entry}
      - {circle: 2r1c2, at: words "nobody says this"}
      - {sight: 2r4c4, at: words "it is here"}
  - id: two
    at: cue middle
    until: 10:01:05:00
    because: naked single
    from: r4c4
    so: r4c4=1
    show:
      - {fill: r4, at: 0:14}
      - {fill: c4, at: 0:12}
      - {note: later, at: 2:00}
      - {suppose: 3r4c4, at: +5}
  - id: three
    at: 0:08
  - id: four
    at: 09:59:59:00
    say: And this ends it.
  - id: five
    at: 0:40
    show:
      - {ask: which one, hold: 40, at: 0:41}
      - {fill: r2, at: 0:50}
  - id: six
    at: words 3 "it is here"
    only: [{only: 2r1 in r1c2, at: 0:45}]
  - id: seven
    at: 0:57
    show: [{fill: r1, at: 0:58}, {fill: r2, at: 0:57.5}]
  - id: eight
    say: Nobody says this either.
`;

const spoken = readNarration(talk, 'talk.vtt').narration;

/** Places and codes of what is wrong with times and marks, as offsets in the text. */
function found(text: string): readonly string[] {
  const { scene: whole, rough } = readScene(text);
  const narration = (file: { readonly video: { readonly narration: unknown } }) =>
    file.video.narration === undefined ? undefined : spoken;
  const named = (faults: readonly Diagnostic[]) => faults.map(({ code, span }) => `${span.start} ${code}`);
  if (whole !== undefined) {
    return named([...schedule(whole, narration(whole), {}).diagnostics, ...checkScene(whole).errors]);
  }
  const { parts, puzzle, puzzleSpan, doubts } = rough!;
  const timed = { ...parts, puzzle: puzzle ?? { span: puzzleSpan } };
  const ofTimes = certainFaults(timed, doubts, narration(parts), {});
  return named([...ofTimes, ...(puzzle === undefined ? [] : certainErrors({ ...parts, puzzle }, doubts))]);
}

const all = found(scene);
const keys = [...scene.matchAll(/[a-z]+(?=: )|[a-z]+(?=:\n)/g)].map(({ index, 0: key }) => ({ key, index }));
const stepAt = (index: number): number => scene.slice(0, index).split('- id: ').length;
/** What no other step can bring about: a cue and words that the narration does not have, a label before the first. */
const alone = all.filter((fault) => {
  const written = scene.slice(Number.parseInt(fault, 10));
  return /cue-not-found|time-before-start/.test(fault) || /^words ("nobody|3 )/.test(written);
});

/** The text with another word of the same length, so that all places stay. */
function withWord(index: number, word: string): string {
  return scene.slice(0, index) + word + scene.slice(index + word.length);
}

const line = (index: number): string =>
  `${scene.slice(0, index).split('\n').length}: ${scene.slice(index).split('\n')[0]}`;

describe('beside a wrong key', () => {
  it('there is enough to be found', () => {
    expect(new Set(all.map((fault) => fault.split(' ')[1]))).toEqual(
      new Set([
        ...['cue-not-found', 'phrase-not-found', 'sight-without-digit', 'time-goes-back', 'time-past-end'],
        ...['suppose-nothing', 'time-before-start', 'hold-too-long', 'say-not-found'],
      ]),
    );
  });

  it.each(keys.filter(({ key }) => key.length > 3))(
    'every fault is told where $key (at $index) is misspelt',
    ({ key, index }) => {
      const misspelt = `${key.slice(0, -2)}${key.at(-1)}${key.at(-2)}`;
      if (misspelt === key) return;
      expect(found(withWord(index, misspelt)), line(index)).toEqual(all);
    },
  );

  it.each(keys)('no fault is made up where $key (at $index) is no word', ({ key, index }) => {
    const kept = found(withWord(index, 'z'.repeat(key.length)));
    expect(
      kept.filter((fault) => !all.includes(fault)),
      line(index),
    ).toEqual([]);
    if (stepAt(index) === 1) return;
    const others = alone.filter((fault) => stepAt(Number.parseInt(fault, 10)) !== stepAt(index));
    expect(kept).toEqual(expect.arrayContaining(others));
  });

  it.each(
    [...scene.matchAll(/: ([^{[\s][^,}\n]*)/g)].map(({ index, 1: value }) => ({ value: value!, index: index + 2 })),
  )('no fault is made up where $value (at $index) cannot be read', ({ value, index }) => {
    const kept = found(withWord(index, 'x'.repeat(value.length)));
    expect(
      kept.filter((fault) => !all.includes(fault)),
      line(index),
    ).toEqual([]);
  });
});
