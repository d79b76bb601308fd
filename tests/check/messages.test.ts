import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { checkScene } from '../../src/lesson/check-scene.ts';
import { readScene } from '../../src/lesson/read-scene.ts';

const lamp = readFileSync(new URL('../../scenes/lamp-room.yaml', import.meta.url), 'utf8');
const basic = readFileSync(new URL('../scenes/checks/basic-01.yaml', import.meta.url), 'utf8');

/** The message of a step, after a change to the text of a scene. */
function messageOf(text: string, step: string, before: string, after: string): string {
  expect(text).toContain(before);
  const { scene, diagnostics } = readScene(text.replace(before, after));
  if (scene === undefined) throw new Error(diagnostics.map((each) => each.message).join('\n'));
  return checkScene(scene).steps.find((each) => each.step.id === step)?.message ?? '';
}

describe('what an author is told', () => {
  it.each([
    [
      'a mistyped cell of a cascade',
      lamp,
      'opening',
      'r9c8=1 r6c9=1',
      'r9c8=1 r6c8=1',
      'Was r6c9=1 (a single: 1r6) meant?',
    ],
    [
      'a node without its digit',
      lamp,
      'kite',
      'r7c1-r9c3=r4c3',
      'r7c1-r8c3=r4c3',
      '5r8c3=5r4c3 is not a strong link: 5r8c3 is no longer possible',
    ],
    [
      'a set that is settled',
      basic,
      'single-1',
      'from: 5b2',
      'from: 4b4',
      'what is named is settled (r4c1 is already 4) and does not affect it',
    ],
    [
      'a name that removes nothing',
      basic,
      'claiming-19',
      'so: r4c79<>6',
      'so: all\n    because: naked pair',
      'naked pair" does not fit',
    ],
  ] as const)('%s', (_, text, step, before, after, part) => {
    expect(messageOf(text, step, before, after)).toContain(part);
  });
});
