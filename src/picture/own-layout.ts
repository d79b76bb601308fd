/**
 * A frame laid out here: the largest board that leaves room for the words.
 */
import { Bug } from '../grid/bug.ts';
import type { Film } from '../timeline/film.ts';
import { type BoardPlace, type Box, boardPlace } from './board-place.ts';
import { bestStrip, cameraBox, grown, overlap, type Strip, stripsBeside, worth } from './free-room.ts';
import { boardBlock, coordinateBand, type Layout, saidGap, saidHeight, wordsIn } from './room-for-words.ts';
import { safeArea, unitOf } from './safe-area.ts';

/** Words next to the board, or above and below it, whichever gives the larger board. */
export function ownLayout(film: Film): Layout {
  const unit = unitOf(film);
  const safe = safeArea(film);
  const gap = Math.round(unit * 60);
  const margin = safe.left;
  const height = safe.bottom - safe.top;
  const besideWidth = film.width - 2 * margin - gap;
  const sideBeside = largestSide(film, Math.min(height, besideWidth - Math.round(unit * 380)));
  const wordsAbove = Math.round(unit * 165);
  const wordsBelow = Math.round(unit * 105);
  const saidBelow = film.said.length === 0 ? 0 : Math.round(unit * (saidHeight * 0.75 + saidGap));
  const between = Math.round(unit * 44);
  const room = height - wordsAbove - wordsBelow - saidBelow - between;
  const sideStacked = largestSide(film, Math.min(film.width - 2 * margin, room));
  if (sideBeside >= sideStacked) {
    const block = blockSide(film, sideBeside);
    const top = safe.top + Math.floor((height - block) / 2);
    // The extra width of a very wide frame goes to both sides of board and column equally.
    const column = Math.min(besideWidth - block, Math.round(unit * 900));
    const left = Math.floor((film.width - block - gap - column) / 2);
    const place = squareInBlock(film, left, top, sideBeside);
    const right = place.bounds.right + gap;
    const words = { left: right, top: place.bounds.top, right: right + column, bottom: place.bounds.bottom };
    return wordsIn(film, place, ['right', words]);
  }
  const block = blockSide(film, sideStacked);
  const spare = height - block - between - saidBelow;
  // Without callouts nothing is below the board, and the words above it have all the room.
  const above = hasCallouts(film)
    ? Math.floor((spare * wordsAbove) / (wordsAbove + wordsBelow))
    : spare - Math.floor(unit * 10);
  const top = safe.top + above + Math.floor(between / 2);
  const place = squareInBlock(film, Math.floor((film.width - block) / 2), top, sideStacked);
  const { left } = place.bounds;
  const { right } = safe;
  const below = { left, right, top: place.bounds.bottom + Math.ceil(between / 2), bottom: safe.bottom };
  const said = saidBelow === 0 ? undefined : { ...below, top: safe.bottom - Math.round(unit * saidHeight * 0.75) };
  return {
    place,
    heading: { left, right, top: safe.top, bottom: top - Math.floor(between / 2) },
    callout: { ...below, bottom: safe.bottom - saidBelow },
    calloutAt: 'top',
    said,
  };
}

/** What words need next to a board, in square pixels of a frame whose shorter side is 1080. */
const needed = { heading: 230_000, callouts: 110_000, said: 130_000 };
/** The acceptable fractions of it, tried in turn. */
const partsThatDo = [1, 0.6, 0.3, 0];

/** The largest board that is clear of the camera's place and leaves room for words. */
export function layoutBesideCamera(film: Film): Layout {
  const unit = unitOf(film);
  const gap = Math.round(unit * 40);
  const safe = safeArea(film);
  const most = largestSide(film, Math.min(safe.right - safe.left, safe.bottom - safe.top));
  const step = film.grid.size * Math.max(1, Math.round(unit * 2));
  const wanted = needed.heading + (hasCallouts(film) ? needed.callouts : 0) + (film.said.length > 0 ? needed.said : 0);
  for (const part of partsThatDo) {
    const least = wanted * part;
    for (let side = most; side > 0; side -= step) {
      const found = besideCamera(film, side, { safe, gap, least });
      if (found !== undefined) return wordsIn(film, found.place, found.strip);
    }
  }
  // Only if a tiny frame has no room at all.
  return ownLayout({ ...film, camera: undefined });
}

/** Of the nine places of a board of this side the one with the best room for words; undefined if none has enough. */
function besideCamera(
  film: Film,
  side: number,
  { safe, gap, least }: { readonly safe: Box; readonly gap: number; readonly least: number },
): { readonly place: BoardPlace; readonly strip: Strip } | undefined {
  const camera = cameraBox(film);
  const block = blockSide(film, side);
  const [right, bottom] = [safe.right - block, safe.bottom - block];
  const unit = unitOf(film);
  let best: { readonly place: BoardPlace; readonly strip: Strip; readonly value: number } | undefined;
  for (const left of [safe.left, Math.floor((safe.left + right) / 2), right]) {
    for (const top of [safe.top, Math.floor((safe.top + bottom) / 2), bottom]) {
      const place = squareInBlock(film, left, top, side);
      const taken = boardBlock(film, place);
      if (camera !== undefined && overlap(taken, grown(camera, gap))) continue;
      const strip = bestStrip(film, stripsBeside(safe, taken, gap), gap);
      if (strip === undefined) continue;
      const value = worth(strip[1], unit);
      if (value >= least && value > (best?.value ?? 0)) best = { place, strip, value };
    }
  }
  return best;
}

/** A board of this side, the numbers at its edges included in the place that begins here. */
function squareInBlock(film: Film, left: number, top: number, side: number): BoardPlace {
  const band = blockSide(film, side) - side;
  const place = boardPlace({ kind: 'square', left: left + band, top: top + band, side }, film.grid.size);
  if (place === undefined) throw new Bug('a square board has a place');
  return place;
}

function hasCallouts(film: Film): boolean {
  return film.marks.some(({ shape }) => ['note', 'ask', 'stamp'].includes(shape.kind));
}

/** A board of this side, and the numbers at its edges. */
function blockSide({ grid, coordinates }: Film, side: number): number {
  return coordinates ? side + Math.ceil((side / grid.size) * coordinateBand) : side;
}

/** The largest side whose block is up to this, with cells of whole pixels. */
function largestSide(film: Film, block: number): number {
  const { size } = film.grid;
  const side = film.coordinates ? Math.floor((block - 1) / (1 + coordinateBand / size)) : block;
  return Math.max(size, Math.floor(side / size) * size);
}
