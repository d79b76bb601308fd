import { describe, expect, it } from 'vitest';
import { type RenderCall, readRenderCall } from '../../src/commands/render-call.ts';
import { piecesOf } from '../../src/commands/render-pieces.ts';
import { fraction, zero } from '../../src/scene/fraction.ts';
import { frameAt } from '../../src/timeline/film.ts';
import type { Schedule, ScheduledStep } from '../../src/timeline/schedule.ts';

describe('a call of render', () => {
  it('as simple as can be', () => {
    expect(readRenderCall(['a.yaml'], { out: 'a.mp4' })).toEqual({
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

  it.each<[string, Partial<ReturnType<typeof readRenderCall>>, RenderCall]>([
    ['one step', { steps: { first: 'towers', last: 'towers' } }, { steps: 'towers' }],
    ['steps from one to another', { steps: { first: 'a-1', last: 'b' } }, { steps: 'a-1..b' }],
    ['steps to the end', { steps: { first: 'towers', last: undefined } }, { steps: 'towers..' }],
    ['a quarter', { scale: 0.25 }, { scale: '1/4' }],
    ['a quarter as a decimal', { scale: 0.25 }, { scale: '0.25' }],
    [
      'handles',
      { handles: fraction(3n, 2n), byStep: true, several: true },
      { out: 'clips', by: 'step', handles: '1.5s' },
    ],
    ['a part', { part: { number: 2, of: 8 } }, { part: '2/8' }],
    ['a format with its dot', { format: 'mov' }, { out: 'clips/', by: 'step', format: '.MOV' }],
  ])('%s', (_, wanted, call) => {
    expect(readRenderCall(['a.yaml'], { out: 'a.mp4', ...call })).toMatchObject(wanted);
  });

  it.each<[readonly string[], RenderCall, RegExp]>([
    [['a.yaml'], {}, /^render needs -o OUT/],
    [
      ['a.yaml'],
      { out: 'a.mp4', by: 'step' },
      /^--by step writes a video for each step, so -o names a folder: -o a\/ --format mp4$/,
    ],
    [
      ['a.yaml', 'b.yaml'],
      { out: 'all.mov' },
      /^several scenes give several videos, so -o names a folder: -o all\/ --format mov$/,
    ],
    [
      ['x/a.yaml', 'y/a.yaml'],
      { out: 'all/' },
      /^x\/a\.yaml and y\/a\.yaml would both be written as a; render them one by one$/,
    ],
    [['a.yaml'], { out: 'a/', by: 'beat' }, /one a step alone, --by step$/],
    [['a.yaml'], { out: 'a.mp4', handles: '1s' }, /^--handles lengthens the videos of --by step/],
    [['a.yaml'], { out: 'a/', by: 'step', handles: 'long' }, /^--handles long: write seconds, such as 1s/],
    [['a.yaml'], { out: 'a/', by: 'step', handles: '-1s' }, /^--handles -1s: write seconds/],
    [['a.yaml'], { out: 'a.mp4', format: 'mov' }, /^--format is for several videos; of a single one the name says it/],
    [['a.yaml'], { out: 'a/', by: 'step', format: 'mpv' }, /^--format mpv: did you mean mp4\?$/],
    [['a.yaml'], { out: 'a.mp4', matte: true, key: '#00b140' }, /^--matte and --key are two ways/],
    [
      ['a.yaml'],
      { out: 'frames/', matte: true },
      /^--matte is for videos; PNG frames carry their transparency themselves$/,
    ],
    [['a.yaml'], { out: 'a/', by: 'step', format: 'png', matte: true }, /^--matte is for videos/],
    [['a.yaml'], { out: 'a.mp4', steps: 'a...b' }, /^--steps a\.\.\.b: write the id of one step/],
    [['a.yaml'], { out: 'a.mp4', steps: '..b' }, /^--steps \.\.b: write the id/],
    ...['0/8', '9/8', '2', 'two', ''].map((part): [readonly string[], RenderCall, RegExp] => [
      ['a.yaml'],
      { out: 'a.mp4', part },
      /^--part .*: write the part's number and how many there are, such as 2\/8$/,
    ]),
    [['a.yaml'], { out: 'a/', by: 'step', part: '1/2' }, /^--part is of one video/],
    [['a.yaml'], { out: 'a.mov', matte: true, part: '1/2' }, /^--part and --matte exclude/],
    ...['0', '2', '1/0', '4/1', '-1/4', 'small', '1/2/3', ''].map((scale): [readonly string[], RenderCall, RegExp] => [
      ['a.yaml'],
      { out: 'a.mp4', scale },
      /write a part of the frame's sides, above 0 and at most 1, such as 1\/4$/,
    ]),
  ])('%s %o is refused', (scenes, call, message) => {
    expect(() => readRenderCall(scenes, call)).toThrow(message);
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
  const pieces = (call: RenderCall) => piecesOf(schedule, readRenderCall(['x.yaml'], { out: 'x', ...call }));

  it('are the whole film, though its steps begin later', () => {
    expect(pieces({})).toEqual({ pieces: [{ step: undefined, from: 0, until: 200 }], passed: [] });
  });
  it('are some steps', () => {
    expect(pieces({ steps: 'a..b' }).pieces).toEqual([{ step: undefined, from: 10, until: 60 }]);
    expect(pieces({ steps: 'c..' }).pieces).toEqual([{ step: undefined, from: 60, until: 190 }]);
  });
  it('are a step each, with handles as far as the film goes', () => {
    expect(pieces({ by: 'step', handles: '0.6s' })).toEqual({
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
    expect(() => pieces({ steps })).toThrow(message);
  });
});
