import { describe, expect, it } from 'vitest';
import { type Candidate, difference, has, isEmpty, membersOf, setOf } from '../../src/grid/candidates.ts';
import { cellAt, digit, houseAt } from '../../src/grid/geometry.ts';
import { candidateAt, type Grid, gridOf } from '../../src/grid/grid.ts';
import { parseConclusions } from '../../src/grid/notation/conclusions.ts';
import { parseSets } from '../../src/grid/notation/sets.ts';
import type { Conclusion, SetName } from '../../src/grid/terms.ts';
import { choose } from '../../src/proof/choice.ts';
import {
  after,
  begin,
  digitsIn,
  eitherOf,
  type OneOf,
  type Outcome,
  oneOf,
  type Position,
  type Proof,
  placesIn,
  prove,
  takeAsRead,
} from '../../src/proof/kernel.ts';
import { chanceFrom } from '../random.ts';
import { reachedBy } from './forgeries/forging.ts';
import { randomConclusion, randomPosition, randomSets, randomSolution } from './positions.ts';
import { satisfiabilityOn } from './satisfiability.ts';

const nine = gridOf('3x3');

function setsOf(position: Position, text: string): OneOf[] {
  const read = parseSets(position.grid, text);
  if (!read.ok) throw new Error(read.faults[0]?.message);
  return read.value.map(({ name }) => setNamed(position, name));
}

function setNamed(position: Position, name: SetName): OneOf {
  if (name.kind === 'cell') return digitsIn(position, name.cell);
  if (name.kind === 'places') return placesIn(position, name.digit, name.house);
  throw new Error('no step here');
}

function conclusionOf(grid: Grid, text: string): Conclusion {
  const read = parseConclusions(grid, text);
  if (!read.ok) throw new Error(read.faults[0]?.message);
  return read.value[0]!.conclusion;
}

/** A position with only these candidates removed from the empty grid. */
function positionWithout(removed: string): Position {
  const start = begin(nine, [], { oneSolution: true });
  if (removed === '') return start;
  const read = parseConclusions(nine, removed);
  if (!read.ok) throw new Error(read.faults[0]?.message);
  return read.value.reduce((at, { conclusion }) => takeAsRead(at, conclusion), start);
}

const skyscraper = 'r234678c5<>7 r234679c8<>7';
const nakedQuad = 'r1c1<>56789 r1c2<>56789 r1c3<>56789 r1c4<>56789';

describe('the rule, on arguments of common practice', () => {
  const rows: readonly [what: string, removed: string, from: string, so: string, kind: Outcome['kind']][] = [
    ['a skyscraper clears what sees both roof ends', `${skyscraper} r5c5<>7 r5c8<>7`, '7c58', 'r8c6<>7', 'proved'],
    ['but not what sees one of them', `${skyscraper} r5c5<>7 r5c8<>7`, '7c58', 'r1c1<>7', 'not-shown'],
    ['a third place in a tower breaks it', `${skyscraper} r5c8<>7`, '7c58', 'r8c6<>7', 'not-shown'],
    ['at least one roof end is true', `${skyscraper} r5c58<>7`, '7c58', 'either 7r9c5 7r8c8', 'proved'],
    ['neither roof end alone is proved', `${skyscraper} r5c58<>7`, '7c58', 'r9c5=7', 'not-shown'],
    ['four cells with four digits clear the row', nakedQuad, 'r1c1234', 'r1c9<>1', 'proved'],
    ['three of them do not', nakedQuad, 'r1c123', 'r1c9<>1', 'not-shown'],
    ['one elimination from one box: three places in a row', 'r2c123<>4 r3c123<>4', '4b1', 'r1c7<>4', 'proved'],
    ['a place outside the row spoils it', 'r2c12<>4 r3c123<>4', '4b1', 'r1c7<>4', 'not-shown'],
    ['two digits with the same two places clear the cells of others', 'r1c3456789<>12', '12r1', 'r1c1<>7', 'proved'],
    ['the last place in a house', 'r1c12345678<>3', '3r1', 'r1c9=3', 'proved'],
    ['the last digit of a cell', 'r1c1<>12345678', 'r1c1', 'r1c1=9', 'proved'],
    ['a candidate that is gone is spent', 'r1c1<>1', 'r1c1', 'r1c1<>1', 'spent'],
    ['no set proves nothing', '', '', 'r1c1<>1', 'not-shown'],
  ];
  // The first rows of a skyscraper need their feet in one row: r1c5 and r1c8 stay open.
  it.each(rows)('%s', (_, removed, from, so, kind) => {
    const position = positionWithout(removed);
    const sets = from === '' ? [] : setsOf(position, from);
    const conclusion = conclusionOf(nine, so);
    const outcome = prove(position, sets, conclusion);
    expect(outcome.kind).toBe(kind);
    if (outcome.kind === 'not-shown') expectEscape(nine, sets, conclusion, outcome.counterexample);
  });
});

