import { describe, expect, it } from 'vitest';
import { type Fraction, fraction, fractionFromDecimal, toNumber } from '../../src/scene/fraction.ts';
import { spreadBeats, spreadItems } from '../../src/timeline/spread.ts';

function seconds(text: string): Fraction {
  return fractionFromDecimal(text)!;
}

/**
 * `12` a beat at 12 s, `-` one without a time, `-3` one that is drawn in 3 s, `?5` a question of 5 s, `12?5` one at
 * 12 s.
 */
function beats(text: string) {
  return text.split(' ').map((word) => {
    const [, at = '', kind = '', length = ''] = /^([\d.]*)([-?]?)([\d.]*)$/.exec(word)!;
    const wait = kind === '' || length === '' ? seconds('1') : seconds(length);
    return { at: at === '' ? undefined : seconds(at), wait, hold: kind === '?' ? wait : fraction(0) };
  });
}

describe('beats from 10 s to 20 s', () => {
  const rows: readonly (readonly [name: string, written: string, starts: readonly number[]])[] = [
    ['one: at the start', '-', [10]],
    ['one after another, a second apart', '- - -', [10, 11, 12]],
    ['each waits until the one before is drawn', '- -4 -', [10, 11, 15]],
    ['closer together where the step is too short', '-5 -5 -5 -5', [10, 12.5, 15, 17.5]],
    ['evenly between the start and a timed one', '- - 16', [10, 13, 16]],
    ['evenly between two timed ones', '12 - - 18', [12, 14, 16, 18]],
    ['after the last timed one', '14 - -', [14, 15, 16]],
    ['after the last timed one, close to the end', '19 - -', [19, 19 + 1 / 3, 19 + 2 / 3]],
    ['a question holds what comes next', '?5 - -', [10, 15, 16]],
    ['a question takes nothing from what lies before it', '- ?5 -', [10, 11, 16]],
    ['a question keeps its time where the rest is squeezed', '-8 ?5 -8', [10, 12.5, 17.5]],
    ['a question holds a timed beat too', '11?5 14', [11, 16]],
    ['and lets a later one be', '11?5 18', [11, 18]],
    ['and all after the one that it holds', '11?5 14 15', [11, 16, 16]],
    ['evenly after a question', '10?4 - 20', [10, 14, 20]],
    ['evenly around a question', '10 ?4 - 20', [10, 13, 17, 20]],
  ];
  it.each(rows)('%s: %s', (_, written, starts) => {
    const spread = spreadBeats(beats(written), { begin: seconds('10'), end: seconds('20') }).map(toNumber);
    expect(spread).toHaveLength(starts.length);
    for (const [index, start] of starts.entries()) expect(spread[index]).toBeCloseTo(start, 9);
  });
});

describe('items from 10 s to 20 s, by what they hold', () => {
  const rows: readonly (readonly [
    written: readonly (readonly [at: string, weight: number])[],
    starts: readonly (readonly number[])[],
  ])[] = [
    [[['', 1]], [[10]]],
    [[['', 4]], [[10, 12.5, 15, 17.5]]],
    [
      [
        ['', 1],
        ['', 3],
        ['', 1],
      ],
      [[10], [12, 14, 16], [18]],
    ],
    [
      [
        ['', 2],
        ['16', 2],
      ],
      [
        [10, 13],
        [16, 18],
      ],
    ],
    [
      [
        ['12', 2],
        ['', 2],
      ],
      [
        [12, 14],
        [16, 18],
      ],
    ],
  ];
  it.each(rows)('%j', (written, starts) => {
    const items = written.map(([at, weight]) => ({ at: at === '' ? undefined : seconds(at), weight }));
    expect(spreadItems(items, seconds('10'), seconds('20')).map((own) => own.map(toNumber))).toEqual(starts);
  });
});
