/** `puzzle`: what it prints and writes, and what it says of calls that cannot be carried out. */
import { existsSync, mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { checkScene } from '../../src/lesson/check-scene.ts';
import { readScene } from '../../src/lesson/read-scene.ts';
import { readBarePuzzle } from '../../src/scene/bare-puzzle.ts';
import { run } from './run.ts';

const folder = mkdtempSync(join(tmpdir(), 'new-puzzle-'));
afterAll(() => rmSync(folder, { recursive: true }));

describe('puzzle', () => {
  it('prints a puzzle a line, the same for the same seed', async () => {
    const words = ['puzzle', '--size', '6', '--count', '3', '--seed'];
    const { status, out, err } = await run(...words, '3');
    expect(status).toBe(0);
    expect(out.trimEnd().split('\n')).toHaveLength(3);
    for (const line of out.trimEnd().split('\n')) expect(readBarePuzzle(line).puzzle?.grid.size).toBe(6);
    expect(err).toContain('seed 3, board 1: ');
    expect((await run(...words, '3')).out).toBe(out);
    expect((await run(...words, '4')).out).not.toBe(out);
  });

  it('needs what is asked for, and says so', async () => {
    const { status, out, err } = await run('puzzle', '--needs', 'naked pair', '--rest', 'locked', '--seed', '7');
    expect([status, out.trimEnd().length]).toEqual([0, 81]);
    expect(err).toMatch(/^seed 7, board \d+: \d+ givens, needs naked pair and nothing else hard\n$/);
  });

  it('writes a scene to begin with, which can be read and holds', async () => {
    const file = join(folder, 'new.yaml');
    expect((await run('puzzle', '--size', '4', '--seed', '1', '-o', file)).status).toBe(0);
    const { scene, diagnostics } = readScene(readFileSync(file, 'utf8'));
    expect(diagnostics).toEqual([]);
    expect(checkScene(scene!).sound).toBe(true);
  });

  it('says plainly that it has found none, and what to try', async () => {
    const file = join(folder, 'none.yaml');
    const words = ['puzzle', '--size', '4', '--needs', 'xy-chain', '--seed', '1', '--seconds', '1', '-o', file];
    const { status, out, err } = await run(...words);
    expect([status, out]).toEqual([2, '']);
    expect(err).toMatch(
      /no puzzle that needs just XY-chain found in 1 s \(seed 1, \d+ boards\).*Try --seconds 5, another --seed/,
    );
    expect(existsSync(file)).toBe(false);
  });

  const rows: readonly (readonly [about: string, call: readonly string[], said: RegExp])[] = [
    [
      'an unknown argument',
      ['puzzle', '--needs', 'skyscrapr'],
      /no argument is called that; did you mean skyscraper\?/,
    ],
    ['what is easy anyway', ['puzzle', '--needs', 'hidden single'], /belongs to the easy part/],
    [
      'what is easy with --rest locked',
      ['puzzle', '--needs', 'claiming', '--rest', 'locked'],
      /belongs to the easy part/,
    ],
    ['a size that is none', ['puzzle', '--size', '7'], /4, 6, 8 or 9/],
    ['a symmetry that is none', ['puzzle', '--symmetry', 'rotation'], /did you mean rotational\?/],
    ['a seed that is none', ['puzzle', '--seed', 'x'], /a whole number from 0/],
    ['no puzzles', ['puzzle', '--count', '0'], /a whole number from 1/],
    ['a scene of many', ['puzzle', '--count', '2', '-o', 'a.yaml'], /leave one of them out/],
    ['a scene that is none', ['puzzle', '-o', 'a.txt'], /ends in .yaml/],
    ['what the audience is not to meet', ['puzzle', '--needs', 'x-wing', '--without', 'x-wing'], /no plan takes it/],
  ];
  it.each(rows)('refuses %s', async (_, call, said) => {
    expect(await run(...call)).toEqual({ status: 2, out: '', err: expect.stringMatching(said) });
  });
});
