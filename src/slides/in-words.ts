/**
 * A picture in words, for whoever cannot see it: the marks that stand on it, what follows, and the board row by row.
 * It is made from the marks that are drawn, so it says nothing that the picture does not claim.
 */
import type { Candidate } from '../grid/candidates.ts';
import type { Cell, Grid } from '../grid/grid.ts';
import { printCandidates, printCell, printCells } from '../grid/notation/print.ts';
import type { Drawing } from '../picture/drawing.ts';
import type { Film, Mark } from '../timeline/film.ts';

export interface PictureInWords {
  /** The marks, a sentence each; empty where none stands. */
  readonly marks: readonly string[];
  /** `Row 1: 2, blank, 5.`, from the top. */
  readonly rows: readonly string[];
}

/** `isSound`: the step's claims hold, and may be said to. `groups` are the names of the scene's colour groups. */
export function pictureInWords(
  film: Film,
  drawing: Drawing,
  { groups, isSound }: { readonly groups: readonly string[]; readonly isSound: boolean },
): PictureInWords {
  const marks = drawing.marks.flatMap(({ index }) => film.marks[index] ?? []);
  const kinds: readonly ((shown: readonly Mark[], grid: Grid) => string[])[] = [
    (shown, grid) => cellsOfKind(shown, grid, 'focus', (cells) => `All is dimmed but ${cells}.`),
    (shown, grid) => cellsOfKind(shown, grid, 'outline', (cells) => `Outlined: ${cells}.`),
    (shown, grid) => grouped(shown, groups, 'Tinted', (same) => cellsIn(same, grid)),
    (shown, grid) => grouped(shown, groups, 'Circled', (same) => candidatesIn(same, grid, 'circle')),
    sights,
    links,
    ghosts,
    (shown, grid) => labels(shown, grid),
    (shown, grid) => conclusions(shown, grid, isSound),
    stamps,
  ];
  return { marks: kinds.flatMap((kind) => kind(marks, film.grid)), rows: rowsOf(film, drawing) };
}

/** `row 4, columns 4 and 5`; several products apart by `; `. A whole house is called by its name. */
export function cellsInWords(grid: Grid, cells: readonly Cell[]): string {
  const house = grid.houses.find(
    (each) => each.cells.length === cells.length && each.cells.every((cell) => cells.includes(cell)),
  );
  if (house !== undefined) return `${house.kind} ${house.number}`;
  return printCells(grid, cells).split('|').map(productInWords).join('; ');
}

/** `5 in row 7, columns 1 and 4`. */
export function candidatesInWords(grid: Grid, candidates: readonly Candidate[]): string {
  return printCandidates(grid, candidates).split(' ').map(productInWords).join('; ');
}

function productInWords(text: string): string {
  const match = /^(\d*)r(\d+)c(\d+)$/.exec(text);
  if (match === null) return text;
  const [, digits = '', rows = '', columns = ''] = match;
  const where = `${numbered('row', rows)}, ${numbered('column', columns)}`;
  return digits === '' ? where : `${andList([...digits])} in ${where}`;
}

function numbered(noun: string, digits: string): string {
  return `${noun}${digits.length > 1 ? 's' : ''} ${andList([...digits])}`;
}

function andList(texts: readonly string[]): string {
  return texts.length < 2 ? texts.join('') : `${texts.slice(0, -1).join(', ')} and ${texts.at(-1)}`;
}

function cellsOfKind(
  marks: readonly Mark[],
  grid: Grid,
  kind: 'focus' | 'outline',
  sentence: (cells: string) => string,
): string[] {
  return marks.flatMap(({ shape }) => (shape.kind === kind ? [sentence(cellsInWords(grid, shape.cells))] : []));
}

