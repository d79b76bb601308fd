/**
 * The puzzle given to a call: its symbols, a file of them, or a scene, whose start is then used.
 */
import { existsSync } from 'node:fs';
import { startPosition } from '../check/start-position.ts';
import { type Candidate, difference, membersOf } from '../grid/candidates.ts';
import { candidateAt } from '../grid/grid.ts';
import { printCandidates } from '../grid/notation/print.ts';
import { possibleFrom, solutionsOf } from '../grid/solutions.ts';
import { readScene } from '../lesson/read-scene.ts';
import type { Position } from '../proof/kernel.ts';
import { readBarePuzzle } from '../scene/bare-puzzle.ts';
import type { Diagnostic } from '../scene/diagnostic.ts';
import { printDiagnostic } from '../scene/locate.ts';
import type { Puzzle, Scene } from '../scene/scene.ts';
import { UsageError } from '../verbs/usage-error.ts';
import { readText } from './read-text.ts';
import type { Terminal } from './terminal.ts';

export interface GivenPuzzle {
  readonly puzzle: Pick<Puzzle, 'grid' | 'givens' | 'start' | 'uniqueness'>;
  /** The scene it was taken from, and its text; undefined if it was given as symbols. */
  readonly scene: { readonly scene: Scene; readonly text: string } | undefined;
  /** Where solving begins. */
  readonly start: Position;
  readonly solution: readonly Candidate[];
}

/** How many differences of two solutions are listed. */
const differencesListed = 4;

/**
 * Reads a puzzle with exactly one solution and something left to solve; undefined if it has faults, which have then
 * been printed with their places.
 * @throws UsageError if there is no such file, or the puzzle cannot be solved
 */
export function readGivenPuzzle(given: string, terminal: Terminal): GivenPuzzle | undefined {
  const read = readPuzzle(given, terminal);
  return read === undefined ? undefined : solvable(read.puzzle, read.scene);
}

/** The same for a puzzle of which nothing is asked but that it can be read. */
export function readPuzzle(given: string, terminal: Terminal): Pick<GivenPuzzle, 'puzzle' | 'scene'> | undefined {
  const isFile = existsSync(given);
  if (!isFile && looksLikeFile(given)) throw new UsageError(`there is no file ${given}`);
  const text = isFile ? readText(given, 'puzzle file') : given;
  const label = isFile ? given : 'the puzzle';
  const say = (diagnostics: readonly Diagnostic[]) => {
    for (const each of diagnostics) terminal.err(`${printDiagnostic(label, text, each)}\n`);
  };
  if (isFile && /^\s*proofreel\s*:/m.test(text)) {
    const { scene, diagnostics } = readScene(text);
    say(diagnostics.filter(({ severity }) => severity === 'error'));
    return scene === undefined ? undefined : { puzzle: scene.puzzle, scene: { scene, text } };
  }
  const { puzzle, diagnostics } = readBarePuzzle(text);
  say(diagnostics);
  return puzzle === undefined
    ? undefined
    : { puzzle: { ...puzzle, start: [], uniqueness: 'allowed' }, scene: undefined };
}

/** More likely a misspelt file name than a puzzle: it has letters, or a slash. */
function looksLikeFile(given: string): boolean {
  return /[\p{L}/\\]/u.test(given.replace(/[_.]/g, ''));
}

function solvable(puzzle: GivenPuzzle['puzzle'], scene: GivenPuzzle['scene']): GivenPuzzle {
  const { grid, givens, uniqueness } = puzzle;
  const [solution, other] = solutionsOf(grid, possibleFrom(grid, givens), 2);
  if (solution === undefined)
    throw new UsageError('the puzzle has no solution; compare its givens with their source, cell by cell');
  if (other !== undefined) throw new UsageError(severalSolutions(puzzle, [solution, other]));
  const start = startPosition(puzzle, uniqueness === 'allowed');
  if (membersOf(start.placed).length === grid.cellCount)
    throw new UsageError('the puzzle is already solved: every cell has its digit');
  return { puzzle, scene, start, solution: membersOf(solution) };
}

function severalSolutions({ grid, givens }: GivenPuzzle['puzzle'], solutions: readonly Position['possible'][]): string {
  const [one, two] = solutions.map((solution) => {
    const isTrue = membersOf(solution);
    return grid.cells
      .map((cell) => grid.digits.find((digit) => isTrue.includes(candidateAt(grid, cell, digit))))
      .join('');
  });
  const [mine, theirs] = [difference(solutions[0]!, solutions[1]!), difference(solutions[1]!, solutions[0]!)];
  const count = membersOf(mine).length;
  const some = (set: Position['possible']) => printCandidates(grid, membersOf(set).slice(0, differencesListed));
  const more = count > differencesListed ? ', and so on' : '';
  const given = givens.filter((each) => each !== undefined).length;
  return [
    `the puzzle has several solutions (${given} givens), so no path of arguments can lead to one; two of them are`,
    `  ${one}`,
    `  ${two}`,
    `they differ in ${count} cells: ${some(mine)} in the first, ${some(theirs)} in the second${more}; give one of these more`,
  ].join('\n');
}
