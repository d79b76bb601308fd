/**
 * `proofreel captions`: captions of what is said, and with `--describe` descriptions of what is shown, as a second file
 * next to them.
 */
import { extname } from 'node:path';
import { speedOf, type TextCue } from '../beside/cue.ts';
import { remarksOnCues } from '../beside/cue-remarks.ts';
import { captionCues } from '../beside/cues.ts';
import { describeFilm } from '../beside/describe.ts';
import { type CueFormat, printCues } from '../beside/print-cues.ts';
import { milliseconds, type SaidWord, saidInNarration, saidInSteps } from '../beside/spoken.ts';
import { filmOf } from '../film/film-of.ts';
import { defaultLook } from '../picture/default-look.ts';
import { fraction } from '../scene/fraction.ts';
import { printDiagnostic } from '../scene/locate.ts';
import { printSeconds, timeOfFrame } from '../timeline/seconds.ts';
import type { captions as verb } from '../verbs/captions.ts';
import { exitStatus } from '../verbs/exit-status.ts';
import { UsageError } from '../verbs/usage-error.ts';
import type { CallOf } from '../verbs/verb.ts';
import { pathBeside } from './beside-scene.ts';
import { type Lesson, openLesson } from './lesson.ts';
import { putText, refuseTarget } from './put-text.ts';
import type { Terminal } from './terminal.ts';
import { unsoundNote } from './unsound-note.ts';

type Call = CallOf<typeof verb>;
type Read = Extract<Lesson, { kind: 'lesson' }>;

export async function captions(call: Call, terminal: Terminal): Promise<number> {
  const path = call.scene;
  const format = formatOf(call);
  const lesson = await openLesson(path, { media: 'if there' });
  for (const each of lesson.diagnostics) terminal.err(`${printDiagnostic(path, lesson.file.text, each)}\n`);
  if (lesson.kind === 'unusable') return exitStatus.unusable;
  const narration = lesson.scene.video.narration?.value;
  const sources = { scene: path, narration: narration === undefined ? undefined : pathBeside(path, narration) };
  for (const file of filesOf(call)) refuseTarget(file, sources);
  const said = saidIn(lesson);
  const cues = captionCues(said, endOf(lesson));
  if (cues.length === 0 && !call.describe)
    throw new UsageError(`there is nothing to caption: no step of ${path} has a say, and the scene names no narration`);
  if (cues.length > 0) await putText(call.out, printCues(cues, format), summaryOf(cues), terminal);
  for (const remark of [...remarksOnCues(cues), ...remarksOnEnd(said, endOf(lesson))])
    terminal.err(`proofreel: ${remark}\n`);
  if (call.describe && call.out !== undefined) {
    const film = filmOf(lesson.checked, lesson.schedule, defaultLook);
    const described = describeFilm(film, lesson.checked, lesson.schedule);
    const file = descriptionsFile(call.out);
    await putText(file, printCues(described, format), `${counted(described.length)} of what is shown`, terminal);
  }
  return unsoundNote(lesson.checked, terminal);
}

function formatOf({ out, describe }: Pick<Call, 'out' | 'describe'>): CueFormat {
  if (out === undefined) {
    if (describe)
      throw new UsageError('--describe writes a second file next to the captions, so it needs -o OUT.vtt or OUT.srt');
    return 'vtt';
  }
  const ending = extname(out).toLowerCase();
  if (ending === '.vtt') return 'vtt';
  if (ending === '.srt') return 'srt';
  throw new UsageError(`captions are written as .vtt or .srt; ${out} ends differently`);
}

/** From the narration if the scene has one with words in it, otherwise from what the steps say. */
function saidIn({ scene, schedule, narration }: Read): SaidWord[] {
  const spoken = narration === undefined ? [] : saidInNarration(narration);
  return spoken.length > 0 ? spoken : saidInSteps(scene, schedule);
}

function endOf({ schedule }: Read): number {
  return milliseconds(timeOfFrame(schedule.rate, schedule.frameCount));
}

function filesOf({ out, describe }: Pick<Call, 'out' | 'describe'>): string[] {
  if (out === undefined) return [];
  return describe ? [out, descriptionsFile(out)] : [out];
}

/** `lesson.vtt`: `lesson.descriptions.vtt`. */
function descriptionsFile(out: string): string {
  const ending = extname(out);
  return `${out.slice(0, out.length - ending.length)}.descriptions${ending}`;
}

function summaryOf(cues: readonly TextCue[]): string {
  const fastest = Math.max(...cues.map(speedOf));
  return `${counted(cues.length)}, at most ${fastest.toFixed(1)} characters a second`;
}

function remarksOnEnd(said: readonly SaidWord[], end: number): string[] {
  const late = said.filter(({ from }) => from >= end);
  if (late.length === 0) return [];
  const at = printSeconds(fraction(end, 1000));
  return [
    `warning: ${late.length === 1 ? '1 word is' : `${late.length} words are`} spoken after the end of the video, ${at}, and left out`,
  ];
}

function counted(count: number): string {
  return count === 1 ? '1 cue' : `${count} cues`;
}
