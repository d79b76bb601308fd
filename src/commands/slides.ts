/**
 * `proofreel slides`: the steps of a scene as slides or handouts. A scene that is not sound is refused, or stamped.
 */
import { extname } from 'node:path';
import { listenForInterrupt } from '../output/interrupt.ts';
import { progressLine } from '../output/progress.ts';
import { isSlidesKind, type SlidesKind, writeSlides } from '../output/slides/slides.ts';
import { printReport } from '../report/print-report.ts';
import { reportOf } from '../report/report-of.ts';
import { printDiagnostic } from '../scene/locate.ts';
import { nearestWords } from '../scene/nearest-word.ts';
import { deckOf } from '../slides/deck.ts';
import { type HandoutCount, handoutCounts } from '../slides/handout.ts';
import { handoutSize, type PageSize, type SizeName, sizeNames, slideSize } from '../slides/page-size.ts';
import { exitStatus } from '../verbs.ts';
import { BadCall } from './bad-call.ts';
import { openLesson } from './lesson.ts';
import { lookOf } from './open-film.ts';
import { messagesOf, type Terminal } from './terminal.ts';

export interface SlidesCall {
  readonly out?: string;
  readonly builds?: boolean;
  readonly size?: string;
  readonly handout?: string;
  readonly exercise?: boolean;
  readonly stamp?: boolean;
  readonly look?: string;
  readonly lang?: string;
  readonly quiet?: boolean;
}

export async function slides(path: string, call: SlidesCall, terminal: Terminal): Promise<number> {
  const wishes = wishesOf(call);
  const interrupt = listenForInterrupt();
  const line = progressLine(messagesOf(terminal), undefined, 'pages');
  try {
    const lesson = await openLesson(path, { media: 'if there' });
    for (const each of lesson.diagnostics) terminal.err(`${printDiagnostic(path, lesson.file.text, each)}\n`);
    if (lesson.kind === 'unusable') return exitStatus.unusable;
    const look = lookOf(path, lesson.scene.look?.value, call.look, terminal);
    if (look === undefined) return exitStatus.unusable;
    const { checked } = lesson;
    if (!checked.sound && call.stamp !== true) {
      terminal.err(printReport(reportOf(lesson.file, checked, lesson.diagnostics), terminal.errPaint));
      terminal.err('proofreel: no slides, since the scene is not sound; mend it, or add --stamp to see it stamped\n');
      return exitStatus.unsound;
    }
    if (checked.steps.length === 0) throw new BadCall('the scene has no steps, so there is nothing to put on a slide');
    const deck = deckOf(checked, lesson.schedule, look, wishes);
    const result = await writeSlides(deck, {
      ...wishes,
      signal: interrupt.signal,
      onProgress: call.quiet === true ? undefined : (progress) => line.show(progress),
    });
    line.clear();
    if (result.kind === 'refused') throw new BadCall(result.message);
    if (result.kind === 'interrupted') {
      terminal.err('proofreel: interrupted; nothing was written\n');
      return exitStatus.interrupted;
    }
    const stamped = checked.sound ? '' : ', stamped where it is not proved';
    terminal.err(`${result.path}: ${counted(result.count, wishes.kind)}${stamped}\n`);
    return exitStatus.sound;
  } finally {
    line.clear();
    interrupt.release();
  }
}

interface Wishes {
  readonly out: string;
  readonly kind: SlidesKind;
  readonly size: PageSize;
  readonly handout: HandoutCount | undefined;
  readonly builds: boolean;
  readonly exercise: boolean;
  readonly language: string;
}

function wishesOf(call: SlidesCall): Wishes {
  if (call.out === undefined || call.out === '')
    throw new BadCall('slides needs -o OUT: a .pdf, .pptx or .html, or a folder for PNG pictures');
  const kind = kindOf(call.out);
  const [builds, exercise] = [call.builds === true, call.exercise === true];
  if (builds && exercise)
    throw new BadCall('--exercise stops before the conclusions and --builds leads up to them; leave one of them out');
  const handout = handoutOf(call.handout);
  if (handout !== undefined && kind !== 'pdf' && kind !== 'folder')
    throw new BadCall(`--handout makes sheets of paper: write a .pdf, or a folder of PNG pictures, not a .${kind}`);
  const size = sizeOf(call.size);
  if (handout !== undefined && (size === '16:9' || size === '4:3'))
    throw new BadCall(`a handout is printed on paper: --size A4 or --size Letter, not ${size}`);
  return {
    out: call.out,
    kind,
    builds,
    exercise,
    handout,
    size: handout === undefined ? slideSize(size ?? '16:9') : handoutSize(size),
    language: languageOf(call.lang),
  };
}

function kindOf(out: string): SlidesKind {
  const ending = extname(out).toLowerCase().slice(1);
  if (ending === '' || /[/\\]$/.test(out)) return 'folder';
  if (isSlidesKind(ending)) return ending;
  throw new BadCall(
    `slides are written as .pdf, .pptx, .html or a folder of PNG pictures (slides/), not as .${ending}`,
  );
}

function handoutOf(text: string | undefined): HandoutCount | undefined {
  if (text === undefined) return undefined;
  const found = handoutCounts.find((count) => String(count) === text);
  if (found === undefined) throw new BadCall(`--handout ${text}: a sheet holds 2, 4 or 6 slides`);
  return found;
}

function sizeOf(text: string | undefined): SizeName | undefined {
  if (text === undefined) return undefined;
  const found = sizeNames.find((name) => name.toLowerCase() === text.toLowerCase());
  if (found !== undefined) return found;
  const [nearest] = nearestWords(text, sizeNames);
  throw new BadCall(
    `there is no size ${text}; ${nearest === undefined ? `the sizes are ${sizeNames.join(', ')}` : `did you mean ${nearest}?`}`,
  );
}

/** BCP 47 (RFC 5646): a language of two or three letters, then subtags. */
function languageOf(text: string | undefined): string {
  if (text === undefined) return 'en';
  if (/^[a-z]{2,3}(-[a-z0-9]{2,8})*$/i.test(text)) return text;
  throw new BadCall(`--lang ${text} is no tag of a language; write en, de, fr-CA, pt-BR, ...`);
}

function counted(count: number, kind: SlidesKind): string {
  const noun = kind === 'pdf' || kind === 'folder' ? 'page' : 'slide';
  return `${count} ${noun}${count === 1 ? '' : 's'}`;
}
