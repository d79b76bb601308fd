/**
 * Marks in words. A claim is told as one only where its step is sound: elsewhere a mark is a stroke and no more, or is
 * said not to be proved.
 */
import type { Candidate } from '../grid/candidates.ts';
import type { Cell, Grid } from '../grid/grid.ts';
import { inSeries, spokenCandidates, spokenCells } from '../grid/notation/spoken.ts';
import type { MarkShape } from '../timeline/film.ts';

/** Something that comes on screen. */
export interface Told {
  readonly frame: number;
  /** What is drawn, or the words for it. */
  readonly what: MarkShape | { readonly kind: 'words'; readonly text: string };
  /** The colour of its group. */
  readonly colour: string | undefined;
  /** Whether its step is sound. */
  readonly sound: boolean;
}

/** All of it as one sentence a line: what is alike is told together, in the order in which the first of it came. */
export function inWords(grid: Grid, told: readonly Told[], overlay: boolean): string {
  const alike = new Map<string, Told[]>();
  for (const [index, each] of told.entries()) {
    const { what, colour, sound } = each;
    const isJoined = ['fill', 'circle', 'strike', 'reach', 'opens', 'place', 'ghost'].includes(what.kind);
    const key = isJoined ? `${what.kind} ${colour} ${sound}` : `${index}`;
    alike.set(key, [...(alike.get(key) ?? []), each]);
  }
  const clauses = [...alike.values()].map((same) => clauseOf(grid, same, overlay));
  const text = clauses.join('; ');
  const sentence = text.charAt(0).toUpperCase() + text.slice(1);
  return /[.?!]$/.test(sentence) ? sentence : `${sentence}.`;
}

function clauseOf(grid: Grid, same: readonly Told[], overlay: boolean): string {
  const [first] = same;
  if (first === undefined) return '';
  const shapes = same.map(({ what }) => what);
  const { what, colour, sound } = first;
  const unproved = sound ? '' : ', which is not proved';
  switch (what.kind) {
    case 'words':
      return what.text;
    case 'fill': {
      const cells = [...new Set(shapes.flatMap((each) => (each.kind === 'fill' ? each.cells : [])))];
      return `${areCells(grid, cells)} tinted${colour === undefined ? '' : ` ${colour}`}`;
    }
    case 'circle': {
      const candidates = shapes.flatMap((each) => (each.kind === 'circle' ? [each.candidate] : []));
      return `${areCandidates(grid, candidates)} circled${colour === undefined ? '' : ` in ${colour}`}`;
    }
    case 'strike': {
      const candidates = shapes.flatMap((each) => (each.kind === 'strike' ? [each.candidate] : []));
      return `${areCandidates(grid, candidates)} crossed out${unproved}`;
    }
    case 'place': {
      const placed = shapes.flatMap((each) => (each.kind === 'place' ? [each] : []));
      const digits = placed.map(
        ({ cell, digit }) => `${digit === 8 ? 'an' : 'a'} ${digit} in ${spokenCells(grid, [cell])}`,
      );
      const written = overlay ? 'marked as placed' : 'written';
      return `${inSeries(digits)} ${digits.length === 1 ? 'is' : 'are'} ${written}${unproved}`;
    }
    case 'ring':
      return `the ${what.digit} in ${spokenCells(grid, [what.cell])} is circled${colour === undefined ? '' : ` in ${colour}`}`;
    case 'ghost': {
      const ghosts = shapes.flatMap((each) => (each.kind === 'ghost' ? [each] : []));
      const states = ghosts.map(
        ({ candidates, isTrue }) => `${areCandidates(grid, candidates)} ${isTrue ? 'true' : 'not true'}`,
      );
      return `supposed, in ghost ink: ${states.join(', ')}`;
    }
    case 'link': {
      const claim = sound ? `: not both ${what.link === 'strong' ? 'false' : 'true'}` : '';
      return `an arrow runs from ${spokenCandidates(grid, what.from)} to ${spokenCandidates(grid, what.to)}${claim}`;
    }
    case 'clash': {
      const nodes = what.between.map((node) => spokenCandidates(grid, node));
      if (nodes.length === 1) return `a clash: ${nodes[0]} cannot be both true and not true`;
      return `a clash between ${inSeries(nodes)}`;
    }
    case 'reach': {
      const lines = shapes.flatMap((each) => (each.kind === 'reach' ? [each] : []));
      const from = spokenCandidates(grid, [...new Set(lines.map((line) => line.from))]);
      const to = spokenCandidates(grid, [...new Set(lines.map((line) => line.to))]);
      if (lines.length === 1) return `a thin line runs from ${from} to ${to}: not both true`;
      return `thin lines run from ${from} to ${to}: no two that are joined are both true`;
    }
    case 'opens': {
      const singles = shapes.flatMap((each) => (each.kind === 'opens' ? [each.candidate] : []));
      const light = singles.length === 1 ? 'lights' : 'light';
      const as = sound ? ` as ${singles.length === 1 ? 'a single' : 'singles'}` : '';
      return `${spokenCandidates(grid, singles)} ${light} up${as}`;
    }
    case 'outline':
      return `a ${what.line === 'dashed' ? 'dashed ' : ''}line is drawn round ${spokenCells(grid, what.cells)}`;
    case 'focus':
      return `all is dimmed but ${spokenCells(grid, what.cells)}`;
    case 'sight':
      return `a line of sight runs from ${spokenCells(grid, [what.of])} over ${spokenCells(grid, what.cells)}`;
    case 'label': {
      const at =
        what.candidate === undefined ? spokenCells(grid, [what.cell]) : spokenCandidates(grid, [what.candidate]);
      return `the word "${oneLine(what.text)}" stands at ${at}`;
    }
    case 'note':
      return `a note says: ${oneLine(what.text)}`;
    case 'ask':
      return `a question: ${oneLine(what.text)}`;
    case 'stamp':
      return `a stamp says that this is not proved: ${oneLine(what.text)}`;
    default:
      return what satisfies never;
  }
}

function areCells(grid: Grid, cells: readonly Cell[]): string {
  const isOne = cells.length === 1 || grid.houses.some((house) => isSame(house.cells, cells));
  return `${spokenCells(grid, cells)} ${isOne ? 'is' : 'are'}`;
}

function areCandidates(grid: Grid, candidates: readonly Candidate[]): string {
  return `${spokenCandidates(grid, candidates)} ${candidates.length === 1 ? 'is' : 'are'}`;
}

function isSame(house: readonly Cell[], cells: readonly Cell[]): boolean {
  return house.length === cells.length && house.every((cell) => cells.includes(cell));
}

/** White space as single blanks. */
export function oneLine(text: string): string {
  return text.replace(/\s+/g, ' ').trim();
}
