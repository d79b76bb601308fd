import { describe, expect, it } from 'vitest';
import { parseCommandLine } from '../../src/commands/command-line.ts';
import { planOf, type RenderCall, type RenderPlan } from '../../src/commands/render-call.ts';
import { piecesOf } from '../../src/commands/render-pieces.ts';
import { fraction, zero } from '../../src/scene/fraction.ts';
import { frameAt } from '../../src/timeline/film.ts';
import type { Schedule, ScheduledStep } from '../../src/timeline/schedule.ts';
import { render } from '../../src/verbs/render.ts';
import { readCall } from '../../src/verbs/verb.ts';
import { keptTerminal, run } from './run.ts';

/** The typed call of `render` with these words after it. */
function calledWith(...words: readonly string[]): RenderCall {
  const terminal = keptTerminal();
  const asked = parseCommandLine(['render', ...words], terminal);
  if (asked.kind === 'answered') throw new Error(terminal.said.err);
  return readCall('render', render, asked.written);
}

describe('a call of render', () => {
  it('as simple as can be', () => {
    expect(planOf(calledWith('a.yaml', '-o', 'a.mp4'))).toEqual({
      out: 'a.mp4',
      several: false,
      format: undefined,
      steps: undefined,
      byStep: false,
      handles: zero,
      scale: 1,
      part: undefined,
    });
  });

  it.each<[string, Partial<RenderPlan>, readonly string[]]>([
    [
      'one step',
      { steps: { first: 'towers', last: 'towers' } },
      ['render', 'a.yaml', '-o', 'a.mp4', '--steps', 'towers'],
    ],
    [
      'steps from one to another',
      { steps: { first: 'a-1', last: 'b' } },
      ['render', 'a.yaml', '-o', 'a.mp4', '--steps', 'a-1..b'],
    ],
    [
      'steps to the end',
      { steps: { first: 'towers', last: undefined } },
      ['render', 'a.yaml', '-o', 'a.mp4', '--steps', 'towers..'],
    ],
    ['a quarter', { scale: 0.25 }, ['render', 'a.yaml', '-o', 'a.mp4', '--scale', '1/4']],
    ['a quarter as a decimal', { scale: 0.25 }, ['render', 'a.yaml', '-o', 'a.mp4', '--scale', '0.25']],
    [
      'handles',
      { handles: fraction(3n, 2n), byStep: true, several: true },
      ['render', 'a.yaml', '-o', 'clips', '--by', 'step', '--handles', '1.5s'],
    ],
    ['a part', { part: { number: 2, of: 8 } }, ['render', 'a.yaml', '-o', 'a.mp4', '--part', '2/8']],
    [
      'a format with its dot',
      { format: 'mov' },
      ['render', 'a.yaml', '-o', 'clips/', '--by', 'step', '--format', '.MOV'],
    ],
  ])('%s', (_, wanted, call) => {
    expect(planOf(calledWith(...call.slice(1)))).toMatchObject(wanted);
  });

  it.each<[readonly string[], RegExp]>([
    [['render', 'a.yaml'], /^proofreel: render needs -o OUT/],
    [
      ['render', 'a.yaml', '-o', 'a.mp4', '--by', 'step'],
      /^proofreel: --by step writes a video for each step, so -o names a folder: -o a\/ --format mp4\n$/,
    ],
    [
      ['render', 'a.yaml', 'b.yaml', '-o', 'all.mov'],
      /^proofreel: several scenes give several videos, so -o names a folder: -o all\/ --format mov\n$/,
    ],
    [
      ['render', 'x/a.yaml', 'y/a.yaml', '-o', 'all/'],
      /^proofreel: x\/a\.yaml and y\/a\.yaml would both be written as a; render them one by one\n$/,
    ],
    [['render', 'a.yaml', '-o', 'a/', '--by', 'beat'], /one video per step\n$/],
    [['render', 'a.yaml', '-o', 'a.mp4', '--handles', '1s'], /^proofreel: --handles lengthens the videos of --by step/],
    [
      ['render', 'a.yaml', '-o', 'a/', '--by', 'step', '--handles', 'long'],
      /^proofreel: --handles long: write seconds, such as 1s/,
    ],
    [['render', 'a.yaml', '-o', 'a/', '--by', 'step', '--handles=-1s'], /^proofreel: --handles -1s: write seconds/],
    [
      ['render', 'a.yaml', '-o', 'a.mp4', '--format', 'mov'],
      /^proofreel: --format is for several videos; for a single one the name says it/,
    ],
    [
      ['render', 'a.yaml', '-o', 'a/', '--by', 'step', '--format', 'mpv'],
      /^proofreel: --format mpv: did you mean mp4\?\n$/,
    ],
    [['render', 'a.yaml', '-o', 'a.mp4', '--matte', '--key', '#00b140'], /^proofreel: --matte and --key are two ways/],
    [
      ['render', 'a.yaml', '-o', 'frames/', '--matte'],
      /^proofreel: --matte is for videos; PNG frames carry their own transparency\n$/,
    ],
    [
      ['render', 'a.yaml', '-o', 'a/', '--by', 'step', '--format', 'png', '--matte'],
      /^proofreel: --matte is for videos/,
    ],
    [['render', 'a.yaml', '-o', 'a.mp4', '--steps', 'a...b'], /^proofreel: --steps a\.\.\.b: write the id of one step/],
    [['render', 'a.yaml', '-o', 'a.mp4', '--steps', '..b'], /^proofreel: --steps \.\.b: write the id/],
    ...['0/8', '9/8', '2', 'two', ''].map((part): [readonly string[], RegExp] => [
      ['render', 'a.yaml', '-o', 'a.mp4', '--part', part],
      /^proofreel: --part .*: write the part's number and how many there are, such as 2\/8\n$/,
    ]),
    [['render', 'a.yaml', '-o', 'a/', '--by', 'step', '--part', '1/2'], /^proofreel: --part is for one video/],
    [['render', 'a.yaml', '-o', 'a.mov', '--matte', '--part', '1/2'], /^proofreel: --part and --matte exclude/],
    ...['0', '2', '1/0', '4/1', '-1/4', 'small', '1/2/3', ''].map((scale): [readonly string[], RegExp] => [
      ['render', 'a.yaml', '-o', 'a.mp4', `--scale=${scale}`],
      /^proofreel: --scale .*: write a fraction of the frame's sides, above 0 and at most 1, such as 1\/4\n$/,
    ]),
  ])('%j is refused', async (call, message) => {
    expect(await run(...call)).toEqual({ status: 2, out: '', err: expect.stringMatching(message) });
  });
});

