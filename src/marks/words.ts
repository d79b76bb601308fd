/**
 * What descriptions and slides must know about a kind of mark: how it is put into words, and when.
 */
import type { Candidate } from '../grid/candidates.ts';
import type { Cell, Grid } from '../grid/grid.ts';
import { spokenCandidates, spokenCells } from '../grid/notation/spoken.ts';
import type { ShapeKind, Shapes } from '../timeline/film.ts';

export interface MarkWords<Kind extends ShapeKind> {
  /**
   * A clause, without a capital or a full stop, for one mark, or for several where `areJoined`. A claim is described as
   * one only if it is sound.
   */
  readonly clause: (shapes: readonly Shapes[Kind][], manner: Manner) => string;
  /** Whether it says that something is so: then it does not outlive the stamp of a step that is not sound. */
  readonly isClaim: boolean;
  /** Whether marks of one colour that come together share a clause. */
  readonly areJoined: boolean;
  /** Whether a description mentions it when it comes; otherwise only descriptions of a whole picture do. */
  readonly isNews: boolean;
  /** Whether it shows what its step concludes, or plays out its proof: a slide with a question does not show it. */
  readonly answers: (shape: Shapes[Kind], isConcluded: (candidate: Candidate) => boolean) => boolean;
}

export interface Manner {
  readonly grid: Grid;
  /** Whether the marks lie over a recording. */
  readonly overlay: boolean;
  /** The colour of their group. */
  readonly colour: string | undefined;
  /** Whether what they claim holds. */
  readonly sound: boolean;
}

export const always = (): boolean => true;
export const never = (): boolean => false;

/** `the 5 in row 4 column 4 and the 5 in row 4 column 7 are`. */
export function areCandidates(grid: Grid, candidates: readonly Candidate[]): string {
  return `${spokenCandidates(grid, candidates)} ${candidates.length === 1 ? 'is' : 'are'}`;
}

/** `row 4 is`, `row 4 column 4 and row 4 column 7 are`. */
export function areCells(grid: Grid, cells: readonly Cell[]): string {
  const isOne = cells.length === 1 || grid.houses.some((house) => isSame(house.cells, cells));
  return `${spokenCells(grid, cells)} ${isOne ? 'is' : 'are'}`;
}

function isSame(house: readonly Cell[], cells: readonly Cell[]): boolean {
  return house.length === cells.length && house.every((cell) => cells.includes(cell));
}

/** The words for a claim that is not sound. */
export function unlessSound({ sound }: Manner): string {
  return sound ? '' : ', which is not proved';
}

/** ` in sky`, if the mark has a colour. */
export function inColour({ colour }: Manner): string {
  return colour === undefined ? '' : ` in ${colour}`;
}

/** Collapses white space to single spaces. */
export function oneLine(text: string): string {
  return text.replace(/\s+/g, ' ').trim();
}
