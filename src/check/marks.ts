/**
 * Marks that only the position and the argument can judge: a line of sight must start from a digit that stands on the
 * board, the two sides must be those of a cluster, and a proof that is played out must get there by forcing alone.
 */
import { type Candidate, has, membersOf, overlaps, setOf } from '../grid/candidates.ts';
import { candidateAt, candidatesInCell } from '../grid/grid.ts';
import { printCandidate, printCell, printSet } from '../grid/notation/print.ts';
import type { Position } from '../proof/kernel.ts';
import type { Diagnostic } from '../scene/diagnostic.ts';
import type { Beat, BeatMark, Located, Step } from '../scene/scene.ts';
import { sidesOf } from './sides.ts';
import { playStep, suppositionsOf } from './suppositions.ts';
import type { CheckedStep } from './verdict.ts';

/** A step with the positions before and after it, and what was found out about it. */
export interface JudgedStep extends Pick<CheckedStep, 'argument' | 'conclusions' | 'sound'> {
  readonly step: Step;
  readonly before: Position;
  readonly after: Position;
}

/** Faults and warnings of a step's `show`. */
export function judgeMarks(judged: JudgedStep): Diagnostic[] {
  return (judged.step.show ?? []).flatMap((beat): readonly Diagnostic[] => {
    const { mark } = beat;
    switch (mark.kind) {
      case 'sight':
        return judgeSights(judged, beat, mark);
      case 'circle':
        return judgeCircles(judged, beat, mark);
      case 'sides':
        return judgeSides(judged, mark.candidate);
      case 'suppose':
        return judgeSuppose(judged, mark);
      default:
        return [];
    }
  });
}

type MarkOf<Kind extends BeatMark['kind']> = Extract<BeatMark, { readonly kind: Kind }>;

function judgeSights(
  { before: { grid }, after }: JudgedStep,
  { span }: Beat,
  { sights }: MarkOf<'sight'>,
): Diagnostic[] {
  return sights.flatMap(({ cell, digit }) => {
    const inCell = digit === undefined ? candidatesInCell(grid, cell) : [candidateAt(grid, cell, digit)];
    if (overlaps(after.placed, setOf(grid, inCell))) return [];
    const named = digit === undefined ? `a digit in ${printCell(grid, cell)}` : printCandidate(grid, inCell[0]!);
    const message = `a line of sight starts from a written digit, but ${named} is not on the board by then; place it in an earlier step`;
    return [{ code: 'sight-without-digit', severity: 'error', span, message }];
  });
}

function judgeCircles({ before }: JudgedStep, { span }: Beat, { targets }: MarkOf<'circle'>): Diagnostic[] {
  const { grid, possible } = before;
  const gone = targets.flatMap((target) => {
    const isGone = target.kind === 'candidates' && !target.candidates.some((each) => has(possible, each));
    return isGone ? target.candidates : [];
  });
  if (gone.length === 0) return [];
  const which = membersOf(setOf(grid, gone))
    .map((candidate) => printCandidate(grid, candidate))
    .join(' ');
  const message = `${which} is not possible any more when the step begins, so no circle is drawn for it`;
  return [{ code: 'circle-on-nothing', severity: 'warning', span, message }];
}

function judgeSides({ before: { grid }, argument }: JudgedStep, { value, span }: Located<Candidate>): Diagnostic[] {
  if (sidesOf(grid, argument.sets, value) !== undefined) return [];
  const named = printCandidate(grid, value);
  const pairs = argument.sets.filter((set) => membersOf(set.members).length === 2).map(({ name }) => name);
  const why =
    argument.sets.length === 0
      ? 'this step has no argument in its so or chain'
      : `${pairs.length === 0 ? 'none of its sets has two members' : `its sets of two members are ${pairs.join(' ')}`}`;
  const message = `${named} belongs to no cluster of strong links here: ${why}; name the sets of two whose colours are meant after from, and a candidate of one of them here`;
  return [{ code: 'sides-of-nothing', severity: 'error', span, message }];
}

/** A step that does not hold, or is not meant to, is played out as far as it goes: its fault is reported as such. */
function judgeSuppose(judged: JudgedStep, { suppose, span }: MarkOf<'suppose'>): Diagnostic[] {
  const { step, sound, before, argument } = judged;
  const { grid } = before;
  const played = { ...judged, possibleBefore: before.possible };
  const suppositions = suppositionsOf(grid, played, suppose);
  if (suppositions.length === 0) {
    const message =
      suppose.kind !== 'each'
        ? `${printCandidate(grid, suppose.candidate)} is not possible any more when the step begins, so there is nothing to suppose of it`
        : `there is no set ${printSet(grid, suppose.set)} to take the members of: name a cell or the places of a digit, or an either/or that the step has after from`;
    return [{ code: 'suppose-nothing', severity: 'error', span, message }];
  }
  if (!sound || step.fails) return [];
  if (argument.sets.length === 0) {
    const message =
      'there is no argument to play out: "suppose" follows the chain or the sets that the step draws its so from';
    return [{ code: 'suppose-not-forced', severity: 'error', span, message }];
  }
  const stuck = suppositions.find((each) => playStep(grid, played, each).end.kind === 'none');
  if (stuck === undefined) return [];
  const named = `${printCandidate(grid, stuck.candidate)} taken as ${stuck.isTrue ? 'true' : 'not true'}`;
  const message = `forcing alone does not get there: with ${named} the argument comes to no clash, and its conclusions do not fall, without a choice between cases; suppose another candidate, or tell the cases in steps of their own`;
  return [{ code: 'suppose-not-forced', severity: 'error', span, message }];
}
