/**
 * What a layout is, and how a room is divided among its words.
 */
import type { Film } from '../timeline/film.ts';
import type { BoardPlace, Box } from './board-place.ts';
import type { Strip } from './free-room.ts';
import { unitOf } from './safe-area.ts';

/** Where things are on the frame; boxes in frame pixels. */
export interface Layout {
  /** Undefined while the board is hidden. */
  readonly place: BoardPlace | undefined;
  /** The box of title, heading, argument and conclusions; undefined if there is no room next to the board. */
  readonly heading: Box | undefined;
  /** The box of notes and questions. If it is the same as `heading`, they share it: words above, notes below. */
  readonly callout: Box;
  /** Whether a callout is at the top of its box, next to a board above it, or at the bottom. */
  readonly calloutAt: 'top' | 'bottom';
  /** The box of the sentence being said; undefined if none is to be shown, or there is no room for it. */
  readonly said: Box | undefined;
}

/** The width of the band with the numbers of rows or columns, in cells. */
export const coordinateBand = 0.44;

/** The height that a sentence gets, and the space before it, in pixels of a frame whose shorter side is 1080. */
export const saidHeight = 144;
export const saidGap = 28;

/** The board's outer square together with the numbers at its edges, if there are any: to its left and above it. */
export function boardBlock({ coordinates }: Film, { bounds, cellPx }: BoardPlace): Box {
  const band = coordinates ? coordinateBand * cellPx : 0;
  return { ...bounds, left: bounds.left - band, top: bounds.top - band };
}

/** One room for all words, with the spoken sentence at its end. */
export function wordsIn(film: Film, place: BoardPlace | undefined, [side, room]: Strip): Layout {
  const { words, said } = withSaid(film, room);
  // Over a recording a callout below the board stays close to it; words on our own frame begin with the title.
  const calloutAt = side === 'below' && film.draw !== 'board' ? 'top' : 'bottom';
  return { place, heading: words, callout: words, calloutAt, said };
}

/** A room without its end, where the spoken sentence is; the whole room if none is to be shown. */
export function withSaid(film: Film, room: Box): { readonly words: Box; readonly said: Box | undefined } {
  if (film.said.length === 0) return { words: room, said: undefined };
  const unit = unitOf(film);
  const whole = room.bottom - room.top;
  const height = Math.min(saidHeight * unit, whole * 0.4);
  const said = { ...room, top: Math.round(room.bottom - height) };
  return { words: { ...room, bottom: Math.floor(said.top - Math.min(saidGap * unit, whole * 0.06)) }, said };
}
