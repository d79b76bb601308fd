/**
 * Holds a report of the checker against the second reading of the rules, field by field.
 */
import type { Report } from '../../src/report/report.ts';
import { buildArgument, type NamedSet } from './arguments.ts';
import { type JudgedConclusion, type JudgedStep, outcomesOf, removalsBy, type Truth } from './claims.ts';
import { type Conclusion, candidate, candidateName, conclusionName, entered, type Position, proves } from './rules.ts';

type ReportedStep = Report['steps'][number];

/** All that the report says otherwise, in words; empty where the two agree. */
export function differencesIn(
  truth: Truth,
  steps: readonly JudgedStep[],
  { report, exit }: { readonly report: Report; readonly exit: number },
): string[] {
  const found: string[] = [];
  const differ = (what: string, is: unknown, due: unknown) => {
    if (JSON.stringify(is) !== JSON.stringify(due))
      found.push(`${what}: ${JSON.stringify(is)}, due ${JSON.stringify(due)}`);
  };
  const sound = steps.every((step) => step.sound);
  differ('exit', exit, sound ? 0 : 1);
  if (exit === 2) return [...found, ...report.errors.map((error) => error.message)];
  differ('sound', report.sound, sound);
  differ('solutions', report.puzzle.solutions, Math.min(2, truth.solutions.length));
  if (truth.solutions.length > 1 && report.warnings.length === 0) found.push('several solutions without a warning');
  for (const [index, judged] of steps.entries()) {
    const step = report.steps[index]!;
    const earlier = report.steps.slice(0, index);
    const assuming = new Set(
      earlier.filter((each) => each.assumesOneSolution || each.inheritsOneSolution).map((each) => each.id),
    );
    found.push(...stepDifferences(truth, judged, step, assuming).map((each) => `${judged.step.id}: ${each}`));
    found.push(...restingFaults(truth, steps, index, step).map((each) => `${judged.step.id}: ${each}`));
  }
  found.push(...summaryFaults(steps, report));
  return found;
}

/** The steps whose either/ors the step names. */
function eithersUsed({ step }: JudgedStep): string[] {
  const refs = step.claims.flatMap((claim) =>
    claim.kind === 'so' ? claim.argument.from : claim.kind === 'cascade' ? (claim.from ?? []) : [],
  );
  return refs.flatMap((ref) => ('step' in ref ? [ref.step] : []));
}

/** `assuming`: the earlier steps that assume one solution, or rest on one that does. */
function stepDifferences(
  truth: Truth,
  judged: JudgedStep,
  step: ReportedStep,
  assuming: ReadonlySet<string>,
): string[] {
  const { board } = truth;
  const found: string[] = [];
  const differ = (what: string, is: unknown, due: unknown) => {
    if (JSON.stringify(is) !== JSON.stringify(due))
      found.push(`${what}: ${JSON.stringify(is)}, due ${JSON.stringify(due)}`);
  };
  differ('id', step.id, judged.step.id);
  differ('verdict', step.verdict, judged.verdict);
  differ('sound', step.sound, judged.sound);
  const assumes = judged.built.assumesOneSolution || eithersUsed(judged).some((id) => assuming.has(id));
  differ('assumesOneSolution', step.assumesOneSolution, assumes);
  differ('stale', step.stale, names(truth, judged.stale));
  differ(
    'conclusions',
    step.conclusions.map((each) => `${each.text} ${each.verdict}`),
    judged.conclusions.map((each) => `${conclusionName(board, each.conclusion)} ${each.verdict}`),
  );
  differ('number of links', step.links.length, judged.built.links.length);
  for (const [index, link] of judged.built.links.entries()) {
    const is = step.links[index];
    if (is === undefined) continue;
    differ(`link ${index + 1}`, `${is.kind} ${is.holds}`, `${link.kind === '=' ? 'strong' : 'weak'} ${link.holds}`);
    const brokenBy = is.brokenBy.map((text) => read(truth, text));
    if (link.holds ? brokenBy.length > 0 : !link.mayBeBrokenBy(brokenBy))
      found.push(`link ${index + 1} cannot be broken by ${is.brokenBy.join(' ')}`);
  }
  if (!judged.sound && step.message === '') found.push('no message');
  const so = judged.step.claims.find((claim) => claim.kind === 'so');
  if (
    so !== undefined &&
    so.argument.from.length + so.argument.chains.length + Number(so.argument.deadly !== undefined) > 0
  ) {
    const named = step.argument.sets.map((name) => name.replace(/^deadly.*/, 'deadly').trim()).sort();
    const sets = judged.built.alternatives.find((way) => deadlyNames(way).sort().join() === named.join());
    if (sets === undefined)
      found.push(`sets: ${named.join(' ')}, due ${judged.built.alternatives.map(deadlyNames).join(' or ')}`);
    else found.push(...adviceFaults(truth, judged, step, sets));
    for (const [index, each] of judged.conclusions.entries()) {
      if (each.claim.kind === 'so')
        found.push(...counterexampleFaults(truth, each, step.conclusions[index], sets ?? []));
    }
  }
  for (const [index, each] of judged.conclusions.entries()) {
    if (each.claim.kind !== 'cascade' || each.claim.from === undefined) continue;
    const argument = { from: each.claim.from, chains: [], deadly: undefined };
    const [sets] = buildArgument({ ...truth, eithers: judged.eithersBefore }, each.position, argument).alternatives;
    found.push(...counterexampleFaults(truth, each, step.conclusions[index], sets!));
  }
  for (const [index, each] of judged.conclusions.entries()) {
    const is = step.conclusions[index];
    if ((each.verdict === 'unproved' || each.verdict === 'false') && is?.message === '')
      found.push(`${is.text} has no message`);
    if (each.claim.kind !== 'so' && each.verdict === 'proved' && is?.argument === undefined)
      found.push(`${is?.text} does not say by what`);
  }
  return found;
}

