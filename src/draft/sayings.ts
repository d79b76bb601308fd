/**
 * What a draft can say: every phrase by its key, with the slots that it may contain. A file of phrases gives the words.
 */

export interface Saying {
  /** What it says, for translators. */
  readonly means: string;
  /** What may stand between braces in it. */
  readonly slots: readonly string[];
}

const saying = (means: string, ...slots: string[]): Saying => ({ means, slots });

/** Parts of sentences: names of places, digits in them, lists. */
export const parts = {
  row: saying('One row.', 'number'),
  column: saying('One column.', 'number'),
  box: saying('One box, or one region instead.', 'number'),
  diagonal: saying('One diagonal: the first begins at the top left, the second at the top right.', 'number'),
  rows: saying('Several rows.', 'numbers'),
  columns: saying('Several columns.', 'numbers'),
  boxes: saying('Several boxes.', 'numbers'),
  cell: saying('One cell.', 'row', 'column'),
  'cells-in-row': saying('Several cells of one row.', 'row', 'columns'),
  'cells-in-column': saying('Several cells of one column.', 'rows', 'column'),
  'cells-of-lines': saying('Every cell of some rows and some columns.', 'rows', 'columns'),
  'two-cells': saying('Cells that share no line, joined: the cells so far, and one more.', 'cells', 'cell'),
  'column-of-row': saying('One cell of a row that was just mentioned.', 'number'),
  'columns-of-row': saying('Several cells of a row that was just mentioned.', 'numbers'),
  'row-of-column': saying('One cell of a column that was just mentioned.', 'number'),
  'rows-of-column': saying('Several cells of a column that was just mentioned.', 'numbers'),

  gone: saying('What a removal says: one piece for each digit.', 'pieces'),
  'gone-piece': saying('A digit, or one or another, that is impossible in some cells.', 'digit', 'a-digit', 'cells'),
  'gone-many': saying('The same in more cells than are read out.', 'digit', 'a-digit', 'count'),
  'two-gone': saying('Such pieces joined: the pieces so far, and one more.', 'pieces', 'piece'),
  placed: saying('A digit that is forced.', 'cell', 'a-digit'),

  'if-not': saying('After "if": a cell is not a digit.', 'cell', 'a-digit', 'digit'),
  'if-not-in': saying('After "if": a digit is in none of some cells.', 'digit', 'a-digit', 'cells'),
  'if-not-hold': saying('After "if": cells do not hold these digits, each of them.', 'cells', 'digits'),
  'then-is': saying('After "then": a cell is a digit.', 'cell', 'a-digit'),
  'then-it-is': saying('After "then": the cell mentioned last is a digit.', 'a-digit'),
  'then-is-too': saying('After "then": a cell is the digit mentioned last.', 'cell'),
  'then-in': saying('After "then": a digit is in one of some cells.', 'a-digit', 'cells'),
  'then-hold': saying('After "then": cells hold these digits, each of them.', 'cells', 'digits'),
  'then-not': saying('After "then": a cell is not a digit.', 'cell', 'a-digit', 'digit'),
  'then-not-too': saying('After "then": a cell is not the digit mentioned last.', 'cell'),
  'then-not-in': saying('After "then": a digit is in none of some cells.', 'digit', 'a-digit', 'cells'),
  'then-not-hold': saying('After "then": cells do not hold these digits, each of them.', 'cells', 'digits'),
  'chain-first': saying('The first link of a chain.', 'if', 'what'),
  'chain-next': saying('A further link: what is not, and what therefore is.', 'not', 'what'),
  'chain-on': saying('A further link within cells: what therefore is.', 'what'),
  'force-place': saying('A digit has one place left in a house.', 'house', 'digit', 'cell'),
  'force-cell': saying('A cell has one digit left.', 'cell', 'a-digit'),
  'clash-place': saying('A digit has no place left in a house.', 'house', 'digit', 'a-digit'),
  'clash-cell': saying('A cell has no digit left.', 'cell'),
  'clash-deadly': saying('Nothing is left to keep the puzzle from having two solutions.'),
  'places-part': saying('Where a digit can go in a house.', 'house', 'digit', 'cells', 'count'),
  'hidden-single': saying('A digit has one place in a house.', 'house', 'digit', 'a-digit', 'cell'),
  'naked-single': saying('A cell has one digit left.', 'cell', 'digit', 'a-digit'),
  'full-house': saying('A house is full except for one cell.', 'house', 'digit', 'a-digit', 'cell'),
} as const satisfies Readonly<Record<string, Saying>>;

