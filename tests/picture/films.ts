/**
 * Small films for the tests of the picture, built from notation as one sees it: `film({ marks: [circle('7r1c5')] })`.
 */
import type { Candidate } from '../../src/grid/candidates.ts';
import { cellAt, digit } from '../../src/grid/geometry.ts';
import {
  type BoxShape,
  type Cell,
  candidateAt,
  cellOf,
  type Grid,
  gridOf,
  type HouseKind,
} from '../../src/grid/grid.ts';
import type { LinkKind } from '../../src/grid/terms.ts';
import { fraction } from '../../src/scene/fraction.ts';
import { type GroupColour, groupColours } from '../../src/scene/scene.ts';
import { type Film, frameAt, type Mark, type MarkShape } from '../../src/timeline/film.ts';

export interface FilmWish
  extends Partial<Omit<Film, 'grid' | 'standing' | 'candidates' | 'marks' | 'written' | 'headings'>> {
  readonly boxes?: BoxShape;
  /** One symbol a cell, `.` for none; spaces do not count. */
  readonly givens?: string;
  /** Whether every candidate that no given sees is on the board. */
  readonly candidates?: boolean;
  readonly written?: readonly string[];
  readonly marks?: readonly MarkWish[];
  readonly heading?: {
    readonly isFalseStep?: boolean;
    readonly title?: string;
    readonly argument?: string;
    readonly conclusions?: string;
  };
}

/** A mark on screen for the whole film unless said otherwise. */
export interface MarkWish {
  readonly shape: (grid: Grid) => MarkShape;
  readonly group?: number;
  readonly from?: number;
  readonly until?: number;
  /** `one` unless said otherwise. */
  readonly step?: string;
}

/** A puzzle of 17 givens of our own making, with r5c5 and much else open. */
export const sparseGivens = `
  2.. 1.8 ...
  35. 94. ...
  ... 7.. ...
  1.. ..7 ...
  .79 ..3 ...
  .6. .8. 2..
  ..1 .94 36.
  ... ..1 .5.
  ... ... 9.8`;

export function film(wish: FilmWish = {}): Film {
  const { boxes, givens, candidates, written, marks, heading, ...rest } = wish;
  const grid = gridOf(boxes ?? '3x3');
  const frameCount = rest.frameCount ?? 100;
  const standing = standingOf(grid, givens ?? '');
  const shown = { from: frameAt(0), until: frameAt(frameCount) };
  return {
    grid,
    width: 1920,
    height: 1080,
    rate: fraction(25),
    frameCount,
    draw: 'board',
    small: '123',
    board: [],
    coordinates: false,
    camera: undefined,
    said: [],
    title: undefined,
    credit: undefined,
    standing,
    written: (written ?? []).map((text) => ({ ...shown, ...placed(grid, text) })),
    candidates: candidates === true ? openCandidates(grid, standing).map((candidate) => ({ ...shown, candidate })) : [],
    recorded: [],
    headings:
      heading === undefined
        ? []
        : [
            {
              ...shown,
              step: 'one',
              number: 3,
              count: 12,
              isFalseStep: heading.isFalseStep ?? false,
              title: heading.title,
              argument: heading.argument,
              conclusions: heading.conclusions,
            },
          ],
    marks: (marks ?? []).map((mark) => markOf(grid, mark, frameCount)),
    ...rest,
  };
}

export const fill = (cells: string, group?: number) =>
  wish((grid) => ({ kind: 'fill', cells: cellsOf(grid, cells) }), group);
export const outline = (cells: string, group?: number) =>
  wish((grid) => ({ kind: 'outline', cells: cellsOf(grid, cells) }), group);
export const focus = (cells: string) => wish((grid) => ({ kind: 'focus', cells: cellsOf(grid, cells) }));
export const circle = (candidate: string, group?: number) =>
  wish((grid) => ({ kind: 'circle', candidate: candidateOf(grid, candidate) }), group);
export const strike = (candidate: string) =>
  wish((grid) => ({ kind: 'strike', candidate: candidateOf(grid, candidate) }));
export const houseLine = (cells: string, line: 'solid' | 'dashed', group?: number) =>
  wish((grid) => ({ kind: 'outline', cells: cellsOf(grid, cells), line }), group);
export const reach = (from: string, to: string, group?: number) =>
  wish((grid) => ({ kind: 'reach', from: candidateOf(grid, from), to: candidateOf(grid, to) }), group);
