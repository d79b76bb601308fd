/** `puzzle`: what it prints and writes, and what it says of calls that cannot be carried out. */
import { existsSync, mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { checkScene } from '../../src/check/check-scene.ts';
import { type PuzzleCall, puzzle } from '../../src/commands/puzzle.ts';
import { readBarePuzzle } from '../../src/scene/bare-puzzle.ts';
import { readScene } from '../../src/scene/read.ts';
import { keptTerminal } from './run.ts';

const folder = mkdtempSync(join(tmpdir(), 'new-puzzle-'));
afterAll(() => rmSync(folder, { recursive: true }));

async function call(
  options: PuzzleCall,
): Promise<{ readonly status: number; readonly out: string; readonly err: string }> {
  const terminal = keptTerminal();
  const status = await puzzle(options, terminal);
  return { status, ...terminal.said };
}

describe('puzzle', () => {
  it('prints a puzzle a line, the same for the same seed', async () => {
    const options = { size: '6', seed: '3', count: '3' };
    const { status, out, err } = await call(options);
    expect(status).toBe(0);
    expect(out.trimEnd().split('\n')).toHaveLength(3);
    for (const line of out.trimEnd().split('\n')) expect(readBarePuzzle(line).puzzle?.grid.size).toBe(6);
    expect(err).toContain('seed 3, board 1: ');
    expect((await call(options)).out).toBe(out);
    expect((await call({ ...options, seed: '4' })).out).not.toBe(out);
  });

  it('needs what is asked for, and says so', async () => {
    const { status, out, err } = await call({ needs: 'naked pair', rest: 'locked', seed: '7' });
    expect([status, out.trimEnd().length]).toEqual([0, 81]);
    expect(err).toMatch(/^seed 7, board \d+: \d+ givens, needs naked pair and nothing else hard\n$/);
  });

  it('writes a scene to begin with, which can be read and holds', async () => {
    const file = join(folder, 'new.yaml');
    expect((await call({ size: '4', seed: '1', out: file })).status).toBe(0);
    const { scene, diagnostics } = readScene(readFileSync(file, 'utf8'));
    expect(diagnostics).toEqual([]);
    expect(checkScene(scene!).sound).toBe(true);
  });

  it('says plainly that it has found none, and what to try', async () => {
    const options = { size: '4', needs: 'xy-chain', seed: '1', seconds: '1', out: join(folder, 'none.yaml') };
    const { status, out, err } = await call(options);
    expect([status, out]).toEqual([2, '']);
    expect(err).toMatch(
      /no puzzle that needs just XY-chain found in 1 s \(seed 1, \d+ boards\).*Try --seconds 5, another --seed/,
    );
    expect(existsSync(options.out)).toBe(false);
  });

  const rows: readonly (readonly [about: string, options: PuzzleCall, said: RegExp])[] = [
    ['an unknown argument', { needs: 'skyscrapr' }, /no argument is called that; did you mean skyscraper\?/],
    ['what is easy anyway', { needs: 'hidden single' }, /belongs to the easy part/],
    ['what is easy with --rest locked', { needs: 'claiming', rest: 'locked' }, /belongs to the easy part/],
    ['a size that is none', { size: '7' }, /4, 6, 8 or 9/],
    ['a symmetry that is none', { symmetry: 'rotation' }, /did you mean rotational\?/],
    ['a seed that is none', { seed: 'x' }, /a whole number from 0/],
    ['no puzzles', { count: '0' }, /a whole number from 1/],
    ['a scene of many', { count: '2', out: 'a.yaml' }, /leave one of them out/],
    ['a scene that is none', { out: 'a.txt' }, /ends in .yaml/],
    ['what the audience is not to meet', { needs: 'x-wing', without: 'x-wing' }, /no plan takes it/],
  ];
  it.each(rows)('refuses %s', async (_, options, said) => {
    await expect(call(options)).rejects.toThrow(said);
  });
});
