/**
 * The painter of a painting, rebuilt.
 */
import { excerpt } from './excerpt.ts';
import { filmPainter } from './film-painter.ts';
import { fillPainter, mattePainter } from './matte.ts';
import type { Painter } from './painter.ts';
import type { Painting } from './painting.ts';

export function painterOf(painting: Painting): Painter {
  switch (painting.kind) {
    case 'film':
      return filmPainter(painting.film, painting.look);
    case 'excerpt':
      return excerpt(painterOf(painting.of), painting.from, painting.until);
    case 'fill':
      return fillPainter(painterOf(painting.of));
    case 'matte':
      return mattePainter(painterOf(painting.of));
    default:
      return painting satisfies never;
  }
}
