import { describe, expect, test } from 'vitest';
import { fullFrame, skyscraper, tell, towers } from './stage.ts';

/** With another step after it, so that what ends with the step fades: four frames, and none on the last. */
function full(keys: string): number {
  return fullFrame(tell(towers(`  - {id: s, at: 1, until: 5, ${keys}}\n  - {id: t, at: 5, until: 9}`)), 's');
}

describe('the last frame on which all marks of a step stand', () => {
  const rows: readonly { readonly name: string; readonly keys: string; readonly frame: number }[] = [
    { name: 'without marks: the last before the heading fades', keys: 'say: nothing', frame: 120 },
    { name: 'marks that end with the step', keys: 'show: [{fill: r1c1}]', frame: 120 },
    { name: 'struck candidates stand to the end', keys: `${skyscraper}, show: [{strike: all, at: +1}]`, frame: 120 },
    // The step goes on at frame 100, where the struck ones go; their fade begins on 96.
    {
      name: 'before the first struck candidate fades',
      keys: `${skyscraper}, show: [{fill: r1c1}, {strike: all, at: +1}, {clear: all, at: +3}]`,
      frame: 95,
    },
    // Neither stands with the other; the later frame of the two kinds.
    { name: 'a focus and the next: the later', keys: 'show: [{focus: r1}, {focus: c2, at: +2}]', frame: 120 },
    {
      name: 'before everything is cleared',
      keys: 'show: [{fill: r1c1}, {note: words, at: +1}, {clear: all, at: +3}]',
      frame: 95,
    },
    // The many circles go on frame 75; the strikes begin there.
    {
      name: 'what is concluded, though more stood before',
      keys: `${skyscraper}, show: [{circle: 3}, {clear: all, at: +2}, {strike: all, at: +2}, {note: words, at: +3.5}]`,
      frame: 120,
    },
  ];
  test.each(rows)('$name', ({ keys, frame }) => {
    expect(full(keys)).toBe(frame);
  });

  test('of a cascade: when all its digits are written', () => {
    // The second digit is written from frame 75 on, its mark stands until 98.
    expect(full('cascade: r3c5=5 r4c3=5')).toBe(93);
  });

  test('at the end of the film nothing fades', () => {
    expect(fullFrame(tell(towers('  - {id: s, at: 1, until: 5, show: [{fill: r1c1}]}')), 's')).toBe(124);
  });
});
