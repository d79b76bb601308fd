import { describe, expect, test } from 'vitest';
import { marksOf, skyscraper, tell, towers, writtenIn } from './stage.ts';

/** The marks of a step of ten seconds (frames 0 to 250) that tells itself. */
function itself(keys: string, video = ''): string[] {
  return marksOf(tell(towers(`  - {id: s, at: 0, until: 10, ${keys}}`, video)), 's');
}

/** The same on a board of four rows. */
function four(keys: string, givens = '.... ..1. .1.. ....'): string[] {
  const scene = ['proofreel: 1', `puzzle: {boxes: 2x2, givens: ${givens}}`, 'video: {rate: 25, draw: board}', 'steps:'];
  return marksOf(tell([...scene, `  - {id: s, at: 0, until: 10, ${keys}}`].join('\n')), 's');
}

describe('a claim draws itself', () => {
  test('the ground, the links in order, this end or that end, the lines to what goes, the strikes, what they open', () => {
    expect(itself(skyscraper)).toEqual([
      '0-250 fill r16c3|r15c5',
      '25-250 link 3r6c3=3r1c3',
      '67-250 link 3r1c3-3r1c5',
      '108-250 link 3r1c5=3r5c5',
      '150-250 circle 3r6c3',
      '151-250 circle 3r5c5',
      '163-250 reach 3r6c3 to 3r5c1',
      '164-250 reach 3r5c5 to 3r5c1',
      '171-250 reach 3r6c3 to 3r6c4',
      '172-250 reach 3r5c5 to 3r6c4',
      '180-250 reach 3r6c3 to 3r6c6',
      '181-250 reach 3r5c5 to 3r6c6',
      '188-250 strike 3r5c1',
      '189-250 strike 3r6c4',
      '191-250 strike 3r6c6',
      '219-250 opens 6r6c4',
      '219-250 opens 3r6c3',
    ]);
  });

  test('the sets one after another with their houses, where they are named', () => {
    expect(itself('from: 3c35, so: r5c1<>3')).toEqual([
      '0-250 fill r16c3|r15c5',
      '25-250 outline r123456c3 solid',
      '25-250 circle 3r1c3',
      '26-250 circle 3r6c3',
      '88-250 outline r123456c5 solid',
      '88-250 circle 3r1c5',
      '89-250 circle 3r5c5',
      '163-250 reach 3r6c3 to 3r5c1',
      '164-250 reach 3r5c5 to 3r5c1',
      '188-250 strike 3r5c1',
      '219-250 opens 3r6c3',
    ]);
  });

  test('as little as there is, in a second too', () => {
    const told = tell(towers(`  - {id: s, at: 0, until: 1, ${skyscraper}}\n  - {id: t, at: 1, until: 2}`));
    const kinds = marksOf(told, 's').map((mark) => mark.split(' ')[1]!);
    expect([...new Set(kinds)]).toEqual(['fill', 'link', 'circle', 'reach', 'strike', 'opens']);
  });

  test('a hidden single: its house, the digits that shut out the rest, its one place, the digit', () => {
    expect(four('from: 1b1, so: r1c1=1')).toEqual([
      '0-250 outline r12c12 solid',
      '0-250 fill r1c1',
      '25-250 sight r2c3 r2: r2c2 r2c1',
      '75-250 sight r3c2 c2: r2c2 r1c2',
      '125-188 circle 1r1c1',
      '188-250 place r1c1=1',
    ]);
  });

  test('the fewest digits that do', () => {
    // The 1 of r4c4 shuts out r1c4 too, which that of r2c3 sees already.
    const sights = four('from: 1r1, so: r1c1=1', '.... ..1. .1.. ...1').filter((mark) => mark.includes(' sight '));
    expect(sights).toEqual([
      '25-250 sight r2c3 c3: r1c3',
      '25-250 sight r2c3 b2: r1c4',
      '75-250 sight r3c2 c2: r2c2 r1c2',
    ]);
  });

  test('the last cell of a house: that house', () => {
    const marks = four('so: r1c1=1', '.234 .... ...2 ....');
    expect(marks.filter((mark) => mark.includes(' outline '))).toEqual(['0-250 outline r1c1234 solid']);
    expect(marks.some((mark) => mark.includes(' sight '))).toBe(false);
  });

  test('a naked single: the houses with the digits that it sees, one of each', () => {
    const sound = tell(towers('  - {id: s, at: 0, until: 10, so: r3c5=5}'));
    expect(marksOf(sound, 's')).toEqual([
      '0-250 outline r3c123456 solid',
      '0-250 outline r123456c5 solid',
      '0-250 outline r34c456 solid',
      '0-250 fill r3c5',
      '25-250 fill r26c5|r3c2|r4c45',
      '100-188 circle 5r3c5',
      '188-250 place r3c5=5',
    ]);
    expect(writtenIn(sound)).toEqual(['r3c5=5 from 188']);
  });

  test('in the group that bears its name', () => {
    const told = tell(towers(`  - {id: high, at: 0, until: 10, ${skyscraper}}`));
    expect(marksOf(told, 'high').every((mark) => mark.endsWith(' @blue0'))).toBe(true);
  });

  test('an either/or: its candidates circled at the end', () => {
    expect(itself('chain: (3)r6c3=r1c3-r1c5=r5c5, so: either 3r6c3 3r5c5').slice(-2)).toEqual([
      '150-250 circle 3r6c3',
      '151-250 circle 3r5c5',
    ]);
  });

  test('a chain without a conclusion: its links', () => {
    expect(itself('chain: (3)r6c3=r1c3').map((mark) => mark.split(' ')[1])).toEqual([
      'fill',
      'link',
      'circle',
      'circle',
    ]);
  });

  test('a cascade: each digit at its frame, with a mark about it for a moment', () => {
    expect(itself('cascade: r3c5=5 r4c3=5')).toEqual(['0-23 place r3c5=5', '125-148 place r4c3=5']);
  });

  test('a removal in a cascade is struck before the cascade goes on', () => {
    expect(
      itself('cascade: [{cascade: r3c5=5, at: 0}, {cascade: r1c6<>3, at: 2}, {cascade: r4c3=5, at: 2.4}]'),
    ).toEqual(['0-23 place r3c5=5', '50-60 strike 3r1c6', '60-83 place r4c3=5']);
  });

  test('an item with an argument of its own: the argument before what follows from it, until the cascade goes on', () => {
    const item = "{cascade: r5c1<>3, chain: '(3)r6c3=r1c3-r1c5=r5c5', at: 4}";
    expect(itself(`cascade: [{cascade: r3c5=5, at: 0}, ${item}, {cascade: r4c3=5, at: 8}]`)).toEqual([
      '0-23 place r3c5=5',
      '50-123 fill r16c3|r15c5',
      '50-123 link 3r6c3=3r1c3',
      '50-123 link 3r1c3-3r1c5',
      '50-123 link 3r1c5=3r5c5',
      '100-123 strike 3r5c1',
      '200-223 place r4c3=5',
    ]);
  });

  test('and its sets circled, where it has no chain', () => {
    const marks = itself('cascade: [{cascade: r5c1<>3, from: 3c35, at: 4}]');
    expect(marks.map((mark) => mark.split(' ').slice(0, 2).join(' '))).toEqual([
      '50-123 fill',
      '50-123 circle',
      '51-123 circle',
      '53-123 circle',
      '54-123 circle',
      '100-123 strike',
    ]);
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

describe('what is redundant is not drawn', () => {
  test('neither struck, nor placed, nor written', () => {
    const steps = [
      '  - {id: r, at: 0, until: 5, so: r3c5=5}',
      '  - {id: s, at: 5, until: 9, from: r3c5, so: r3c5=5 r3c4<>5}',
    ];
    const told = tell(towers(steps.join('\n')));
    expect(told.checked.steps[1]?.verdict).toBe('redundant');
    expect(marksOf(told, 's').filter((mark) => /strike|place/.test(mark))).toEqual([]);
    expect(writtenIn(told)).toHaveLength(1);
  });
});
