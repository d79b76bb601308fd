/**
 * `proofreel check`: the report, as text or JSON, and the further files that it can write.
 */

import { mkdirSync, writeFileSync } from 'node:fs';
import { writeFile } from 'node:fs/promises';
import { join, resolve } from 'node:path';
import { takenOutWhole } from '../check/text-fixes.ts';
import { asShown } from '../grid/notation/shown.ts';
import { fixScene, spellOut } from '../lesson/fixed-scene.ts';
import { writeAtomically } from '../output/machine/atomic-write.ts';
import { pathFault } from '../output/machine/output-path.ts';
import { certificatesOf } from '../report/cnf.ts';
import { printReport } from '../report/print-report.ts';
import { reportOf, unusableReport } from '../report/report-of.ts';
import { printDiagnostic } from '../scene/locate.ts';
import type { check as verb } from '../verbs/check.ts';
import { exitStatus } from '../verbs/exit-status.ts';
import { UsageError } from '../verbs/usage-error.ts';
import type { CallOf } from '../verbs/verb.ts';
import { flashWarnings } from './flash-warnings.ts';
import { type Lesson, openLesson } from './lesson.ts';
import { refuseTarget } from './put-text.ts';
import type { Terminal } from './terminal.ts';
import { voiceWarnings } from './voice-warnings.ts';

type Call = CallOf<typeof verb>;

export async function check(call: Call, terminal: Terminal): Promise<number> {
  const path = call.scene;
  for (const file of [call.fix, call.spellOut]) if (file !== undefined) refuseTarget(file, {});
  if (call.cnf !== undefined) refuseFolder(call.cnf);
  const lesson = await openLesson(path, { media: 'if there' });
  const report =
    lesson.kind === 'unusable'
      ? unusableReport(lesson.file, lesson.diagnostics, lesson.solutions)
      : reportOf(lesson.file, lesson.checked, [
          ...lesson.diagnostics,
          ...(await flashWarnings(path, lesson)),
          ...voiceWarnings(lesson),
        ]);
  if (call.json) terminal.out(`${JSON.stringify(report, undefined, 2)}\n`);
  if (lesson.kind === 'unusable') {
    if (!call.json) {
      for (const each of lesson.diagnostics) terminal.err(`${printDiagnostic(path, lesson.file.text, each)}\n`);
    }
    return exitStatus.unusable;
  }
  if (!call.json) terminal.out(printReport(report, terminal.outPaint));
  await writeBeside(lesson, call, terminal);
  return report.sound ? exitStatus.sound : exitStatus.unsound;
}

/** @throws UsageError if certificates cannot be written there */
function refuseFolder(folder: string): void {
  const fault = pathFault(join(resolve(folder), 'a certificate'));
  if (fault !== undefined) throw new UsageError(`--cnf ${folder}: ${fault}`);
}

async function writeBeside(lesson: Extract<Lesson, { kind: 'lesson' }>, call: Call, terminal: Terminal): Promise<void> {
  const write = (file: string, text: string) => writeAtomically(resolve(file), (part) => writeFile(part, text));
  if (call.spellOut !== undefined) {
    await write(call.spellOut, spellOut(lesson.file.text, lesson.checked));
    terminal.err(`${call.spellOut}: written with every \`so: all\` written out\n`);
  }
  if (call.fix !== undefined) {
    const fixed = fixScene(lesson.file.text);
    await write(call.fix, fixed.text);
    const state = fixed.sound ? 'and is sound' : 'and is not sound yet; run check on it';
    const takenOut = fixed.done.filter((line) => line.endsWith(`: ${takenOutWhole}`)).length;
    const counts = [
      ...(fixed.done.length > takenOut ? [`${fixed.done.length - takenOut} fixed`] : []),
      ...(takenOut > 0 ? [`${takenOut} taken out`] : []),
    ];
    const done = counts.length === 0 ? 'nothing to fix' : counts.join(', ');
    terminal.err([`${call.fix}: ${done}, ${state}`, ...fixed.done.map((line) => `  ${asShown(line)}`), ''].join('\n'));
  }
  if (call.cnf !== undefined) {
    const certificates = certificatesOf(lesson.checked);
    mkdirSync(call.cnf, { recursive: true });
    for (const { name, text } of certificates) writeFileSync(join(call.cnf, name), text);
    terminal.err(`${call.cnf}: ${certificates.length} certificates\n`);
  }
}
