/**
 * What a scene by chance concludes from an argument: what follows, some of it, or one thing too many.
 */
import type { Chance } from '../random.ts';
import { buildArgument } from './arguments.ts';
import { type Claim, removalsBy, type Truth } from './claims.ts';
import type { Conclusion, Position } from './rules.ts';

export interface Setting {
  readonly truth: Truth;
  readonly position: Position;
  readonly eithers: Truth['eithers'];
  readonly chance: Chance;
}

/** Conclusions of an argument: what it proves, some of it, one too many, or an either/or; undefined if it proves nothing. */
export function concludeFrom(
  { truth, position, eithers, chance }: Setting,
  argument: Extract<Claim, { kind: 'so' }>['argument'],
  mayConcludeNothing = false,
): Claim | undefined {
  const { board } = truth;
  const { alternatives } = buildArgument({ ...truth, eithers }, position, argument);
  const sets = alternatives[0]!;
  const removals = removalsBy(board, position, sets);
  if (removals.length > 60) return undefined;
  if (chance.below(12) === 0 && removals.length > 0) return { kind: 'so', argument, so: 'all' };
  if (mayConcludeNothing && chance.below(6) === 0) return { kind: 'so', argument, so: undefined };
  const members = [...new Set(sets.flatMap((set) => set.members))];
  const near = members.flatMap((one) => [
    one,
    ...[...position.possible].filter((other) => board.conflicts[one]![other]!),
  ]);
  const so: Conclusion[] = [];
  const way = chance.below(10);
  if (removals.length === 0 || way === 0) {
    if (members.length === 0 || chance.below(3) > 0) return undefined;
    const some = [...new Set([chance.pick(members), chance.pick(members), chance.pick(members)])].slice(
      0,
      1 + chance.below(3),
    );
    so.push({ oneOf: some.sort((a, b) => a - b) });
  } else {
    const some = chance.below(3) === 0 ? chance.shuffled(removals).slice(0, 1 + chance.below(3)) : removals;
    so.push(...some.map((not) => ({ not })));
  }
  if (way === 1 && near.length > 0) so.push({ not: chance.pick(near) });
  if (way === 2 && near.length > 0) so.push({ oneOf: [chance.pick(near)] });
  if (way === 3) so.push({ not: chance.below(board.size ** 3) });
  if (way === 4 && near.length > 0) so.splice(0, so.length, { not: chance.pick(near) });
  const written = new Map(so.map((each) => [JSON.stringify(each), each]));
  return { kind: 'so', argument, so: [...written.values()] };
}
