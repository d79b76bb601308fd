/**
 * The small digits that marks bring with them. If the board does not have all its candidates written in, a ring, a
 * slash or the end of a link may be on a candidate that is not shown: its digit is then shown as long as the mark, so
 * that no mark is on nothing, and until the digit of its cell is written.
 */
import { cellOf } from '../grid/grid.ts';
import { candidatesOfMark } from '../marks/paintings.ts';
import type { BoardState } from '../staging/board-state.ts';
import { type Film, frameAt, type Mark } from '../timeline/film.ts';

type Small = Film['candidates'][number];

/** The small digits of the film together with those of its marks: by candidate, in order and without overlaps. */
export function withMarkedDigits(
  shown: Film['candidates'],
  marks: readonly Mark[],
  { grid, digitOf }: BoardState,
): Film['candidates'] {
  const marked = marks.flatMap(({ shape, from, until }) =>
    candidatesOfMark(shape).map((candidate): Small => {
      const written = digitOf(cellOf(grid, candidate))?.from ?? until;
      return { candidate, from, until: frameAt(Math.max(from, Math.min(until, written))) };
    }),
  );
  const joint: Small[] = [];
  for (const small of [...shown, ...marked].sort((a, b) => a.candidate - b.candidate || a.from - b.from)) {
    const last = joint.at(-1);
    if (last?.candidate !== small.candidate || last.until < small.from) joint.push(small);
    else if (last.until < small.until) joint[joint.length - 1] = { ...last, until: small.until };
  }
  return joint;
}