/** One sentence a colour group. */
function grouped(
  marks: readonly Mark[],
  names: readonly string[],
  verb: string,
  things: (same: readonly Mark[]) => string,
): string[] {
  const indices = [...new Set(marks.map(({ group }) => group?.index))];
  return indices.flatMap((index) => {
    const what = things(marks.filter(({ group }) => group?.index === index));
    const name = index === undefined ? undefined : names[index];
    return what === '' ? [] : [`${verb}${name === undefined ? '' : ` as ${name}`}: ${what}.`];
  });
}

function cellsIn(marks: readonly Mark[], grid: Grid): string {
  const cells = marks.flatMap(({ shape }) => (shape.kind === 'fill' ? shape.cells : []));
  return cells.length === 0 ? '' : cellsInWords(grid, [...new Set(cells)]);
}

function candidatesIn(marks: readonly Mark[], grid: Grid, kind: 'circle' | 'strike'): string {
  const candidates = marks.flatMap(({ shape }) => (shape.kind === kind ? [shape.candidate] : []));
  return candidates.length === 0 ? '' : candidatesInWords(grid, candidates);
}

function sights(marks: readonly Mark[], grid: Grid): string[] {
  return marks.flatMap(({ shape }) =>
    shape.kind === 'sight'
      ? [`A line of sight runs from ${cellsInWords(grid, [shape.of])} over ${cellsInWords(grid, shape.cells)}.`]
      : [],
  );
}

function links(marks: readonly Mark[], grid: Grid): string[] {
  return marks.flatMap(({ shape }) => {
    if (shape.kind !== 'link') return [];
    const ends = `from ${candidatesInWords(grid, shape.from)} to ${candidatesInWords(grid, shape.to)}`;
    return [`A ${shape.link} link ${ends}: they are not both ${shape.link === 'strong' ? 'false' : 'true'}.`];
  });
}

function ghosts(marks: readonly Mark[], grid: Grid): string[] {
  return marks.flatMap(({ shape }) => {
    if (shape.kind === 'ghost')
      return [`Supposed ${shape.isTrue ? 'true' : 'not true'}: ${candidatesInWords(grid, shape.candidates)}.`];
    if (shape.kind !== 'clash') return [];
    return [`A clash: ${shape.between.map((node) => candidatesInWords(grid, node)).join(' against ')}.`];
  });
}

function labels(marks: readonly Mark[], grid: Grid): string[] {
  return marks.flatMap(({ shape }) => {
    if (shape.kind !== 'label') return [];
    const named =
      shape.candidate === undefined ? cellsInWords(grid, [shape.cell]) : candidatesInWords(grid, [shape.candidate]);
    return [`The word “${shape.text}” stands at ${named}.`];
  });
}

function conclusions(marks: readonly Mark[], grid: Grid, isSound: boolean): string[] {
  const struck = candidatesIn(marks, grid, 'strike');
  const why = (claim: string) => (isSound ? `, ${claim}` : ', not proved');
  return [
    ...(struck === '' ? [] : [`Crossed out${why('since it is impossible')}: ${struck}.`]),
    ...marks.flatMap(({ shape }) =>
      shape.kind === 'place'
        ? [`Written${why('since it is forced')}: ${shape.digit} in ${cellsInWords(grid, [shape.cell])}.`]
        : [],
    ),
  ];
}

function stamps(marks: readonly Mark[]): string[] {
  return marks.flatMap(({ shape }) => (shape.kind === 'stamp' ? [`Stamped as not proved: ${shape.text}`] : []));
}

function rowsOf(film: Film, drawing: Drawing): string[] {
  const { grid } = film;
  const digits = new Map<string, number>();
  for (const { cell, digit } of film.standing) digits.set(printCell(grid, cell), digit);
  for (const { index } of drawing.written) {
    const written = film.written[index];
    if (written !== undefined) digits.set(printCell(grid, written.cell), written.digit);
  }
  const numbers = Array.from({ length: grid.size }, (_, index) => index + 1);
  return numbers.map(
    (row) => `Row ${row}: ${numbers.map((column) => digits.get(`r${row}c${column}`) ?? 'blank').join(', ')}.`,
  );
}
