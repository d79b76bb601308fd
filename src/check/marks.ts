/**
 * Marks that only the position can judge: a line of sight must start from a digit that stands on the board.
 */
import { has, membersOf, overlaps, setOf } from '../grid/candidates.ts';
import { candidateAt, candidatesInCell } from '../grid/grid.ts';
import { printCandidate, printCell } from '../grid/notation/print.ts';
import type { Position } from '../proof/kernel.ts';
import type { Diagnostic } from '../scene/diagnostic.ts';
import type { Step } from '../scene/scene.ts';

/** Faults and warnings of a step's `show`, given the positions before and after the step. */
export function judgeMarks(step: Step, before: Position, after: Position): Diagnostic[] {
  const { grid } = before;
  return (step.show ?? []).flatMap((beat): Diagnostic[] => {
    if (beat.mark.kind === 'sight') {
      return beat.mark.sights.flatMap(({ cell, digit }) => {
        const inCell = digit === undefined ? candidatesInCell(grid, cell) : [candidateAt(grid, cell, digit)];
        if (overlaps(after.placed, setOf(grid, inCell))) return [];
        const named = digit === undefined ? `a digit in ${printCell(grid, cell)}` : printCandidate(grid, inCell[0]!);
        const message = `a line of sight starts from a written digit, but ${named} is not on the board by then; place it in an earlier step`;
        return [{ code: 'sight-without-digit', severity: 'error', span: beat.span, message }];
      });
    }
    if (beat.mark.kind !== 'circle') return [];
    const gone = beat.mark.targets.flatMap((target) => {
      const isGone = target.kind === 'candidates' && !target.candidates.some((each) => has(before.possible, each));
      return isGone ? target.candidates : [];
    });
    if (gone.length === 0) return [];
    const which = membersOf(setOf(grid, gone))
      .map((candidate) => printCandidate(grid, candidate))
      .join(' ');
    const message = `${which} is not possible any more when the step begins, so no circle is drawn for it`;
    return [{ code: 'circle-on-nothing', severity: 'warning', span: beat.span, message }];
  });
}
