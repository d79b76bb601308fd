/**
 * `proofreel locate`: where the board lies in a recording, and when.
 */
import { basename, resolve } from 'node:path';
import type { Grid } from '../grid/grid.ts';
import { listenForInterrupt } from '../output/interrupt.ts';
import { progressMeter } from '../output/machine/progress-meter.ts';
import { progressLine } from '../output/progress.ts';
import { writeFoundSheet } from '../output/recordings/found-sheet.ts';
import { locatedPictures } from '../output/recordings/located-pictures.ts';
import { openRecording, type Recording } from '../output/recordings/recording.ts';
import type { GivensSeen } from '../recording/board-ink.ts';
import type { Corners } from '../recording/corners.ts';
import { type KnownPuzzle, type Location, locateBoard } from '../recording/locate-board.ts';
import type { Stretch } from '../recording/stretches.ts';
import { printSeconds } from '../report/clock-time.ts';
import { type LocateReport, printLocate, printLocateJson } from '../report/locate-report.ts';
import type { Puzzle } from '../scene/scene.ts';
import { exitStatus } from '../verbs/exit-status.ts';
import type { locate as verb } from '../verbs/locate.ts';
import { UsageError } from '../verbs/usage-error.ts';
import type { CallOf } from '../verbs/verb.ts';
import { readPuzzle } from './given-puzzle.ts';
import { putBoard, sceneToWrite } from './put-board.ts';
import { refuseTarget } from './put-text.ts';
import { messagesOf, type Terminal } from './terminal.ts';

type Call = CallOf<typeof verb>;

export async function locate(call: Call, terminal: Terminal): Promise<number> {
  if (call.out !== undefined) {
    if (!call.out.toLowerCase().endsWith('.png'))
      throw new UsageError(`-o is a picture: name it with .png, not '${basename(call.out)}'`);
    refuseTarget(call.out, { recording: call.recording });
  }
  const scene = call.write === undefined ? undefined : await sceneToWrite(call.write, terminal);
  if (call.write !== undefined && scene === undefined) return exitStatus.unusable;
  const given = call.puzzle === undefined ? undefined : readPuzzle(call.puzzle, terminal);
  if (call.puzzle !== undefined && given === undefined) return exitStatus.unusable;
  const puzzle = given?.puzzle ?? scene?.scene.puzzle;
  const interrupt = listenForInterrupt();
  try {
    const opened = await openRecording(call.recording, interrupt.signal);
    if (opened.kind === 'refused') throw new UsageError(opened.message);
    const { recording } = opened;
    const location = await search(recording, puzzle, terminal, interrupt.signal);
    if (location.kind !== 'found') {
      terminal.err(`proofreel: ${whyNot(call.recording, location, puzzle?.grid)}\n`);
      return exitStatus.unsound;
    }
    const report = reportOf(call.recording, recording, location);
    if (scene !== undefined) await putBoard(scene, recording, location, terminal);
    if (call.out !== undefined) {
      await writeFoundSheet(recording, location.stretches, resolve(call.out), interrupt.signal);
      terminal.err(`${call.out}: what was found\n`);
    }
    terminal.out(call.json ? printLocateJson(report) : printLocate(report));
    return exitStatus.sound;
  } finally {
    interrupt.release();
  }
}

async function search(
  recording: Recording,
  puzzle: Pick<Puzzle, 'grid' | 'givens'> | undefined,
  terminal: Terminal,
  signal: AbortSignal,
): Promise<Location> {
  const pictures = locatedPictures(recording, signal);
  const line = progressLine(messagesOf(terminal), undefined, 'seconds');
  const meter = progressMeter(Math.max(1, Math.ceil(pictures.end)), (progress) => line.show(progress));
  const reach = (seconds: number): void => {
    const whole = Math.floor(seconds);
    if (whole > meter.done) meter.advance(whole - meter.done, 0);
  };
  try {
    return await locateBoard(pictures, puzzle === undefined ? undefined : knownOf(puzzle), reach);
  } finally {
    line.clear();
  }
}

function knownOf({ grid, givens }: Pick<Puzzle, 'grid' | 'givens'>): KnownPuzzle {
  return { size: grid.size, isGiven: givens.map((digit) => digit !== undefined) };
}

type Found = Extract<Location, { readonly kind: 'found' }>;

