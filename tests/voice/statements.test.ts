/**
 * What is taken for a statement about the board, and what is heard as loose talk.
 */
import { describe, expect, it } from 'vitest';
import { gridOf } from '../../src/grid/grid.ts';
import { printCell, printHouse } from '../../src/grid/notation/print.ts';
import { type Statement, statementsIn } from '../../src/voice/statements.ts';

const grid = gridOf('3x3');

/** Cells on their own are left out of the first table: nearly every sentence names some. */
function heard(sentence: string, { cells = false } = {}): string {
  const statements = statementsIn(sentence.split(' '), grid);
  return statements
    .filter(({ kind }) => cells || kind !== 'cell')
    .map(printed)
    .join(', ');
}

function printed(statement: Statement): string {
  switch (statement.kind) {
    case 'cell':
      return printCell(grid, statement.cell);
    case 'placed':
      return `${printCell(grid, statement.cell)}=${statement.digit}`;
    case 'removed':
      return `${statement.cell === undefined ? '' : printCell(grid, statement.cell)}<>${statement.digit}`;
    case 'places':
      return `${statement.digit}${printHouse(statement.house)}`;
    case 'name':
      return `${statement.isReference ? 'the ' : ''}${statement.name}`;
    default:
      return statement satisfies never;
  }
}

describe('a sentence that states something', () => {
  it.each([
    ['Row three, column five is a seven.', 'r3c5=7'],
    ['So the seven goes in r3c5.', 'r3c5=7'],
    ['Put a 7 in row 3 column 5.', 'r3c5=7'],
    ['R3C5 must be seven.', 'r3c5=7'],
    ['So 7 is placed in r3c5.', 'r3c5=7'],
    ['Now r1c1 becomes 6, r1c2 becomes 7.', 'r1c1=6, r1c2=7'],
    ['A one in r4c4 is written.', 'r4c4=1'],
    ['So r3c5 is not a seven.', 'r3c5<>7'],
    ['There is no seven in row three column five.', 'r3c5<>7'],
    ['The seven goes from r3c5.', 'r3c5<>7'],
    ['Cross out the sevens in r3c5.', 'r3c5<>7'],
    ['We can remove the 8 from r2c2.', 'r2c2<>8'],
    ['The five in r4c4 is gone.', 'r4c4<>5'],
    ['Eliminate the 4 and the 5 from r8c8.', '<>4, r8c8<>5'],
    ["So that can't be a seven.", '<>7'],
    ["That's not an eight.", '<>8'],
    ['This cell loses its seven.', '<>7'],
    ["It isn't a 4.", '<>4'],
    ['Then this one is not five.', '<>5'],
    ['So neither is a three.', '<>3'],
    ['Look at the sevens in row five.', '7r5'],
    ['In row seven a five goes here.', '5r7'],
    ['The sixes in box five.', '6b5'],
    ['Strike the eights of column four.', '8c4, <>8'],
    ['The eight in column four goes.', '8c4, <>8'],
    ['Box three needs an eight.', '8b3'],
    ['The ones in row two.', '1r2'],
    ['This is an X-wing.', 'X-wing'],
    ['An XY-wing on three cells.', 'XY-wing'],
    ["That's a naked pair of fours and fives.", 'naked pair'],
    ["So this isn't an X-wing but a swordfish.", 'swordfish'],
    ['The skyscraper from before.', 'the skyscraper'],
  ])('%s', (sentence, says) => expect(heard(sentence)).toBe(says));
});

describe('loose talk', () => {
  it.each([
    'Where does the 7 go in row 3?',
    'If r3c5 is a seven, then r3c6 is a four.',
    'Suppose r1c1 is 2.',
    'Either r1c1 is 2 or r1c2 is 3.',
    'Would r3c5 be a 7?',
    'Is r3c5 a seven?',
    'Maybe r3c5 is a seven.',
    'When r3c5 is 7 there is no 7 left in box two.',
    'Try a seven in row three column five.',
    'In row seven a five can go here.',
    'The 2 can only go in r6c6.',
    'They are not both five.',
    'At least one of the far ends is five.',
    'Four cells, and only four digits between them.',
    'Two of those places share the bottom left box.',
    'One of the two is true.',
    'There is only one place left in row six.',
    'The sixes in the middle box.',
    'It looks like an X-wing.',
    'Another skyscraper.',
    'This is not an X-wing.',
    'No swordfish here.',
    'It is almost a naked pair.',
    'The kite grows a tail.',
    'Row three column five sees both ends.',
    'R3C5 and r5c3 see each other.',
    'Three and nine is all they keep.',
    'Four or five in r1c1.',
    'We have a 3 and a 5 in r2c2.',
    'It took ten minutes.',
    'Step two of the lesson.',
    'r4c4 is one.',
    'With one gone from the middle box.',
    'The two colours in column three.',
    'Nine digits go in by looking along rows and columns.',
  ])('%s', (sentence) => expect(heard(sentence).replace('the two-string kite', '')).toBe(''));
});

it('hears a cell however it is spoken', () => {
  expect(heard('Row three column five, r1c9 and R 2 C 2 see each other.', { cells: true })).toBe('r3c5, r1c9, r2c2');
  expect(heard('r0c5 and row three column twelve.', { cells: true })).toBe('');
});
