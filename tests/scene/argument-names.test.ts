/**
 * Names of arguments as people write them: case, hyphens, number and second names do not matter.
 */
import { describe, expect, it } from 'vitest';
import { canonicalName, nearestNames } from '../../src/scene/argument-names.ts';
import { type ArgumentName, argumentNames } from '../../src/techniques/all-techniques.ts';

describe('a name is known in its usual spellings', () => {
  const rows: readonly [string, ArgumentName][] = [
    ['HIDDEN SINGLE', 'hidden single'],
    ['naked triples', 'naked triple'],
    ['locked candidates', 'locked candidates'],
    ['Locked Candidate', 'locked candidates'],
    ['pointing pairs', 'pointing pair'],
    ['box/line reduction', 'box-line reduction'],
    ['Box-Line Reductions', 'box-line reduction'],
    ['x wing', 'X-wing'],
    ['XWing', 'X-wing'],
    ['X-WINGS', 'X-wing'],
    ['finned X wing', 'finned X-wing'],
    ['Sashimi-Swordfish', 'sashimi swordfish'],
    ['mutant jellyfish', 'mutant jellyfish'],
    ['skyscrapers', 'skyscraper'],
    ['2-string kite', 'two-string kite'],
    ['two string kites', 'two-string kite'],
    ['X-CHAINS', 'X-chain'],
    ['simple coloring', 'simple colouring'],
    ['Simple Colours', 'simple colouring'],
    ['multicolouring', 'multi-colouring'],
    ['Y-wing', 'XY-wing'],
    ['xy wings', 'XY-wing'],
    ['aic', 'AIC'],
    ['alternating inference chains', 'AIC'],
    ['grouped AICs', 'grouped AIC'],
    ['3D Medusa', 'three-dimensional Medusa'],
    ['als xz', 'ALS-XZ'],
    ['ALSXZ', 'ALS-XZ'],
    ['sue-de-coq', 'Sue de Coq'],
    ['unique rectangle type 1', 'unique rectangle type 1'],
    ['Unique Rectangle, type 4', 'unique rectangle type 4'],
    ['unique rectangles', 'unique rectangle'],
    ['bug+1', 'BUG+1'],
    ['BUG + 1', 'BUG+1'],
    ['BUG+3', 'BUG+n'],
    ['bug+n', 'BUG+n'],
  ];
  it.each(rows)('%s', (text, name) => expect(canonicalName(text)).toBe(name));

  it.each(argumentNames)('%s as it stands', (name) => expect(canonicalName(name)).toBe(name));
  it.each(argumentNames)('%s in capitals', (name) => expect(canonicalName(name.toUpperCase())).toBe(name));
  it.each(argumentNames)('%s without hyphens', (name) => expect(canonicalName(name.replaceAll('-', ' '))).toBe(name));
});

describe('what is not a name', () => {
  const rows: readonly [string, readonly string[]][] = [
    ['flying badger', []],
    ['', []],
    ['BUG+0', ['BUG+n']],
    ['nakd single', ['naked single']],
    ['skyscrapper', ['skyscraper']],
    ['sword fish tank', ['swordfish']],
    ['unique rectangle type 7', ['unique rectangle type 1']],
    ['hiden pair', ['hidden pair']],
  ];
  it.each(rows)('%s', (text, near) => {
    expect(canonicalName(text)).toBeUndefined();
    expect(nearestNames(text, 1)).toEqual(near.length === 0 ? [] : [expect.any(String)]);
    if (near.length > 0) expect(nearestNames(text)).toContain(near[0]);
  });
});
