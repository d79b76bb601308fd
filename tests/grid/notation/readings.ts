/**
 * The parsers by name, each with a printer for what it reads, so that a table of texts is a test.
 */
import type { Candidate } from '../../../src/grid/candidates.ts';
import type { Cell, Grid, HouseShape } from '../../../src/grid/grid.ts';
import { parseCandidates } from '../../../src/grid/notation/candidates.ts';
import { parseCells } from '../../../src/grid/notation/cells.ts';
import { parseChain } from '../../../src/grid/notation/chain.ts';
import { parseConclusions } from '../../../src/grid/notation/conclusions.ts';
import { parseDeadly } from '../../../src/grid/notation/deadly.ts';
import { parseHouses } from '../../../src/grid/notation/houses.ts';
import { parseOnly, parsePencil } from '../../../src/grid/notation/lists.ts';
import * as print from '../../../src/grid/notation/print.ts';
import { parseSets } from '../../../src/grid/notation/sets.ts';
import { parseTargets } from '../../../src/grid/notation/targets.ts';
import type { NotationFault, Reading } from '../../../src/grid/terms.ts';

/** What was read as one line a value, or the faults. */
export type Lines = Reading<readonly string[]>;

function lines<T>(reading: Reading<readonly T[]>, printOne: (value: T) => string): Lines {
  return reading.ok ? { ok: true, value: reading.value.map(printOne) } : reading;
}

function line<T>(reading: Reading<T>, printIt: (value: T) => string): Lines {
  return reading.ok ? { ok: true, value: [printIt(reading.value)] } : reading;
}

export const readers = {
  cells: (grid: Grid, text: string) => lines(parseCells(grid, text), (cell: Cell) => print.printCell(grid, cell)),
  candidates: (grid: Grid, text: string) =>
    lines(parseCandidates(grid, text), (candidate: Candidate) => print.printCandidate(grid, candidate)),
  houses: (grid: Grid, text: string) => lines(parseHouses(grid, text), (house: HouseShape) => print.printHouse(house)),
  sets: (grid: Grid, text: string) => lines(parseSets(grid, text), ({ name }) => print.printSet(grid, name)),
  conclusions: (grid: Grid, text: string) =>
    lines(parseConclusions(grid, text), ({ conclusion }) => print.printConclusion(grid, conclusion)),
  chain: (grid: Grid, text: string) => line(parseChain(grid, text), (chain) => print.printChain(grid, chain)),
  deadly: (grid: Grid, text: string) => line(parseDeadly(grid, text), (deadly) => print.printDeadly(grid, deadly)),
  only: (grid: Grid, text: string) => lines(parseOnly(grid, text), (only) => print.printOnly(grid, only)),
  pencil: (grid: Grid, text: string) => lines(parsePencil(grid, text), (list) => print.printPencil(grid, list)),
  targets: (grid: Grid, text: string) =>
    lines(parseTargets(grid, text), (target) => `${target.kind} ${print.printTarget(grid, target)}`),
};

export type ReaderName = keyof typeof readers;

/** The faults as they would be marked under the text: ` ^^ message`, one a line. */
export function marked(faults: readonly NotationFault[]): string[] {
  return faults.map(({ at, length, message }) => `${' '.repeat(at)}${'^'.repeat(length)} ${message}`);
}
