import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { holdsAsWritten } from '../../src/check/propose.ts';
import { startPosition } from '../../src/check/start-position.ts';
import { checkScene } from '../../src/lesson/check-scene.ts';
import { readScene } from '../../src/lesson/read-scene.ts';
import { reportOf } from '../../src/report/report-of.ts';
import type { ProposedStep } from '../../src/scene/step-text.ts';
import { inventTale } from '../judge/invent.ts';
import { pasteEach } from './pasted.ts';

const folder = new URL('../scenes/checks/', import.meta.url);
const textOf = (name: string) => readFileSync(new URL(name, folder), 'utf8');
const names = readdirSync(folder).filter((name) => /^spoilt-(list-unproved-01|third-02)\.yaml$/.test(name));

describe('a step offered for pasting is sound, its name fits, and it does what is promised', () => {
  it('in spoilt lessons', () => {
    const all = names.flatMap((name) => pasteEach(textOf(name)));
    expect(all.length).toBeGreaterThan(1);
    expect(all.filter(({ wrong }) => wrong.length > 0)).toEqual([]);
  });

  // One scene each in which a step used to be offered that held only after the step's own conclusions, and one for
  // every other kind.
  it.each([4, 30, 41, 42])('in a random scene (%i)', (seed) => {
    const all = pasteEach(inventTale(seed, 8).text);
    expect(all.filter(({ wrong }) => wrong.length > 0)).toEqual([]);
  });
});

describe('the message about a fix', () => {
  const stepOf = (name: string, id: string) => {
    const text = textOf(name);
    const checked = checkScene(readScene(text).scene!);
    const reported = reportOf({ path: name, text }, checked, []).steps.find((step) => step.id === id)!;
    return { step: checked.steps.find((each) => each.step.id === id)!, reported };
  };

  it('gives the name that the step must then have, if it is a different one', () => {
    const { step, reported } = stepOf('spoilt-third-02.yaml', 'third-3');
    expect(step.message).toMatch(
      /it would make this step hold, which must then be called hidden single or forcing chain$/,
    );
    expect(reported.mends[0]?.because).toEqual(expect.arrayContaining(['hidden single']));
  });

  it('gives each offered step its own id', () => {
    for (const name of names) {
      const text = textOf(name);
      const report = reportOf({ path: name, text }, checkScene(readScene(text).scene!), []);
      for (const { mends } of report.steps) {
        const ids = mends.flatMap(({ steps }) => steps).map((each) => /^- id: (.*)$/m.exec(each)?.[1]);
        expect(new Set([...ids, ...report.steps.map(({ id }) => id)]).size).toBe(ids.length + report.steps.length);
      }
    }
  });
});

describe('a step read from its text', () => {
  const puzzle = 'proofreel: 1\npuzzle: {boxes: 2x2, givens: 1... ..1. .1.4 ..2.}\nsteps: [{id: a}]\n';
  const position = startPosition(readScene(puzzle).scene!.puzzle, false);
  const single: ProposedStep = {
    because: 'hidden single',
    from: '2r3',
    chain: undefined,
    deadly: undefined,
    so: 'r3c1=2',
  };
  const rows: readonly (readonly [string, Partial<ProposedStep>, boolean])[] = [
    ['holds', {}, true],
    ['must prove its conclusion', { so: 'r3c1=3' }, false],
    ['must prove it by what it names', { from: '2r1' }, false],
    ['must bear its name', { because: 'naked single' }, false],
  ];
  it.each(rows)('%s', (_, change, holds) => {
    expect(holdsAsWritten(position, { ...single, ...change })).toBe(holds);
  });
});