/** A counterexample: one from every set, free of conflicts, and at odds with the conclusion. */
function expectEscape(grid: Grid, sets: readonly OneOf[], conclusion: Conclusion, chosen: readonly Candidate[]): void {
  const all = conclusion.kind === 'impossible' ? [...chosen, conclusion.candidate] : chosen;
  for (const a of all) for (const b of all) expect(has(grid.conflicts[a]!, b)).toBe(false);
  for (const set of sets) expect(chosen.some((candidate) => has(set.members, candidate))).toBe(true);
  if (conclusion.kind === 'one-of')
    for (const candidate of chosen) expect(has(conclusion.candidates, candidate)).toBe(false);
}

describe('the kernel makes its own things only', () => {
  const position = begin(nine, [], { oneSolution: true });
  const other = begin(nine, [], { oneSolution: true });
  const cell = cellAt(nine, 1, 1);
  const place = oneOf(nine, candidateAt(nine, cell, digit(nine, 5)));

  it('refuses a spread copy of a position', () => {
    expect(() => digitsIn({ ...position }, cell)).toThrow('a position that the kernel did not make');
  });
  it('refuses a set of another position', () => {
    expect(() => prove(position, [digitsIn(other, cell)], place)).toThrow('a set from another position');
  });
  it('refuses a proof of another position', () => {
    const bare = takeAsRead(position, place);
    const outcome = prove(bare, [digitsIn(bare, cell)], {
      kind: 'impossible',
      candidate: candidateAt(nine, cellAt(nine, 1, 2), digit(nine, 4)),
    });
    expect(outcome.kind).toBe('not-shown');
    const forged = { conclusion: place, assumesOneSolution: false } as unknown as Proof;
    expect(() => after(position, [forged])).toThrow('a proof from another position');
  });
  it('refuses a proof that was made in another position, though it be of the same board', () => {
    const here = positionWithout('r1c1<>12346789');
    const outcome = prove(here, [digitsIn(here, cell)], place);
    if (outcome.kind !== 'proved') throw new Error(outcome.kind);
    expect(reachedBy(here, outcome.proof).placed).toEqual(setOf(nine, [candidateAt(nine, cell, digit(nine, 5))]));
    for (const elsewhere of [position, positionWithout('r1c1<>12346789')])
      expect(() => reachedBy(elsewhere, outcome.proof)).toThrow('a proof from another position');
  });
  it('refuses an either/or that was not proved', () => {
    expect(() => eitherOf(position, place)).toThrow('an either/or that was not proved');
  });
  it('meets an empty set with a fault of the program, not with a proof', () => {
    const emptied = positionWithout('r1c1<>123456789');
    expect(() => digitsIn(emptied, cell)).toThrow('something untrue has entered the position');
  });
  it('keeps what was taken as read on the position', () => {
    expect(takeAsRead(position, place).takenAsRead).toEqual([place]);
  });
});

describe('an either/or', () => {
  const position = positionWithout(`${skyscraper} r5c58<>7`);
  const either = conclusionOf(nine, 'either 7r9c5 7r8c8');
  const outcome = prove(position, setsOf(position, '7c58'), either);

  it('is a set of every later position', () => {
    if (outcome.kind !== 'proved') throw new Error(outcome.kind);
    const later = after(position, [outcome.proof]);
    const set = eitherOf(later, outcome.proof);
    expect(prove(later, [set], conclusionOf(nine, 'r8c6<>7')).kind).toBe('proved');
    expect(() => eitherOf(begin(nine, [], { oneSolution: true }), outcome.proof)).toThrow();
  });
});

