/**
 * The report of a checked scene, or of one that could not be used. Its keys and values are stable, so words that have
 * since changed in the code (a fix, a redundant conclusion) keep their old form there: `mends`, `toMend`, `spent`.
 */
import type { Argument, CheckedConclusion, CheckedName, CheckedScene, CheckedStep, Verdict } from '../check/verdict.ts';
import type { Candidate } from '../grid/candidates.ts';
import type { Grid } from '../grid/grid.ts';
import { printCandidate, printConclusion } from '../grid/notation/print.ts';
import type { Diagnostic } from '../scene/diagnostic.ts';
import { placeOf } from '../scene/locate.ts';
import { idsBefore, stepText } from '../scene/step-text.ts';
import type { Report, ReportedStep } from './report.ts';

/** A scene's file: the path as given, and its text, from which offsets become lines. */
export interface SceneFile {
  readonly path: string;
  readonly text: string;
}

/**
 * The report on a scene that was checked. `diagnostics` are the faults and warnings from outside the proof: reading,
 * times.
 */
export function reportOf(file: SceneFile, checked: CheckedScene, diagnostics: readonly Diagnostic[]): Report {
  const { grid } = checked.scene.puzzle;
  const all = inOrder([...diagnostics, ...checked.errors, ...checked.warnings]);
  const errors = all.filter((diagnostic) => diagnostic.severity === 'error');
  if (errors.length > 0) return unusableReport(file, all, checked.solutions);
  const ids = new Set(checked.steps.map(({ step }) => step.id));
  return {
    report: 1,
    scene: file.path,
    sound: checked.sound,
    puzzle: {
      solutions: checked.solutions,
      takenAsRead: checked.takenAsRead.map((conclusion) => printConclusion(grid, conclusion)),
    },
    errors: [],
    summary: {
      steps: checked.summary.steps,
      toMend: [...checked.summary.toFix],
      restOnThem: checked.summary.restOnThem,
    },
    steps: checked.steps.map((step) => reportedStep(file, grid, step, ids)),
    warnings: all.map((diagnostic) => located(file, diagnostic)),
  };
}

/** The report on a scene that cannot be used: its faults, no steps. */
export function unusableReport(file: SceneFile, diagnostics: readonly Diagnostic[], solutions: 0 | 1 | 2 = 0): Report {
  const all = inOrder(diagnostics);
  const of = (severity: Diagnostic['severity']) =>
    all.filter((diagnostic) => diagnostic.severity === severity).map((diagnostic) => located(file, diagnostic));
  return {
    report: 1,
    scene: file.path,
    sound: false,
    puzzle: { solutions, takenAsRead: [] },
    errors: of('error'),
    summary: { steps: 0, toMend: [], restOnThem: 0 },
    steps: [],
    warnings: of('warning'),
  };
}

function reportedStep(file: SceneFile, grid: Grid, step: CheckedStep, ids: ReadonlySet<string>): ReportedStep {
  return {
    id: step.step.id,
    line: placeOf(file.text, step.step.span.start).line,
    verdict: step.verdict === 'none' ? 'none' : reportedVerdict(step.verdict),
    sound: step.sound,
    assumesOneSolution: step.assumesOneSolution,
    inheritsOneSolution: step.inheritsOneSolution,
    ...(step.name === undefined ? {} : { name: reportedName(step.name) }),
    argument: reportedArgument(step.argument),
    links: step.links.map(({ chain, from, to, kind, holds, brokenBy }) => {
      return { chain, from, to, kind, holds, brokenBy: written(grid, brokenBy) };
    }),
    conclusions: step.conclusions.map((conclusion) => reportedConclusion(grid, conclusion)),
    unneeded: [...step.unneeded],
    missed: step.missed.map((candidate) => printConclusion(grid, { kind: 'impossible', candidate })),
    stale: written(grid, step.stale),
    message: step.message,
    faults: step.faults.map(({ code, message }) => ({ code, message })),
    advice: [...step.advice],
    mends: reportedFixes(grid, step, ids),
  };
}

function reportedConclusion(grid: Grid, conclusion: CheckedConclusion): ReportedStep['conclusions'][number] {
  const { text, verdict, restsOn, cases, counterexample, message, argument, name } = conclusion;
  return {
    text,
    verdict: reportedVerdict(verdict),
    restsOn: [...restsOn],
    cases,
    ...(counterexample === undefined ? {} : { counterexample: written(grid, counterexample) }),
    message,
    ...(argument === undefined ? {} : { argument: reportedArgument(argument) }),
    ...(name === undefined ? {} : { name: reportedName(name) }),
  };
}

function reportedVerdict(verdict: Exclude<Verdict, 'none'>): ReportedStep['conclusions'][number]['verdict'] {
  return verdict === 'redundant' ? 'spent' : verdict;
}

/**
 * Each fix's steps with ids that are used neither in the scene nor by another fix of the step, so that all can be
 * pasted.
 */
function reportedFixes(grid: Grid, { step, fixes }: CheckedStep, ids: ReadonlySet<string>): ReportedStep['mends'] {
  const taken = new Set(ids);
  return fixes.map(({ fix, conclusions }) => {
    const apart = fix.kind === 'prove it apart' && fix.where === 'before' ? [fix.step] : [];
    const proposed = fix.kind === 'remove first' ? fix.steps : apart;
    const newIds = idsBefore(step.id, proposed.length, taken);
    for (const id of newIds) taken.add(id);
    const steps = proposed.map((each, index) => stepText(each, newIds[index]!));
    return {
      conclusions: [...conclusions],
      add: fix.kind === 'name further sets' ? [...fix.names] : [],
      remove: fix.kind === 'remove first' ? written(grid, fix.candidates) : [],
      steps,
      ...(fix.kind === 'move behind' ? { after: fix.after } : {}),
      ...(fix.kind === 'remove first' && fix.names !== undefined ? { because: [...fix.names] } : {}),
    };
  });
}

function reportedArgument({ found, others, sets }: Argument): ReportedStep['argument'] {
  return { found, sets: sets.map((set) => set.name), ...(found ? { others } : {}) };
}

function reportedName({ given, judged, fits }: CheckedName): NonNullable<ReportedStep['name']> {
  return { given, judged, fits: [...fits] };
}

function written(grid: Grid, candidates: readonly Candidate[]): string[] {
  return [...candidates].sort((a, b) => a - b).map((candidate) => printCandidate(grid, candidate));
}

function located(file: SceneFile, { span, code, message }: Diagnostic): Report['errors'][number] {
  return { ...placeOf(file.text, span.start), code, message };
}

function inOrder(diagnostics: readonly Diagnostic[]): Diagnostic[] {
  return [...diagnostics].sort((a, b) => a.span.start - b.span.start);
}