describe('pieces', () => {
  const step = (id: string, from: number, until: number): ScheduledStep => ({
    id,
    from: frameAt(from),
    until: frameAt(until),
    beats: [],
    only: [],
    pencil: [],
    cascade: [],
    claimUntil: frameAt(until),
  });
  const schedule: Schedule = {
    rate: fraction(25n),
    frameCount: 200,
    steps: [step('a', 10, 60), step('b', 60, 60), step('c', 60, 190)],
    said: [],
    board: [],
  };
  const pieces = (...words: readonly string[]) => piecesOf(schedule, planOf(calledWith('x.yaml', '-o', 'x', ...words)));

  it('are the whole film, though its steps begin later', () => {
    expect(pieces()).toEqual({ pieces: [{ step: undefined, from: 0, until: 200 }], passed: [] });
  });
  it('are some steps', () => {
    expect(pieces('--steps', 'a..b').pieces).toEqual([{ step: undefined, from: 10, until: 60 }]);
    expect(pieces('--steps', 'c..').pieces).toEqual([{ step: undefined, from: 60, until: 190 }]);
  });
  it('are a step each, with handles as far as the film goes', () => {
    expect(pieces('--by', 'step', '--handles', '0.6s')).toEqual({
      pieces: [
        { step: 'a', from: 0, until: 75 },
        { step: 'c', from: 45, until: 200 },
      ],
      passed: ['b'],
    });
  });
  it.each([
    ['d', /^the scene has no step d; its steps are a, b, c$/],
    ['c..a', /^--steps c\.\.a: a comes before c; write a\.\.c$/],
    ['b', /^the step b is on no frame; give it time$/],
  ])('%s: are refused', (steps, message) => {
    expect(() => pieces('--steps', steps)).toThrow(message);
  });
});
