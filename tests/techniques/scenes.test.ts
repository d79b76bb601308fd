/**
 * The example scenes: every name that can be judged is judged as they say, and what they leave to be found is found.
 */
import { describe, expect, test } from 'vitest';
import { findArgument } from '../../src/techniques/find-argument.ts';
import { judgeName } from '../../src/techniques/judge-name.ts';
import { namedSteps } from './scene-steps.ts';

const steps = ['tests/scenes/checks', 'tests/scenes/lessons'].flatMap(namedSteps);
const judged = steps.filter((step) => step.shape !== undefined && step.misnamed !== undefined);
const found = steps.filter((step) => step.shape === undefined && (step.found === true || step.verdict === 'false'));

describe('names of arguments that are given', () => {
  test('there are many of them', () => expect(judged.length).toBeGreaterThan(150));
  test.each(judged.map((step) => [`${step.where}: ${step.name}`, step] as const))('%s', (_, step) => {
    const { judged, fits } = judgeName(step.shape!, step.name);
    if (judged === 'not judged') return;
    expect({ judged, fits }).toEqual({
      judged: step.misnamed === true ? 'misnamed' : 'fits',
      fits: step.misnamed === true ? expect.not.arrayContaining([step.name]) : expect.arrayContaining([step.name]),
    });
  });
});

describe('arguments that are searched for', () => {
  test('there are many of them', () => expect(found.length).toBeGreaterThan(20));
  test.each(found.map((step) => [`${step.where}: ${step.name}`, step] as const))('%s', (_, step) => {
    expect(findArgument(step.position, step.name, step.conclusions) !== undefined).toBe(step.found === true);
  });
});
