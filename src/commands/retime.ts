/**
 * `proofreel retime`: the scene with its times moved, following a retake or by a shift.
 */
import { existsSync, readFileSync } from 'node:fs';
import { dirname, relative, resolve } from 'node:path';
import type { Edit } from '../check/scene-text.ts';
import { Bug } from '../grid/bug.ts';
import { readScene } from '../lesson/read-scene.ts';
import { type LostWords, lostWords } from '../retime/lost-words.ts';
import { type Move, type RetimedScene, retimedScene } from '../retime/retimed-scene.ts';
import { add, compare, type Fraction, fraction, multiply, subtract, zero } from '../scene/fraction.ts';
import { placeOf, printDiagnostic } from '../scene/locate.ts';
import type { Scene } from '../scene/scene.ts';
import { type Narration, readNarration } from '../timeline/narration.ts';
import { type Retake, retakeOf } from '../timeline/retake.ts';
import { frameAtTime, printSeconds } from '../timeline/seconds.ts';
import { exitStatus } from '../verbs/exit-status.ts';
import type { retime as verb } from '../verbs/retime.ts';
import { UsageError } from '../verbs/usage-error.ts';
import type { CallOf } from '../verbs/verb.ts';
import { readSceneFile } from './lesson.ts';
import { putText, refuseTarget } from './put-text.ts';
import type { Terminal } from './terminal.ts';

type Call = CallOf<typeof verb>;

export async function retime(call: Call, terminal: Terminal): Promise<number> {
  const path = call.scene;
  checkCall(call);
  const text = readSceneFile(path);
  const { scene, diagnostics } = readScene(text);
  for (const each of diagnostics) terminal.err(`${printDiagnostic(path, text, each)}\n`);
  if (scene === undefined) return exitStatus.unusable;
  if (call.out !== undefined)
    refuseTarget(call.out, { scene: path, 'old narration': call.before, 'new narration': call.after });
  const taken =
    call.before === undefined || call.after === undefined ? undefined : takes(call.before, call.after, terminal);
  const move = taken === undefined ? shift(call) : taken.retake.move;
  const renamed = narrationRenamed(path, scene, call);
  const retimed = retimedScene(scene, text, move, renamed);
  if (retimed.beforeStart.length > 0) {
    const [first] = retimed.beforeStart;
    const { line } = placeOf(text, first!.span.start);
    throw new UsageError(
      `--offset ${call.offset?.text}: ${counted(retimed.beforeStart.length, 'time')} would be before the start of the video, first in line ${line} (${printSeconds(first!.seconds)}); nothing was written`,
    );
  }
  if (readScene(retimed.text).scene === undefined) throw new Bug('a scene can be read after its times were moved');
  await putText(call.out, retimed.text, summaryOf(scene, retimed), terminal);
  if (call.out === undefined) terminal.err(`${path}: ${summaryOf(scene, retimed)}\n`);
  for (const line of movesOf(path, text, scene, retimed)) terminal.err(`  ${line}\n`);
  for (const remark of remarksOn(path, text, scene, call, retimed)) terminal.err(`proofreel: ${remark}\n`);
  if (taken === undefined) return exitStatus.sound;
  const lost = lostWords(scene, text, retimed, taken.retake, taken.after);
  if (lost.length > 0)
    terminal.err(`proofreel: ${counted(lost.length, 'place')} to look at, since words are no longer spoken:\n`);
  for (const each of lost) terminal.err(`  ${placed(path, text, each)}\n`);
  return exitStatus.sound;
}

function checkCall({ before, after, offset, stretch }: Call): void {
  const [byWords, byShift] = [
    before !== undefined || after !== undefined,
    offset !== undefined || stretch !== undefined,
  ];
  if (byWords && byShift)
    throw new UsageError(
      '--before and --after move by the words, --offset and --stretch move all in the same way; leave one pair out',
    );
  if (!byWords && !byShift)
    throw new UsageError('retime needs --before OLD.vtt and --after NEW.vtt, or --offset or --stretch');
  if (byWords && (before === undefined || after === undefined))
    throw new UsageError(
      `retime needs both narrations: ${before === undefined ? '--before OLD.vtt' : '--after NEW.vtt'} is missing`,
    );
}

