/** A hundred puzzles drafted, and every claim of every draft proved. */
import { describe, expect, it } from 'vitest';
import { chanceFrom } from '../../src/puzzles/chance.ts';
import { anyPuzzle, printGivens } from '../../src/puzzles/new-puzzle.ts';
import { board, drafted, faultsOf } from './drafted.ts';

describe('a hundred drafts', () => {
  it.each(Array.from({ length: 100 }, (_, index) => 100 + index))('seed %i', (seed) => {
    const givens = anyPuzzle(board, seed % 3 === 0 ? 'rotational' : 'none', chanceFrom(seed));
    const made = drafted(printGivens(givens), { language: seed % 2 === 0 ? 'en' : 'de', steps: 40 });
    expect(faultsOf(made)).toEqual([]);
  });
});
