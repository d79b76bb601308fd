/**
 * Where the board of a recording lies over time: found on a picture now and then, and wherever two of these differ, on
 * every picture between them.
 */
import { type GivensSeen, givensSeen } from './board-ink.ts';
import { boardsIn, isSure, type SeenBoard } from './boards-in-picture.ts';
import { furthestApart, meanSide } from './corners.ts';
import type { GreyPicture, Shown } from './picture.ts';
import { type PlaceAt, type Stretch, stillPx, stretchesOf } from './stretches.ts';
import { type TrackedBoard, trackedBoard } from './tracked-board.ts';

/** The pictures of a recording, as whoever has it reads them. A picture is valid until the next is asked for. */
export interface Pictures {
  /** When the recording ends, in seconds. */
  readonly end: number;
  /** A picture about every so many seconds, the first one included. */
  sampled(every: number): AsyncIterable<Shown<GreyPicture>>;
  /** Every picture that is first shown at `from` or later and before `until`. */
  between(from: number, until: number): AsyncIterable<Shown<GreyPicture>>;
}

export interface KnownPuzzle {
  /** Cells in a row. */
  readonly size: number;
  /** By cell, row by row. */
  readonly isGiven: readonly boolean[];
}

export type Location =
  | {
      readonly kind: 'found';
      /** Cells in a row. */
      readonly size: number;
      readonly stretches: readonly Stretch[];
      readonly isSure: boolean;
      readonly board: SeenBoard;
      /** The moment at which it was found. */
      readonly foundAt: number;
      /** With a puzzle: its givens on the picture on which it was found. */
      readonly givens: GivensSeen | undefined;
      /** Other boards there, which were not meant. */
      readonly others: readonly SeenBoard[];
    }
  | { readonly kind: 'none'; readonly nearly: SeenBoard | undefined }
  /** Boards that are as good as each other, on the picture at that moment. */
  | { readonly kind: 'several'; readonly seconds: number; readonly boards: readonly SeenBoard[] }
  /** A board, but the puzzle's givens are not on it. */
  | { readonly kind: 'other puzzle'; readonly seconds: number; readonly board: SeenBoard; readonly givens: GivensSeen };

/** Cells in a row of the boards that are looked for where no puzzle says how many. */
const usualSizes: readonly number[] = [9, 6, 8, 4];

/** Seconds between the pictures that are looked at first. */
const everySeconds = 0.5;

/** Of the pictures before the board is found each so-and-so-many-th is searched for boards at an angle, and for faint ones. */
const thoroughEvery = 6;

/** Of two boards the larger is meant if it is so many times as large. */
const clearlyLarger = 1.3;

export async function locateBoard(
  pictures: Pictures,
  puzzle: KnownPuzzle | undefined,
  onSeconds: (seconds: number) => void = () => undefined,
): Promise<Location> {
  const sizes = puzzle === undefined ? usualSizes : [puzzle.size];
  const places: PlaceAt[] = [];
  let found: Chosen | undefined;
  let refused: Location = { kind: 'none', nearly: undefined };
  let tracked: TrackedBoard | undefined;
  let rest: PlaceAt | undefined;
  let looked = 0;
  for await (const { seconds, picture } of pictures.sampled(everySeconds)) {
    onSeconds(seconds);
    if (found === undefined || tracked === undefined) {
      // A long beginning without a board would take long to be searched through and through; what is quick is done each time.
      const search = looked % thoroughEvery === 0 ? {} : ({ isTilted: false, isQuick: true } as const);
      looked += 1;
      const choice = chosenOf(boardsIn(picture, { sizes, ...search }), picture, seconds, puzzle);
      if (choice.kind !== 'chosen') {
        refused = worse(refused, choice);
        places.push({ seconds, corners: undefined });
        continue;
      }
      found = choice;
      tracked = trackedBoard(picture, found.board);
      // It may have been there before it could be told, and it came at some moment since the picture before.
      places.push(...(await before(pictures, places.splice(0), seconds, found, tracked)));
    }
    const place = { seconds, corners: tracked.placeOn(picture) };
    const last = places.at(-1);
    if (last === undefined || rest === undefined || isSamePlace(rest, place)) {
      rest ??= place;
      places.push(place);
      continue;
    }
    // From the place before, so that it is followed step by step.
    if (last.corners !== undefined) tracked.returnTo(last.corners);
    for await (const shown of pictures.between(last.seconds + tinySeconds, seconds))
      places.push({ seconds: shown.seconds, corners: tracked.placeOn(shown.picture) });
    rest = { seconds, corners: tracked.placeOn(picture) };
    places.push(rest);
  }
  if (found === undefined) return refused;
  return {
    ...found,
    kind: 'found',
    size: found.board.size,
    foundAt: found.seconds,
    isSure: isSure(found.board),
    stretches: stretchesOf(places, pictures.end, found.board.size),
  };
}

