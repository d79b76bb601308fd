/**
 * `video.board`: where the grid's outer square is on the frame, once or as it moves.
 */
import type { FrameSize } from './frame.ts';
import type { BoardPlaces, PlaceMap } from './language-video.ts';
import type { Context } from './reading.ts';
import type { BoardPlacement, BoardShape, Point } from './scene.ts';

type BoardNeeds = Pick<Context, 'faults' | 'rate'> & { readonly frame: FrameSize };
type Place<Mark> = Extract<PlaceMap, { mark: Mark }>;

/** The places of the board in their order; empty if the value is missing. Faulty ones are reported and left out. */
export function readBoard(written: BoardPlaces | undefined, needs: BoardNeeds): readonly BoardPlacement[] {
  if (written === undefined) return [];
  if (written.kind === 'marked') return readPlacement(written, needs);
  return written.items.flatMap((place) => {
    if (place === undefined) return [];
    const { keys, node } = place.common;
    if (keys.at === undefined && written.items.length > 1) {
      const first = node.entries[0]?.key.span ?? place.span;
      needs.faults.error('missing-key', first, 'a place in a list needs the key "at": when the board is there');
    }
    return readPlacement(place, needs);
  });
}

function readPlacement(place: PlaceMap, needs: BoardNeeds): readonly BoardPlacement[] {
  const shape = readShape(place, needs);
  const at = place.common.values.at?.read(needs);
  return shape === undefined ? [] : [{ shape, at }];
}

function readShape(place: PlaceMap, needs: BoardNeeds): BoardShape | undefined {
  switch (place.mark) {
    case 'hidden':
      return { kind: 'hidden' };
    case 'corners':
      return readCorners(place, needs);
    case 'square':
      return readSquare(place, needs);
    case undefined:
      return undefined;
    default:
      return place satisfies never;
  }
}

function readSquare({ own, span }: Place<'square'>, needs: BoardNeeds): BoardShape | undefined {
  const { values } = own;
  const [left, top, side] = [values.left?.read(needs), values.top?.read(needs), values.side?.read(needs)];
  if (left === undefined || top === undefined || side === undefined) return undefined;
  const { width, height } = needs.frame;
  if (left < width && top < height && left + side > 0 && top + side > 0) return { kind: 'square', left, top, side };
  const message = `this board is outside the frame of ${width}x${height}; for a time without a board write {hidden: true, at: ...}`;
  needs.faults.error('out-of-range', span, message);
  return undefined;
}

function readCorners({ own }: Place<'corners'>, needs: BoardNeeds): BoardShape | undefined {
  const { faults } = needs;
  const written = own.values.corners;
  if (written === undefined) return undefined;
  const points = written.items.map((corner): Point | undefined => {
    if (corner === undefined) return undefined;
    const count = corner.items.length;
    if (count !== 2) {
      const message = `this corner has ${count} ${count === 1 ? 'number' : 'numbers'}; write [x, y]`;
      faults.error('bad-corners', corner.span, message);
      return undefined;
    }
    const [x, y] = corner.items.map((each) => each?.read(needs));
    return x === undefined || y === undefined ? undefined : [x, y];
  });
  if (points.length !== 4) {
    const message = `${points.length} corners are given here; a board has four, clockwise from the top left`;
    faults.error('bad-corners', written.span, message);
    return undefined;
  }
  const [a, b, c, d] = points;
  if (a === undefined || b === undefined || c === undefined || d === undefined) return undefined;
  const corners = [a, b, c, d] as const;
  const wrong = whyNoBoard(corners);
  if (wrong === undefined) return { kind: 'corners', corners };
  faults.error('bad-corners', written.span, wrong);
  return undefined;
}

/** Frame coordinates increase to the right and downwards, so a turn to the right has a positive cross product. */
function whyNoBoard(corners: readonly [Point, Point, Point, Point]): string | undefined {
  const turns = corners.map((corner, index) => {
    const [before, after] = [corners[(index + 3) % 4]!, corners[(index + 1) % 4]!];
    return (corner[0] - before[0]) * (after[1] - corner[1]) - (corner[1] - before[1]) * (after[0] - corner[0]);
  });
  if (turns.every((turn) => turn < 0)) return 'these corners run anticlockwise; write them clockwise from the top left';
  if (!turns.every((turn) => turn > 0)) {
    return 'these corners do not form a board: two sides cross, bend inwards or have no length; write them clockwise from the top left';
  }
  const [topLeft, topRight, , bottomLeft] = corners;
  if (topRight[0] > topLeft[0] && bottomLeft[1] > topLeft[1]) return undefined;
  return 'the first of these corners is not the top left one; write them clockwise from the top left';
}
