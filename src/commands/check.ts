/**
 * `proofreel check`: the report, to read or as JSON.
 */
import { printReport } from '../report/print-report.ts';
import { reportOf, unusableReport } from '../report/report-of.ts';
import { printDiagnostic } from '../scene/locate.ts';
import { exitStatus } from '../verbs.ts';
import { openLesson } from './lesson.ts';
import type { Terminal } from './terminal.ts';

export async function check(path: string, options: { readonly json?: boolean }, terminal: Terminal): Promise<number> {
  const lesson = await openLesson(path, { media: 'if there' });
  const report =
    lesson.kind === 'unusable'
      ? unusableReport(lesson.file, lesson.diagnostics, lesson.solutions)
      : reportOf(lesson.file, lesson.checked, lesson.diagnostics);
  if (options.json === true) terminal.out(`${JSON.stringify(report, undefined, 2)}\n`);
  if (lesson.kind === 'unusable') {
    if (options.json !== true)
      for (const each of lesson.diagnostics) terminal.err(`${printDiagnostic(path, lesson.file.text, each)}\n`);
    return exitStatus.unusable;
  }
  if (options.json !== true) terminal.out(printReport(report, terminal.outPaint));
  return report.sound ? exitStatus.sound : exitStatus.unsound;
}
