/**
 * What is spoken held against what is shown: each code by a scene that says something else, and the same scene put right.
 */
import { readdirSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { openLesson } from '../../src/commands/lesson.ts';
import { voiceWarnings } from '../../src/commands/voice-warnings.ts';
import type { voiceCodes } from '../../src/scene/codes.ts';
import { spokenFaults } from '../../src/voice/spoken-faults.ts';
import { skyscraper, tell, towers } from '../staging/stage.ts';

type VoiceCode = keyof typeof voiceCodes;

function warningsOf(steps: string) {
  const { checked, schedule, film } = tell(towers(steps));
  return spokenFaults(checked, schedule, film, undefined);
}

const step = (say: string, keys = skyscraper) => `  - {id: a, say: "${say}", because: skyscraper, ${keys}}`;

/** A skyscraper of 3s in columns 3 and 5, from r6c3 over r1c3 and r1c5 to r5c5: it clears r5c1, r6c4 and r6c6 of 3s. */
const rows: Readonly<Record<VoiceCode, readonly (readonly [wrong: string, right: string, says: string])[]>> = {
  'spoken-cell': [
    ['Look at row three column one.', 'Look at row one column three.', 'the step shows r1c3, not r3c1'],
    ['The three in r3c1 is tied to it.', 'The three in r1c3 is tied to it.', 'the step shows r1c3, not r3c1'],
  ],
  'spoken-digit': [
    ['So r5c1 is not a four.', 'So r5c1 is not a three.', 'the step removes 3r5c1, not the 4 of r5c1'],
    ['We cross out the fives.', 'We cross out the threes.', 'and no 5'],
  ],
  'spoken-house': [
    ['Look at the threes in column two.', 'Look at the threes in column three.', 'is about the 3s of c3'],
  ],
  'spoken-name': [['This is an XY-wing.', 'This is a skyscraper.', 'XY-wing does not fit it']],
};

describe.each(Object.entries(rows))('%s', (code, cases) => {
  it.each(cases)('%s', (wrong, right, says) => {
    const found = warningsOf(step(wrong));
    expect(found.map((each) => each.code)).toEqual([code]);
    expect(found[0]!.severity).toBe('warning');
    expect(found[0]!.message).toContain(says);
    expect(warningsOf(step(right))).toEqual([]);
  });
});

describe('a voice that is early or late', () => {
  it('may name what the next step shows', () => {
    const next = '  - {id: b, because: naked single, so: r5c3=4, show: [{fill: r3c1}]}';
    expect(warningsOf(`${step('Look at row three column one.')}\n${next}`)).toEqual([]);
  });
});

describe('no false alarm on', () => {
  const folder = fileURLToPath(new URL('../../scenes', import.meta.url));
  it.each(readdirSync(folder).filter((each) => each.endsWith('.yaml')))('%s', async (name) => {
    const lesson = await openLesson(`${folder}/${name}`, { media: 'if there' });
    if (lesson.kind !== 'lesson') throw new Error(`${name} is unusable`);
    expect(voiceWarnings(lesson)).toEqual([]);
  });
});
