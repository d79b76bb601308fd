/**
 * Why something is not proved, in sentences that an author can act on.
 */
import { type Candidate, type Candidates, has, membersOf } from '../grid/candidates.ts';
import { sharedHouses } from '../grid/geometry.ts';
import { cellOf, digitOf, type Grid } from '../grid/grid.ts';
import { compactly } from '../grid/notation/compact.ts';
import { printCandidate, printCell, printConclusion } from '../grid/notation/print.ts';
import type { Conclusion } from '../grid/terms.ts';
import type { ProposedStep } from '../scene/step-text.ts';
import type { Claim, EvaluatedConclusion } from './claim.ts';
import type { CheckedLink, FixFor } from './verdict.ts';

/** `r4c5`, or `r4c5 and r4c6`, or `r4c5, r4c6 and r4c7`. */
export function inWords(parts: readonly string[], joint = 'and'): string {
  if (parts.length < 2) return parts.join('');
  return `${parts.slice(0, -1).join(', ')} ${joint} ${parts.at(-1)}`;
}

/** Why a drawn link does not hold, with the candidates that break it. */
export function explainLink(grid: Grid, link: CheckedLink): string {
  const character = link.kind === 'strong' ? '=' : '-';
  const text = `${link.from}${character}${link.to}`;
  const breakers = link.brokenBy.map((candidate) => printCandidate(grid, candidate));
  if (link.kind === 'weak') {
    return `${text} is not a weak link: ${inWords(breakers)} can be true together`;
  }
  const vanished = [link.fromCandidates.length === 0 ? link.from : '', link.toCandidates.length === 0 ? link.to : ''];
  const gone = vanished.filter((end) => end !== '');
  if (gone.length > 0)
    return `${text} is not a strong link: ${inWords(gone)} ${gone.length === 1 ? 'is' : 'are'} no longer possible`;
  if (breakers.length === 0) return `${text} is not a strong link: no house, cell or set holds both ends`;
  const strangers = inWords(link.brokenBy.map((candidate) => alsoHolds(grid, candidate)));
  return `${text} is not a strong link: ${strangers}, ${consequence(grid, link)}`;
}

/** `so column 7 has three places for it`, `so r4c7 has three candidates`, or that both ends can be false. */
function consequence(grid: Grid, { fromCandidates, toCandidates, brokenBy }: CheckedLink): string {
  const all = [...new Set([...fromCandidates, ...toCandidates, ...brokenBy])];
  const [cells, digits] = [
    new Set(all.map((each) => cellOf(grid, each))),
    new Set(all.map((each) => digitOf(grid, each))),
  ];
  const count = numberWords[all.length] ?? String(all.length);
  const [house] = sharedHouses(grid, [...cells]);
  if (cells.size === 1) return `so ${printCell(grid, cellOf(grid, all[0]!))} has ${count} candidates`;
  if (digits.size === 1 && house !== undefined) return `so ${house.kind} ${house.number} has ${count} places for it`;
  return 'so both ends can be false';
}

const numberWords = ['no', 'one', 'two', 'three', 'four', 'five', 'six', 'seven', 'eight', 'nine'];

/** Why a conclusion is not proved. `brokenLinks` are the links of its step that do not hold. */
export function explainConclusion(
  grid: Grid,
  claim: Claim,
  evaluated: EvaluatedConclusion,
  reasons: {
    readonly isFalse: boolean;
    readonly severalSolutions: boolean;
    readonly faults: readonly string[];
    readonly brokenLinks: readonly CheckedLink[];
    /** What can be placed there, or where the digit goes, in words. */
    readonly instead: string | undefined;
    /** The digits on the board: a counterexample is not described by these. */
    readonly placed: Candidates;
  },
): string {
  const text = printConclusion(grid, evaluated.conclusion);
  const hint = reasons.instead === undefined ? '' : `. Was ${reasons.instead} meant?`;
  const falsehood = reasons.isFalse ? ` (${solutionSays(grid, evaluated.conclusion, reasons.severalSolutions)})` : '';
  return `${text} is ${reasons.isFalse ? 'false' : 'not proved'}${falsehood}: ${why(grid, claim, evaluated, reasons)}${hint}`;
}

/** What would fix it, as a sentence. `isWhole`: whether nothing but the step's name would then be wrong. */
export function explainFix(grid: Grid, { fix, conclusions }: FixFor, isWhole: boolean): string {
  const these = conclusions.length === 0 ? 'this step' : compactly(conclusions).join(' ');
  switch (fix.kind) {
    case 'move behind':
      return `${these} follows once ${fix.after} is known, which comes later in the cascade; move it after that`;
    case 'name further sets':
      return `Adding ${inWords(fix.names)} proves ${these}`;
    case 'argue otherwise':
      return `${named(fix.step)} proves ${these} instead`;
    case 'prove it apart':
      return fix.where === 'before'
        ? `${named(fix.step)} proves ${these}`
        : `${named(fix.step)} proves ${these} at this point of the step; make it a step of its own between the two parts`;
    case 'remove first': {
      const gone = inWords(fix.candidates.map((candidate) => printCandidate(grid, candidate)));
      const [first, ...others] = fix.steps;
      if (first === undefined)
        return `Without ${gone} it would hold, so remove ${fix.candidates.length === 1 ? 'it' : 'them'} first`;
      const whom = others.length === 0 ? 'as a step before this one it' : 'as steps before this one they';
      const removes = others.length === 0 ? 'removes' : 'remove';
      const effect =
        conclusions.length === 0
          ? 'would make its link hold'
          : isWhole
            ? 'would make this step hold'
            : `would let this step prove ${these}`;
      return `${fix.steps.map(named).join(', then ')} ${removes} ${gone}; ${whom} ${effect}${underNames(fix.names)}`;
    }
  }
}

