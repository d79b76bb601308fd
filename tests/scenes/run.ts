/**
 * Compares the report on a scene with what its expected file fixes (`tests/scenes/checks/README.md` says how to read one).
 */

import { type Candidate, has } from '../../src/grid/candidates.ts';
import { type Grid, gridOf } from '../../src/grid/grid.ts';
import { parseCandidates } from '../../src/grid/notation/candidates.ts';
import { checkScene } from '../../src/lesson/check-scene.ts';
import { readScene } from '../../src/lesson/read-scene.ts';
import { schedule } from '../../src/lesson/schedule.ts';
import { type Report, type ReportedStep, reportDefinition } from '../../src/report/report.ts';
import { reportOf, unusableReport } from '../../src/report/report-of.ts';
import { canonicalName } from '../../src/scene/argument-names.ts';
import { readNarration } from '../../src/timeline/narration.ts';

export interface Expected {
  readonly exit: number | readonly number[];
  readonly sound?: boolean;
  readonly solutions?: number;
  readonly warned?: boolean;
  readonly names?: boolean;
  readonly errorLines?: readonly (readonly [number, number])[];
  readonly faultLines?: readonly (readonly [number, number])[];
  readonly steps: Readonly<Record<string, ExpectedStep>>;
}

export interface ExpectedStep {
  readonly lines: readonly [number, number];
  readonly verdict?: string;
  readonly sound?: boolean;
  readonly conclusions?: Readonly<Record<string, string | null>>;
  readonly links?: readonly boolean[];
  readonly brokenBy?: Readonly<Record<string, readonly string[]>>;
  readonly missed?: readonly string[];
  readonly unneeded?: readonly string[];
  readonly stale?: readonly string[];
  readonly assumesOneSolution?: boolean;
  readonly named?: readonly string[];
  readonly found?: boolean;
  readonly misnamed?: boolean;
  readonly position?: string;
  readonly members?: readonly string[];
  readonly faulty?: boolean;
  readonly fails?: boolean;
}

/** The report on a scene's text, as the command line makes it where nothing lies beside the scene. */
export function reportOn(
  path: string,
  text: string,
  narration?: string,
): { readonly report: Report; readonly exit: number; readonly grid: Grid } {
  const file = { path, text };
  const read = readScene(text);
  if (read.scene === undefined) return { report: unusableReport(file, read.diagnostics), exit: 2, grid: gridOf('3x3') };
  const spoken = narration === undefined ? undefined : readNarration(narration, 'narration.vtt').narration;
  const timed = schedule(read.scene, spoken, {});
  const checked = checkScene(read.scene);
  const report = reportOf(file, checked, [...read.diagnostics, ...timed.diagnostics]);
  return { report, exit: report.errors.length > 0 ? 2 : report.sound ? 0 : 1, grid: read.scene.puzzle.grid };
}

/** Everything in which the report differs from what is expected, in words; empty where it agrees. */
export function differences(path: string, text: string, expected: Expected, narration?: string): string[] {
  const { report, exit, grid } = reportOn(path, text, narration);
  reportDefinition.parse(report);
  const found: string[] = [];
  const differ = (what: string, is: unknown, due: unknown) => {
    if (JSON.stringify(is) !== JSON.stringify(due))
      found.push(`${what}: ${JSON.stringify(is)}, due: ${JSON.stringify(due)}`);
  };
  const exits = [expected.exit].flat();
  if (!exits.includes(exit))
    found.push(`exit ${exit}, due: ${exits.join(' or ')} (${report.errors[0]?.message ?? ''})`);
  if (expected.sound !== undefined) differ('sound', report.sound, expected.sound);
  differ('toMend empty', report.summary.toMend.length === 0, report.sound || exit === 2);
  if (expected.warned === true && report.warnings.length === 0) found.push('no warning');
  if (exit === 2) {
    for (const [first, last] of expected.errorLines ?? expected.faultLines ?? []) {
      if (!report.errors.some((error) => error.line >= first && error.line <= last)) {
        found.push(`no error in lines ${first}-${last}, but: ${JSON.stringify(report.errors)}`);
      }
    }
    if (report.sound || report.steps.length > 0) found.push('an unusable scene has steps');
    return found;
  }
  if (expected.solutions !== undefined) differ('solutions', report.puzzle.solutions, expected.solutions);
  for (const [id, due] of Object.entries(expected.steps)) {
    const step = report.steps.find((each) => each.id === id);
    if (step === undefined) found.push(`no step ${id}`);
    else found.push(...differencesOfStep(grid, step, due).map((difference) => `${id}: ${difference}`));
  }
  return found;
}

