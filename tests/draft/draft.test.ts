/** Drafts: sound as they are written, lists written late, and words that say what is proved. */
import { describe, expect, it } from 'vitest';
import { startPosition } from '../../src/check/start-position.ts';
import { has } from '../../src/grid/candidates.ts';
import { candidateAt } from '../../src/grid/grid.ts';
import { possibleFrom, solutionsOf } from '../../src/grid/solutions.ts';
import { chanceFrom } from '../../src/puzzles/chance.ts';
import { anyPuzzle, printGivens } from '../../src/puzzles/new-puzzle.ts';
import { board, drafted, faultsOf } from './drafted.ts';

const skyscraper = '..27..1..8......5....6.8.....5.....99.....2.8...2.1..7.5..2.6....7.3..2..86......';
const rows: readonly (readonly [about: string, symbols: string, ids: readonly string[]])[] = [
  ['singles alone', '64.8.2..9...9....1.....6......3....4....4.8...81..........3..9...5.2.17.....9.6.2', ['opening']],
  ['an argument of places', skyscraper, ['opening', 'skyscraper-places', 'skyscraper', 'opened', 'home']],
  [
    'an argument of cells',
    '..71.........7.53.8...2.7..2..3....1..3..1..5.1.2.8.4.6495.......8..2.6....49....',
    ['opening', 'naked-pair-lists', 'naked-pair', 'opened', 'home'],
  ],
  [
    'a rectangle',
    '..5..426...4.........92.7.....3....8......59..6.5.....2....3.1...3.46.2.4...7.8.6',
    ['opening', 'unique-rectangle-type-1-lists', 'unique-rectangle-type-1', 'opened', 'home'],
  ],
  ['a small board', '..13.......14...', ['opening']],
];

describe('a draft', () => {
  it.each(rows)('of %s has these steps, and holds', (_, symbols, ids) => {
    const made = drafted(symbols, { steps: 300 });
    expect(faultsOf(made)).toEqual([]);
    expect(made.draft.steps.map(({ id }) => id)).toEqual(ids);
  });

  it.each([2, 6, 8, 11, 16, 21, 22, 30])('of any puzzle (seed %i) holds, and leads to the solution', (seed) => {
    const givens = anyPuzzle(board, 'none', chanceFrom(seed));
    const made = drafted(printGivens(givens), { language: seed % 2 === 0 ? 'en' : 'de' });
    expect(faultsOf(made)).toEqual([]);
    const [solution] = solutionsOf(board, possibleFrom(board, givens), 2);
    let left = startPosition({ grid: board, givens, start: [] }, true).possible;
    for (const step of made.checked.steps) left = step.placedBefore;
    const placed = made.scene.steps.flatMap(({ cascade }) => cascade.flatMap(({ conclusions }) => conclusions));
    const isWhole = made.plan.outcome !== 'stuck' && made.plan.outcome !== 'unfinished';
    const given = givens.filter((each) => each !== undefined).length;
    if (isWhole) expect(given + placed.length).toBe(81);
    for (const cell of board.cells) {
      for (const digit of board.digits) {
        const candidate = candidateAt(board, cell, digit);
        if (has(left, candidate)) expect(has(solution!, candidate), `${candidate}`).toBe(true);
      }
    }
  });

  it('covers every step of the plan once, in its order', () => {
    const { plan, draft } = drafted(skyscraper);
    expect(draft.steps.flatMap(({ covers }) => covers)).toEqual([...plan.steps.keys()]);
  });

  it('writes the list of a cell once, right before the first argument that rests on it', () => {
    const { scene, checked } = drafted(printGivens(anyPuzzle(board, 'none', chanceFrom(8))));
    const written = scene.steps.flatMap((step, index) =>
      step.pencil.flatMap(({ lists }) => lists.map(({ cell }) => ({ cell, index }))),
    );
    expect(written.length).toBeGreaterThan(4);
    expect(new Set(written.map(({ cell }) => cell)).size).toBe(written.length);
    for (const { cell, index } of written) {
      const next = checked.steps[index + 1]!;
      const cells = next.argument.sets.map(({ name }) => name);
      const [row, column] = [Math.floor(cell / 9) + 1, (cell % 9) + 1];
      expect(cells, scene.steps[index]!.id).toContain(`r${row}c${column}`);
    }
  });

  it('says nothing of a digit that is not easy where nothing is', () => {
    const { draft } = drafted('7.1..8.9.........3..21......6..139..3..769..5..985..3......15..2.........4.6..3.8');
    expect(draft.steps[0]).toMatchObject({
      id: 'start',
      say: '27 digits are given, and not one more goes in on its own.',
    });
  });

  it('keeps words that YAML would cut in quotes', () => {
    const { draft } = drafted(skyscraper);
    const odd = draft.textWith([{ id: 'a', title: 'One: two # three', say: '"Quoted", and so on', covers: [] }]);
    expect(odd).toContain('title: "One: two # three"');
    expect(odd).toContain('say: "\\"Quoted\\", and so on"');
  });
});
