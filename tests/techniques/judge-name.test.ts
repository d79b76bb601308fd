import { describe, expect, test } from 'vitest';
import { membersOf } from '../../src/grid/candidates.ts';
import { gridOf } from '../../src/grid/grid.ts';
import type { Conclusion } from '../../src/grid/terms.ts';
import { placesIn, prove } from '../../src/proof/kernel.ts';
import {
  allTechniques,
  argumentNames,
  namesBySpeciality,
  techniqueNamed,
} from '../../src/techniques/all-techniques.ts';
import { judgeName } from '../../src/techniques/judge-name.ts';
import { randomPosition, randomSolution } from '../proof/positions.ts';
import { chanceFrom } from '../random.ts';
import { conclusionsIn, shapeOf } from './written-argument.ts';

describe('names', () => {
  test('every name of the language has its place in the order from special to general, once', () => {
    expect([...namesBySpeciality].sort()).toEqual([...argumentNames].sort());
  });
  test('every technique has a name of the language, each name once', () => {
    const names = allTechniques.map((technique) => technique.name);
    expect(names).toEqual(namesBySpeciality.filter((name) => names.includes(name)));
    expect(new Set(names).size).toBe(names.length);
    for (const name of names) expect(techniqueNamed(name)?.name).toBe(name);
  });
});

describe('judging', () => {
  const towers = shapeOf({ only: '7c5 in r19c5, 7c8 in r29c8', from: '7c58', so: 'r1c79<>7' });
  test('the names that fit come from the most special to the most general', () => {
    const order = ['skyscraper', 'turbot fish', 'X-chain'];
    expect(judgeName(towers, 'skyscraper').fits.filter((name) => order.includes(name))).toEqual(order);
  });
  test('a name that fits loosely is among those that fit, with a warning', () => {
    const { judged, fits, warning } = judgeName(
      shapeOf({ only: '6b5 in r4c46', from: '6b5', so: 'r4c1<>6' }),
      'pointing triple',
    );
    expect({ judged, fits, warning }).toEqual({
      judged: 'fits',
      fits: ['pointing pair', 'pointing triple', 'pointing', 'locked candidates'],
      warning: 'the digit has two places there, not three',
    });
  });
  test('conclusions that say nothing new do not spoil a name', () => {
    const redundant = conclusionsIn(towers.position.grid, 'r5c5<>7');
    const shape = { ...towers, conclusions: [...towers.conclusions, ...redundant] };
    expect(judgeName(shape, 'skyscraper').judged).toBe('fits');
  });
  test('a conclusion of another argument in the step does', () => {
    const shape = shapeOf({
      only: '7c5 in r19c5, 7c8 in r29c8, 6b5 in r4c46',
      from: '7c58 6b5',
      so: 'r1c7<>7 r4c1<>6',
    });
    expect(judgeName(shape, 'skyscraper').judged).toBe('misnamed');
  });
  test('a by-product of the sets that fit the name does not', () => {
    const chain = '(5)r1c1=r1c5-r8c5=r8c2-r3c2=r1c1';
    const back = { only: '5r1 in r1c15, 5r8 in r8c25, 5b1 in r1c1|r3c2', chain, so: 'r1c1=5 r1c1<>9' };
    expect(judgeName(shapeOf(back), 'X-chain')).toMatchObject({ judged: 'fits', warning: undefined });
  });
});

describe('a chain that is given', () => {
  const through = {
    only: '4c1 in r24c1, 6b1 in r2c1|r1c2, 4c2 in r14c2',
    so: 'r4c4<>4',
  };
  const sets = { ...through, from: '4c1 6b1 4c2' };
  const chain = { ...through, chain: '(4)r4c1=(4-6)r2c1=(6-4)r1c2=(4)r4c2' };
  test('is what the name is judged by, as it is drawn, and not a part of it that would do', () => {
    expect(judgeName(shapeOf(sets), 'X-chain').judged).toBe('fits');
    expect(judgeName(shapeOf(chain), 'X-chain').judged).toBe('misnamed');
    expect(judgeName(shapeOf(chain), 'L-wing').judged).toBe('fits');
  });
});

describe('an argument of very many sets', () => {
  test('is judged at once, and has one name only', () => {
    const grid = gridOf('3x3');
    const chance = chanceFrom(5);
    const position = randomPosition(grid, randomSolution(grid, chance), chance);
    const sets = grid.houses.slice(0, 9).flatMap((row) => grid.digits.map((digit) => placesIn(position, digit, row)));
    const conclusion = membersOf(position.possible)
      .map((candidate): Conclusion => ({ kind: 'impossible', candidate }))
      .find((each) => prove(position, sets, each).kind === 'proved');
    expect(conclusion).toBeDefined();
    const began = performance.now();
    const { fits } = judgeName(
      { position, sets, chains: [], deadly: undefined, conclusions: [conclusion!] },
      'forcing net',
    );
    expect(fits).toContain('forcing net');
    expect(performance.now() - began).toBeLessThan(20_000);
  });
});
