/**
 * How far off the board of a recording is found, on takes by chance of all kinds: parts of a cell at the worst corner, and
 * pictures by which a change of place comes too early or too late.
 */
import { mkdtempSync, rmSync } from 'node:fs';
import { cpus, tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { locatedPictures } from '../../src/output/recordings/located-pictures.ts';
import { openRecording } from '../../src/output/recordings/recording.ts';
import { furthestApart, meanSide } from '../../src/recording/corners.ts';
import { type Location, locateBoard } from '../../src/recording/locate-board.ts';
import { film } from '../recording/takes/film.ts';
import type { Take, Truth } from '../recording/takes/take.ts';
import { takeFrom, type Wishes } from '../recording/takes/takes.ts';

const zoom = [
  { from: 40, until: 60, to: { zoom: 1.3, x: 660, y: 370 }, eased: true },
  { from: 85, until: 100, to: { zoom: 1, x: 640, y: 360 }, eased: false },
];
const pan = [{ from: 45, until: 60, to: { zoom: 1, x: 700, y: 330 }, eased: true }];
const title = { kind: 'title', from: 0, until: 40, fadeFrames: 8 } as const;
const cutaway = { kind: 'cutaway', from: 60, until: 85, fadeFrames: 0 } as const;
const full = { width: 1920, height: 1080 };
const halfSize = { width: 854, height: 480 };

const kinds: Readonly<Record<string, Wishes>> = {
  plain: {},
  decoys: { second: true, pad: true, webcam: true },
  'title, cutaway': { covers: [title, cutaway] },
  zoom: { moves: zoom },
  pan: { moves: pan },
  'crf 34, noise': { encoding: { crf: 34, noise: 7 } },
  '480p scaled up': { ...halfSize, encoding: { crf: 34, scaledTo: full } },
  'variable rate': {
    encoding: { isVariable: true, crf: 28 },
    moves: pan,
    covers: [{ ...cutaway, from: 75, until: 100 }],
  },
  tilted: { isTilted: true, seconds: 2 },
};

/** Seeds for each kind: `npm run bench -- locate` takes three, `LOCATE_SEEDS=10` more. */
const seeds = Number(process.env.LOCATE_SEEDS ?? 3);
const firstSeed = Number(process.env.LOCATE_FIRST ?? 100);

interface Measured {
  readonly kind: string;
  readonly isTilted: boolean;
  /** Of each stretch in which the board lies still, and each picture of one in which it moves, in cells. */
  readonly still: readonly number[];
  readonly moving: readonly number[];
  /** Pictures by which each change comes too early or too late; undefined where the stretches are others. */
  readonly changes: readonly number[] | undefined;
  readonly secondsPerSecond: number;
}

export async function run(): Promise<void> {
  const folder = mkdtempSync(join(tmpdir(), 'proofreel-bench-'));
  console.log(`where the board is found in takes by chance, ${seeds} of each kind, on ${cpus()[0]?.model}`);
  const all: Measured[] = [];
  try {
    for (const [index, [kind, wishes]] of Object.entries(kinds).entries()) {
      for (let seed = 0; seed < seeds; seed++) {
        const take = takeFrom(firstSeed + 20 * index + seed, wishes);
        const measured = await measure(kind, take, join(folder, 'take.mp4'));
        if (measured !== undefined) all.push(measured);
      }
    }
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
  for (const isTilted of [false, true]) {
    const these = all.filter((each) => each.isTilted === isTilted);
    if (these.length === 0) continue;
    console.log(isTilted ? 'at an angle' : 'screen recordings');
    print(
      '  still boards, cells off',
      these.flatMap(({ still }) => still),
    );
    print(
      '  moving boards, cells off',
      these.flatMap(({ moving }) => moving),
    );
    print(
      '  changes, pictures off',
      these.flatMap(({ changes }) => changes ?? []),
    );
  }
  console.log(`found in ${all.length} of ${seeds * Object.keys(kinds).length} takes`);
}

async function measure(kind: string, take: Take, file: string): Promise<Measured | undefined> {
  const truth = await film(take, file);
  const opened = await openRecording(file);
  if (opened.kind === 'refused') throw new Error(opened.message);
  const puzzle = { size: take.size, isGiven: take.givens.map((digit) => digit !== 0) };
  const start = performance.now();
  const location = await locateBoard(locatedPictures(opened.recording), puzzle);
  const secondsPerSecond = (performance.now() - start) / 1000 / (take.frames / take.rate);
  const name = `${kind.padEnd(16)} seed ${take.seed}, ${take.size}x${take.size}`;
  if (location.kind !== 'found') {
    console.log(`${name}: ${location.kind}`);
    return undefined;
  }
  const measured = { kind, isTilted: take.tilt !== undefined, secondsPerSecond, ...compared(location, truth, take) };
  const { still, moving, changes } = measured;
  const worst = (values: readonly number[]) => (values.length === 0 ? '-' : Math.max(...values).toFixed(4));
  const isSaid = location.isSure ? '' : ', not sure';
  console.log(
    `${name}: still ${worst(still)}, moving ${worst(moving)}, changes ${changes?.map((each) => each.toFixed(0)).join(' ') ?? 'others'}${isSaid}; ${secondsPerSecond.toFixed(2)} s a second`,
  );
  return measured;
}

function compared(
  { stretches }: Extract<Location, { readonly kind: 'found' }>,
  truth: Truth,
  { size, rate }: Take,
): Pick<Measured, 'still' | 'moving' | 'changes'> {
  const truePath = new Map(
    truth.board.flatMap((each) => ('path' in each ? each.path : [])).map(({ t, corners }) => [t.toFixed(4), corners]),
  );
  const still: number[] = [];
  const moving: number[] = [];
  for (const stretch of stretches) {
    if (stretch.kind === 'moving') {
      for (const { seconds, corners } of stretch.path) {
        const expected = truePath.get(seconds.toFixed(4));
        if (expected !== undefined) moving.push((furthestApart(corners, expected) / meanSide(expected)) * size);
      }
    }
    if (stretch.kind !== 'still') continue;
    const middle = (stretch.from + stretch.to) / 2;
    const expected = truth.board.find(({ from, to }) => from <= middle && middle < to);
    if (expected === undefined || !('corners' in expected)) continue;
    still.push((furthestApart(stretch.corners, expected.corners) / meanSide(expected.corners)) * size);
  }
  const kindOf = (each: Truth['board'][number]) => ('hidden' in each ? 'hidden' : 'path' in each ? 'moving' : 'still');
  const isSame =
    stretches.length === truth.board.length &&
    stretches.every(({ kind }, index) => kind === kindOf(truth.board[index]!));
  const pictures = truth.times;
  const numberOf = (seconds: number) => pictures.findIndex((time) => time > seconds - 0.5 / rate / 2);
  const changes = stretches.slice(1).map(({ from }, index) => {
    return Math.abs(numberOf(from) - numberOf(truth.board[index + 1]?.from ?? 0));
  });
  return { still, moving, changes: isSame ? changes : undefined };
}

function print(what: string, values: readonly number[]): void {
  if (values.length === 0) return;
  const sorted = [...values].sort((a, b) => a - b);
  const median = sorted[sorted.length >> 1]!;
  console.log(`${what.padEnd(28)} median ${median.toFixed(4)}, worst ${sorted.at(-1)!.toFixed(4)} of ${values.length}`);
}

if (import.meta.url === pathToFileURL(process.argv[1] ?? '').href) await run();
