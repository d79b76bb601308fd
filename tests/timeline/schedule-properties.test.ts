/**
 * What holds of every schedule, whatever times are given.
 */
import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Schedule } from '../../src/timeline/schedule.ts';
import { timed } from './timed-scene.ts';

const rates = ['24', '25', '30000/1001', '60'];

/**
 * A step as YAML: tenths of seconds after the step before, and of its beats after its own start; undefined where no
 * time is given.
 */
interface Sketch {
  readonly at: number | undefined;
  readonly lasts: number | undefined;
  readonly beats: readonly { readonly at: number | undefined; readonly hold: number | undefined }[];
  readonly cascade: number;
  readonly say: number;
}

const tenths = (most: number) => fc.option(fc.nat(most), { nil: undefined });
const sketch: fc.Arbitrary<Sketch> = fc.record({
  at: tenths(90),
  lasts: tenths(120),
  beats: fc.array(fc.record({ at: tenths(100), hold: tenths(40) }), { maxLength: 4 }),
  cascade: fc.nat(2),
  say: fc.nat(20),
});

function yamlOf(sketches: readonly Sketch[]): string {
  return sketches
    .map(({ at, lasts, beats, cascade, say }, index) => {
      const lines = [`  - id: s${index}`];
      if (at !== undefined) lines.push(`    at: +${at / 10}`);
      if (lasts !== undefined) lines.push(`    until: +${lasts / 10}`);
      if (say > 0) lines.push(`    say: ${'word '.repeat(say).trim()}`);
      if (cascade > 0) lines.push(`    cascade: ${['r1c2=2', 'r4c4=1'].slice(0, cascade).join(' ')}`);
      if (beats.length > 0) lines.push('    show:');
      for (const beat of beats) {
        const time = beat.at === undefined ? '' : `, at: +${beat.at / 10}`;
        lines.push(
          beat.hold === undefined
            ? `      - {outline: b1${time}}`
            : `      - {ask: Where?, hold: ${beat.hold / 10}${time}}`,
        );
      }
      return lines.join('\n');
    })
    .join('\n')
    .concat('\n');
}

/** A first step cannot count from another. */
const scene = fc
  .tuple(fc.constantFrom(...rates), fc.array(sketch, { minLength: 1, maxLength: 5 }))
  .map(([rate, sketches]) => ({
    video: `  rate: ${rate}\n`,
    steps: yamlOf(sketches.map((each, index) => (index === 0 ? { ...each, at: undefined } : each))),
  }));

function expectInOrder(frames: readonly number[]): void {
  for (const [index, frame] of frames.slice(1).entries()) expect(frame).toBeGreaterThanOrEqual(frames[index]!);
}

function expectWithin({ steps, frameCount }: Schedule): void {
  for (const step of steps) {
    const frames = [
      ...step.beats.map((beat) => beat.from),
      ...step.only,
      ...step.pencil,
      ...step.cascade.flat(),
      step.claimUntil,
    ];
    expectInOrder([0, step.from, step.until, frameCount]);
    for (const frame of frames) expectInOrder([step.from, frame, step.until]);
  }
}

describe('every schedule', () => {
  it('has beats and items in order, and within their steps, even where times are wrong', () => {
    fc.assert(
      fc.property(scene, (fixture) => {
        const { schedule } = timed(fixture);
        expectWithin(schedule);
        for (const step of schedule.steps) {
          expectInOrder(step.beats.map((beat) => beat.from));
          expectInOrder([...step.only, ...step.pencil, ...step.cascade.flat()]);
        }
      }),
      { numRuns: 80 },
    );
  });

  it('without errors has steps in order, none over another, the last within the video', () => {
    fc.assert(
      fc.property(scene, (fixture) => {
        const { schedule, diagnostics } = timed(fixture);
        fc.pre(!diagnostics.some((fault) => fault.includes(' error ')));
        expectInOrder([...schedule.steps.flatMap((step) => [step.from, step.until]), schedule.frameCount]);
        expect(schedule.steps.at(-1)!.until).toBe(schedule.frameCount);
      }),
      { numRuns: 60 },
    );
  });

  it('is the same twice', () => {
    fc.assert(
      fc.property(scene, (fixture) => {
        expect(timed(fixture)).toEqual(timed(fixture));
      }),
      { numRuns: 8 },
    );
  });

  it('has as many frames as whole seconds have at each rate', () => {
    const perThousandSeconds: Readonly<Record<string, number>> = {
      '24': 24_000,
      '25': 25_000,
      '30000/1001': 29_970,
      '60': 60_000,
    };
    for (const rate of rates) {
      const { schedule } = timed({ video: `  rate: ${rate}\n  length: 1000\n`, steps: '  - id: a\n' });
      expect(schedule.frameCount).toBe(perThousandSeconds[rate]);
    }
  });
});
