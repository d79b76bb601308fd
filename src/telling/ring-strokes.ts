/**
 * Rings: round candidates, and round the digits that are written for them.
 */
import { sidesOf } from '../check/sides.ts';
import type { Candidate } from '../grid/candidates.ts';
import type { BeatMark } from '../scene/scene.ts';
import type { MarkShape } from '../timeline/film.ts';
import { oneAfterAnother } from './pacing.ts';
import { type BeatContext, type Stroke, spread, writtenBy } from './strokes.ts';
import { markGroupOf, sideGroups, type ToldBeat } from './told-beat.ts';

/** One after another, so that the first begins with the beat; those that stand already are not drawn again. */
export function circles(context: BeatContext, candidates: readonly Candidate[], { from, room }: ToldBeat): Stroke[] {
  const shapes = candidates.map((candidate): MarkShape => ({ kind: 'circle', candidate }));
  const strokes = spread(context, shapes, from, (count) =>
    oneAfterAnother(context.pacing, { from, until: room }, count),
  );
  return [...strokes, ...strokes.flatMap((stroke) => ringAfter(context, stroke))];
}

/** The cluster of the candidate, its own side first, each side in its own colour. */
export function sides(context: BeatContext, mark: Extract<BeatMark, { kind: 'sides' }>, beat: ToldBeat): Stroke[] {
  const { board, groups, step } = context;
  const found = sidesOf(board.grid, step.argument.sets, mark.candidate.value);
  if (found === undefined) return [];
  const [own, other] = mark.groups?.map((name) => markGroupOf(groups, name)) ?? [];
  const [first, second] = sideGroups(groups);
  const placed = [
    ...found.own.map((candidate) => ({ candidate, group: own ?? first })),
    ...found.other.map((candidate) => ({ candidate, group: other ?? second })),
  ].filter(({ candidate }) => board.showsUntil(candidate) > beat.from);
  const frames = oneAfterAnother(context.pacing, { from: beat.from, until: beat.room }, placed.length);
  const strokes = placed.map(
    ({ candidate, group }, index): Stroke => ({
      shape: { kind: 'circle', candidate },
      from: frames[index] ?? beat.from,
      until: board.showsUntil(candidate),
      group,
    }),
  );
  return [...strokes, ...strokes.flatMap((stroke) => ringAfter(context, stroke))];
}

/**
 * Where the step writes the digit of what its `show` has circled, the ring goes round that digit until the step ends. A
 * step that tells itself circles the place to find it, and the frame of the placement then says enough.
 */
function ringAfter(context: BeatContext, { shape, from, group }: Stroke): Stroke[] {
  if (shape.kind !== 'circle' || context.step.step.show === undefined) return [];
  const written = writtenBy(context, shape.candidate);
  if (written === undefined || written.from <= from) return [];
  const { cell, digit } = written;
  const ring = { shape: { kind: 'ring', cell, digit }, from: written.from, until: context.until } as const;
  return [group === undefined ? ring : { ...ring, group }];
}