describe('against a general SAT solver', () => {
  it.each(['2x2', '2x3', '3x3'] as const)(
    'decides the same on random positions, sets and conclusions of %s',
    (boxes) => {
      const grid = gridOf(boxes);
      const satisfiable = satisfiabilityOn(grid);
      const outcomes = { proved: 0, 'not-shown': 0, spent: 0, 'too-large': 0 };
      for (let seed = 1; seed <= 120; seed++) {
        const chance = chanceFrom(seed * 7919);
        const solution = randomSolution(grid, chance);
        const isTrue = setOf(grid, solution);
        const position = randomPosition(grid, solution, chance);
        for (let round = 0; round < 20; round++) {
          const sets = randomSets(position, 1 + chance.below(8), chance);
          const conclusion = randomConclusion(position, sets, chance);
          const outcome = prove(position, sets, conclusion);
          outcomes[outcome.kind]++;
          if (outcome.kind === 'spent') continue;
          const groups = sets.map((set) => membersOf(set.members));
          const denied =
            conclusion.kind === 'impossible'
              ? { isTrue: [conclusion.candidate] }
              : { isFalse: membersOf(conclusion.candidates) };
          expect(outcome.kind === 'not-shown').toBe(satisfiable({ groups, ...denied }));
          if (outcome.kind === 'not-shown') expectEscape(grid, sets, conclusion, outcome.counterexample);
          if (outcome.kind === 'proved') {
            // The position keeps this solution, so nothing that it contradicts may be proved.
            if (conclusion.kind === 'impossible') expect(has(isTrue, conclusion.candidate)).toBe(false);
            else
              expect(
                isEmpty(difference(conclusion.candidates, isTrue)) ||
                  membersOf(conclusion.candidates).some((c) => has(isTrue, c)),
              ).toBe(true);
            const more = [...sets, ...randomSets(position, 2, chance)];
            expect(prove(position, more, conclusion).kind).toBe('proved');
          }
        }
      }
      expect(outcomes.proved).toBeGreaterThan(60);
      expect(outcomes['not-shown']).toBeGreaterThan(60);
    },
  );

  it('the order of the sets and the dropping of settled ones change no answer', () => {
    const grid = gridOf('2x3');
    for (let seed = 1; seed <= 200; seed++) {
      const chance = chanceFrom(seed);
      const position = randomPosition(grid, randomSolution(grid, chance), chance);
      const sets = randomSets(position, 6, chance).map((set) => membersOf(set.members));
      const plain = plainChoice(grid, sets, []);
      expect(choose(grid, sets).kind === 'free').toBe(plain);
      expect(choose(grid, chance.shuffled(sets)).kind === 'free').toBe(plain);
    }
  });
});

/** The rule read aloud: the first set's candidates in turn, then the next set's, no ordering, nothing dropped. */
function plainChoice(grid: Grid, sets: readonly (readonly Candidate[])[], chosen: readonly Candidate[]): boolean {
  const [first, ...others] = sets;
  if (first === undefined) return true;
  return first.some(
    (candidate) =>
      !chosen.some((other) => has(grid.conflicts[candidate]!, other)) &&
      plainChoice(grid, others, [...chosen, candidate]),
  );
}

describe('the search has a bound', () => {
  it('says that it is too large, and neither proves nor refutes', () => {
    const position = begin(nine, [], { oneSolution: true });
    const sets = nine.cells.map((cell) => digitsIn(position, cell));
    const outcome = prove(
      position,
      sets,
      { kind: 'impossible', candidate: candidateAt(nine, cellAt(nine, 1, 1), digit(nine, 1)) },
      10,
    );
    expect(outcome.kind).toBe('too-large');
  });
});

it('a placement takes away what it sees, and nothing else', () => {
  const position = begin(nine, [candidateAt(nine, cellAt(nine, 5, 5), digit(nine, 7))], { oneSolution: true });
  const seven = digit(nine, 7);
  expect(membersOf(placesIn(position, seven, houseAt(nine, 'row', 1)!).members)).toHaveLength(8);
  expect(membersOf(digitsIn(position, cellAt(nine, 5, 5)).members)).toHaveLength(1);
  expect(membersOf(digitsIn(position, cellAt(nine, 1, 1)).members)).toHaveLength(9);
});
