import { describe, expect, test } from 'vitest';
import { argumentNames } from '../../src/scene/argument-names.ts';
import { allTechniques, namesBySpeciality, techniqueNamed } from '../../src/techniques/all-techniques.ts';
import { judgeName, namesOf } from '../../src/techniques/judge-name.ts';
import { conclusionsIn, shapeOf } from './written-argument.ts';

describe('names', () => {
  test('every name of the language has its place in the order from special to general, once', () => {
    expect([...namesBySpeciality].sort()).toEqual([...argumentNames].sort());
  });
  test('every technique bears a name of the language, each name once', () => {
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
    expect(namesOf(towers).filter((name) => order.includes(name))).toEqual(order);
  });
  test('a name that is none of these is not judged, and the names that fit are still said', () => {
    const { judged, fits } = judgeName(towers, 'no such name');
    expect({ judged, first: fits[0] }).toEqual({ judged: 'not judged', first: 'skyscraper' });
  });
  test('a name that fits loosely is among those that fit, with a warning', () => {
    const { judged, fits, warning } = judgeName(
      shapeOf({ only: '6b5 in r4c46', from: '6b5', so: 'r4c1<>6' }),
      'pointing triple',
    );
    expect({ judged, fits, warning }).toEqual({
      judged: 'fits',
      fits: ['pointing pair', 'pointing triple', 'locked candidates'],
      warning: 'the digit has two places there, not three',
    });
  });
  test('conclusions that say nothing new do not spoil a name', () => {
    const spent = conclusionsIn(towers.position.grid, 'r5c5<>7');
    const shape = { ...towers, conclusions: [...towers.conclusions, ...spent] };
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
});
