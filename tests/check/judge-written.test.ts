/**
 * Notation in the words of a step: what is false is a fault, what is not proved a warning, what supposes or asks is text.
 * The skyscraper of 3s clears r6c4 and r6c6; in the solution r6c3 is 3 and r1c3 is not.
 */
import { describe, expect, it } from 'vitest';
import { checkScene } from '../../src/lesson/check-scene.ts';
import { readScene } from '../../src/lesson/read-scene.ts';
import { towers } from '../staging/stage.ts';

function judged(keys: string): { sound: boolean; says: string } {
  const { scene, diagnostics } = readScene(towers(`  - {id: s, from: 3c35, so: r6c46<>3, ${keys}}`));
  if (scene === undefined) throw new Error(diagnostics.map(({ message }) => message).join('\n'));
  const { steps, warnings } = checkScene(scene);
  const found = [...(steps[0]?.faults ?? []), ...warnings].map(({ message }) => message.split(', which')[0]);
  return { sound: steps[0]?.sound === true, says: found.join('; ') };
}

describe('is false', () => {
  it.each([
    ["title: 'r6c3≠3'", 'its title says r6c3≠3'],
    ["title: 'r1c3=3'", 'its title says r1c3=3'],
    ["say: 'So r6c3<>3.'", 'its sentence says r6c3<>3'],
    ["show: [{note: '(3)r1c3=r1c5'}]", 'a note says (3)r1c3=r1c5'],
    [`show: [{label: 'r6c3 "r6c3≠3"'}]`, 'a label says r6c3≠3'],
    ["title: '(3)r6c3=r1c3 => r6c3<>3'", 'its title says (3)r6c3=r1c3 => r6c3<>3'],
  ])('%s', (keys, says) => expect(judged(keys)).toEqual({ sound: false, says }));
});

describe('is not proved by then', () => {
  it.each([
    ["title: 'r1c3≠3'", 'its title says r1c3≠3'],
    ["say: 'Later r6c3=3 comes out.'", 'its sentence says r6c3=3'],
  ])('%s', (keys, says) => expect(judged(keys)).toEqual({ sound: true, says }));
});

describe('is left alone', () => {
  it.each([
    "title: 'r6c4≠3 and r6c6≠3'",
    "title: '(3)r6c3=r1c3-r1c5=r5c5'",
    "say: 'If r6c3≠3 then r1c3=3.'",
    "say: 'Suppose r1c3=3; then all is well.'",
    "title: 'Is r1c3=3?'",
    "title: 'Either r6c3 or r1c3'",
    "title: 'Box 3 = done, row 4 <> row 5'",
    "title: 'r6c4 and 3r6c6'",
    "show: [{ask: 'r1c3=3?'}]",
  ])('%s', (keys) => expect(judged(keys)).toEqual({ sound: true, says: '' }));

  it('in a false step, which shows what does not follow', () => {
    const { scene } = readScene(towers("  - {id: s, title: 'r6c3≠3', from: 3c3, so: r6c3<>3, fails: true}"));
    expect(scene && checkScene(scene).steps[0]?.faults).toEqual([]);
  });
});