function reportOf(name: string, { picture }: Recording, location: Found): LocateReport {
  const { size, isSure, board, foundAt, givens, others, stretches } = location;
  const cellName = (cell: number) => `r${Math.floor(cell / size) + 1}c${(cell % size) + 1}`;
  return {
    recording: name,
    width: picture.width,
    height: picture.height,
    cells: size,
    sure: isSure,
    why: [
      `at ${printSeconds(foundAt)} ${percent(board.seen)} of its lines are seen, ${Math.round(board.contrast)} levels from what is beside them`,
      ...(board.score < 0.6 ? ['something like its lines is seen elsewhere too, or they go on beyond it'] : []),
      ...(givens === undefined ? [] : [givensInWords(givens, cellName)]),
    ],
    ...(givens === undefined
      ? {}
      : {
          puzzle: {
            givens: givens.givens,
            missing: givens.missing.map(cellName),
            filled: givens.filled.map(cellName),
          },
        }),
    others: others.map((other) => ({ cells: other.size, corners: rounded(other.corners) })),
    board: stretches.map(stretchOf),
  };
}

function givensInWords({ givens, missing }: GivensSeen, cellName: (cell: number) => string): string {
  if (missing.length === 0) return `all ${givens} givens of the puzzle are seen`;
  return `${givens - missing.length} of ${givens} givens of the puzzle are seen; nothing in ${missing.map(cellName).join(' ')}`;
}

function stretchOf(stretch: Stretch): LocateReport['board'][number] {
  const [from, to] = [micro(stretch.from), micro(stretch.to)];
  switch (stretch.kind) {
    case 'hidden':
      return { from, to, hidden: true };
    case 'still':
      return { from, to, corners: rounded(stretch.corners) };
    case 'moving':
      return {
        from,
        to,
        moving: true,
        path: stretch.path.map(({ seconds, corners }) => ({ t: micro(seconds), corners: rounded(corners) })),
      };
    default:
      return stretch satisfies never;
  }
}

/** To a hundredth of a pixel. */
function rounded(corners: Corners): [[number, number], [number, number], [number, number], [number, number]] {
  const hundredth = (value: number) => Math.round(value * 100) / 100;
  const [a, b, c, d] = corners.map(([x, y]): [number, number] => [hundredth(x), hundredth(y)]);
  return [a!, b!, c!, d!];
}

function micro(seconds: number): number {
  return Math.round(seconds * 1e6) / 1e6;
}

/** What is there, and what to do. */
function whyNot(name: string, location: Exclude<Location, Found>, grid: Grid | undefined): string {
  switch (location.kind) {
    case 'none': {
      const wanted = grid === undefined ? 'no board' : `no board of ${grid.size}x${grid.size} cells`;
      const nearly =
        location.nearly === undefined
          ? 'nothing on it has the lines of one'
          : `the nearest to one is at ${placeOf(location.nearly.corners)}, with ${percent(location.nearly.seen)} of its lines`;
      return `${wanted} is found in ${name}: ${nearly}; look whether the whole board can be seen, and ${grid === undefined ? 'name its puzzle with --puzzle' : 'whether it is this puzzle'}, or write video.board by hand`;
    }
    case 'several': {
      const places = location.boards.map(({ size, corners }) => `${size}x${size} at ${placeOf(corners)}`).join(', ');
      return `${name} shows several boards at ${printSeconds(location.seconds)}, as large as each other: ${places}; say which is meant with --puzzle`;
    }
    case 'other puzzle': {
      const { givens, missing, blanks, filled } = location.givens;
      const seen =
        missing.length > 0
          ? `nothing stands in ${missing.length} of the ${givens} cells of its givens`
          : `something stands in ${filled.length} of its ${blanks} blank cells`;
      return `the board in ${name}, at ${placeOf(location.board.corners)}, is not that of this puzzle: ${seen}; compare the puzzle with the recording, or leave --puzzle out`;
    }
    default:
      return location satisfies never;
  }
}

function placeOf([topLeft, , bottomRight]: Corners): string {
  return `[${topLeft.map(Math.round).join(', ')}] to [${bottomRight.map(Math.round).join(', ')}]`;
}

/** Rounded down, so that 100 % is all. */
function percent(part: number): string {
  return `${Math.floor(100 * part)} %`;
}
