/**
 * Where the board and the words lie on the frame. The lowest eighth is left to captions and players; on an upright
 * frame words also keep clear of the right side, where players put their buttons (common practice).
 */
import { Bug } from '../grid/bug.ts';
import type { Film } from '../timeline/film.ts';
import { type BoardPlace, type Box, boardPlace } from './board-place.ts';

/** Where things lie on the frame; boxes in frame pixels. */
export interface Layout {
  /** Undefined while the board is hidden. */
  readonly place: BoardPlace | undefined;
  /** Where title, heading, argument and conclusions stand; undefined where there is no room beside the board. */
  readonly telling: Box | undefined;
  /** Where notes and questions stand. Where this is the same box as `telling`, they share it: words above, notes below. */
  readonly callout: Box;
  /** Whether a callout lies at the top of its box, next to a board above it, or at the bottom. */
  readonly calloutAt: 'top' | 'bottom';
}

/** The part of the frame in which words may stand. */
export function safeArea(film: Film): Box {
  const margin = Math.round(unitOf(film) * 45);
  const upright = film.height > film.width;
  return {
    left: margin,
    top: margin,
    right: film.width - (upright ? Math.max(margin, Math.round(film.width / 10)) : margin),
    bottom: Math.floor((film.height * 7) / 8),
  };
}

/** Frame pixels to one pixel of a frame whose shorter side is 1080. */
export function unitOf(film: Film): number {
  return Math.min(film.width, film.height) / 1080;
}

/** The layout under the placement with this index of `film.board`; undefined: laid out by the tool. */
export function layoutOf(film: Film, board: number | undefined): Layout {
  if (board === undefined) return ownLayout(film);
  const placement = film.board[board];
  if (placement === undefined) throw new Bug(`the film has no board placement ${board}`);
  const place = boardPlace(placement.shape, film.grid.size);
  const safe = safeArea(film);
  if (place === undefined) {
    return { place, telling: safe, callout: safe, calloutAt: 'bottom' };
  }
  return besides(film, place, safe);
}

/** As large a board as leaves the words room: beside it, or above and below it, whichever gives the larger board. */
function ownLayout(film: Film): Layout {
  const unit = unitOf(film);
  const safe = safeArea(film);
  const gap = Math.round(unit * 60);
  const margin = safe.left;
  const height = safe.bottom - safe.top;
  const besideWidth = film.width - 2 * margin - gap;
  const sideBeside = wholeCells(film, Math.min(height, besideWidth - Math.round(unit * 380)));
  const wordsAbove = Math.round(unit * 165);
  const wordsBelow = Math.round(unit * 105);
  const between = Math.round(unit * 44);
  const sideStacked = wholeCells(film, Math.min(film.width - 2 * margin, height - wordsAbove - wordsBelow - between));
  if (sideBeside >= sideStacked) {
    const top = safe.top + Math.floor((height - sideBeside) / 2);
    // What a very wide frame has over goes to both sides of board and column alike.
    const column = Math.min(besideWidth - sideBeside, Math.round(unit * 900));
    const left = Math.floor((film.width - sideBeside - gap - column) / 2);
    const place = squareAt(film, left, top, sideBeside);
    const right = place.bounds.right + gap;
    const words = { left: right, top, right: right + column, bottom: top + sideBeside };
    return { place, telling: words, callout: words, calloutAt: 'bottom' };
  }
  const spare = height - sideStacked - between;
  // Without callouts nothing stands below the board, and the words above it have all the room.
  const hasCallouts = film.marks.some(({ shape }) => ['note', 'ask', 'stamp'].includes(shape.kind));
  const above = hasCallouts
    ? Math.floor((spare * wordsAbove) / (wordsAbove + wordsBelow))
    : spare - Math.floor(unit * 10);
  const top = safe.top + above + Math.floor(between / 2);
  const place = squareAt(film, Math.floor((film.width - sideStacked) / 2), top, sideStacked);
  const { left } = place.bounds;
  const { right } = safe;
  return {
    place,
    telling: { left, right, top: safe.top, bottom: top - Math.floor(between / 2) },
    callout: { left, right, top: place.bounds.bottom + Math.ceil(between / 2), bottom: safe.bottom },
    calloutAt: 'top',
  };
}

/** The largest strip of the safe area beside a given board; where none will hold words, over the board's lower half. */
function besides(film: Film, place: BoardPlace, safe: Box): Layout {
  const unit = unitOf(film);
  const gap = Math.round(unit * 40);
  const { bounds } = place;
  const strips: readonly (readonly [Box, Layout['calloutAt']])[] = [
    [{ ...safe, left: Math.max(safe.left, Math.ceil(bounds.right) + gap) }, 'bottom'],
    [{ ...safe, right: Math.min(safe.right, Math.floor(bounds.left) - gap) }, 'bottom'],
    [{ ...safe, top: Math.max(safe.top, Math.ceil(bounds.bottom) + gap) }, 'top'],
    [{ ...safe, bottom: Math.min(safe.bottom, Math.floor(bounds.top) - gap) }, 'bottom'],
  ];
  const [best, calloutAt] = strips.reduce((a, b) => (worth(b[0], unit) > worth(a[0], unit) ? b : a));
  if (worth(best, unit) > 0) return { place, telling: best, callout: best, calloutAt };
  const strip = { ...safe, top: Math.floor((safe.top + safe.bottom) / 2) };
  return { place, telling: undefined, callout: strip, calloutAt: 'bottom' };
}

/** Nothing for a strip too narrow or too low for a line of words; else its area, a column wider than a line counting no further. */
function worth(box: Box, unit: number): number {
  const [width, height] = [box.right - box.left, box.bottom - box.top];
  if (width < 240 * unit || height < 90 * unit) return 0;
  return Math.min(width, 900 * unit) * height;
}

function squareAt(film: Film, left: number, top: number, side: number): BoardPlace {
  const place = boardPlace({ kind: 'square', left, top, side }, film.grid.size);
  if (place === undefined) throw new Bug('a square board has a place');
  return place;
}

/** The largest side up to this that gives cells of whole pixels. */
function wholeCells(film: Film, side: number): number {
  return Math.max(film.grid.size, Math.floor(side / film.grid.size) * film.grid.size);
}
