import { describe, expect, test } from 'vitest';
import { marksOf, skyscraper, tell, towers, writtenIn } from './tell.ts';

/** The marks of a step of ten seconds (frames 0 to 250) that tells itself. */
function itself(keys: string, video = ''): string[] {
  return marksOf(tell(towers(`  - {id: s, at: 0, until: 10, ${keys}}`, video)), 's');
}

describe('a claim draws itself', () => {
  test('the ground, the links in order, the strikes', () => {
    expect(itself(skyscraper)).toEqual([
      '0-250 fill r16c3|r15c5',
      '25-250 link 3r6c3=3r1c3',
      '75-250 link 3r1c3-3r1c5',
      '125-250 link 3r1c5=3r5c5',
      '188-211 strike 3r5c1',
      '189-212 strike 3r6c4',
      '191-214 strike 3r6c6',
    ]);
  });

  test('the sets one after another, where they are named', () => {
    expect(itself('from: 3c35, so: r5c1<>3')).toEqual([
      '0-250 fill r16c3|r15c5',
      '25-250 circle 3r1c3',
      '26-250 circle 3r6c3',
      '100-250 circle 3r1c5',
      '101-250 circle 3r5c5',
      '188-211 strike 3r5c1',
    ]);
  });

  test('a hidden single: its house, its one place, the digit', () => {
    const told = tell(
      towers(
        '  - {id: s, at: 0, until: 10, because: hidden single, from: 5b4, so: r3c5=5}\n  - {id: t, at: 10, until: 11}',
      ),
    );
    expect(told.checked.sound).toBe(false);
    const sound = tell(towers('  - {id: s, at: 0, until: 10, so: r3c5=5}'));
    expect(marksOf(sound, 's')).toEqual(['0-250 fill r3c5', '25-188 circle 5r3c5', '188-250 place r3c5=5']);
    expect(writtenIn(sound)).toEqual(['r3c5=5 from 188']);
  });

  test('in the group that bears its name', () => {
    const told = tell(towers(`  - {id: high, at: 0, until: 10, ${skyscraper}}`));
    expect(marksOf(told, 'high').every((mark) => mark.endsWith(' @blue0'))).toBe(true);
  });

  test('an either/or: its candidates circled at the end', () => {
    expect(itself('chain: (3)r6c3=r1c3-r1c5=r5c5, so: either 3r6c3 3r5c5').slice(-2)).toEqual([
      '188-250 circle 3r5c5',
      '189-250 circle 3r6c3',
    ]);
  });

  test('a chain without a conclusion: its links', () => {
    expect(itself('chain: (3)r6c3=r1c3').map((mark) => mark.split(' ')[1])).toEqual(['fill', 'link']);
  });

  test('a cascade: each digit at its frame, with a mark about it for a moment', () => {
    expect(itself('cascade: r3c5=5 r4c3=5')).toEqual(['0-23 place r3c5=5', '125-148 place r4c3=5']);
  });

  test('a removal in a cascade is struck before the cascade goes on', () => {
    expect(
      itself('cascade: [{cascade: r3c5=5, at: 0}, {cascade: r1c6<>3, at: 2}, {cascade: r4c3=5, at: 2.4}]'),
    ).toEqual(['0-23 place r3c5=5', '50-60 strike 3r1c6', '60-83 place r4c3=5']);
  });

  test('a step that claims nothing draws nothing', () => {
    expect(itself('say: Look at this.')).toEqual([]);
  });

  test('the claim is told before the items', () => {
    const told = tell(towers(`  - {id: s, at: 0, until: 10, ${skyscraper}, cascade: r6c3=3}`));
    const strikes = marksOf(told, 's').filter((mark) => mark.includes(' strike '));
    const [place] = marksOf(told, 's').filter((mark) => mark.includes(' place '));
    expect(strikes).toHaveLength(3);
    for (const strike of strikes) expect(Number.parseInt(strike, 10)).toBeLessThan(Number.parseInt(place!, 10));
  });
});

describe('what is spent is not drawn', () => {
  test('neither struck, nor placed, nor written', () => {
    const steps = [
      '  - {id: r, at: 0, until: 5, so: r3c5=5}',
      '  - {id: s, at: 5, until: 9, from: r3c5, so: r3c5=5 r3c4<>5}',
    ];
    const told = tell(towers(steps.join('\n')));
    expect(told.checked.steps[1]?.verdict).toBe('spent');
    expect(marksOf(told, 's').filter((mark) => /strike|place/.test(mark))).toEqual([]);
    expect(writtenIn(told)).toHaveLength(1);
  });
});