/** Less than a picture lasts. */
const tinySeconds = 0.001;

interface Chosen {
  readonly kind: 'chosen';
  readonly seconds: number;
  readonly board: SeenBoard;
  readonly givens: GivensSeen | undefined;
  readonly others: readonly SeenBoard[];
}

type Refused = Exclude<Location, { readonly kind: 'found' }>;

/** The board that is meant, of those on one picture. */
function chosenOf(
  boards: readonly SeenBoard[],
  picture: GreyPicture,
  seconds: number,
  puzzle: KnownPuzzle | undefined,
): Chosen | Refused {
  const sure = boards.filter(isSure);
  const chosen = (board: SeenBoard, givens: GivensSeen | undefined): Chosen => {
    return {
      kind: 'chosen',
      seconds,
      board,
      givens,
      others: boards.filter((other) => other !== board && isSure(other)),
    };
  };
  if (puzzle !== undefined) {
    const held = boards.map((board) => ({
      board,
      givens: givensSeen(picture, board.size, board.corners, puzzle.isGiven),
    }));
    const fitting = held.filter(({ givens }) => givens.fits);
    const best = fitting.find(({ board }) => isSure(board)) ?? fitting.find(({ board }) => board.seen >= 0.7);
    if (best !== undefined) return chosen(best.board, best.givens);
    const other = held.find(({ board }) => isSure(board));
    if (other !== undefined) return { kind: 'other puzzle', seconds, ...other };
    return { kind: 'none', nearly: boards[0] };
  }
  const [first, second] = sure;
  if (first === undefined) return { kind: 'none', nearly: boards[0] };
  if (second !== undefined && meanSide(first.corners) < clearlyLarger * meanSide(second.corners))
    return { kind: 'several', seconds, boards: sure };
  return chosen(first, undefined);
}

/** Of two refusals the one that says more. */
function worse(one: Location, other: Refused): Location {
  const rank = { found: 4, several: 3, 'other puzzle': 2, none: 1 } as const;
  if (one.kind === 'none' && other.kind === 'none')
    return (other.nearly?.seen ?? 0) > (one.nearly?.seen ?? 0) ? other : one;
  return rank[other.kind] > rank[one.kind] ? other : one;
}

/** The places on the pictures before the one on which the board was found, looked at again now that it is known. */
async function before(
  pictures: Pictures,
  unknown: readonly PlaceAt[],
  foundAt: number,
  { board }: Chosen,
  tracked: TrackedBoard,
): Promise<readonly PlaceAt[]> {
  if (unknown.length === 0) return [];
  const places: PlaceAt[] = [];
  let last: PlaceAt | undefined;
  const change = async (until: number): Promise<void> => {
    if (last === undefined) return;
    for await (const shown of pictures.between(last.seconds + tinySeconds, until))
      places.push({ seconds: shown.seconds, corners: tracked.placeOn(shown.picture) });
  };
  for await (const { seconds, picture } of pictures.sampled(everySeconds)) {
    if (seconds >= foundAt - tinySeconds) break;
    const place = { seconds, corners: tracked.placeOn(picture) };
    if (last !== undefined && !isSamePlace(last, place)) await change(seconds);
    places.push(place);
    last = place;
  }
  if (last !== undefined && !isSamePlace(last, { seconds: foundAt, corners: board.corners })) await change(foundAt);
  tracked.returnTo(board.corners);
  return places;
}

function isSamePlace(one: PlaceAt, other: PlaceAt): boolean {
  if (one.corners === undefined || other.corners === undefined) return one.corners === other.corners;
  return furthestApart(one.corners, other.corners) <= stillPx;
}