/** What the step must then be called, if that is a different name. */
function underNames(names: readonly string[] | undefined): string {
  if (names === undefined) return '';
  return names.length === 0
    ? ', which then fits no known name'
    : `, which must then be called ${inWords(names.slice(0, 2), 'or')}`;
}

/** `A pointing pair (5b5)`. */
function named({ because, from, chain, deadly }: ProposedStep): string {
  const article = /^(X|[aeio]|ALS)/i.test(because) ? 'An' : 'A';
  return `${article} ${because} (${from ?? chain ?? deadly ?? ''})`;
}

function why(
  grid: Grid,
  claim: Claim,
  { outcome, sets, conclusion }: EvaluatedConclusion,
  {
    faults,
    brokenLinks,
    placed,
  }: { readonly faults: readonly string[]; readonly brokenLinks: readonly CheckedLink[]; readonly placed: Candidates },
): string {
  const [broken] = brokenLinks;
  if (broken !== undefined) return explainLink(grid, broken);
  const [fault] = faults;
  if (fault !== undefined) return fault;
  if (outcome.kind === 'too-large') return 'the argument is too large to decide; name fewer sets';
  if (sets.length === 0) return nothingNamed(claim);
  if (outcome.kind !== 'not-shown') return '';
  const open = outcome.counterexample.filter((candidate) => !has(placed, candidate));
  if (open.length > 0) return escapes(grid, open, conclusion);
  const settled = outcome.counterexample.map(
    (each) => `${printCell(grid, cellOf(grid, each))} is already ${digitOf(grid, each)}`,
  );
  return `what is named is settled (${inWords(settled)}) and does not affect it`;
}

function nothingNamed(claim: Claim): string {
  switch (claim.origin) {
    case 'so':
      if (claim.because !== undefined) {
        const all = claim.concludes.kind === 'listed' && claim.concludes.conclusions.length > 1 ? 'all of it' : 'it';
        return `no ${claim.because} was found that proves ${all}, within the limits of the search; name its sets with \`from\`, or its links with \`chain\``;
      }
      return 'no argument is given, and no single proves it; name its sets with `from`, or its links with `chain`';
    case 'cascade':
      return 'at this point of the cascade neither a single nor locked candidates prove it';
    case 'only':
    case 'pencil':
      return 'it is left out of the list, but it is still possible and no locked candidates rule it out';
  }
}

function canBeTrue(grid: Grid, chosen: readonly Candidate[]): string {
  const choice = inWords(chosen.map((candidate) => printCandidate(grid, candidate)));
  return chosen.length === 1 ? `${choice} can be true` : `${choice} can be true together`;
}

/** The counterexample in words. */
function escapes(grid: Grid, chosen: readonly Candidate[], conclusion: Conclusion): string {
  if (conclusion.kind === 'impossible') {
    const victim = printCandidate(grid, conclusion.candidate);
    const others = chosen.filter((candidate) => candidate !== conclusion.candidate);
    return others.length === 0
      ? `nothing that is named rules ${victim} out`
      : `${canBeTrue(grid, others)}, and ${victim} with ${others.length === 1 ? 'it' : 'them'}`;
  }
  const together = canBeTrue(grid, chosen);
  const others = membersOf(conclusion.candidates).map((candidate) => printCandidate(grid, candidate));
  return `${together}, and ${others.length === 1 ? `${others.join('')} is` : `${inWords(others, 'or')} are`} not among them`;
}

function solutionSays(grid: Grid, conclusion: Conclusion, severalSolutions: boolean): string {
  const solution = severalSolutions ? 'a solution' : 'the solution';
  if (conclusion.kind === 'impossible') {
    const { candidate } = conclusion;
    return `${printCell(grid, cellOf(grid, candidate))} is ${digitOf(grid, candidate)} in ${solution}`;
  }
  const [first, ...others] = membersOf(conclusion.candidates);
  if (first !== undefined && others.length === 0) {
    return `${printCell(grid, cellOf(grid, first))} is not ${digitOf(grid, first)} in ${solution}`;
  }
  return `none of them is true in ${solution}`;
}

function alsoHolds(grid: Grid, candidate: Candidate): string {
  return `${printCell(grid, cellOf(grid, candidate))} also holds a ${digitOf(grid, candidate)}`;
}
