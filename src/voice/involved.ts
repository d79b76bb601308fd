/**
 * What a step shows and concludes, as far as a voice may speak of it.
 */
import type { CheckedStep } from '../check/verdict.ts';
import { type Candidate, membersOf } from '../grid/candidates.ts';
import { type Cell, cellOf, type Digit, digitOf, type Grid } from '../grid/grid.ts';
import { candidatesOfMark, coveredBy } from '../marks/paintings.ts';
import type { Film, Mark } from '../timeline/film.ts';

export interface Involved {
  /** Cells of the argument, of the marks, and of the conclusions. */
  readonly cells: ReadonlySet<Cell>;
  /** Candidates of the argument and of its links. */
  readonly argument: ReadonlySet<Candidate>;
  readonly removed: ReadonlySet<Candidate>;
  readonly placed: ReadonlyMap<Cell, Digit>;
  /** Sets of the argument, in scene notation: `7c5`, `r1c3`. */
  readonly sets: readonly string[];
}

/** By step, in order. */
export function involvedBySteps(film: Film, steps: readonly CheckedStep[]): readonly Involved[] {
  return steps.map((step) =>
    involvedIn(
      film.grid,
      step,
      film.marks.filter((mark) => mark.step === step.step.id),
    ),
  );
}

function involvedIn(grid: Grid, step: CheckedStep, marks: readonly Mark[]): Involved {
  const all = [step.argument, ...step.conclusions.flatMap(({ argument }) => argument ?? [])];
  const ofArgument = new Set<Candidate>([
    ...all.flatMap(({ sets }) => sets.flatMap(({ members }) => membersOf(members))),
    ...[...step.links, ...all.flatMap(({ links }) => links)].flatMap(({ fromCandidates, toCandidates }) => [
      ...fromCandidates,
      ...toCandidates,
    ]),
  ]);
  const removed = new Set<Candidate>();
  const placed = new Map<Cell, Digit>();
  const concluded: Candidate[] = [];
  for (const { conclusion } of step.conclusions) {
    if (conclusion.kind === 'impossible') {
      removed.add(conclusion.candidate);
      concluded.push(conclusion.candidate);
      continue;
    }
    const members = membersOf(conclusion.candidates);
    concluded.push(...members);
    if (members.length === 1) placed.set(cellOf(grid, members[0]!), digitOf(grid, members[0]!));
  }
  const ofMarks = marks.flatMap(({ shape }): readonly Cell[] => {
    const covered = coveredBy(shape);
    const own = 'cells' in shape ? shape.cells : typeof covered === 'string' ? [] : covered;
    return [...own, ...candidatesOfMark(shape).map((candidate) => cellOf(grid, candidate))];
  });
  const ofCandidates = [...ofArgument, ...concluded].map((candidate) => cellOf(grid, candidate));
  return {
    cells: new Set([...ofMarks, ...ofCandidates]),
    argument: ofArgument,
    removed,
    placed,
    sets: all.flatMap(({ sets }) => sets.map(({ name }) => name)),
  };
}
