/**
 * Places of a board picture by picture, put together to stretches in which it lies still, moves, or is hidden.
 */
import type { Point } from '../scene/scene.ts';
import { type Corners, furthestApart, meanSide } from './corners.ts';

/** Where the board is from a picture on; undefined: it is not to be seen. */
export interface PlaceAt {
  readonly seconds: number;
  readonly corners: Corners | undefined;
}

/** From `from` to `to` seconds, `to` not included. */
export type Stretch =
  | { readonly kind: 'still'; readonly from: number; readonly to: number; readonly corners: Corners }
  | { readonly kind: 'hidden'; readonly from: number; readonly to: number }
  /** A place for each picture. */
  | {
      readonly kind: 'moving';
      readonly from: number;
      readonly to: number;
      readonly path: readonly { readonly seconds: number; readonly corners: Corners }[];
    };

/** Pixels by which the same place is measured differently at most. */
export const stillPx = 0.35;

/** A board that rests for less than this is on its way. */
const leastRest = 0.2;

/** One picture that stands longer between two of a move is a gap in the recording, unless it is as long as this. */
const longestGap = 1;

/** `places` in order of time; `end`: when the recording ends. `size`: cells in a row. */
export function stretchesOf(places: readonly PlaceAt[], end: number, size: number): readonly Stretch[] {
  const parts: { kind: Stretch['kind']; places: readonly Visible[]; from: number }[] = [];
  for (let at = 0; at < places.length; ) {
    const first = places[at]!;
    let until = at + 1;
    while (until < places.length && (places[until]!.corners === undefined) === (first.corners === undefined))
      until += 1;
    if (first.corners === undefined) parts.push({ kind: 'hidden', places: [], from: first.seconds });
    else {
      const next = places[until]?.seconds ?? end;
      for (const part of rests(places.slice(at, until).filter(isVisible), next, size))
        parts.push({ kind: part.isStill ? 'still' : 'moving', places: part.places, from: part.places[0]!.seconds });
    }
    at = until;
  }
  return parts.map(({ kind, places: all, from }, index): Stretch => {
    const to = parts[index + 1]?.from ?? end;
    switch (kind) {
      case 'hidden':
        return { kind, from, to };
      case 'still':
        return { kind, from, to, corners: middleOf(all) };
      case 'moving':
        return { kind, from, to, path: all };
      default:
        return kind satisfies never;
    }
  });
}

interface Visible {
  readonly seconds: number;
  readonly corners: Corners;
}

interface Part {
  readonly isStill: boolean;
  readonly places: readonly Visible[];
}

function isVisible(place: PlaceAt): place is Visible {
  return place.corners !== undefined;
}

/** Parts of a stretch in which the board is seen; `next`: when it is over. */
function rests(places: readonly Visible[], next: number, size: number): readonly Part[] {
  const cell = meanSide(places[0]!.corners) / size;
  const tolerance = Math.max(stillPx, 0.006 * cell);
  const parts: { isStill: boolean; places: Visible[] }[] = [];
  for (let at = 0; at < places.length; ) {
    let until = at + 1;
    while (until < places.length && furthestApart(places[until]!.corners, places[at]!.corners) <= tolerance) until += 1;
    const lasts = (places[until]?.seconds ?? next) - places[at]!.seconds;
    const isGap = until === at + 1 && at > 0 && lasts < longestGap;
    const isStill = (lasts >= leastRest && !isGap) || (at === 0 && until === places.length);
    if (isStill) until = at + withoutTail(places.slice(at, until), until < places.length);
    const taken = isStill ? places.slice(at, until) : [places[at]!];
    const last = parts.at(-1);
    if (!isStill && last !== undefined && !last.isStill) last.places.push(...taken);
    else parts.push({ isStill, places: taken });
    at += taken.length;
  }
  return withoutTremor(parts, Math.max(1.2, 0.04 * cell));
}

/**
 * A board that rests at the same place before and after, and was hardly elsewhere, has not moved: something was drawn on
 * its lines, or compression blurred them. `hardly`: so many pixels at most.
 */
function withoutTremor(parts: readonly Part[], hardly: number): readonly Part[] {
  const merged: Part[] = [];
  for (const part of parts) {
    const last = merged.at(-1);
    const rest = last?.isStill === true ? last : merged.at(-2);
    const between = last === undefined || last === rest ? [] : last.places;
    if (part.isStill && rest?.isStill === true) {
      const middle = middleOf(rest.places);
      const isNear = ({ corners }: Visible) => furthestApart(corners, middle) <= hardly;
      if (furthestApart(middle, middleOf(part.places)) <= 0.5 * hardly && between.every(isNear)) {
        merged.splice(merged.indexOf(rest));
        merged.push({ isStill: true, places: [...rest.places, ...between, ...part.places] });
        continue;
      }
    }
    merged.push(part);
  }
  return merged;
}

/**
 * How many of the places come before the board sets off: it does so slowly, and leaves the middle of all by more than
 * they differ among themselves.
 */
function withoutTail(rest: readonly Visible[], movesOn: boolean): number {
  if (!movesOn || rest.length < 3) return rest.length;
  const middle = middleOf(rest.slice(0, Math.max(3, Math.ceil(0.7 * rest.length))));
  const distances = rest.map(({ corners }) => furthestApart(corners, middle));
  const usual = [...distances].sort((a, b) => a - b)[rest.length >> 1]!;
  const least = Math.max(0.08, 4 * usual);
  let count = rest.length;
  while (count > 1 && distances[count - 1]! > least) count -= 1;
  return count;
}

/** The median of each coordinate. */
function middleOf(places: readonly Visible[]): Corners {
  const median = (values: readonly number[]): number => [...values].sort((a, b) => a - b)[values.length >> 1]!;
  const [a, b, c, d] = [0, 1, 2, 3].map(
    (corner): Point => [
      median(places.map(({ corners }) => corners[corner]![0])),
      median(places.map(({ corners }) => corners[corner]![1])),
    ],
  );
  return [a!, b!, c!, d!];
}
