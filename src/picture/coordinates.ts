/**
 * The numbers of rows and columns at the board's left and upper edge, as they are written: `r3`, `c5`. If the frame's
 * layout is given, a board may leave no room at its edge; what would be cut off is left out.
 */
import type { Point } from '../scene/scene.ts';
import { type Word, writeWords } from './pen.ts';
import { coordinateBand } from './room-for-words.ts';
import type { BoardStage } from './stage.ts';

/** Under everything else on the board. */
export function paintCoordinates(stage: BoardStage): void {
  const { film, look, place } = stage;
  const { size } = film.grid;
  const numbers = Array.from({ length: size }, (_, index) => index);
  const off = -coordinateBand / 2;
  const isRoom = (at: Point) => {
    const [x, y] = place.at(at);
    const reach = (coordinateBand / 2) * place.cellPx;
    return x >= reach && y >= reach && x <= film.width - reach && y <= film.height - reach;
  };
  const word = (text: string, at: Point): Word => ({
    text,
    at,
    height: coordinateBand * 0.46,
    weight: 500,
    // Over a recording the background is unknown: full ink, and a casing.
    colour: film.draw === 'board' ? look.colours.quietText : look.colours.text,
    alpha: 1,
    casing: film.draw === 'board' ? 0 : look.strokes.casing * 2,
  });
  const words = numbers.flatMap((index) => [
    word(`c${index + 1}`, [index + 0.5, off]),
    word(`r${index + 1}`, [off, index + 0.5]),
  ]);
  writeWords(
    stage,
    words.filter(({ at }) => isRoom(at)),
  );
}
