/**
 * Wings, chains and almost locked sets in generated positions: everything found is proved by the kernel, agrees with
 * the solution, fits its own name, has links that hold, and is found again by what it concludes.
 */
import { describe, expect, test } from 'vitest';
import { buildFound } from '../../src/check/argument.ts';
import { has, overlaps, setOf } from '../../src/grid/candidates.ts';
import { type BoxShape, gridOf } from '../../src/grid/grid.ts';
import type { Conclusion } from '../../src/grid/terms.ts';
import { prove } from '../../src/proof/kernel.ts';
import { type ArgumentName, techniqueNamed } from '../../src/techniques/all-techniques.ts';
import { findArgument } from '../../src/techniques/find-argument.ts';
import { recogniseIn } from '../../src/techniques/judge-name.ts';
import type { Instance } from '../../src/techniques/technique.ts';
import { chanceFrom } from '../random.ts';
import { advanced, type Generated, generatedPuzzle } from './generated-positions.ts';
import { printInstance } from './written-argument.ts';

const names: readonly ArgumentName[] = [
  'XY-wing',
  'XYZ-wing',
  'WXYZ-wing',
  'VWXYZ-wing',
  'W-wing',
  'M-wing',
  'S-wing',
  'L-wing',
  'H-wing',
  'remote pair',
  'XY-chain',
  'AIC',
  'grouped AIC',
  'continuous loop',
  'discontinuous loop',
  'ALS-XZ',
  'ALS-XY-wing',
  'ALS chain',
  'death blossom',
  'Sue de Coq',
  'aligned pair exclusion',
];
const fewInstances = 5;

const seeds: readonly (readonly [BoxShape, number])[] = [
  ['2x3', 3],
  ['2x4', 4],
  ['3x3', 215],
  ['3x3', 230],
  ['3x3', 246],
  ['3x3', 256],
];
const positions = seeds.map(([boxes, seed]) => {
  const generated = generatedPuzzle(gridOf(boxes), chanceFrom(seed));
  return [`${boxes}, seed ${seed}`, { ...generated, position: advanced(generated.position) }] as const;
});
const met = new Set<string>();

describe('instances in generated positions', () => {
  test.each(positions)('%s', (_, generated) => {
    const { position } = generated;
    for (const name of names) {
      const technique = techniqueNamed(name);
      for (const instance of firstFew(technique.find(position))) {
        met.add(name);
        const shown = `${name}: ${printInstance(position, instance)}`;
        for (const conclusion of instance.conclusions) {
          expect([shown, prove(position, instance.sets, conclusion).kind]).toEqual([shown, 'proved']);
          expect([shown, agrees(generated, conclusion)]).toEqual([shown, true]);
        }
        const chains = instance.chain === undefined ? [] : [instance.chain];
        for (const given of [[], chains]) {
          const shape = { ...instance, position, chains: given };
          expect([shown, recogniseIn(technique, shape)]).not.toEqual([shown, undefined]);
        }
        expect([shown, brokenLinks(generated, instance)]).toEqual([shown, []]);
        expect([shown, findArgument(position, name, instance.conclusions.slice(0, 1))]).not.toEqual([shown, undefined]);
      }
    }
  });

  test('every name occurred', () => {
    expect(names.filter((name) => !met.has(name))).toEqual([]);
  });
});

function brokenLinks({ position }: Generated, instance: Instance): string[] {
  const { links } = buildFound(position, { instance, others: 0 });
  return links.filter((link) => !link.holds).map((link) => `${link.from} ${link.kind} ${link.to}`);
}

function firstFew<T>(all: Iterable<T>): T[] {
  const few: T[] = [];
  for (const each of all) {
    few.push(each);
    if (few.length === fewInstances) break;
  }
  return few;
}

function agrees({ position, solution }: Generated, conclusion: Conclusion): boolean {
  const isTrue = setOf(position.grid, solution);
  return conclusion.kind === 'impossible'
    ? !has(isTrue, conclusion.candidate)
    : overlaps(isTrue, conclusion.candidates);
}
