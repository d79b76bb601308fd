/**
 * What is painted, as data, from which another process can build the same painter.
 */
import type { Look } from '../../scene/look.ts';
import type { Film } from '../../timeline/film.ts';

/** Can be cloned. */
export type Painting =
  | { readonly kind: 'film'; readonly film: Film; readonly look: Look }
  /** Frames `from` to `until`, `until` not included. */
  | { readonly kind: 'excerpt'; readonly of: Painting; readonly from: number; readonly until: number }
  /** The colours of a transparent film, or its transparency as grey. */
  | { readonly kind: 'fill' | 'matte'; readonly of: Painting };
