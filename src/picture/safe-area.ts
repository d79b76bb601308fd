/**
 * The part of the frame that nothing else covers. The lowest eighth is left for captions and players; on an upright
 * frame words also avoid the right side, where players put their buttons (common practice).
 */
import type { Film } from '../timeline/film.ts';
import type { Box } from './board-place.ts';

/** The part of the frame in which words may be. */
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
