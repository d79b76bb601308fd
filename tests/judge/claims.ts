/**
 * Claims and steps by the page of the language: what each conclusion comes to in the position reached.
 */
import { type Argument, argumentLines, type Built, buildArgument, type Knowledge, type NamedSet } from './arguments.ts';
import {
  type Board,
  type Conclusion,
  candidate,
  cellName,
  conclusionName,
  digitIn,
  digitsLeft,
  entered,
  type House,
  isRedundant,
  type Position,
  placesLeft,
  proves,
  solutionsWithin,
} from './rules.ts';

export type Claim =
  | { readonly kind: 'so'; readonly argument: Argument; readonly so: readonly Conclusion[] | 'all' | undefined }
  | { readonly kind: 'only'; readonly digit: number; readonly house: House; readonly cells: readonly number[] }
  /** Each list from the position at the start of the item. */
  | {
      readonly kind: 'pencil';
      readonly lists: readonly { readonly cell: number; readonly digits: readonly number[] }[];
    }
  | { readonly kind: 'cascade'; readonly items: readonly Conclusion[]; readonly from?: Argument['from'] };

export interface Step {
  readonly id: string;
  readonly fails: boolean;
  /** In the order of a step. */
  readonly claims: readonly Claim[];
}

export interface Truth extends Knowledge {
  readonly start: Position;
  /** Up to two. */
  readonly solutions: readonly (readonly number[])[];
}

export type Outcome = 'proved' | 'spent' | 'open';

export interface JudgedConclusion {
  readonly claim: Claim;
  readonly conclusion: Conclusion;
  readonly verdict: 'proved' | 'unproved' | 'false' | 'spent';
  /** Where it was claimed. */
  readonly position: Position;
}

export interface JudgedStep {
  readonly step: Step;
  readonly before: Position;
  readonly after: Position;
  readonly built: Built;
  readonly conclusions: readonly JudgedConclusion[];
  readonly stale: readonly number[];
  readonly verdict: string;
  readonly sound: boolean;
  /** The either/ors that may be named from now on. */
  readonly eithers: ReadonlyMap<string, readonly number[]>;
  readonly eithersBefore: ReadonlyMap<string, readonly number[]>;
}

const nothing: Argument = { from: [], chains: [], deadly: undefined };
const isGiven = ({ from, chains, deadly }: Argument) => from.length + chains.length > 0 || deadly !== undefined;

export function isContradicted(truth: Truth, conclusion: Conclusion): boolean {
  const { board, start, solutions } = truth;
  const against = (solution: readonly number[]) =>
    'not' in conclusion ? solution.includes(conclusion.not) : !conclusion.oneOf.some((one) => solution.includes(one));
  if (solutions.length < 2 || solutions.some(against)) return solutions.some(against);
  if ('not' in conclusion) {
    if (!start.possible.has(conclusion.not)) return false;
    const { possible } = entered(board, start, [{ oneOf: [conclusion.not] }]);
    return solutionsWithin(board, possible, 1).length > 0;
  }
  const left = new Set([...start.possible].filter((one) => !conclusion.oneOf.includes(one)));
  return solutionsWithin(board, left, 1).length > 0;
}

/** What is not shown may still follow where no argument was named that could fail to show it. */
function namesAnArgument(claim: Claim): boolean {
  if (claim.kind === 'so') return isGiven(claim.argument);
  return claim.kind === 'cascade' && claim.from !== undefined;
}

