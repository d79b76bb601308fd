/**
 * Generated puzzles with one solution: everything found of the rarer families is proved by the kernel, agrees with the
 * solution and fits its own name. Seeds are chosen so that many names turn up.
 */
import { describe, expect, test } from 'vitest';
import { difference, has, membersOf, overlaps, setOf } from '../../src/grid/candidates.ts';
import { type BoxShape, gridOf } from '../../src/grid/grid.ts';
import type { Conclusion } from '../../src/grid/terms.ts';
import { begin, type Position, prove, takeAsRead } from '../../src/proof/kernel.ts';
import { type ArgumentName, techniqueNamed } from '../../src/techniques/all-techniques.ts';
import { instancesOf } from '../../src/techniques/find-argument.ts';
import { recogniseIn } from '../../src/techniques/judge-name.ts';
import { chanceFrom } from '../random.ts';
import { advanced, type Generated, generatedPuzzle } from './generated-positions.ts';
import { printInstance } from './written-argument.ts';

const types = ([1, 2, 3, 4, 5, 6] as const).map((number): ArgumentName => `unique rectangle type ${number}`);
const names: readonly ArgumentName[] = [
  ...types,
  'hidden rectangle',
  'unique rectangle',
  'avoidable rectangle',
  'extended rectangle',
  'unique loop',
  'BUG+1',
  'BUG+n',
  'three-dimensional Medusa',
  'kraken fish',
  'forcing chain',
];

const seeds: readonly (readonly [BoxShape, readonly number[]])[] = [
  ['2x2', [1, 2]],
  ['2x3', [1, 2, 3, 4]],
  ['2x4', [3]],
  ['3x3', [201, 208, 212, 214, 215, 217]],
];
const positions = seeds.flatMap(([boxes, own]) =>
  own.flatMap((seed) => {
    const generated = generatedPuzzle(gridOf(boxes), chanceFrom(seed));
    return [12, 200].map((rounds) => {
      const later = { ...generated, position: advanced(generated.position, rounds) };
      return [`${boxes}, seed ${seed}, ${rounds} rounds`, later] as const;
    });
  }),
);

/** How many instances of each technique are examined in each position. */
const most = 8;
const seen = new Set<string>();

describe('instances in generated positions', () => {
  test.each(positions)('%s', (_, generated) => {
    const { position } = generated;
    for (const name of names) {
      for (const instance of firstFew(instancesOf(position, name))) {
        seen.add(name);
        const shown = `${name}: ${printInstance(position, instance)}`;
        for (const conclusion of instance.conclusions) {
          expect([shown, prove(position, instance.sets, conclusion).kind]).toEqual([shown, 'proved']);
          expect([shown, agrees(generated, conclusion)]).toEqual([shown, true]);
        }
        const shape = { ...instance, position, chains: [] };
        expect([shown, recogniseIn(techniqueNamed(name), shape)?.kind]).toEqual([shown, 'fits']);
        const otherTypes = types.filter((type) => types.includes(name) && type !== name);
        const borne = otherTypes.filter((type) => recogniseIn(techniqueNamed(type), shape) !== undefined);
        expect([shown, borne]).toEqual([shown, []]);
      }
    }
  });

  test('nearly every name turned up', () => {
    const unseen = names.filter((name) => !seen.has(name));
    expect(unseen).toEqual(['unique rectangle type 5', 'avoidable rectangle']);
  });

  test('if no step may assume one solution, nothing that rests on it is found', () => {
    const [, { position }] = positions.find(([where]) => where === '3x3, seed 212, 12 rounds')!;
    const start = begin(position.grid, membersOf(position.givens), { oneSolution: false });
    const barred = membersOf(difference(start.possible, position.possible)).reduce(
      (reached, candidate) => takeAsRead(reached, { kind: 'impossible', candidate }),
      start,
    );
    const resting = names.filter((name) => !/Medusa|kraken|forcing/.test(name));
    const found = (from: Position) => resting.filter((name) => firstFew(instancesOf(from, name)).length > 0);
    expect(found(position)).toContain('unique rectangle');
    expect(found(barred)).toEqual([]);
  });
});

function firstFew<T>(all: Iterable<T>): T[] {
  const few: T[] = [];
  for (const each of all) {
    if (few.length === most) break;
    few.push(each);
  }
  return few;
}

function agrees({ position, solution }: Generated, conclusion: Conclusion): boolean {
  const isTrue = setOf(position.grid, solution);
  return conclusion.kind === 'impossible'
    ? !has(isTrue, conclusion.candidate)
    : overlaps(isTrue, conclusion.candidates);
}
