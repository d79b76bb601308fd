/**
 * The report as text: short if all is well; for each fault where, what, why. A second printer of the same value as
 * `--json`: it knows nothing that is not in the report.
 */
import { compactly } from '../grid/notation/compact.ts';
import { asShown } from '../grid/notation/shown.ts';
import type { Report, ReportedStep } from './report.ts';

/** The colours of a terminal, or functions that leave text unchanged. */
export interface Paint {
  readonly bold: (text: string) => string;
  readonly dim: (text: string) => string;
  readonly red: (text: string) => string;
  readonly green: (text: string) => string;
  readonly yellow: (text: string) => string;
}

/** The lines of the report on a scene that was checked, each ended by a line feed. */
export function printReport(report: Report, paint: Paint): string {
  const unsound = report.steps.filter((step) => !step.sound);
  const toFix = unsound.filter((step) => report.summary.toMend.includes(step.id));
  const resting = unsound.filter((step) => !report.summary.toMend.includes(step.id));
  const lines = [headline(report, paint), ...context(report, paint)];
  if (toFix.length > 0) lines.push('', ...toFix.flatMap((step) => faultLines(report, step, paint)));
  if (resting.length > 0)
    lines.push('', paint.bold('These rest on them:'), ...resting.flatMap((step) => restingLines(report, step, paint)));
  const advice = report.steps.filter((step) => step.sound).flatMap((step) => adviceLines(report, step));
  const notes = [
    ...report.warnings.map(
      (warning) => `${report.scene}:${warning.line}:${warning.column}: ${asShown(warning.message)}`,
    ),
    ...advice,
  ];
  if (notes.length > 0) lines.push('', paint.bold('To consider:'), ...notes.map((note) => `  ${paint.yellow(note)}`));
  return `${lines.join('\n')}\n`;
}

function headline(report: Report, paint: Paint): string {
  const { steps, toMend, restOnThem } = report.summary;
  const proved = report.steps
    .flatMap((step) => step.conclusions)
    .filter((conclusion) => conclusion.verdict === 'proved').length;
  if (report.sound) {
    return `${paint.green(paint.bold('sound'))}  ${report.scene}: ${counted(steps, 'step')}, ${counted(proved, 'conclusion')} proved`;
  }
  const rest =
    restOnThem === 0
      ? ''
      : `; ${restOnThem} ${restOnThem === 1 ? 'rests' : 'rest'} on ${toMend.length === 1 ? 'it' : 'them'}`;
  return `${paint.red(paint.bold('not sound'))}  ${report.scene}: ${counted(toMend.length, 'step')} to fix: ${toMend.join(', ')}${rest}`;
}

function context(report: Report, paint: Paint): string[] {
  const lines: string[] = [];
  if (report.puzzle.takenAsRead.length > 0) {
    lines.push(paint.dim(`taken as read: ${asShown(report.puzzle.takenAsRead.join(' '))}`));
  }
  const assuming = report.steps.filter((step) => step.assumesOneSolution).map((step) => step.id);
  if (assuming.length > 0) lines.push(paint.dim(`assumes one solution: ${assuming.join(', ')}`));
  const inheriting = report.steps
    .filter((step) => step.inheritsOneSolution && !step.assumesOneSolution)
    .map((step) => step.id);
  if (inheriting.length > 0) lines.push(paint.dim(`assumes one solution (inherited): ${inheriting.join(', ')}`));
  return lines;
}

function faultLines(report: Report, step: ReportedStep, paint: Paint): string[] {
  const lines = [`${paint.bold(`${report.scene}:${step.line}: ${step.id}`)}  ${paint.red(verdictOf(step))}`];
  if (step.message !== '') lines.push(`  ${asShown(step.message)}`);
  const failing = step.conclusions.filter((conclusion) => conclusion.message !== '');
  const others = failing
    .filter((conclusion) => !step.message.includes(conclusion.message))
    .map((conclusion) => conclusion.text);
  if (others.length > 0) lines.push(`  not proved: ${asShown(compactly(others).join(' '))}`);
  const shown = step.conclusions.find(
    (conclusion) => conclusion.counterexample !== undefined && conclusion.counterexample.length > 0,
  );
  if (shown !== undefined)
    lines.push(paint.dim(`  counterexample to ${asShown(shown.text)}: ${shown.counterexample?.join(' ')}`));
  for (const text of step.mends.flatMap((mend) => mend.steps)) {
    lines.push(paint.dim('  ready to paste before it:'), ...text.split('\n').map((line) => `    ${line}`));
  }
  const proved = step.conclusions
    .filter((conclusion) => conclusion.verdict === 'proved')
    .map((conclusion) => conclusion.text);
  if (proved.length > 0 && step.verdict !== 'none')
    lines.push(paint.dim(`  proved all the same: ${asShown(compactly(proved).join(' '))}`));
  return lines;
}

function restingLines(report: Report, step: ReportedStep, paint: Paint): string[] {
  const on = [...new Set(step.conclusions.flatMap((conclusion) => conclusion.restsOn))].filter((id) => id !== step.id);
  return [
    `  ${report.scene}:${step.line}: ${step.id}  ${paint.dim(on.length === 0 ? 'would hold if they did' : `rests on ${on.join(', ')}`)}`,
  ];
}

function adviceLines(report: Report, step: ReportedStep): string[] {
  const where = `${report.scene}:${step.line}: ${step.id}`;
  const lines: string[] = [];
  if (step.unneeded.length > 0) lines.push(`${where}: nothing needs ${step.unneeded.join(' ')}`);
  if (step.missed.length > 0)
    lines.push(`${where}: the same argument also proves ${asShown(compactly(step.missed).join(' '))}`);
  for (const sentence of step.advice) lines.push(`${where}: ${asShown(sentence)}`);
  return lines;
}

function verdictOf(step: ReportedStep): string {
  if (step.verdict === 'false' || step.verdict === 'unproved') return step.verdict === 'false' ? 'false' : 'not proved';
  return step.links.some((link) => !link.holds) ? 'a link does not hold' : 'not sound';
}

function counted(count: number, noun: string): string {
  return `${count} ${noun}${count === 1 ? '' : 's'}`;
}
