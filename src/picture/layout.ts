/**
 * Where the board and the words are on the frame, whether the board's place is given or chosen here.
 */
import { Bug } from '../grid/bug.ts';
import type { Film } from '../timeline/film.ts';
import { type BoardPlace, type Box, boardPlace } from './board-place.ts';
import { bestStrip, type Strip, stripsBeside } from './free-room.ts';
import { layoutBesideCamera, ownLayout } from './own-layout.ts';
import { boardBlock, type Layout, wordsIn } from './room-for-words.ts';
import { safeArea, unitOf } from './safe-area.ts';

/** The layout under the placement with this index of `film.board`; undefined: laid out here. */
export function layoutOf(film: Film, board: number | undefined): Layout {
  if (board === undefined) return film.camera === undefined ? ownLayout(film) : layoutBesideCamera(film);
  const placement = film.board[board];
  if (placement === undefined) throw new Bug(`the film has no board placement ${board}`);
  const place = boardPlace(placement.shape, film.grid.size);
  const safe = safeArea(film);
  if (place !== undefined) return besides(film, place, safe);
  const whole: Strip = ['right', safe];
  return wordsIn(film, undefined, bestStrip(film, [whole], gapOf(film)) ?? whole);
}

/** The largest strip of the safe area next to a given board; if none can hold words, over the board's lower half. */
function besides(film: Film, place: BoardPlace, safe: Box): Layout {
  const gap = gapOf(film);
  const best = bestStrip(film, stripsBeside(safe, boardBlock(film, place), gap), gap);
  if (best !== undefined) return wordsIn(film, place, best);
  const lower: Strip = ['right', { ...safe, top: Math.floor((safe.top + safe.bottom) / 2) }];
  const [, strip] = bestStrip(film, [lower], gap) ?? lower;
  return { place, heading: undefined, callout: strip, calloutAt: 'bottom', said: undefined };
}

function gapOf(film: Film): number {
  return Math.round(unitOf(film) * 40);
}
