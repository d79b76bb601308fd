/**
 * A certificate that anyone can check: one conclusion as a DIMACS CNF file, the format of the SAT competitions. A
 * clause for each set, a binary clause for each conflict, and the conclusion denied. Any SAT solver must find it
 * unsatisfiable if the conclusion is proved, and satisfiable if it is not.
 */
import type { CheckedConclusion, CheckedScene, CheckedStep } from '../check/verdict.ts';
import { type Candidate, has, membersOf } from '../grid/candidates.ts';
import type { Grid } from '../grid/grid.ts';
import { printCandidate } from '../grid/notation/print.ts';

export interface Certificate {
  /** Of the file: the step's id, the conclusion's number in it, the conclusion (`kite-1-r4c4-not-5.cnf`). */
  readonly name: string;
  readonly text: string;
}

/** One certificate for each conclusion that is proved or unproved; a false or redundant one has none. */
export function certificatesOf(checked: CheckedScene): Certificate[] {
  const { grid } = checked.scene.puzzle;
  return checked.steps.flatMap((step) =>
    step.conclusions.flatMap((conclusion, index) =>
      conclusion.verdict === 'proved' || conclusion.verdict === 'unproved'
        ? [{ name: nameOf(step, conclusion, index), text: certificate(grid, step, conclusion) }]
        : [],
    ),
  );
}

function certificate(grid: Grid, step: CheckedStep, checked: CheckedConclusion): string {
  const { conclusion } = checked;
  const sets = (checked.argument ?? step.argument).sets;
  const concluded = conclusion.kind === 'impossible' ? [conclusion.candidate] : membersOf(conclusion.candidates);
  const used = [...new Set([...sets.flatMap((set) => membersOf(set.members)), ...concluded])].sort((a, b) => a - b);
  const variable = new Map(used.map((candidate, index) => [candidate, index + 1]));
  const of = (candidate: Candidate) => variable.get(candidate) ?? 0;
  const clauses: string[] = [];
  const comments = [
    `step ${step.step.id}: ${checked.text}, ${checked.verdict}`,
    `${checked.verdict === 'proved' ? 'unsatisfiable' : 'satisfiable'}: at least one of each set, no two in conflict, and the conclusion denied`,
    ...used.map((candidate) => `variable ${of(candidate)} is ${printCandidate(grid, candidate)}`),
    ...sets.map((set) => `set ${set.name}: ${membersOf(set.members).map(of).join(' ')}`),
  ];
  for (const set of sets) clauses.push(`${membersOf(set.members).map(of).join(' ')} 0`);
  for (const a of used)
    for (const b of used) if (a < b && has(grid.conflicts[a]!, b)) clauses.push(`-${of(a)} -${of(b)} 0`);
  for (const candidate of concluded) clauses.push(`${conclusion.kind === 'impossible' ? '' : '-'}${of(candidate)} 0`);
  return `${comments.map((comment) => `c ${comment}\n`).join('')}p cnf ${used.length} ${clauses.length}\n${clauses.join('\n')}\n`;
}

/** `r4c4<>5` becomes `r4c4-not-5`, `r8c4=8` `r8c4-is-8`: names that every file system takes. */
function nameOf(step: CheckedStep, conclusion: CheckedConclusion, index: number): string {
  const words = conclusion.text.replace('<>', '-not-').replace('=', '-is-').replaceAll(' ', '-');
  return `${step.step.id}-${index + 1}-${words}.cnf`;
}
