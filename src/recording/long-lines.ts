/**
 * Long upright lines: stretches of a column along which an edge goes on.
 */
import { covered, type UprightEdges } from './upright-edges.ts';

export interface LongLine {
  /** The column's place, in pixels. */
  readonly at: number;
  /** Rows from `from` up to `until`. */
  readonly from: number;
  readonly until: number;
}

/**
 * The lines that are at least `least` rows long, from left to right. A gap is passed over that is no longer than `gap`
 * rows: lines that cross, tiles that are apart.
 */
export function longLines(edges: UprightEdges, least: number, gap: number): readonly LongLine[] {
  const found: LongLine[] = [];
  for (let column = 1; column < edges.width - 1; column++) {
    for (const line of linesInColumn(edges, column, gap)) {
      if (line.until - line.from < least) continue;
      if (covered(edges, line.at, line.from, line.until) >= 0.7) found.push(line);
    }
  }
  return joined(found);
}

function* linesInColumn({ above, width, height }: UprightEdges, column: number, gap: number): Generator<LongLine> {
  let from: number | undefined;
  let last = 0;
  for (let y = 0; y < height; y++) {
    if (above[(y + 1) * width + column] === above[y * width + column]) continue;
    if (from !== undefined && y - last > gap) {
      yield { at: column + 0.5, from, until: last };
      from = undefined;
    }
    from ??= y;
    last = y + 1;
  }
  if (from !== undefined) yield { at: column + 0.5, from, until: last };
}

/** Lines in neighbouring columns that are as long are one, in their middle. */
function joined(lines: readonly LongLine[]): readonly LongLine[] {
  const open: { first: number; last: number; from: number; until: number }[] = [];
  const done: LongLine[] = [];
  const close = (line: (typeof open)[number]): void => {
    done.push({ at: (line.first + line.last) / 2, from: line.from, until: line.until });
  };
  for (const { at, from, until } of lines) {
    for (let index = open.length - 1; index >= 0; index--)
      if (at - open[index]!.last > 1.5) close(open.splice(index, 1)[0]!);
    const same = open.find((line) => {
      const both = Math.min(line.until, until) - Math.max(line.from, from);
      return both > 0.85 * Math.max(line.until - line.from, until - from) && at - line.first < 8;
    });
    if (same === undefined) open.push({ first: at, last: at, from, until });
    else {
      same.last = at;
      same.from = Math.min(same.from, from);
      same.until = Math.max(same.until, until);
    }
  }
  for (const line of open) close(line);
  return done.sort((a, b) => a.at - b.at);
}
