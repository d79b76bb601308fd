/**
 * Cells, houses, digits and conclusions in words.
 */

import { type Candidate, membersOf } from '../grid/candidates.ts';
import { columnOf, rowOf } from '../grid/geometry.ts';
import { type Cell, cellOf, type Digit, digitOf, type Grid, type HouseShape } from '../grid/grid.ts';
import type { Conclusion } from '../grid/terms.ts';
import type { ArgumentName } from '../techniques/all-techniques.ts';
import type { Phrases } from './phrases.ts';
import type { PartKey, SentenceKey, TitleKey } from './sayings.ts';

/** Cells beyond this many are counted rather than read out. */
const cellsReadOut = 4;

export type Slots = Readonly<Record<string, string>>;

/**
 * Words in one language, for boards of one kind. Sentences with several forms use them in turn, so it remembers which
 * came last.
 */
export interface Wording {
  readonly grid: Grid;
  readonly part: (key: PartKey, slots?: Slots) => string;
  readonly title: (key: TitleKey, slots?: Slots) => string;
  /** A whole sentence or more, each begun with a capital. */
  readonly sentence: (key: SentenceKey, slots?: Slots) => string;
  /** The name of an argument within a sentence. */
  readonly name: (argument: ArgumentName) => string;
  /** The same, beginning with a capital. */
  readonly nameOf: (argument: ArgumentName) => string;
  readonly digit: (digit: Digit) => string;
  readonly aDigit: (digit: Digit) => string;
  readonly digits: (digit: Digit) => string;
  readonly number: (count: number) => string;
  readonly all: (items: readonly string[]) => string;
  readonly any: (items: readonly string[]) => string;
  readonly inTurn: (links: readonly string[]) => string;
  readonly cell: (cell: Cell) => string;
  readonly cells: (cells: readonly Cell[]) => string;
  /** Cells of a house that was just mentioned: of row four `columns two and seven`. */
  readonly cellsWithin: (house: HouseShape, cells: readonly Cell[]) => string;
  readonly house: (house: HouseShape) => string;
  readonly houses: (houses: readonly HouseShape[]) => string;
  /** "there cannot be a seven in row one, column seven", or "row one, column seven is a seven". */
  readonly conclusions: (conclusions: readonly Conclusion[]) => string;
}

export function wordingOf(phrases: Phrases, grid: Grid): Wording {
  const { words } = phrases;
  const turns = new Map<SentenceKey, number>();
  const part: Wording['part'] = (key, slots = {}) => filled(phrases.parts[key], slots);
  const number = (count: number) => words.numbers[count] ?? String(count);
  const name = (argument: ArgumentName) => phrases.names.get(argument) ?? argument;
  const all = (items: readonly string[]) => joined(items, words.comma, words.and);
  const any = (items: readonly string[]) => joined(items, words.comma, words.or);
  const cell: Wording['cell'] = (each) =>
    part('cell', { row: number(rowOf(grid, each)), column: number(columnOf(grid, each)) });
  const cells = (list: readonly Cell[]) => cellsInWords(grid, list, { part, number, all, cell });
  const house: Wording['house'] = ({ kind, number: which }) => part(kind, { number: number(which) });
  const digit: Wording['digit'] = (each) => words.digit[each - 1]!;
  const digits: Wording['digits'] = (each) => words.digits[each - 1]!;
  const aDigit: Wording['aDigit'] = (each) => words['a-digit'][each - 1]!;
  return {
    grid,
    part,
    title: (key, slots = {}) => capital(filled(phrases.titles[key], slots)),
    sentence: (key, slots = {}) => {
      const turn = turns.get(key) ?? 0;
      turns.set(key, turn + 1);
      const forms = phrases.sentences[key];
      return capitals(filled(forms[turn % forms.length] ?? '', slots));
    },
    name,
    nameOf: (argument) => capital(name(argument)),
    digit,
    aDigit,
    digits,
    number,
    all,
    any,
    inTurn: (links) => links.join(words.link),
    cell,
    cells,
    cellsWithin: (within, list) => {
      const lines = list.map((each) => number(within.kind === 'row' ? columnOf(grid, each) : rowOf(grid, each)));
      const [line] = lines;
      if (line === undefined || (within.kind !== 'row' && within.kind !== 'column')) return cells(list);
      const keys =
        within.kind === 'row'
          ? (['column-of-row', 'columns-of-row'] as const)
          : (['row-of-column', 'rows-of-column'] as const);
      return lines.length === 1 ? part(keys[0], { number: line }) : part(keys[1], { numbers: all(lines) });
    },
    house,
    houses: (list) => {
      const [first] = list;
      const kinds = { row: 'rows', column: 'columns', box: 'boxes' } as const;
      const isOneKind = list.length > 1 && list.every(({ kind }) => kind === first?.kind);
      if (!isOneKind || first === undefined || first.kind === 'diagonal') return all(list.map(house));
      return part(kinds[first.kind], { numbers: all(list.map((each) => number(each.number))) });
    },
    conclusions: (list) => conclusionsInWords(grid, list, { part, number, all, any, digit, aDigit, cell, cells }),
  };
}

