/** What an audience knows, what teaching costs and how long to look: the same options of four verbs. */
import { readFileSync, writeFileSync } from 'node:fs';
import { afterAll, describe, expect, it } from 'vitest';
import { possibleFrom, solutionsOf } from '../../src/grid/solutions.ts';
import { readBarePuzzle } from '../../src/scene/bare-puzzle.ts';
import { scratchFolder } from '../output/outside.ts';
import { run } from './run.ts';

const scratch = scratchFolder();
afterAll(scratch.remove);
const towers = 'scenes/two-towers.yaml';
/** A skyscraper carries it by the table that comes with proofreel; here a turbot fish is all that has a price. */
const costs = scratch.at('costs.yaml');
writeFileSync(costs, 'step: 2\nfree: [full house, hidden single, naked single]\nnames:\n  turbot fish: 3\n');

interface Found {
  readonly found: readonly { readonly name: string; readonly otherNames: readonly string[]; readonly cost: number }[];
  readonly finished: boolean;
}

describe('alternatives', () => {
  const listed = async (...call: readonly string[]): Promise<Found> => {
    const { status, out } = await run(...call, '--json');
    expect(status).toBe(0);
    return JSON.parse(out) as Found;
  };
  const here = ['--at', 'singles', '--so', 'r5c1<>3'];

  it('--know keeps to what the audience knows, --without leaves out', async () => {
    const all = await listed('alternatives', towers, ...here);
    expect(all.found.map(({ name }) => name)).toContain('skyscraper');
    const known = await listed('alternatives', towers, ...here, '--know', 'skyscraper');
    expect(known.found.map(({ name }) => name)).toEqual(known.found.map(() => 'skyscraper'));
    expect(known.found.length).toBeGreaterThan(0);
    const rest = await listed('alternatives', towers, ...here, '--without', 'skyscraper');
    expect(rest.found.map(({ name }) => name)).not.toContain('skyscraper');
  });

  it('--costs counts by another table', async () => {
    const { found } = await listed('alternatives', towers, ...here, '--costs', costs);
    expect([...new Set(found.map(({ name, cost }) => `${name} ${cost}`))]).toEqual(['turbot fish 5']);
  });

  it('--seconds ends the search, and says so', async () => {
    expect((await listed('alternatives', towers, ...here)).finished).toBe(true);
    expect((await listed('alternatives', towers, ...here, '--seconds', '0.000001')).finished).toBe(false);
  });
});

describe('draft', () => {
  const names = async (...call: readonly string[]): Promise<readonly string[]> => {
    await run(...call, '-o', scratch.at('draft.yaml'));
    return [...readFileSync(scratch.at('draft.yaml'), 'utf8').matchAll(/because: (.*)$/gm)].map(
      ([, name]) => name ?? '',
    );
  };

  it('--know, --without and --costs choose the arguments', async () => {
    expect(await names('draft', towers)).toEqual(['skyscraper']);
    expect(await names('draft', towers, '--know', 'turbot fish')).toEqual(['turbot fish']);
    expect(await names('draft', towers, '--without', 'skyscraper')).not.toContain('skyscraper');
    expect(await names('draft', towers, '--costs', costs)).toEqual(['turbot fish']);
  });

  it('--seconds ends the search for a less costly path', async () => {
    const { err } = await run('draft', towers, '-o', scratch.at('draft.yaml'), '--seconds', '0.000001');
    expect(err).not.toContain('proved to be the least');
    expect((await run('draft', towers, '-o', scratch.at('draft.yaml'))).err).toContain('proved to be the least');
  });
});

describe('plan', () => {
  it('--seconds ends the search for a less costly path', async () => {
    expect((await run('plan', towers, '--seconds', '0.000001')).out).not.toMatch(/^least/);
  });
});

describe('puzzle', () => {
  const call = ['--size', '4', '--seed', '5', '--seconds', '30'];

  it('--minimal: without any one of its givens it has several solutions', async () => {
    const { out } = await run('puzzle', ...call, '--minimal');
    const symbols = out.trim();
    for (let cell = 0; cell < symbols.length; cell++) {
      if (symbols[cell] === '.') continue;
      const { puzzle } = readBarePuzzle(`${symbols.slice(0, cell)}.${symbols.slice(cell + 1)}`);
      expect(solutionsOf(puzzle!.grid, possibleFrom(puzzle!.grid, puzzle!.givens), 2).length).toBeGreaterThan(1);
    }
  });

  it('--know and --costs say which arguments there are to need', async () => {
    const needs = ['--needs', 'x-wing'];
    expect((await run('puzzle', ...call, ...needs, '--know', 'skyscraper')).err).toMatch(/x-wing: no plan takes it/i);
    expect((await run('puzzle', ...call, ...needs, '--costs', costs)).err).toMatch(/x-wing: no plan takes it/i);
  });

  it('--seconds gives up', async () => {
    const { status, err } = await run('puzzle', '--size', '4', '--needs', 'xy-chain', '--seed', '1', '--seconds', '1');
    expect([status, err]).toEqual([2, expect.stringContaining('found in 1 s (seed 1')]);
  });
});
