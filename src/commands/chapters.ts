/**
 * `proofreel chapters`: the list for video sites, or the lesson as a timeline for an editing program.
 */
import { basename, dirname, extname, relative, resolve } from 'node:path';
import { printTimeline } from '../beside/otio.ts';
import { printDiagnostic } from '../scene/locate.ts';
import { framesOfLabel } from '../scene/timecode.ts';
import { type Chapter, chapterList, chaptersOf, printChapterList } from '../timeline/chapters.ts';
import { footageStart } from '../timeline/length.ts';
import { wholeFrames } from '../timeline/seconds.ts';
import type { chapters as verb } from '../verbs/chapters.ts';
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

export async function chapters(call: Call, terminal: Terminal): Promise<number> {
  const path = call.scene;
  const kind = kindOf(call);
  const lesson = await openLesson(path, { media: 'if there' });
  for (const each of lesson.diagnostics) terminal.err(`${printDiagnostic(path, lesson.file.text, each)}\n`);
  if (lesson.kind === 'unusable') return exitStatus.unusable;
  const { scene, schedule } = lesson;
  if (call.out !== undefined) {
    const { narration, footage, audio } = scene.video;
    const beside = (name: string | undefined) => (name === undefined ? undefined : pathBeside(path, name));
    refuseTarget(call.out, {
      scene: path,
      narration: beside(narration?.value),
      footage: beside(footage?.file.value),
      audio: beside(audio?.value),
    });
  }
  if (kind === 'otio') {
    const out = call.out ?? '';
    const named = chaptersOf(scene, schedule);
    const text = timelineText(path, out, call.video, named, lesson);
    await putText(out, text, `${counted(scene.steps.length, 'step')}, ${counted(named.length, 'chapter')}`, terminal);
  } else {
    const list = chapterList(namedChapters(path, lesson, terminal), schedule.rate);
    await putText(
      call.out,
      printChapterList(list.chapters, schedule.rate),
      counted(list.chapters.length, 'chapter'),
      terminal,
    );
    for (const { name, into } of list.merged)
      terminal.err(`proofreel: "${name}" is shorter than ten seconds, and is part of "${into}" here\n`);
    if (!list.taken)
      terminal.err(
        `proofreel: warning: video sites require at least three chapters of ten seconds or more; there ${list.chapters.length === 1 ? 'is' : 'are'} ${list.chapters.length}\n`,
      );
  }
  return unsoundNote(lesson.checked, terminal);
}

function kindOf({ out, video }: Pick<Call, 'out' | 'video'>): 'list' | 'otio' {
  const ending = out === undefined ? '.txt' : extname(out).toLowerCase();
  if (ending === '.otio') return 'otio';
  if (ending !== '.txt') throw new UsageError(`chapters are written as .txt or .otio; ${out} ends differently`);
  if (video !== undefined) throw new UsageError('--video is the clip of a timeline: it goes with -o OUT.otio');
  return 'list';
}

/** From `chapter`; if the scene has none, from the titles of its steps, with a note. */
function namedChapters(path: string, { scene, schedule }: Read, terminal: Terminal): readonly Chapter[] {
  const named = chaptersOf(scene, schedule);
  if (named.length > 0) return named;
  const titled = chaptersOf(scene, schedule, 'titles');
  if (titled.length === 0)
    throw new UsageError(
      `no step of ${path} has a chapter or a title; write chapter: NAME at the steps where one begins`,
    );
  terminal.err(`proofreel: no step of ${path} has a chapter, so the steps' titles are used\n`);
  return titled;
}

function timelineText(
  path: string,
  out: string,
  video: string | undefined,
  named: readonly Chapter[],
  { scene, schedule, checked }: Read,
): string {
  const { footage, audio, timecode, rate } = scene.video;
  const folder = dirname(resolve(out));
  const url = (file: string) => urlFrom(folder, file);
  const label = timecode === undefined ? undefined : framesOfLabel(timecode.value, rate);
  return printTimeline(checked, schedule, {
    name: scene.title?.replace(/\s+/g, ' ').trim() ?? basename(path, extname(path)),
    firstFrame: label?.ok === true ? label.frames : 0,
    chapters: named,
    media: {
      video: url(resolve(video ?? `${out.slice(0, -extname(out).length)}.mov`)),
      footage:
        footage === undefined
          ? undefined
          : { url: url(pathBeside(path, footage.file.value)), from: wholeFrames(rate, footageStart(scene)) },
      audio: audio === undefined ? undefined : url(pathBeside(path, audio.value)),
    },
  });
}

/** Relative to the timeline's folder, as a relative reference of RFC 3986. */
function urlFrom(folder: string, file: string): string {
  return relative(folder, file).split(/[\\/]/).map(encodeURIComponent).join('/');
}

function counted(count: number, noun: string): string {
  return `${count} ${noun}${count === 1 ? '' : 's'}`;
}
