/** Forgeries by the tables of a grid, and by numbers that are not a cell, digit or candidate of it. */
import { type Candidate, setOf } from '../../../src/grid/candidates.ts';
import { boardRules, type Cell, type Digit, type Grid, gridOf, gridWith } from '../../../src/grid/grid.ts';
import { begin, digitsIn, placesIn, takeAsRead } from '../../../src/proof/kernel.ts';
import { assign, at, type Forgery, grid, passed, proofOf, refusesAll, start, succeeds } from './forging.ts';

/** Whether a table can be written to; what was there is put back. */
function isChanged(table: (own: Grid) => object, key: PropertyKey): boolean {
  const own = gridWith({ regions: '2x3', rules: ['anti-king'] });
  const [before, target] = [JSON.stringify(own), table(own)];
  const was: unknown = Reflect.get(target, key);
  Reflect.set(target, key, 7);
  const changed = JSON.stringify(own) !== before;
  if (changed) Reflect.set(target, key, was);
  return changed;
}

/** Each kind of number that is none of the grid's; `value` as a candidate, a cell or a digit. */
function numbers(what: string, value: unknown): Forgery[] {
  return [
    [
      `a candidate that is ${what}`,
      () => succeeds(() => takeAsRead(start, { kind: 'impossible', candidate: passed<Candidate>(value) })),
    ],
    [`a given that is ${what}`, () => succeeds(() => begin(grid, [passed<Candidate>(value)], { oneSolution: true }))],
    [`a cell that is ${what}`, () => succeeds(() => digitsIn(start, passed<Cell>(value)))],
    [`a digit that is ${what}`, () => succeeds(() => placesIn(start, passed<Digit>(value), grid.houses[0]!))],
  ];
}

refusesAll([
  ['a bit in the table of conflicts', () => isChanged((own) => own.conflicts[0]!, 0)],
  ['a row of the table of conflicts', () => isChanged((own) => own.conflicts, 0)],
  ['a cell of a house', () => isChanged((own) => own.houses[0]!.cells, 0)],
  ['the kind of a house', () => isChanged((own) => own.houses[0]!, 'kind')],
  ['a house', () => isChanged((own) => own.houses, 0)],
  ['a house of a cell', () => isChanged((own) => own.housesOf[0]!, 0)],
  ['the houses of a cell', () => isChanged((own) => own.housesOf, 0)],
  ['a peer of a cell', () => isChanged((own) => own.peers[0]!, 0)],
  ['the peers of a cell', () => isChanged((own) => own.peers, 0)],
  ['a digit of the board', () => isChanged((own) => own.digits, 0)],
  ['a cell of the board', () => isChanged((own) => own.cells, 0)],
  ['the size of the board', () => isChanged((own) => own, 'size')],
  ['the whole table of conflicts', () => isChanged((own) => own, 'conflicts')],
  [
    'a grid with conflicts of its own',
    () =>
      succeeds(() => begin(passed<Grid>(Object.create(grid, { conflicts: { value: [] } })), [], { oneSolution: true })),
  ],
  [
    'a house with cells of its own',
    () => succeeds(() => placesIn(start, grid.digits[0]!, { ...grid.houses[0]!, cells: [grid.cells[0]!] })),
  ],
  [
    'a house of another board',
    () => {
      const [diagonal] = gridWith({ regions: '2x2', rules: ['diagonals'] }).houses.slice(-1);
      return succeeds(() => placesIn(start, grid.digits[0]!, diagonal!));
    },
  ],
  [
    'regions that pass for the boxes of another board',
    () => {
      const rows = Array.from({ length: 64 }, (_, cell) => (cell * 3) % 8);
      const forged = gridWith({ regions: Object.assign(rows, { toJSON: () => '2x4' }), rules: [] });
      return gridOf('2x4') === forged;
    },
  ],
  [
    'a rule struck from the list of rules',
    () => {
      const first: string = boardRules[0];
      assign(boardRules, { 0: 'none' });
      const isLost = gridWith({ regions: '2x4', rules: ['diagonals'] }).houses.length === 24;
      assign(boardRules, { 0: first });
      return isLost;
    },
  ],
  ...numbers('NaN', Number.NaN),
  ...numbers('negative', -1),
  ...numbers('a fraction that comes out whole', 0.25),
  ...numbers('infinite', Number.POSITIVE_INFINITY),
  ...numbers('beyond the grid', 64),
  ...numbers('a text', '1'),
  ...numbers('a thing that turns into a number', { valueOf: () => 1 }),
  [
    'a proof that one of no candidates is true',
    () => {
      const cell = digitsIn(start, grid.cells[0]!);
      return succeeds(() => proofOf(start, [cell], { kind: 'one-of', candidates: setOf(grid, []) }));
    },
  ],
  [
    'one of no candidates, taken as read',
    () => succeeds(() => takeAsRead(start, { kind: 'one-of', candidates: setOf(grid, []) })),
  ],
  [
    'one of candidates of a larger board',
    () => {
      const candidates = setOf(gridOf('3x3'), [at(0, 1), passed<Candidate>(700)]);
      return succeeds(() => takeAsRead(start, { kind: 'one-of', candidates }));
    },
  ],
]);
