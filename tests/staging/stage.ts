/**
 * Small scenes told in one call, and films printed as lines that a table can hold.
 *
 * The board of most tables is `towers`, 6x6 at 25 frames a second. With the default look a strike is drawn in 5 frames and
 * held for 18 more, a digit is written in 8, words fade in 4, and circles of one beat begin 1.25 frames apart.
 */

import type { CheckedScene } from '../../src/check/verdict.ts';
import { filmOf } from '../../src/film/film-of.ts';
import { lastFullFrame } from '../../src/film/last-full-frame.ts';
import { printCandidate, printCandidates, printCell, printCells } from '../../src/grid/notation/print.ts';
import { checkScene } from '../../src/lesson/check-scene.ts';
import { readScene } from '../../src/lesson/read-scene.ts';
import { schedule } from '../../src/lesson/schedule.ts';
import { defaultLook } from '../../src/picture/default-look.ts';
import type { Film, Mark, MarkShape } from '../../src/timeline/film.ts';
import { readNarration } from '../../src/timeline/narration.ts';
import type { Schedule } from '../../src/timeline/schedule.ts';

export interface Told {
  readonly film: Film;
  readonly checked: CheckedScene;
  readonly schedule: Schedule;
}

/** The film of a scene that can be read and timed; fails with the faults of one that cannot. */
export function tell(text: string, narrationText?: string): Told {
  const { scene, diagnostics } = readScene(text);
  const narration = narrationText === undefined ? undefined : readNarration(narrationText, 'talk.vtt').narration;
  if (scene === undefined) throw new Error(diagnostics.map(({ message }) => message).join('\n'));
  const timed = schedule(scene, narration, {});
  const checked = checkScene(scene);
  const errors = [...timed.diagnostics, ...checked.errors].filter(({ severity }) => severity === 'error');
  if (errors.length > 0) throw new Error(errors.map(({ message }) => message).join('\n'));
  return { film: filmOf(checked, timed.schedule, defaultLook), checked, schedule: timed.schedule };
}

/**
 * A scene on the board of two towers. `steps` is YAML, a list; `video` adds keys.
 *
 *     1346  1456  1345  1235  345  2345
 *     134   145   (2)   135   (6)  345
 *     1246  (3)   145   256   5    256
 *     26    256   5     (4)   (1)  2356
 *     234   24    (6)   35    345  (1)
 *     (5)   14    134   36    (2)  346
 */
export function towers(steps: string, video = ''): string {
  return [
    'proofreel: 1',
    'puzzle: {boxes: 2x3, givens: ...... ..2.6. .3.... ...41. ..6..1 5...2.}',
    `video: {rate: 25, draw: board${video === '' ? '' : `, ${video}`}}`,
    'groups: {high: blue, low: orange}',
    'steps:',
    steps,
  ].join('\n');
}

/** The skyscraper of that board, as the keys of a step: it clears r5c1, r6c4 and r6c6 of their 3s. */
export const skyscraper = 'chain: (3)r6c3=r1c3-r1c5=r5c5, so: r5c1<>3 r6c46<>3';

/** The marks of a step, in the film's order, as `from-until kind what @group`. */
export function marksOf({ film }: Told, step: string): string[] {
  return film.marks.filter((mark) => mark.step === step).map((mark) => printMark(film, mark));
}

export function printMark(film: Film, { from, until, group, shape }: Mark): string {
  const colour = group === undefined ? '' : ` @${group.colour}${group.index}`;
  return `${from}-${until} ${shape.kind} ${printShape(film, shape)}${colour}`;
}

function printShape({ grid }: Film, shape: MarkShape): string {
  switch (shape.kind) {
    case 'reach':
      return `${printCandidate(grid, shape.from)} to ${printCandidate(grid, shape.to)}`;
    case 'outline':
      return `${printCells(grid, shape.cells)}${shape.line === undefined ? '' : ` ${shape.line}`}`;
    case 'fill':
    case 'focus':
      return printCells(grid, shape.cells);
    case 'circle':
    case 'strike':
    case 'opens':
      return printCandidate(grid, shape.candidate);
    case 'link':
      return `${printCandidates(grid, shape.from)}${shape.link === 'strong' ? '=' : '-'}${printCandidates(grid, shape.to)}`;
    case 'place':
    case 'ring':
      return `${printCell(grid, shape.cell)}=${shape.digit}`;
    case 'label':
      return `${shape.candidate === undefined ? printCell(grid, shape.cell) : printCandidate(grid, shape.candidate)} "${shape.text}"`;
    case 'ghost':
      return `${printCandidates(grid, shape.candidates)} ${shape.isTrue ? 'true' : 'not true'}`;
    case 'clash':
      return shape.between.map((node) => printCandidates(grid, node)).join(' ~ ');
    case 'note':
    case 'ask':
    case 'stamp':
      return shape.text;
    case 'sight':
      return `${printCell(grid, shape.of)} ${shape.house?.name}: ${shape.cells.map((cell) => printCell(grid, cell)).join(' ')}`;
    default:
      return shape satisfies never;
  }
}

/** A candidate's stretches on the board as `from-until`; none where it is never drawn. */
export function stretchesOf({ film }: Told, candidate: string): string[] {
  return film.candidates
    .filter((small) => printCandidate(film.grid, small.candidate) === candidate)
    .map(({ from, until }) => `${from}-${until}`);
}

/** The digits written, as `r1c1=4 from 25`. */
export function writtenIn({ film }: Told): string[] {
  return film.written.map(({ cell, digit, from }) => `${printCell(film.grid, cell)}=${digit} from ${from}`);
}

export function fullFrame({ film }: Told, step: string): number {
  return lastFullFrame(film, step, defaultLook);
}