const deadlyNames = (sets: readonly NamedSet[]) => sets.map((set) => set.name.replace(/^deadly.*/, 'deadly'));

function adviceFaults(truth: Truth, judged: JudgedStep, step: ReportedStep, sets: readonly NamedSet[]): string[] {
  const { board } = truth;
  const found: string[] = [];
  const conclusions = judged.conclusions.filter((each) => each.claim.kind === 'so');
  const proved = conclusions.filter((each) => each.verdict === 'proved').map((each) => each.conclusion);
  const isRemoval = ({ conclusion }: JudgedConclusion) => 'not' in conclusion;
  if (judged.step.fails) {
    if (step.missed.length + step.unneeded.length > 0) found.push('advice on a step that is meant to fail');
    return found;
  }
  const allRemovals = judged.conclusions.length > 0 && judged.conclusions.every(isRemoval);
  const concluded = new Set(judged.conclusions.map((each) => conclusionName(board, each.conclusion)));
  const missed = allRemovals
    ? removalsBy(board, judged.before, sets)
        .map((not) => conclusionName(board, { not }))
        .filter((text) => !concluded.has(text))
    : [];
  if (missed.join() !== step.missed.join()) found.push(`missed: ${step.missed.join(' ')}, due ${missed.join(' ')}`);
  const left = sets.filter(
    (set) =>
      !step.unneeded.some((name) => name.replace(/^deadly.*/, 'deadly') === set.name.replace(/^deadly.*/, 'deadly')),
  );
  const suffice = (some: readonly NamedSet[]) =>
    proved.every((conclusion) =>
      proves(
        board,
        some.map((set) => set.members),
        conclusion,
      ),
    );
  if (proved.length === 0 && step.unneeded.length > 0) found.push('unneeded where nothing is proved');
  if (proved.length > 0) {
    if (sets.length - left.length !== step.unneeded.length || !suffice(left))
      found.push(`${step.unneeded.join(' ')} cannot all go`);
    const more = left.filter((set) => suffice(left.filter((other) => other !== set)));
    if (more.length > 0) found.push(`${more.map((set) => set.name).join(' ')} could go as well`);
  }
  return found;
}

function counterexampleFaults(
  { board, ...truth }: Truth,
  { conclusion, verdict, position }: JudgedConclusion,
  reported: ReportedStep['conclusions'][number] | undefined,
  sets: readonly NamedSet[],
): string[] {
  const text = conclusionName(board, conclusion);
  const chosenTexts = reported?.counterexample;
  if (verdict === 'proved' || verdict === 'spent')
    return chosenTexts === undefined ? [] : [`${text} has a counterexample`];
  if (chosenTexts === undefined) return [`${text} has no counterexample`];
  const chosen = chosenTexts.map((each) => read({ ...truth, board }, each));
  const faults: string[] = [];
  if (!chosen.every((one) => position.possible.has(one))) faults.push('holds what is impossible');
  if (chosen.some((one) => chosen.some((other) => board.conflicts[one]![other]!)))
    faults.push('is not free of conflicts');
  if (!sets.every((set) => set.members.some((one) => chosen.includes(one)))) faults.push('misses a set');
  if ('not' in conclusion && chosen.some((one) => board.conflicts[one]![conclusion.not]!)) faults.push('rules it out');
  if ('oneOf' in conclusion && conclusion.oneOf.some((one) => chosen.includes(one))) faults.push('agrees with it');
  return faults.map((fault) => `the counterexample ${chosenTexts.join(' ')} of ${text} ${fault}`);
}