/** The phrase with its slots filled in; a slot without a value is left out. */
function filled(phrase: string, slots: Slots): string {
  return phrase.replace(/\{([^{}]*)\}/g, (_, slot: string) => slots[slot] ?? '');
}

function joined(items: readonly string[], comma: string, last: string): string {
  if (items.length < 2) return items.join('');
  return `${items.slice(0, -1).join(comma)}${last}${items.at(-1)}`;
}

/** A capital at the start. */
function capital(text: string): string {
  return text.replace(/^\p{Ll}/u, (letter) => letter.toUpperCase());
}

/** A capital at the start of every sentence. */
function capitals(text: string): string {
  return text.replace(/(^|[.?!] )(\p{Ll})/gu, (_, before: string, letter: string) => before + letter.toUpperCase());
}

type Parts = Pick<Wording, 'part' | 'number' | 'all' | 'cell'>;

/** Cells of one line together: `row four, columns two and seven`; otherwise one after the other. */
function cellsInWords(grid: Grid, cells: readonly Cell[], { part, number, all, cell }: Parts): string {
  const rows = [...new Set(cells.map((each) => rowOf(grid, each)))];
  const columns = [...new Set(cells.map((each) => columnOf(grid, each)))];
  if (cells.length < 2) return cells.map(cell).join('');
  const [row] = rows;
  const [column] = columns;
  if (rows.length === 1 && row !== undefined)
    return part('cells-in-row', { row: number(row), columns: all(columns.map(number)) });
  if (columns.length === 1 && column !== undefined)
    return part('cells-in-column', { column: number(column), rows: all(rows.map(number)) });
  if (cells.length === rows.length * columns.length)
    return part('cells-of-lines', { rows: all(rows.map(number)), columns: all(columns.map(number)) });
  return inLines(grid, cells)
    .map((line) => cellsInWords(grid, line, { part, number, all, cell }))
    .reduce((soFar, next) => part('two-cells', { cells: soFar, cell: next }));
}

/** The cells by rows or by columns, whichever takes fewer lines. */
function inLines(grid: Grid, cells: readonly Cell[]): readonly (readonly Cell[])[] {
  const grouped = (lineOf: (grid: Grid, cell: Cell) => number) => {
    const lines = new Map<number, Cell[]>();
    for (const cell of cells) lines.set(lineOf(grid, cell), [...(lines.get(lineOf(grid, cell)) ?? []), cell]);
    return [...lines.values()];
  };
  const [byRows, byColumns] = [grouped(rowOf), grouped(columnOf)];
  return byColumns.length < byRows.length ? byColumns : byRows;
}

function conclusionsInWords(
  grid: Grid,
  conclusions: readonly Conclusion[],
  wording: Parts & Pick<Wording, 'any' | 'digit' | 'aDigit' | 'cells'>,
): string {
  const { part, number, all, any, digit, aDigit, cell, cells } = wording;
  const removed = conclusions.flatMap((each) => (each.kind === 'impossible' ? [each.candidate] : []));
  const placed = conclusions.flatMap((each) => {
    const [only, ...others] = each.kind === 'one-of' ? membersOf(each.candidates) : [];
    return only === undefined || others.length > 0 ? [] : [only];
  });
  const pieces = byCells(grid, removed).map(([each, places]) => {
    const slots = { digit: any(each.map(digit)), 'a-digit': any(each.map(aDigit)) };
    return places.length > cellsReadOut
      ? part('gone-many', { ...slots, count: number(places.length) })
      : part('gone-piece', { ...slots, cells: cells(places) });
  });
  return all([
    ...(pieces.length === 0
      ? []
      : [part('gone', { pieces: pieces.reduce((soFar, next) => part('two-gone', { pieces: soFar, piece: next })) })]),
    ...placed.map((candidate) =>
      part('placed', { cell: cell(cellOf(grid, candidate)), 'a-digit': aDigit(digitOf(grid, candidate)) }),
    ),
  ]);
}

/** The removals by digit; digits removed from the same cells are combined. */
function byCells(grid: Grid, candidates: readonly Candidate[]): readonly (readonly [Digit[], readonly Cell[]])[] {
  const cells = new Map<Digit, Cell[]>();
  for (const candidate of candidates) {
    const digit = digitOf(grid, candidate);
    cells.set(digit, [...(cells.get(digit) ?? []), cellOf(grid, candidate)]);
  }
  const groups = new Map<string, [Digit[], readonly Cell[]]>();
  for (const [digit, places] of [...cells].sort(([a], [b]) => a - b)) {
    const group = groups.get(places.join()) ?? [[], places];
    group[0].push(digit);
    groups.set(places.join(), group);
  }
  return [...groups.values()];
}
