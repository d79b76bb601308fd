import { describe, expect, test } from 'vitest';
import { marksOf, skyscraper, tell, towers } from './stage.ts';

const told = (step: string, video?: string) => tell(towers(`  - {id: s, at: 0, until: 10, ${step}}`, video));
const inRows = 'from: 3c35, so: r5c1<>3 r6c46<>3';

describe('a proof that is played out', () => {
  test('one ghost after another over the time of the beat, then the clash, then all of them go', () => {
    const marks = marksOf(told(`${skyscraper}, show: [{suppose: 3r6c4}, {strike: all, at: 8}]`), 's');
    expect(marks.slice(0, 6)).toEqual([
      '0-200 ghost 3r6c4 true',
      '25-200 ghost 3r6c3 not true',
      '50-200 ghost 3r1c3 true',
      '75-200 ghost 3r1c5 not true',
      '100-200 ghost 3r5c5 true',
      '125-200 clash 3r6c4 ~ 3r5c5',
    ]);
    expect(marks.slice(6).every((mark) => mark.includes(' strike '))).toBe(true);
  });

  test('each member of a set in turn, until the conclusions take effect; the ghosts of one go before the next begins', () => {
    const marks = marksOf(told(`${inRows}, show: [{suppose: each 3c3}]`), 's').map((mark) => mark.split(' '));
    const second = marks.findIndex(([, , what]) => what === '3r6c3');
    expect(marks[0]!.slice(1)).toEqual(['ghost', '3r1c3', 'true']);
    const [from] = marks[second]![0]!.split('-');
    for (const [frames] of marks.slice(0, second)) expect(frames!.split('-')[1]).toBe(from);
    for (const [frames] of marks.slice(second)) expect(frames!.split('-')[1]).toBe('188');
  });

  test('a grouped node is one ghost', () => {
    const grouped = 'chain: (3)r6c46=r5c45, so: r5c1<>3';
    const marks = marksOf(told(`${grouped}, show: [{suppose: no 3r6c4, at: 0}]`), 's');
    expect(marks.filter((mark) => mark.includes('3r5c45 true'))).toHaveLength(0);
    const far = marksOf(told('chain: (3)r6c3=r1c3-r1c56=r1c14, show: [{suppose: no 3r6c3}]'), 's');
    expect(far.some((mark) => mark.endsWith('ghost 3r1c56 not true'))).toBe(true);
  });

  test('is kept by nothing, and drawn over a recording too', () => {
    const show = 'show: [{suppose: 3r6c4, keep: true}, {note: So., at: 6}]';
    const ends = marksOf(told(`${skyscraper}, ${show}`, 'board: {left: 0, top: 0, side: 600}'), 's').filter((mark) =>
      / (ghost|clash) /.test(mark),
    );
    expect(ends).toHaveLength(6);
    for (const mark of ends) expect(mark).toMatch(/^\d+-150 /);
  });

  test('a ghost on what has gone is not drawn', () => {
    const marks = marksOf(told(`${skyscraper}, show: [{strike: all}, {suppose: 3r6c4, at: 5}]`), 's');
    expect(marks.some((mark) => / (ghost|clash) 3r6c4/.test(mark))).toBe(false);
  });
});

describe('the sides of a cluster', () => {
  const circles = (step: string) => marksOf(told(step), 's').filter((mark) => mark.includes(' circle '));
  const groups: readonly (readonly [string, string, readonly string[]])[] = [
    ['in the first two groups', '{sides: 3r1c3}', ['3r1c3 @blue0', '3r6c3 @orange1']],
    ['in the groups named', '{sides: 3r1c3, groups: [low, high]}', ['3r1c3 @orange1', '3r6c3 @blue0']],
  ];
  test.each(groups)('%s', (_, beat, expected) => {
    expect(circles(`${skyscraper}, show: [${beat}]`).map((mark) => mark.replace(/^.* circle /, ''))).toEqual(expected);
  });

  test('in two plain styles where the scene has no groups', () => {
    const scene = towers(`  - {id: s, ${skyscraper}, show: [{sides: 3r1c3}]}`).replace(/^groups:.*\n/m, '');
    expect(marksOf(tell(scene), 's').map((mark) => mark.replace(/^.* circle /, ''))).toEqual([
      '3r1c3 @blue0',
      '3r6c3 @orange1',
    ]);
  });
});
