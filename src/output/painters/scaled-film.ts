/**
 * A film on a smaller frame: the same content, with everything scaled along.
 */
import type { BoardShape, Point } from '../../scene/scene.ts';
import type { Film } from '../../timeline/film.ts';

/** `part` of both sides, above 0 and at most 1. `even`: sides with an even number of pixels, as video requires. */
export function scaledFilm(film: Film, part: number, { even }: { readonly even: boolean }): Film {
  const step = even ? 2 : 1;
  const side = (length: number): number => Math.max(step, step * Math.round((length * part) / step));
  const shrunk = ([x, y]: Point): Point => [x * part, y * part];
  const shapeOf = (shape: BoardShape): BoardShape => {
    switch (shape.kind) {
      case 'hidden':
        return shape;
      case 'square':
        return { kind: 'square', left: shape.left * part, top: shape.top * part, side: shape.side * part };
      case 'corners': {
        const [a, b, c, d] = shape.corners;
        return { kind: 'corners', corners: [shrunk(a), shrunk(b), shrunk(c), shrunk(d)] };
      }
    }
  };
  const { camera } = film;
  return {
    ...film,
    width: side(film.width),
    height: side(film.height),
    board: film.board.map(({ shape, ...rest }) => ({ ...rest, shape: shapeOf(shape) })),
    camera:
      camera === undefined
        ? undefined
        : {
            left: camera.left * part,
            top: camera.top * part,
            width: camera.width * part,
            height: camera.height * part,
          },
  };
}