/** What the report says of earlier steps that a failure rests on, tried out. */
function restingFaults(truth: Truth, steps: readonly JudgedStep[], index: number, step: ReportedStep): string[] {
  const { board } = truth;
  const found: string[] = [];
  const judged = steps[index]!;
  for (const [place, each] of judged.conclusions.entries()) {
    const text = conclusionName(board, each.conclusion);
    const restsOn = step.conclusions[place]?.restsOn ?? [];
    if (each.verdict === 'proved' || each.verdict === 'spent' || judged.step.fails) {
      if (restsOn.length > 0) found.push(`${text} rests on ${restsOn.join(' ')}, and does not fail`);
      continue;
    }
    const failedBefore = steps.slice(0, index + 1).flatMap((earlier) =>
      earlier.step.fails
        ? []
        : earlier.conclusions
            .slice(0, earlier === judged ? place : undefined)
            .filter((other) => other.claim !== each.claim)
            .filter((other) => other.verdict === 'unproved' || other.verdict === 'false')
            .map((other) => ({ id: earlier.step.id, ...other })),
    );
    const holdsWith = (some: typeof failedBefore) => holdsSupposing(truth, judged, each, some);
    if (restsOn.length > 0) {
      const all = failedBefore.filter((other) => restsOn.includes(other.id));
      const unproved = all.filter((other) => other.verdict === 'unproved');
      const named = holdsWith(unproved) ? unproved : all;
      const ids = new Set(all.map((other) => other.id));
      if (ids.size !== restsOn.length) found.push(`${text} rests on steps that do not fail: ${restsOn.join(' ')}`);
      if (!holdsWith(named)) found.push(`${text} would not hold with ${restsOn.join(' ')}`);
      if (restsOn.some((id) => id !== judged.step.id && holdsWith(named.filter((other) => other.id !== id))))
        found.push(`${text} rests on fewer than ${restsOn.join(' ')}`);
    } else {
      const unproved = failedBefore.filter((other) => other.verdict === 'unproved');
      if (unproved.length > 0 && holdsWith(unproved))
        found.push(
          `${text} rests on ${[...new Set(unproved.map((other) => other.id))].join(' ')}, and the report does not say so`,
        );
    }
  }
  return found;
}

function holdsSupposing(
  truth: Truth,
  judged: JudgedStep,
  each: JudgedConclusion,
  supposed: readonly { readonly id: string; readonly conclusion: Conclusion }[],
): boolean {
  const { board } = truth;
  const position: Position = entered(
    board,
    each.position,
    supposed.map((other) => other.conclusion),
  );
  const eithers = new Map(judged.eithersBefore);
  for (const { id, conclusion } of supposed) if ('oneOf' in conclusion) eithers.set(id, conclusion.oneOf);
  const outcomes = outcomesOf({ ...truth, eithers }, position, each.claim);
  const text = conclusionName(board, each.conclusion);
  const same = outcomes?.filter(([other]) => conclusionName(board, other) === text).map(([, is]) => is);
  if (same === undefined || same.includes('open')) return false;
  return same.includes('proved') || each.verdict !== 'false';
}

function summaryFaults(steps: readonly JudgedStep[], { summary, steps: reported }: Report): string[] {
  const found: string[] = [];
  const unsound = steps.filter((step) => !step.sound).map((step) => step.step.id);
  if (summary.steps !== steps.length) found.push('the summary counts other steps');
  if (summary.toMend.some((id) => !unsound.includes(id))) found.push(`to mend, and sound: ${summary.toMend.join(' ')}`);
  if (unsound.length > 0 && summary.toMend.length === 0) found.push('nothing to mend in an unsound scene');
  if (summary.toMend.length + summary.restOnThem !== unsound.length)
    found.push('unsound steps are neither roots nor rest');
  for (const id of unsound) {
    const step = reported.find((each) => each.id === id)!;
    const failing = step.conclusions.filter((each) => each.verdict === 'unproved' || each.verdict === 'false');
    const onEarlier = (each: (typeof failing)[number]) => each.restsOn.length > 0;
    if (!summary.toMend.includes(id) && !failing.every(onEarlier)) found.push(`${id} fails by itself and is no root`);
    const linksHold = step.links.every((link) => link.holds);
    const judged = steps.find((each) => each.step.id === id)!;
    if (
      summary.toMend.includes(id) &&
      failing.length > 0 &&
      failing.every(onEarlier) &&
      linksHold &&
      !judged.built.faulty &&
      !judged.step.fails
    )
      found.push(`${id} merely rests on others and counts as a root`);
  }
  return found;
}

function read({ board }: Pick<Truth, 'board'>, text: string): number {
  const [, digit, row, column] = /^(\d)r(\d)c(\d)$/.exec(text) ?? [];
  return candidate(board, (Number(row) - 1) * board.size + Number(column) - 1, Number(digit));
}

function names({ board }: Truth, candidates: readonly number[]): string[] {
  return [...candidates].sort((a, b) => a - b).map((one) => candidateName(board, one));
}