/** What appears on screen. */
export const titles = {
  lesson: saying('The title of a lesson with these arguments.', 'names'),
  'lesson-easy': saying('The title of a lesson of singles only.'),
  opening: saying('The first easy digits.', 'count'),
  'one-opening': saying('The first easy digit, if there is only one.'),
  start: saying('The board as it is given, when nothing is easy.'),
  'start-note': saying('A note next to that board.'),
  places: saying('Where a digit can go.', 'digit', 'a-digit', 'digits'),
  'places-several': saying('Where several digits can go.', 'digits'),
  lists: saying('What is left in some cells.', 'count'),
  'one-list': saying('What is left in one cell.'),
  'of-locked': saying('Locked candidates.', 'digits', 'house'),
  'of-naked-pair': saying('Two cells with two digits.'),
  'of-naked-subset': saying('More cells with as many digits.', 'count'),
  'of-hidden-subset': saying('Digits with as many places in a house.', 'count'),
  'of-fish': saying('A fish, with a fin or without.', 'digits', 'bases'),
  'of-strings': saying('Two houses with two places each.', 'digits'),
  'of-wing': saying('A pivot and two pincers.'),
  'of-chain': saying('A chain.'),
  'of-digit-chain': saying('A chain of one digit.', 'digits'),
  'of-loop': saying('A chain that closes.'),
  'of-deadly': saying('A deadly pattern.'),
  'of-grave': saying('A board of bivalue cells except for guardians.'),
  'of-supposition': saying('What if a cell were a digit, or were not?', 'cell', 'a-digit'),
  'of-cases': saying('An argument of cases.', 'name'),
  opened: saying('What an argument opens.'),
  home: saying('The rest of the board.'),
  'chapter-easy': saying('The chapter of the first easy digits.'),
  'chapter-home': saying('The chapter of the rest.'),
} as const satisfies Readonly<Record<string, Saying>>;

/** Whole sentences. */
export const sentences = {
  opening: saying('Easy digits, before the first argument.', 'given', 'count'),
  'one-opening': saying('The same for one easy digit.', 'given'),
  'opening-whole': saying('Easy digits that fill the board.', 'given', 'count'),
  start: saying('Nothing is easy.', 'given'),
  places: saying('Where a digit can go: one part for each house.', 'digit', 'a-digit', 'digits', 'parts'),
  lists: saying('What is left is written into some cells.', 'cells', 'count'),
  'many-lists': saying('The same, when there are too many cells to read out.', 'count'),
  'one-list': saying('What is left is written into one cell.', 'cell'),
  opened: saying('What an argument opens immediately.', 'first'),
  'opened-one-more': saying('The same, and one more digit.', 'first'),
  'opened-more': saying('The same, and several more.', 'first', 'count'),
  more: saying('Several digits, before the next argument.', 'count'),
  home: saying('The rest of the board.', 'count'),
  'home-short': saying('The rest of the board, a digit or two.'),

  locked: saying('Locked candidates.', 'digit', 'a-digit', 'house', 'other', 'so'),
  'naked-pair': saying('Two cells with two digits.', 'cells', 'digits', 'so'),
  'naked-subset': saying('Cells with as many digits.', 'cells', 'count', 'digits', 'so'),
  'hidden-subset': saying('Digits with as many places in a house.', 'house', 'cells', 'count', 'digits', 'so'),
  fish: saying('Base houses whose places are in as many cover houses.', 'bases', 'covers', 'digit', 'digits', 'so'),
  'finned-fish': saying('The same except for a fin.', 'bases', 'covers', 'fins', 'digit', 'a-digit', 'digits', 'so'),
  skyscraper: saying('Two houses with two places each.', 'house', 'other', 'link', 'digit', 'a-digit', 'digits', 'so'),
  kite: saying('A row and a column that meet in a box.', 'house', 'other', 'link', 'digit', 'a-digit', 'digits', 'so'),
  'xy-wing': saying(
    'A pivot and two pincers.',
    'pivot',
    'digit',
    'other-digit',
    'pincer',
    'other-pincer',
    'shared-digit',
    'so',
  ),
  'xyz-wing': saying(
    'A pivot of three digits and two pincers.',
    'pivot',
    'digit',
    'other-digit',
    'pincer',
    'other-pincer',
    'shared-digit',
    'so',
  ),
  chain: saying('A chain, read from one end to the other.', 'links', 'so'),
  loop: saying('A chain that closes.', 'links', 'so'),
  rectangle: saying('A deadly pattern with guardians in one cell.', 'cells', 'digits', 'so'),
  deadly: saying('A deadly pattern.', 'cells', 'digits', 'so'),
  'deadly-suppose': saying(
    'A deadly pattern, and what follows from the extra candidate that is true in it.',
    'cells',
    'digits',
    'cell',
    'a-digit',
    'steps',
    'clash',
    'so',
  ),
  grave: saying('A board of bivalue cells except for guardians.', 'guardians', 'so'),
  suppose: saying('What if a cell were a digit?', 'cell', 'a-digit', 'steps', 'clash', 'so'),
  'suppose-at-once': saying('The same, when it clashes immediately.', 'cell', 'a-digit', 'clash', 'so'),
  'suppose-not': saying('What if a cell were not a digit?', 'cell', 'a-digit', 'steps', 'clash', 'so'),
  'suppose-not-at-once': saying('The same, when it clashes immediately.', 'cell', 'a-digit', 'clash', 'so'),
  'suppose-others': saying('The same, and others are refuted the same way.', 'cell', 'a-digit', 'steps', 'clash', 'so'),
  cases: saying('An argument of cases that is not read out.', 'name', 'so'),
  either: saying('One of some candidates is true.', 'so'),
} as const satisfies Readonly<Record<string, Saying>>;

export type PartKey = keyof typeof parts;
export type TitleKey = keyof typeof titles;
export type SentenceKey = keyof typeof sentences;
