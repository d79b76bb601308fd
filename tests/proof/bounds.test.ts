/**
 * Where the search gives up, nothing is claimed: neither that a link holds nor that a pattern is deadly. A search without
 * a bound would say the opposite each time.
 */
import { describe, expect, it } from 'vitest';
import { type Candidate, membersOf } from '../../src/grid/candidates.ts';
import { cellAt } from '../../src/grid/geometry.ts';
import { candidateAt, type Digit, gridOf } from '../../src/grid/grid.ts';
import { parseDeadly } from '../../src/grid/notation/deadly.ts';
import type { ChainNode } from '../../src/grid/terms.ts';
import { type Choice, choiceBound, choose } from '../../src/proof/choice.ts';
import { guardiansOf } from '../../src/proof/guardians.ts';
import { begin, digitsIn, takeAsRead } from '../../src/proof/kernel.ts';
import { judgeStrong, judgeWeak } from '../../src/proof/links.ts';

const nine = gridOf('3x3');
const cell = (row: number, column: number) => cellAt(nine, row, column);
const digitsTo = (last: number): readonly Digit[] => nine.digits.slice(0, last);

const removed = (candidates: readonly Candidate[]) =>
  candidates.reduce(
    (position, candidate) => takeAsRead(position, { kind: 'impossible', candidate }),
    begin(nine, [], { oneSolution: true }),
  );
const inRow = [1, 2, 3, 4, 5, 6, 7, 8].map((column) => cell(1, column));
/** They see none of those. */
const below = [4, 5, 7, 8].map((row) => cell(row, 9));

describe('a link that is too large to decide', () => {
  it('does not hold where it is weak, though both ends cannot be true', () => {
    // Nine digits have eight places in row 1: some hundred thousand tries, for each choice of the cells below.
    const last = cell(1, 9);
    const position = removed(nine.digits.map((digit) => candidateAt(nine, last, digit)));
    const crowded: ChainNode = { digits: nine.digits, cells: [...inRow, last] };
    expect(judgeWeak(position, crowded, { digits: digitsTo(5), cells: below })).toEqual({ holds: false, brokenBy: [] });
    expect(judgeWeak(position, crowded, { digits: digitsTo(1), cells: below.slice(0, 1) }).holds).toBe(true);
  });

  it('does not hold where it is strong, though both ends cannot be false', () => {
    // Without 8 and 9 the eight cells of row 1 share seven digits, whichever of six the cells below take.
    const position = removed(below.flatMap((one) => [7, 8, 9].map((d) => candidateAt(nine, one, nine.digits[d - 1]!))));
    const judged = (cells: ChainNode['cells']) => {
      const [a, b] = [8, 9].map((d): ChainNode => ({ digits: [nine.digits[d - 1]!], cells }));
      return judgeStrong(position, a!, b!, []);
    };
    expect(judged([...inRow, ...below])).toMatchObject({ holds: false });
    expect(judged(inRow)).toMatchObject({ holds: true, brokenBy: [] });
  });
});

describe('the bound of the search', () => {
  const start = begin(nine, [], { oneSolution: true });
  const sets = [1, 2, 3].map((column) => membersOf(digitsIn(start, cell(1, column)).members).slice(0, 2));

  it('is reached by one candidate more than it allows, and not by as many', () => {
    // Three cells share two digits: two tries, then one each, which leave the third none.
    const kindWith = (bound: number): Choice['kind'] => choose(nine, sets, [], bound).kind;
    expect([1, 2, 3, 4].map(kindWith)).toEqual(['too-large', 'too-large', 'too-large', 'none']);
    expect(choose(nine, sets)).toEqual({ kind: 'none', cases: 2 });
  });

  it('is a million candidates where nothing else is said', () => {
    expect(choiceBound).toBe(1_000_000);
  });
});

it('a pattern of too many fillings is no deadly pattern', () => {
  const read = parseDeadly(nine, '123456789r12c123456789');
  if (!read.ok) throw new Error(read.faults[0]?.message);
  expect(guardiansOf(begin(nine, [], { oneSolution: true }), read.value)).toEqual({
    refused: 'it has too many fillings to decide',
  });
});
