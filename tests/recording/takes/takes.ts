/**
 * Takes by chance from a seed, with what a caller asks for in particular.
 */
import type { Corners } from '../../../src/recording/corners.ts';
import { type Chance, chanceFrom } from '../../random.ts';
import { lookFrom } from './looks.ts';
import { puzzleFrom, type TakePuzzle } from './puzzles.ts';
import type { CameraMove, Cover, Deed, Encoding, Take, TakeLook } from './take.ts';

export interface Wishes {
  readonly size?: 4 | 6 | 9;
  readonly width?: number;
  readonly height?: number;
  readonly rate?: number;
  readonly seconds?: number;
  readonly look?: Partial<TakeLook>;
  readonly puzzle?: TakePuzzle;
  /** Digits to be written one after the other, by cell; by default some cells by chance, with a slip now and then. */
  readonly order?: readonly { readonly cell: number; readonly digit: number }[];
  readonly moves?: readonly CameraMove[];
  readonly covers?: readonly Cover[];
  readonly isTilted?: boolean;
  readonly encoding?: Partial<Encoding>;
  /** Beside the board; by chance by default. */
  readonly pad?: boolean;
  readonly second?: boolean;
  readonly webcam?: boolean;
  /** Whether anything is done on the board. */
  readonly isSolved?: boolean;
}

export function takeFrom(seed: number, wishes: Wishes = {}): Take {
  // Spread out, since a linear generator's numbers lie near each other for seeds that do (Knuth's multiplier).
  const chance = chanceFrom(Math.imul(seed + 1, 2654435761) ^ Math.imul(seed + 1, 40503));
  for (let round = 0; round < 8; round++) chance.below(2);
  const size = wishes.size ?? chance.pick([9, 9, 9, 6, 4] as const);
  const { width = 1280, height = 720, rate = 30, seconds = 4 } = wishes;
  const look = { ...lookFrom(chance), ...wishes.look };
  const puzzle = wishes.puzzle ?? puzzleFrom(seed, size);
  const side = height * (0.62 + chance.below(24) / 100) + chance.below(100) / 100;
  const isLeft = chance.below(2) === 0;
  const around = 0.06 * height + (look.frame === 'outside' ? look.frameCells * (side / size) : 0);
  const left = (isLeft ? around : width - side - around) + chance.below(100) / 100;
  const top =
    Math.min(height - side - 0.02 * height - around / 3, 0.06 * height + around / 2) + chance.below(100) / 100;
  const beside = isLeft ? left + side + around : width * 0.03;
  const room = width - side - 2 * around - 0.06 * width;
  const has = (wish: boolean | undefined, likely: number) => wish ?? chance.below(10) < likely;
  const padSide = Math.min(0.6 * room, 0.32 * height);
  const secondSide = Math.min(0.7 * room, 0.3 * height);
  const frames = Math.round(seconds * rate);
  const [boxRows = 3, boxColumns = 3] = puzzle.boxes.split('x').map(Number);
  return {
    name: `take-${seed}`,
    seed,
    width,
    height,
    rate,
    frames,
    size,
    boxRows,
    boxColumns,
    givens: puzzle.givens,
    solution: puzzle.solution,
    look,
    board: { left, top, side },
    moves: wishes.moves ?? [],
    covers: wishes.covers ?? [],
    deeds: wishes.isSolved === false ? [] : deedsFrom(chance, puzzle, frames, wishes.order),
    pad: has(wishes.pad, 5) ? { left: beside, top: 0.1 * height, width: padSide, height: padSide } : undefined,
    second: has(wishes.second, 3)
      ? {
          left: beside,
          top: 0.1 * height + padSide + 20,
          width: secondSide,
          height: secondSide,
          size: chance.pick([4, 6, 9]),
        }
      : undefined,
    webcam: has(wishes.webcam, 4)
      ? { left: beside, top: height - 0.26 * height, width: 0.34 * height, height: 0.24 * height }
      : undefined,
    hasCursor: chance.below(2) === 0,
    tilt: wishes.isTilted === true ? tiltFrom(chance, width, height) : undefined,
    encoding: { crf: 20, noise: 0, scaledTo: undefined, isVariable: false, ...wishes.encoding },
  };
}

/** Each corner of the screen moved inwards by up to a twelfth of the height, as by a camera that stands a little aside. */
function tiltFrom(chance: Chance, width: number, height: number): Corners {
  const most = height / 12;
  const off = () => (most * chance.below(1001)) / 1000;
  return [
    [off(), off()],
    [width - off(), off()],
    [width - off(), height - off()],
    [off(), height - off()],
  ];
}

/** Digits and small digits, with a slip that is erased, one that is written over, and a coloured cell now and then. */
function deedsFrom(
  chance: Chance,
  { givens, solution }: TakePuzzle,
  frames: number,
  order: Wishes['order'],
): readonly Deed[] {
  const blank = chance.shuffled(givens.flatMap((digit, cell) => (digit === 0 ? [cell] : [])));
  const queue = order ?? blank.map((cell) => ({ cell, digit: solution[cell]! }));
  const size = Math.sqrt(givens.length);
  const deeds: Deed[] = [];
  let frame = 12;
  const small = new Map<number, readonly number[]>();
  const filled = new Set<number>();
  for (const { cell, digit } of queue) {
    if (frame > frames - 40) break;
    deeds.push({ frame, kind: 'select', cell });
    frame += 5 + chance.below(8);
    if (chance.below(3) === 0) {
      // Two or three small digits, here or in a cell that is still blank; one of them goes again.
      const open = blank.filter((each) => !filled.has(each) && !small.has(each));
      const where = chance.below(2) === 0 || open.length === 0 ? cell : chance.pick(open);
      const digits = chance.shuffled(Array.from({ length: size }, (_, index) => index + 1)).slice(0, 3);
      if (!small.has(where)) {
        for (const each of digits) {
          deeds.push({ frame, kind: 'pencil', cell: where, digit: each });
          frame += 6 + chance.below(6);
        }
        if (chance.below(2) === 0) {
          deeds.push({ frame, kind: 'unpencil', cell: where, digit: digits[0]! });
          frame += 8;
        }
        small.set(where, digits);
      }
    }
    if (chance.below(6) === 0) {
      const wrong = (digit % size) + 1;
      deeds.push({ frame, kind: 'write', cell, digit: wrong });
      frame += 15 + chance.below(10);
      if (chance.below(2) === 0) {
        deeds.push({ frame, kind: 'erase', cell });
        frame += 10;
      }
    }
    deeds.push({ frame, kind: 'write', cell, digit });
    filled.add(cell);
    frame += 12 + chance.below(14);
    if (chance.below(8) === 0) {
      deeds.push({
        frame,
        kind: 'tint',
        cell: chance.pick(blank),
        colour: chance.pick([
          [250, 214, 150],
          [180, 220, 190],
        ] as const),
      });
      frame += 10;
    }
  }
  return deeds;
}