function takes(
  before: string,
  after: string,
  terminal: Terminal,
): { readonly retake: Retake; readonly after: Narration } {
  const [old, now] = [narrationOf('--before', before, terminal), narrationOf('--after', after, terminal)];
  const retake = retakeOf(old, now);
  if (!retake.words.some((word) => word.now !== undefined))
    throw new UsageError(`${before} and ${after} have no words in common; are they the same lesson?`);
  return { retake, after: now };
}

function narrationOf(option: string, file: string, terminal: Terminal): Narration {
  if (!existsSync(file)) throw new UsageError(`${option}: there is no narration ${file}`);
  let text: string;
  try {
    text = readFileSync(file, 'utf8');
  } catch {
    throw new UsageError(`${option}: ${file} cannot be read; name a .vtt, .srt or .json`);
  }
  const { narration, faults } = readNarration(text, file);
  for (const { line, message } of faults) terminal.err(`${file}:${line}: warning broken-cue: ${message}\n`);
  if (narration.cues.every(({ words }) => words.length === 0))
    throw new UsageError(`${option}: ${file} has no words to follow`);
  return narration;
}

function shift({ offset, stretch }: Call): Move {
  const [by, times] = [offset?.seconds ?? zero, stretch ?? fraction(1)];
  return (seconds) => ({ seconds: add(multiply(seconds, times), by), lost: undefined });
}

/**
 * A scene that names the old narration names the new one afterwards; otherwise its cues and words would be looked up in
 * the old one.
 */
function narrationRenamed(path: string, { video }: Scene, { before, after, out }: Call): Edit[] {
  const { narration } = video;
  if (narration === undefined || before === undefined || after === undefined) return [];
  if (resolve(dirname(resolve(path)), narration.value) !== resolve(before)) return [];
  const folder = dirname(resolve(out ?? path));
  const name = relative(folder, resolve(after)).replaceAll('\\', '/');
  return [{ ...narration.span, text: /^[\w./-]+$/.test(name) ? name : JSON.stringify(name) }];
}

function summaryOf({ video }: Scene, { times, afterSteps, onNarration }: RetimedScene): string {
  const moved = times.filter((time) => isMoved(video.rate, time));
  const stay = times.length - moved.length;
  const parts = [
    `${counted(moved.length, 'time')} moved`,
    ...(stay > 0 ? [`${stay} as they were`] : []),
    ...(onNarration > 0 ? [`${onNarration} by cues and words left to the narration`] : []),
    ...(afterSteps > 0 ? [`${afterSteps} that count from a step left`] : []),
  ];
  return parts.join(', ');
}

function movesOf(path: string, text: string, { video }: Scene, { times }: RetimedScene): string[] {
  return times
    .filter((time) => isMoved(video.rate, time))
    .map(({ span, step, what, seconds, to }) => {
      const by = subtract(to, seconds);
      const direction = compare(by, zero) < 0 ? '-' : '+';
      const size = printSeconds(compare(by, zero) < 0 ? subtract(zero, by) : by);
      const named = step === undefined ? what : `${step}, ${what}`;
      return `${path}:${placeOf(text, span.start).line}: ${named}: ${printSeconds(seconds)} -> ${printSeconds(to)} (${direction}${size})`;
    });
}

function isMoved(rate: Fraction, { seconds, to }: { readonly seconds: Fraction; readonly to: Fraction }): boolean {
  return frameAtTime(rate, seconds) !== frameAtTime(rate, to);
}

function remarksOn(path: string, text: string, { video }: Scene, call: Call, { hidden }: RetimedScene): string[] {
  const files = [video.audio, video.footage?.file].flatMap((file) => (file === undefined ? [] : [file.value]));
  const isElsewhere = call.out !== undefined && dirname(resolve(call.out)) !== dirname(resolve(path));
  return [
    ...(files.length > 0 && call.before !== undefined
      ? [`${files.join(' and ')} ${files.length === 1 ? 'is' : 'are'} named as before; name the new recording there`]
      : []),
    ...(isElsewhere
      ? ['the new scene is in another folder, and the files that it names are looked up from there']
      : []),
    ...hidden.map(
      ({ start }) => `warning: the time in line ${placeOf(text, start).line} is behind an alias, and is left unchanged`,
    ),
  ];
}

function placed(path: string, text: string, { step, span, message }: LostWords): string {
  return `${path}:${placeOf(text, span.start).line}: ${step === undefined ? '' : `${step}: `}${message}`;
}

function counted(count: number, noun: string): string {
  return `${count} ${noun}${count === 1 ? '' : 's'}`;
}
