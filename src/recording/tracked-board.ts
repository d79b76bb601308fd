/**
 * A board followed from picture to picture: first where it was, then where it would be if it went on as it did, then
 * anywhere.
 */
import { type BoardContent, contentOf, likeness } from './board-content.ts';
import { boardsIn, isSure } from './boards-in-picture.ts';
import { type Corners, leanOf } from './corners.ts';
import { type FittedBoard, fittedBoard } from './fitted-board.ts';
import type { GreyPicture } from './picture.ts';

export interface TrackedBoard {
  /** Where the board lies on the next picture; undefined where it is not to be seen. */
  placeOn(picture: GreyPicture): Corners | undefined;
  /** Goes back to a place where it was seen before. */
  returnTo(corners: Corners): void;
}

/** A board whose lines are less than half as strong as before is more hidden than seen. */
const leastStrength = 0.5;

/** Contents less alike than this are not those of one board. */
const leastLikeness = 0.5;

/** `first`: a picture on which the board was found at `corners`, and has lines of that contrast. */
export function trackedBoard(
  first: GreyPicture,
  { size, corners, contrast }: { readonly size: number; readonly corners: Corners; readonly contrast: number },
): TrackedBoard {
  let place = corners;
  let before: Corners | undefined;
  let content = contentOf(first, size, corners);
  let strength = contrast;
  let last: { readonly sample: Uint8Array; readonly corners: Corners | undefined } | undefined;
  const isTilted = leanOf(corners) > 0.04 / size;

  const isBoard = (picture: GreyPicture, found: FittedBoard): BoardContent | undefined => {
    if (found.seen < 0.5 || found.contrast < leastStrength * strength) return undefined;
    const here = contentOf(picture, size, found.corners);
    return likeness(here, content) >= leastLikeness ? here : undefined;
  };

  const near = (picture: GreyPicture, at: Corners): Corners | undefined => {
    const found = fittedBoard(picture, size, at, { isTilted });
    const here = found === undefined ? undefined : isBoard(picture, found);
    if (found === undefined || here === undefined) return undefined;
    content = here;
    // Strength follows slowly, so that a fade is measured against what was there before it.
    strength += 0.02 * (found.contrast - strength);
    return found.corners;
  };

  const anywhere = (picture: GreyPicture): Corners | undefined => {
    for (const found of boardsIn(picture, { sizes: [size], isTilted, isQuick: true })) {
      if (!isSure(found)) continue;
      const here = isBoard(picture, { ...found, pieces: 0 });
      if (here === undefined) continue;
      content = here;
      return found.corners;
    }
    return undefined;
  };

  return {
    placeOn(picture) {
      const sample = sampleOf(picture);
      if (last !== undefined && isSame(last.sample, sample)) return last.corners;
      const predicted = before === undefined ? undefined : goneOn(before, place);
      const found =
        near(picture, place) ??
        (predicted === undefined ? undefined : near(picture, predicted)) ??
        (before === undefined ? undefined : near(picture, corners)) ??
        anywhere(picture);
      last = { sample, corners: found };
      if (found !== undefined) [before, place] = [place, found];
      return found;
    },
    returnTo(at) {
      [before, place, last] = [undefined, at, undefined];
    },
  };
}

/** As far again as from one place to the other. */
function goneOn(from: Corners, to: Corners): Corners {
  const [a, b, c, d] = to.map(([x, y], index) => [2 * x - from[index]![0], 2 * y - from[index]![1]] as const);
  return [a!, b!, c!, d!];
}

/** Every seventh pixel of every fifth row: what is the same here has not moved. */
function sampleOf({ width, height, levels }: GreyPicture): Uint8Array {
  const perRow = Math.ceil(width / 7);
  const sample = new Uint8Array(perRow * Math.ceil(height / 5));
  let at = 0;
  for (let y = 0; y < height; y += 5) for (let x = 0; x < width; x += 7) sample[at++] = levels[y * width + x]!;
  return sample;
}

function isSame(one: Uint8Array, other: Uint8Array): boolean {
  for (let index = 0; index < one.length; index++) if (one[index] !== other[index]) return false;
  return true;
}
