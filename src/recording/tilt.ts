/**
 * How a screen is turned away from the camera, from its own lines: the map that sets them upright and level.
 *
 * The lines that are upright on the screen meet in one point of the picture's plane, perhaps far away. Where one of them
 * crosses the level line through the picture's middle, say at a, its slope there is `lean + fan (a - middle)`: all lines
 * through a point have slopes that are linear in a. So two numbers a direction say it all, and those are taken under which
 * the edges of the picture fall together into the sharpest lines: Hough's transform with two parameters for all lines at
 * once, in place of two for each.
 */
import type { Homography } from './homography.ts';
import type { GreyPicture } from './picture.ts';
import { transposed, type UprightEdges, uprightEdges } from './upright-edges.ts';

export interface Tilt {
  /** From the picture as seen straight on to the picture; the middle stays where it is, and the scale there too. */
  readonly toPicture: Homography;
}

interface Lean {
  readonly lean: number;
  /** Per pixel. */
  readonly fan: number;
}

/** Slopes beyond this are no mild angle. */
const mostLean = 0.16;

/** Of the picture's half width: how much slopes may change from its middle to its edge. */
const mostFan = 0.16;

export function tiltOf(picture: GreyPicture): Tilt {
  const { width, height } = picture;
  const [middleX, middleY] = [width / 2, height / 2];
  const upright = leanOf(uprightEdges(picture));
  const level = leanOf(uprightEdges(transposed(picture)));
  // The points in which they meet, as the images of the directions down and to the right.
  const down = [middleX * upright.fan - upright.lean, middleY * upright.fan - 1, upright.fan] as const;
  const right = [middleX * level.fan - 1, middleY * level.fan - level.lean, level.fan] as const;
  // From a picture with its middle at (0, 0); both directions are turned round to keep their sense.
  const [a, d, g] = right.map((value) => -value);
  const [b, e, h] = down.map((value) => -value);
  const fromMiddle = [a!, b!, middleX, d!, e!, middleY, g!, h!, 1] as const;
  const shift = (row: 0 | 3 | 6): number =>
    fromMiddle[(row + 2) as 2] - fromMiddle[row] * middleX - fromMiddle[(row + 1) as 1] * middleY;
  return { toPicture: [a!, b!, shift(0), d!, e!, shift(3), g!, h!, shift(6)] };
}

/** Points of edges, from the picture's middle. */
interface Points {
  readonly x: Float64Array;
  readonly y: Float64Array;
  readonly halfWidth: number;
}

function leanOf(edges: UprightEdges): Lean {
  const points = thinned(edges);
  let best = { lean: 0, fan: 0, sharpness: sharpness(points, 0, 0) };
  // From coarse to fine: a step is a third of the one before.
  let [leanStep, fanStep] = [0.008, 0.016 / points.halfWidth];
  let [leanReach, fanReach] = [mostLean, mostFan / points.halfWidth];
  for (let round = 0; round < 4; round++) {
    const centre = best;
    for (let lean = centre.lean - leanReach; lean <= centre.lean + leanReach + 1e-12; lean += leanStep) {
      for (let fan = centre.fan - fanReach; fan <= centre.fan + fanReach + 1e-12; fan += fanStep) {
        const here = sharpness(points, lean, fan);
        if (here > best.sharpness) best = { lean, fan, sharpness: here };
      }
    }
    [leanReach, fanReach] = [leanStep, fanStep];
    [leanStep, fanStep] = [leanStep / 3, fanStep / 3];
  }
  return best;
}

/** How unevenly the edges fall on the places where their lines cross the middle: the sum of the squares of the counts. */
function sharpness({ x, y, halfWidth }: Points, lean: number, fan: number): number {
  const bins = Math.ceil(2 * halfWidth) + 2;
  const counts = new Float64Array(bins);
  for (let index = 0; index < x.length; index++) {
    // x = a + (lean + fan a) y, so a = (x - lean y) / (1 + fan y).
    const at = (x[index]! - lean * y[index]!) / (1 + fan * y[index]!) + halfWidth;
    const bin = Math.floor(at);
    if (bin < 0 || bin + 1 >= bins) continue;
    counts[bin]! += 1 - (at - bin);
    counts[bin + 1]! += at - bin;
  }
  let sum = 0;
  for (const count of counts) sum += count * count;
  return sum;
}

/** Where edges are strongest across, at most some thousands, evenly taken. */
function thinned({ strength, width, height }: UprightEdges): Points {
  const found: number[] = [];
  for (let y = 0; y < height; y += 2) {
    const start = y * width;
    for (let column = 1; column < width - 1; column++) {
      const here = strength[start + column]!;
      if (here === 0 || here < strength[start + column - 1]! || here <= strength[start + column + 1]!) continue;
      found.push(start + column);
    }
  }
  const step = Math.max(1, found.length / 6000);
  const count = Math.floor(found.length / step);
  const [x, y] = [new Float64Array(count), new Float64Array(count)];
  for (let index = 0; index < count; index++) {
    const at = found[Math.floor(index * step)]!;
    x[index] = (at % width) + 0.5 - width / 2;
    y[index] = Math.floor(at / width) + 0.5 - height / 2;
  }
  return { x, y, halfWidth: width / 2 };
}
