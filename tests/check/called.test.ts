/** `called` with a name of the trade is judged as `because` is; any other word is the author's own. */
import { expect, it } from 'vitest';
import { checkScene } from '../../src/lesson/check-scene.ts';
import { readScene } from '../../src/lesson/read-scene.ts';
import { towers } from '../staging/stage.ts';

const sets = 'from: 3c35, so: r6c46<>3';

function checked(step: string) {
  const { scene, diagnostics } = readScene(towers(`  - {id: s, ${step}}`));
  if (scene === undefined) throw new Error(diagnostics.map(({ message }) => message).join('\n'));
  return checkScene(scene);
}

it.each([
  ['the right name', `called: Skyscraper, ${sets}`, true, ''],
  ['the right name with an article', `called: a skyscraper, ${sets}`, true, ''],
  ['another name', `called: X-wing, ${sets}`, false, '"X-wing" does not fit this argument: its name is skyscraper'],
  ['another name beside a right one', `because: skyscraper, called: X-wing, ${sets}`, false, '"X-wing" does not fit'],
  ['a name of the author', `called: The two towers, ${sets}`, true, ''],
  ['a name that is not judged', `called: exocet, ${sets}`, true, ''],
  ['a false step', 'called: X-wing, from: 3c35, so: r1c1<>3, fails: true', true, ''],
])('%s', (_, step, sound, message) => {
  const [only] = checked(step).steps;
  expect(only?.sound).toBe(sound);
  expect(only?.message).toContain(message);
});

it('says of a number that is not right, and of what fits but loosely, what is not right', () => {
  const { warnings } = checked(`called: grouped AIC, ${sets}`);
  expect(warnings.map(({ code, message }) => [code, message])).toEqual([
    ['name-loosely', 'no node is a group: an AIC'],
  ]);
});

it.each(['exocet', 'SK loops', 'X-Cycle', 'bent triple', 'cell forcing chains', 'Tridagon', 'broken wing'])(
  'explains %s',
  (name) => {
    const { diagnostics } = readScene(towers(`  - {id: s, because: ${name}, ${sets}}`));
    expect(diagnostics.map(({ code }) => code)).toEqual(['unknown-name']);
    expect(diagnostics[0]?.message).toMatch(/ is .*can be shown with "called"$/);
  },
);