/** Undefined where the sets that its links may name lead to different answers: nothing is promised then. */
export function judgeStep(truth: Truth, step: Step, before: Position, known: Truth['eithers']): JudgedStep | undefined {
  const { board } = truth;
  let position = before;
  const eithers = new Map(known);
  const conclusions: JudgedConclusion[] = [];
  const stale = new Set<number>();
  const so = step.claims.find((claim) => claim.kind === 'so');
  const built = buildArgument({ ...truth, eithers: known }, before, so?.argument ?? nothing);
  for (const claim of step.claims) {
    for (const one of staleIn(board, position, claim)) stale.add(one);
    const parts = claim.kind === 'cascade' ? claim.items.map((item) => ({ ...claim, items: [item] })) : [claim];
    for (const part of parts) {
      const at = position;
      const judged = outcomesOf({ ...truth, eithers }, at, part);
      if (judged === undefined) return undefined;
      const proved: Conclusion[] = [];
      for (const [conclusion, outcome] of judged) {
        if (outcome === 'proved') proved.push(conclusion);
        const verdict = outcome !== 'open' ? outcome : isContradicted(truth, conclusion) ? 'false' : 'unproved';
        conclusions.push({ claim: part, conclusion, verdict, position: at });
      }
      if (step.fails) continue;
      for (const each of proved) {
        if ('oneOf' in each && each.oneOf.length > 1 && !eithers.has(step.id)) eithers.set(step.id, each.oneOf);
      }
      position = entered(board, position, proved);
    }
  }
  const verdicts = conclusions.map((each) => each.verdict);
  const holds = built.links.every((link) => link.holds) && !built.faulty;
  const verdict =
    ['false', 'unproved', 'proved', 'spent'].find((each) => verdicts.some((one) => one === each)) ?? 'none';
  const sound = step.fails
    ? conclusions.every(
        ({ claim, verdict }) => verdict === 'false' || (verdict === 'unproved' && namesAnArgument(claim)),
      )
    : holds && verdicts.every((each) => each === 'proved' || each === 'spent');
  return {
    step,
    before,
    after: position,
    built,
    conclusions,
    stale: [...stale],
    verdict,
    sound,
    eithers,
    eithersBefore: known,
  };
}

function staleIn(board: Board, { possible }: Position, claim: Claim): number[] {
  if (claim.kind === 'only')
    return claim.cells.map((cell) => candidate(board, cell, claim.digit)).filter((one) => !possible.has(one));
  if (claim.kind === 'pencil')
    return claim.lists
      .flatMap(({ cell, digits }) => digits.map((digit) => candidate(board, cell, digit)))
      .filter((one) => !possible.has(one));
  return [];
}

/** What a claim concludes in a position, and what comes of each. */
export function outcomesOf(
  known: Knowledge,
  position: Position,
  claim: Claim,
): readonly (readonly [Conclusion, Outcome])[] | undefined {
  const { board } = known;
  const bySingle = (allowed: 'single' | 'locked' | 'either') => (conclusion: Conclusion) =>
    [conclusion, outcomeBySingle(board, position, conclusion, allowed)] as const;
  switch (claim.kind) {
    case 'cascade': {
      if (claim.from === undefined) return claim.items.map(bySingle('either'));
      const [sets] = buildArgument(known, position, { ...nothing, from: claim.from }).alternatives;
      return claim.items.map((item) => [item, outcomeBy(board, position, sets!, item)] as const);
    }
    case 'only': {
      const open = placesLeft(board, position, claim.digit, claim.house);
      const listed = claim.cells.map((cell) => candidate(board, cell, claim.digit));
      return open.filter((one) => !listed.includes(one)).map((not) => bySingle('locked')({ not }));
    }
    case 'pencil':
      return claim.lists.flatMap(({ cell, digits }) => {
        const listed = digits.map((digit) => candidate(board, cell, digit));
        const open = digitsLeft(board, position, cell);
        return open.filter((one) => !listed.includes(one)).map((not) => bySingle('locked')({ not }));
      });
    case 'so': {
      const { so, argument } = claim;
      if (so === undefined) return [];
      if (!isGiven(argument)) return so === 'all' ? [] : so.map(bySingle('single'));
      const { alternatives } = buildArgument(known, position, argument);
      const answers = alternatives.map((sets) => {
        const conclusions = so === 'all' ? removalsBy(board, position, sets).map((not): Conclusion => ({ not })) : so;
        return conclusions.map((each) => [each, outcomeBy(board, position, sets, each)] as const);
      });
      const written = answers.map((answer) => answer.map(([each, is]) => conclusionName(board, each) + is).join());
      return new Set(written).size === 1 ? answers[0] : undefined;
    }
  }
}

