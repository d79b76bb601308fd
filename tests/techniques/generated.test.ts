/**
 * Generated positions: everything found is proved by the kernel, agrees with the solution, fits its own name, and does
 * not fit names of other shapes.
 */
import { describe, expect, test } from 'vitest';
import { has, overlaps, setOf } from '../../src/grid/candidates.ts';
import { type BoxShape, gridOf } from '../../src/grid/grid.ts';
import type { Conclusion } from '../../src/grid/terms.ts';
import { prove } from '../../src/proof/kernel.ts';
import { type ArgumentName, allTechniques, techniqueNamed } from '../../src/techniques/all-techniques.ts';
import { findArgument, instancesOf } from '../../src/techniques/find-argument.ts';
import { recogniseIn } from '../../src/techniques/judge-name.ts';
import type { Family } from '../../src/techniques/technique.ts';
import { chanceFrom } from '../random.ts';
import { advanced, type Generated, generatedPuzzle, keepsSolution } from './generated-positions.ts';
import { printInstance } from './written-argument.ts';

/** Names that never fit an instance of the first. */
const foreign: Readonly<Partial<Record<ArgumentName, readonly ArgumentName[]>>> = {
  'naked single': ['hidden single'],
  'hidden single': ['naked single'],
  'pointing pair': ['pointing triple', 'claiming'],
  claiming: ['pointing pair', 'pointing triple'],
  'naked pair': ['hidden pair', 'naked triple', 'X-wing', 'X-chain'],
  'naked triple': ['hidden triple'],
  'hidden pair': ['naked pair', 'hidden triple', 'X-wing'],
  'hidden quad': ['naked quad'],
  'X-wing': ['swordfish', 'finned X-wing', 'sashimi X-wing', 'skyscraper', 'turbot fish', 'two-string kite'],
  swordfish: ['X-wing', 'jellyfish', 'finned swordfish', 'skyscraper', 'turbot fish'],
  jellyfish: ['swordfish', 'finned jellyfish'],
  skyscraper: ['X-wing', 'two-string kite', 'empty rectangle', 'swordfish'],
  'two-string kite': ['skyscraper', 'X-wing', 'empty rectangle', 'finned X-wing', 'sashimi X-wing'],
  'empty rectangle': ['skyscraper', 'two-string kite', 'X-wing', 'finned X-wing'],
  'finned X-wing': ['X-wing', 'swordfish', 'two-string kite'],
  'finned swordfish': ['swordfish', 'finned X-wing'],
  'simple colouring': ['multi-colouring'],
  'multi-colouring': ['simple colouring'],
};

const boards: readonly (readonly [BoxShape, number])[] = [
  ['2x2', 3],
  ['2x3', 4],
  ['2x4', 2],
  ['3x3', 4],
];
const positions = boards.flatMap(([boxes, count]) =>
  Array.from({ length: count }, (_, seed) => {
    const generated = generatedPuzzle(gridOf(boxes), chanceFrom(100 + seed));
    return [generated, { ...generated, position: advanced(generated.position) }].map(
      (each, stage) => [`${boxes}, seed ${100 + seed}, ${stage === 0 ? 'at the start' : 'later'}`, each] as const,
    );
  }).flat(),
);

/** How many instances of each technique are examined in each position. */
const most = 12;
const families: readonly Family[] = ['singles', 'locked candidates', 'subsets', 'one digit'];
const quick = allTechniques.filter(({ name, family }) => families.includes(family) && !/franken|mutant/.test(name));

describe('instances in generated positions', () => {
  test.each(positions)('%s', (_, generated) => {
    const { position } = generated;
    expect(keepsSolution(generated)).toBe(true);
    for (const { name } of quick) {
      for (const instance of firstFew(instancesOf(position, name))) {
        const shown = `${name}: ${printInstance(position, instance)}`;
        for (const conclusion of instance.conclusions) {
          expect([shown, prove(position, instance.sets, conclusion).kind]).toEqual([shown, 'proved']);
          expect([shown, agrees(generated, conclusion)]).toEqual([shown, true]);
        }
        const chains = instance.chain === undefined ? [] : [instance.chain];
        const shape = { ...instance, position, chains };
        expect([shown, recogniseIn(techniqueNamed(name), shape) !== undefined]).toEqual([shown, true]);
        const borne = (foreign[name] ?? []).filter((each) => recogniseIn(techniqueNamed(each), shape)?.kind === 'fits');
        expect([shown, borne]).toEqual([shown, []]);
      }
    }
  });

  test.each(positions)('what was found is found again by what it concludes: %s', (_, { position }) => {
    for (const { name } of quick) {
      for (const instance of firstFew(instancesOf(position, name), 3)) {
        const again = findArgument(position, name, instance.conclusions);
        const shown = `${name}: ${printInstance(position, instance)}`;
        expect([shown, again !== undefined && again.instance.sets.length <= instance.sets.length]).toEqual([
          shown,
          true,
        ]);
      }
    }
  });

  test('the same position gives the same instances in the same order', () => {
    const [, { position }] = positions.at(-1)!;
    const all = () =>
      quick.flatMap(({ name }) => firstFew(instancesOf(position, name)).map((each) => printInstance(position, each)));
    expect(all()).toEqual(all());
  });

  test('there was something to look at', () => {
    const found = new Set(
      positions.flatMap(([, { position }]) =>
        quick.filter(({ name }) => firstFew(instancesOf(position, name), 1).length > 0),
      ),
    );
    expect([...found].map((technique) => technique.name)).toEqual(
      expect.arrayContaining([
        'hidden single',
        'naked pair',
        'hidden triple',
        'X-wing',
        'skyscraper',
        'two-string kite',
        'empty rectangle',
        'finned X-wing',
        'simple colouring',
        'X-chain',
        'grouped X-chain',
      ]),
    );
  });

  test('fish of any houses are proved and fit their names', () => {
    const [, generated] = positions.find(([where]) => where.startsWith('2x3') && where.endsWith('later'))!;
    for (const { name } of allTechniques.filter((technique) => /franken|mutant/.test(technique.name))) {
      for (const instance of firstFew(instancesOf(generated.position, name), 4)) {
        const shown = `${name}: ${printInstance(generated.position, instance)}`;
        expect([shown, instance.conclusions.every((conclusion) => agrees(generated, conclusion))]).toEqual([
          shown,
          true,
        ]);
        const shape = { ...instance, position: generated.position, chains: [] };
        expect([shown, recogniseIn(techniqueNamed(name), shape)?.kind]).toEqual([shown, 'fits']);
      }
    }
  });
});

function firstFew<T>(all: Iterable<T>, count = most): T[] {
  const few: T[] = [];
  for (const each of all) {
    if (few.length === count) break;
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
