import { describe, expect, it } from 'vitest';
import { fraction } from '../../src/scene/fraction.ts';
import { type Chapter, chapterList, chaptersOf, printChapterList } from '../../src/timeline/chapters.ts';
import { frameAt } from '../../src/timeline/film.ts';
import { timed } from './timed-scene.ts';

function chapters(steps: string, names?: 'titles'): string[] {
  const { scene, schedule } = timed({ video: '  rate: 25\n  length: 60\n', steps });
  return chaptersOf(scene, schedule, names).map(({ name, from, until }) => `${name} ${from}-${until}`);
}

describe('chapters of a scene', () => {
  it('begin with the step that names them and go on to the next', () => {
    const steps = '  - {id: a, at: 0, chapter: One}\n  - {id: b, at: 10}\n  - {id: c, at: 20, chapter: Two}\n';
    expect(chapters(steps)).toEqual(['One 0-500', 'Two 500-1500']);
  });
  it('what comes before the first of them is a chapter too', () => {
    expect(chapters('  - {id: a, at: 0}\n  - {id: c, at: 20, chapter: Two}\n')).toEqual([
      'Opening 0-500',
      'Two 500-1500',
    ]);
  });
  it('unless it is shorter than ten seconds', () => {
    expect(chapters('  - {id: a, at: 1, chapter: One}\n  - {id: c, at: 20, chapter: Two}\n')).toEqual([
      'One 0-500',
      'Two 500-1500',
    ]);
  });
  it('two on one frame are one, by the later name', () => {
    const steps =
      '  - {id: a, at: 0, chapter: One}\n  - {id: b, at: 20, chapter: Two}\n  - {id: c, at: 20, chapter: Three}\n';
    expect(chapters(steps)).toEqual(['One 0-500', 'Three 500-1500']);
  });
  it('a name of several lines is one line', () => {
    expect(chapters('  - {id: a, at: 0, chapter: "One\\n and more"}\n')).toEqual(['One and more 0-1500']);
  });
  it('none is named', () => {
    expect(chapters('  - {id: a, at: 0, title: T}\n')).toEqual([]);
    expect(chapters('  - {id: a, at: 0, title: T}\n', 'titles')).toEqual(['T 0-1500']);
  });
});

describe('the list that video sites read (common practice: from 0:00, three at least, ten seconds apart)', () => {
  const rate = fraction(30_000, 1001);
  const made = (...bounds: readonly number[]): Chapter[] =>
    bounds.slice(1).map((until, index) => ({
      name: 'ABCDEFG'[index]!,
      from: frameAt(bounds[index]!),
      until: frameAt(until),
    }));
  // 299 frames at 30000/1001 last 9.977 s, 300 last 10.01 s.
  const rows: readonly (readonly [string, readonly number[], readonly string[], readonly string[], boolean])[] = [
    ['long enough', [0, 300, 600, 900], ['A 0', 'B 300', 'C 600'], [], true],
    ['one too short goes into the one before', [0, 300, 599, 900, 1200], ['A 0', 'C 599', 'D 900'], ['B>A'], true],
    ['the first goes into the one after it', [0, 299, 600, 900, 1200], ['B 0', 'C 600', 'D 900'], ['A>B'], true],
    ['a short last one', [0, 300, 600, 610], ['A 0', 'B 300'], ['C>B'], false],
    ['nothing but a short one', [0, 20], ['A 0'], [], false],
    ['several short ones at the start make one', [0, 150, 300, 700], ['B 0', 'C 300'], ['A>B'], false],
  ];
  it.each(rows)('%s', (_, bounds, kept, merged, taken) => {
    const list = chapterList(made(...bounds), rate);
    expect(list.chapters.map(({ name, from }) => `${name} ${from}`)).toEqual(kept);
    expect(list.merged.map(({ name, into }) => `${name}>${into}`)).toEqual(merged);
    expect(list.taken).toBe(taken);
  });

  it('is printed in whole seconds, never late, with hours where there are some', () => {
    expect(printChapterList(made(0, 1799, 3600), rate)).toBe('0:00 A\n1:00 B\n');
    expect(printChapterList(made(0, 1798, 3600), rate)).toBe('0:00 A\n0:59 B\n');
    expect(printChapterList(made(0, 1800, 107_893, 200_000), rate)).toBe('0:00:00 A\n0:01:00 B\n1:00:00 C\n');
  });
});