export const opens = (candidate: string, group?: number) =>
  wish((grid) => ({ kind: 'opens', candidate: candidateOf(grid, candidate) }), group);
export const place = (text: string) => wish((grid) => ({ kind: 'place', ...placed(grid, text) }));
export const ring = (text: string, group?: number) => wish((grid) => ({ kind: 'ring', ...placed(grid, text) }), group);
export const link = (link: LinkKind, from: string, to: string, group?: number) =>
  wish((grid) => ({ kind: 'link', link, from: candidatesOf(grid, from), to: candidatesOf(grid, to) }), group);
export const label = (candidate: string, text: string, group?: number) =>
  wish((grid) => {
    const named = candidateOf(grid, candidate);
    return { kind: 'label', cell: cellOf(grid, named), candidate: named, text };
  }, group);
export const ghost = (candidates: string, isTrue: boolean, group?: number) =>
  wish((grid) => ({ kind: 'ghost', candidates: candidatesOf(grid, candidates), isTrue }), group);
export const clash = (...between: readonly string[]) =>
  wish((grid) => ({ kind: 'clash', between: between.map((node) => candidatesOf(grid, node)) }));
export const note = (text: string, group?: number) => wish(() => ({ kind: 'note', text }), group);
export const ask = (text: string) => wish(() => ({ kind: 'ask', text }));
export const stamp = (text: string) => wish(() => ({ kind: 'stamp', text }));
export const sight = (of: string, cells: string, kind: HouseKind = 'row') =>
  wish((grid) => ({
    kind: 'sight',
    of: cellsOf(grid, of)[0]!,
    cells: cellsOf(grid, cells),
    house: { house: grid.houses[0]!.house, kind, number: 1, name: 'd1', cells: cellsOf(grid, cells) },
  }));

/** The mark from one frame to another. */
export function during(mark: MarkWish, from: number, until: number): MarkWish {
  return { ...mark, from, until };
}

/** `r12c57 r3c4`: every row with every column. */
export function cellsOf(grid: Grid, text: string): Cell[] {
  return text
    .split(' ')
    .filter((part) => part !== '')
    .flatMap((part) => {
      const [, rows, columns] = /^r(\d+)c(\d+)$/.exec(part)!;
      return [...rows!].flatMap((row) => [...columns!].map((column) => cellAt(grid, Number(row), Number(column))));
    });
}

/** `27r3c5 4r1c1`. */
export function candidatesOf(grid: Grid, text: string): Candidate[] {
  return text.split(' ').flatMap((part) => {
    const [, digits, cells] = /^(\d+)(r\d+c\d+)$/.exec(part)!;
    return cellsOf(grid, cells!).flatMap((cell) =>
      [...digits!].map((each) => candidateAt(grid, cell, digit(grid, Number(each)))),
    );
  });
}

function candidateOf(grid: Grid, text: string): Candidate {
  return candidatesOf(grid, text)[0]!;
}

function placed(grid: Grid, text: string) {
  const [cell, value] = text.split('=');
  return { cell: cellsOf(grid, cell!)[0]!, digit: digit(grid, Number(value)) };
}

function wish(shape: (grid: Grid) => MarkShape, group?: number): MarkWish {
  return group === undefined ? { shape } : { shape, group };
}

function markOf(grid: Grid, { shape, group, from, until, step }: MarkWish, frameCount: number): Mark {
  const colour: GroupColour | undefined = group === undefined ? undefined : groupColours[group % groupColours.length];
  return {
    from: frameAt(from ?? 0),
    until: frameAt(until ?? frameCount),
    step: step ?? 'one',
    group: colour === undefined ? undefined : { colour, index: group! },
    shape: shape(grid),
  };
}

function standingOf(grid: Grid, givens: string): Film['standing'] {
  const symbols = [...givens.replace(/\s/g, '')];
  return symbols.flatMap((symbol, index) => {
    const cell = grid.cells[index];
    return symbol === '.' || cell === undefined ? [] : [{ cell, digit: digit(grid, Number(symbol)), given: true }];
  });
}

function openCandidates(grid: Grid, standing: Film['standing']): Candidate[] {
  return grid.cells.flatMap((cell) => {
    if (standing.some((each) => each.cell === cell)) return [];
    const seen = standing.filter((each) => grid.peers[cell]!.includes(each.cell)).map((each) => each.digit);
    return grid.digits.filter((each) => !seen.includes(each)).map((each) => candidateAt(grid, cell, each));
  });
}
