/**
 * What a layout is, and how a room is shared out among the words that stand in it.
 */
import type { Film } from '../timeline/film.ts';
import type { BoardPlace, Box } from './board-place.ts';
import type { Strip } from './free-room.ts';
import { unitOf } from './safe-area.ts';

/** Where things lie on the frame; boxes in frame pixels. */
export interface Layout {
  /** Undefined while the board is hidden. */
  readonly place: BoardPlace | undefined;
  /** Where title, heading, argument and conclusions stand; undefined where there is no room beside the board. */
  readonly heading: Box | undefined;
  /** Where notes and questions stand. Where this is the same box as `telling`, they share it: words above, notes below. */
  readonly callout: Box;
  /** Whether a callout lies at the top of its box, next to a board above it, or at the bottom. */
  readonly calloutAt: 'top' | 'bottom';
  /** Where the sentence stands that is being said; undefined where none is to be shown, or there is no room for it. */
  readonly said: Box | undefined;
}

/** The width of the band that holds the numbers of rows or columns, in cells. */
export const coordinateBand = 0.44;

/** The height that a sentence gets, and the space before it, in pixels of a frame whose shorter side is 1080. */
export const saidHeight = 144;
export const saidGap = 28;

/** The board's outer square together with the numbers at its edges, if there are any: to its left and above it. */
export function boardBlock({ coordinates }: Film, { bounds, cellPx }: BoardPlace): Box {
  const band = coordinates ? coordinateBand * cellPx : 0;
  return { ...bounds, left: bounds.left - band, top: bounds.top - band };
}

/** One room for all words, with the sentence that is said at its end. */
export function wordsIn(film: Film, place: BoardPlace | undefined, [side, room]: Strip): Layout {
  const { words, said } = withSaid(film, room);
  // Over a recording a callout below the board keeps close to it; words on a frame of our own begin with the title.
  const calloutAt = side === 'below' && film.draw !== 'board' ? 'top' : 'bottom';
  return { place, heading: words, callout: words, calloutAt, said };
}

/** A room without its end, where the sentence stands that is said; the whole room where none is to be shown. */
export function withSaid(film: Film, room: Box): { readonly words: Box; readonly said: Box | undefined } {
  if (film.said.length === 0) return { words: room, said: undefined };
  const unit = unitOf(film);
  const whole = room.bottom - room.top;
  const height = Math.min(saidHeight * unit, whole * 0.4);
  const said = { ...room, top: Math.round(room.bottom - height) };
  return { words: { ...room, bottom: Math.floor(said.top - Math.min(saidGap * unit, whole * 0.06)) }, said };
}
