/**
 * The time graph: which nodes there are for a scene, what each depends on, and that each is resolved once, after those.
 */
import { describe, expect, it } from 'vitest';
import { Bug } from '../../src/grid/bug.ts';
import { atEase } from '../../src/lesson/schedule.ts';
import { clockOf } from '../../src/timeline/clock.ts';
import { everyNode, nodesOf } from '../../src/timeline/time-graph.ts';
import { inOrder, resolveAll, TimeNode } from '../../src/timeline/time-node.ts';
import { timed } from './timed-scene.ts';

const steps = `  - id: a
    until: +5
    show:
      - {outline: b1, at: 1}
      - {outline: b2}
      - {outline: b3, at: 2}
  - id: b
    from: r1c2
    so: r1c2<>1
    show:
      - {strike: all, gone: +2}
    cascade:
      - {cascade: r4c4=1, at: +3}
`;

function nodes() {
  const { scene } = timed({ video: '  rate: 25\n  board:\n    - {left: 0, top: 0, side: 400, at: 0}\n', steps });
  return inOrder(everyNode(nodesOf(scene, clockOf(scene, undefined), { strokesOf: atEase })));
}

describe('the nodes of a scene', () => {
  it('say what they depend on', () => {
    const lines = nodes().map(
      ({ name, dependsOn }) =>
        `${name}: ${dependsOn()
          .map((each) => each.name)
          .join(', ')}`,
    );
    expect(lines.sort()).toEqual(
      [
        'given length: ',
        'length: given length',
        'begin of "a": length',
        'beat 1 of "a": begin of "a", length',
        'beat 2 of "a": ',
        'beat 3 of "a": begin of "a", length, beat 1 of "a", beat 2 of "a"',
        'until of "a": begin of "a", length, beat 1 of "a", beat 2 of "a", beat 3 of "a"',
        'outline of "a": begin of "a", beat 1 of "a", beat 2 of "a", beat 3 of "a", until of "a"',
        'own end of "a": outline of "a"',
        'end of "a": until of "a", begin of "b"',
        'frames of "a": outline of "a", end of "a", frame count',
        'begin of "b": length, outline of "a", own end of "a"',
        'beat 1 of "b": ',
        'item 1 of "b": begin of "b", length',
        'until of "b": ',
        'outline of "b": begin of "b", beat 1 of "b", item 1 of "b", until of "b"',
        'own end of "b": outline of "b"',
        'video end: length, own end of "b"',
        'frame count: given length, video end',
        'end of "b": until of "b", video end',
        'frames of "b": outline of "b", end of "b", frame count',
        'gone of beat 1 of "b": begin of "b", length, frames of "b", frame count',
        'board 1: length',
      ].sort(),
    );
  });

  it('come after all that they depend on', () => {
    const order = nodes();
    for (const [index, node] of order.entries()) {
      for (const other of node.dependsOn()) expect(order.indexOf(other)).toBeLessThan(index);
    }
    expect(new Set(order).size).toBe(order.length);
  });
});

describe('resolving', () => {
  it('goes through everything once, whatever the order given', () => {
    const seen: string[] = [];
    const named = (name: string, dependsOn: () => TimeNode<number>[], value: number) =>
      new TimeNode(name, dependsOn, (valueOf): number => {
        seen.push(name);
        return dependsOn().reduce((sum, other) => sum + valueOf(other), value);
      });
    const last: TimeNode<number> = named('last', () => [first, middle], 100);
    const middle: TimeNode<number> = named('middle', () => [first], 10);
    const first: TimeNode<number> = named('first', () => [], 1);
    resolveAll([last, middle, first]);
    expect(seen).toEqual(['first', 'middle', 'last']);
    expect(last.value).toBe(112);
  });

  it('refuses a circle, and names it', () => {
    const one: TimeNode<unknown> = new TimeNode(
      'one',
      () => [two],
      () => 0,
    );
    const two: TimeNode<unknown> = new TimeNode(
      'two',
      () => [one],
      () => 0,
    );
    expect(() => resolveAll([one])).toThrow('one depends on two depends on one');
    expect(() => resolveAll([one])).toThrow(Bug);
  });

  it('refuses to tell a value that was not asked for by name, or is not there yet', () => {
    const other = new TimeNode(
      'other',
      () => [],
      () => 1,
    );
    const node = new TimeNode(
      'this',
      () => [],
      (valueOf) => valueOf(other),
    );
    expect(() => resolveAll([other, node])).toThrow('this does not say that it depends on other');
    expect(
      () =>
        new TimeNode(
          'new',
          () => [],
          () => 1,
        ).value,
    ).toThrow('new is not resolved yet');
  });
});
