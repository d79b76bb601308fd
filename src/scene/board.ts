/**
 * `video.board`: where the grid's outer square lies on the frame, once or as it moves.
 */
import { type Context, readNumber, timeOf } from './reading.ts';
import type { BoardPlacement, BoardShape, Point } from './scene.ts';
import { keyOf, type MapNode, type Tree, textOf, valueOf } from './yaml-tree.ts';

interface Size {
  readonly width: number;
  readonly height: number;
}

type Reading = Pick<Context, 'faults' | 'rate'>;

/** The places of the board in their order; none where the value is missing. Faulty ones are reported and left out. */
export function readBoard(value: Tree | undefined, size: Size, context: Reading): readonly BoardPlacement[] {
  if (value?.kind === 'map') return readPlacement(value, size, context);
  if (value?.kind !== 'list') return [];
  return value.items.flatMap((item) => {
    if (item.kind !== 'map') return [];
    if (keyOf(item, 'at') === undefined && value.items.length > 1) {
      const first = item.entries[0]?.key.span ?? item.span;
      context.faults.error('missing-key', first, 'a place in a list needs the key "at": when the board is there');
    }
    return readPlacement(item, size, context);
  });
}

function readPlacement(map: MapNode, size: Size, context: Reading): readonly BoardPlacement[] {
  const shape = readShape(map, size, context);
  const at = timeOf(map, 'at', 'unanchored', context);
  return shape === undefined ? [] : [{ shape, at }];
}

function readShape(map: MapNode, size: Size, context: Reading): BoardShape | undefined {
  if (textOf(map, 'hidden') !== undefined) return { kind: 'hidden' };
  if (valueOf(map, 'corners') !== undefined) return readCorners(map, size, context);
  const [left, top] = [pixelsOf(map, 'left', size, context), pixelsOf(map, 'top', size, context)];
  const node = textOf(map, 'side');
  const most = 4 * Math.max(size.width, size.height);
  const side =
    node === undefined ? undefined : readNumber(node, { what: '"side"', least: 16, most, faults: context.faults });
  if (left === undefined || top === undefined || side === undefined) return undefined;
  if (left < size.width && top < size.height && left + side > 0 && top + side > 0)
    return { kind: 'square', left, top, side };
  const message = `this board lies beside the frame of ${size.width}x${size.height}; for a time without a board write {hidden: true, at: ...}`;
  context.faults.error('out-of-range', map.span, message);
  return undefined;
}

/** A place on or near the frame: a board may stand out over its edges. */
function pixelsOf(map: MapNode, key: 'left' | 'top', size: Size, { faults }: Reading): number | undefined {
  const node = textOf(map, key);
  const most = 2 * Math.max(size.width, size.height);
  return node === undefined ? undefined : readNumber(node, { what: `"${key}"`, least: -most, most, faults });
}

function readCorners(map: MapNode, size: Size, { faults }: Reading): BoardShape | undefined {
  const value = valueOf(map, 'corners');
  if (value?.kind !== 'list') return undefined;
  const most = 2 * Math.max(size.width, size.height);
  const points = value.items.map((item): Point | undefined => {
    const parts = item.kind === 'list' ? item.items : [];
    if (parts.length !== 2) {
      if (item.kind === 'list')
        faults.error(
          'bad-corners',
          item.span,
          `this corner has ${parts.length} ${parts.length === 1 ? 'number' : 'numbers'}; write [x, y]`,
        );
      return undefined;
    }
    const [x, y] = parts.map((part) =>
      part.kind === 'text' ? readNumber(part, { what: 'a corner', least: -most, most, faults }) : undefined,
    );
    return x === undefined || y === undefined ? undefined : [x, y];
  });
  if (points.length !== 4) {
    faults.error(
      'bad-corners',
      value.span,
      `${points.length} corners stand here; a board has four, clockwise from the top left`,
    );
    return undefined;
  }
  const [a, b, c, d] = points;
  if (a === undefined || b === undefined || c === undefined || d === undefined) return undefined;
  const corners = [a, b, c, d] as const;
  const wrong = whyNoBoard(corners);
  if (wrong === undefined) return { kind: 'corners', corners };
  faults.error('bad-corners', value.span, wrong);
  return undefined;
}

/** Frame coordinates grow to the right and downwards, so that a turn to the right has a positive cross product. */
function whyNoBoard(corners: readonly [Point, Point, Point, Point]): string | undefined {
  const turns = corners.map((corner, index) => {
    const [before, after] = [corners[(index + 3) % 4]!, corners[(index + 1) % 4]!];
    return (corner[0] - before[0]) * (after[1] - corner[1]) - (corner[1] - before[1]) * (after[0] - corner[0]);
  });
  if (turns.every((turn) => turn < 0)) return 'these corners run anticlockwise; write them clockwise from the top left';
  if (!turns.every((turn) => turn > 0)) {
    return 'these corners are no board: two sides cross, bend inwards or have no length; write them clockwise from the top left';
  }
  const [topLeft, topRight, , bottomLeft] = corners;
  if (topRight[0] > topLeft[0] && bottomLeft[1] > topLeft[1]) return undefined;
  return 'the first of these corners is not the top left one; write them clockwise from the top left';
}
