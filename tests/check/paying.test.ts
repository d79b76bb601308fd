/** Which sound steps a change of another one costs. */
import { expect, it } from 'vitest';
import { checkScene } from '../../src/lesson/check-scene.ts';
import { readScene } from '../../src/lesson/read-scene.ts';
import { payingFor } from '../../src/lesson/spared.ts';
import { skyscraper, towers } from '../staging/stage.ts';

const checked = (...steps: readonly string[]) =>
  checkScene(readScene(towers(steps.map((step) => `  - ${step}`).join('\n'))).scene!, { kind: 'verdicts' });

const changed = '{id: changed, from: 3c4, so: r6c6<>3}';
const sound = `{id: towers, because: skyscraper, ${skyscraper}}`;

it.each([
  ['none, where all stands as it did', [changed, sound], []],
  ['one that proves less than it did', [`{id: changed, ${skyscraper.replace('r5c1<>3 ', '')}}`, sound], ['towers']],
  ['one that is gone', [changed], ['towers']],
  ['one that lost its name', [changed, sound.replace('skyscraper', 'X-wing')], ['towers']],
  ['none, where only the changed step is gone', [sound], []],
])('%s', (_, after, paying) => {
  expect(payingFor('changed', checked(changed, sound), checked(...after))).toEqual(paying);
});