function outcomeBy(board: Board, position: Position, sets: readonly NamedSet[], conclusion: Conclusion): Outcome {
  if (isRedundant(position, conclusion)) return 'spent';
  const members = sets.map((set) => set.members);
  return proves(board, members, conclusion) ? 'proved' : 'open';
}

export function removalsBy(board: Board, position: Position, sets: readonly NamedSet[]): number[] {
  const members = sets.map((set) => set.members);
  return [...position.possible].sort((a, b) => a - b).filter((not) => proves(board, members, { not }));
}

/** By one set of one candidate (a single), or the places of a digit in a house (locked candidates). */
export function outcomeBySingle(
  board: Board,
  position: Position,
  conclusion: Conclusion,
  allowed: 'single' | 'locked' | 'either',
): Outcome {
  if (isRedundant(position, conclusion)) return 'spent';
  if ('oneOf' in conclusion && conclusion.oneOf.length > 1) return 'open';
  const fits = (set: readonly number[]) =>
    'not' in conclusion
      ? set.every((one) => board.conflicts[conclusion.not]![one]!)
      : set.length === 1 && set[0] === conclusion.oneOf[0];
  for (const house of board.houses) {
    for (let digit = 1; digit <= board.size; digit++) {
      const places = placesLeft(board, position, digit, house);
      const isAsked = places.length === 1 && allowed !== 'locked';
      const isLocked = 'not' in conclusion && digitIn(board, conclusion.not) === digit && allowed !== 'single';
      if ((isAsked || isLocked) && fits(places)) return 'proved';
    }
  }
  if (allowed === 'locked') return 'open';
  for (let cell = 0; cell < board.size ** 2; cell++) {
    const digits = digitsLeft(board, position, cell);
    if (digits.length === 1 && fits(digits)) return 'proved';
  }
  return 'open';
}

/** The lines of a step in a scene. */
export function stepLines(board: Board, step: Step): string[] {
  const conclusions = (all: readonly Conclusion[]) => all.map((each) => conclusionName(board, each)).join(' ');
  const of = (kind: Claim['kind']) => step.claims.filter((claim) => claim.kind === kind);
  const lines = [`id: ${step.id}`];
  for (const claim of step.claims) {
    if (claim.kind !== 'so') continue;
    lines.push(...argumentLines(board, claim.argument));
    if (claim.so === 'all') lines.push('so: all');
    else if (claim.so !== undefined) lines.push(`so: ${conclusions(claim.so)}`);
  }
  const list = (key: string, items: readonly string[]) => {
    if (items.length === 1 && !items[0]!.startsWith('{')) lines.push(`${key}: ${items[0]}`);
    else if (items.length > 0) lines.push(`${key}:`, ...items.map((item) => `  - ${item}`));
  };
  const texts = (kind: Claim['kind']) => of(kind).map((claim) => claimText(board, claim, conclusions));
  list('only', texts('only'));
  list('pencil', texts('pencil'));
  list('cascade', texts('cascade'));
  if (step.fails) lines.push('fails: true');
  return lines;
}

function claimText(board: Board, claim: Claim, conclusions: (all: readonly Conclusion[]) => string): string {
  switch (claim.kind) {
    case 'so':
      return '';
    case 'only':
      return `${claim.digit}${claim.house.name} in ${claim.cells.map((cell) => cellName(board, cell)).join(' ')}`;
    case 'pencil':
      return claim.lists.map(({ cell, digits }) => `${digits.join('')}${cellName(board, cell)}`).join(' ');
    case 'cascade': {
      if (claim.from === undefined) return conclusions(claim.items);
      const [from] = argumentLines(board, { ...nothing, from: claim.from });
      return `{cascade: ${conclusions(claim.items)}, ${from}}`;
    }
  }
}