function differencesOfStep(grid: Grid, step: ReportedStep, due: ExpectedStep): string[] {
  const found: string[] = [];
  const differ = (what: string, is: unknown, wanted: unknown) => {
    if (wanted !== undefined && JSON.stringify(is) !== JSON.stringify(wanted)) {
      found.push(`${what}: ${JSON.stringify(is)}, due: ${JSON.stringify(wanted)}`);
    }
  };
  const sorted = (list: readonly string[] | undefined) => (list === undefined ? undefined : [...list].sort());
  if (step.line < due.lines[0] || step.line > due.lines[1])
    found.push(`line ${step.line} outside ${due.lines.join('-')}`);
  differ('verdict', step.verdict, due.verdict);
  differ('sound', step.sound, due.sound);
  if (due.conclusions !== undefined) {
    const texts = step.conclusions.map((conclusion) => conclusion.text);
    differ('conclusions', sorted(texts), sorted(Object.keys(due.conclusions)));
    for (const conclusion of step.conclusions) {
      const verdict = due.conclusions[conclusion.text];
      if (verdict !== null) differ(conclusion.text, conclusion.verdict, verdict);
      const isBad = conclusion.verdict === 'unproved' || conclusion.verdict === 'false';
      if (isBad && conclusion.message === '' && step.message === '') found.push(`${conclusion.text} has no message`);
      if (isBad && due.members !== undefined && due.faulty !== true) {
        found.push(...faultsOfCounterexample(grid, conclusion, due));
      }
    }
  }
  differ('links', due.links && step.links.map((link) => link.holds), due.links);
  for (const [index, brokenBy] of Object.entries(due.brokenBy ?? {}))
    differ('brokenBy', step.links[Number(index)]?.brokenBy, brokenBy);
  differ('missed', sorted(step.missed), sorted(due.missed));
  differ('unneeded', sorted(step.unneeded), sorted(due.unneeded));
  differ('stale', sorted(step.stale), sorted(due.stale));
  differ('assumesOneSolution', step.assumesOneSolution, due.assumesOneSolution);
  differ('argument.sets', sorted(step.argument.sets), sorted(due.named));
  differ('argument.found', step.argument.found, due.found);
  if (due.misnamed !== undefined && step.name !== undefined && step.name.judged !== 'not judged') {
    differ('name', step.name.judged, due.misnamed ? 'misnamed' : 'fits');
    const given = canonicalName(step.name.given);
    if (!due.misnamed && !step.name.fits.some((name) => canonicalName(name) === given))
      found.push(`fits lacks ${step.name.given}: ${step.name.fits.join(', ')}`);
  }
  return found;
}

/** Verified against the position and the sets that the expected file gives, not against ours. */
function faultsOfCounterexample(
  grid: Grid,
  conclusion: ReportedStep['conclusions'][number],
  due: ExpectedStep,
): string[] {
  if (conclusion.counterexample === undefined) return [`${conclusion.text} has no counterexample`];
  const chosen = read(grid, conclusion.counterexample.join(' '));
  const faults: string[] = [];
  const possible = (due.position ?? '').split(' ');
  for (const candidate of chosen) {
    const [cell, digit] = [Math.floor(candidate / grid.size), (candidate % grid.size) + 1];
    if (!possible[cell]?.includes(String(digit))) faults.push(`${digit} is not possible in cell ${cell}`);
  }
  for (const members of due.members ?? []) {
    if (!read(grid, members).some((member) => chosen.includes(member))) faults.push(`takes none of ${members}`);
  }
  for (const a of chosen)
    for (const b of chosen) if (has(grid.conflicts[a]!, b)) faults.push('is not free of conflicts');
  const removal = /^(r\d+c\d+)<>(\d)$/.exec(conclusion.text);
  if (removal !== null) {
    const victim = read(grid, `${removal[2]}${removal[1]}`)[0]!;
    if (chosen.some((candidate) => has(grid.conflicts[candidate]!, victim))) faults.push('rules the victim out');
  } else {
    const placement = /^(r\d+c\d+)=(\d)$/.exec(conclusion.text);
    const oneOf =
      placement === null
        ? read(grid, conclusion.text.replace('either ', ''))
        : read(grid, `${placement[2]}${placement[1]}`);
    if (oneOf.some((candidate) => chosen.includes(candidate))) faults.push('holds what was to be true');
  }
  return faults.map((fault) => `the counterexample to ${conclusion.text} ${fault}`);
}

function read(grid: Grid, text: string): Candidate[] {
  if (text.trim() === '') return [];
  const reading = parseCandidates(grid, text);
  if (!reading.ok) throw new Error(reading.faults[0]?.message);
  return [...reading.value];
}
