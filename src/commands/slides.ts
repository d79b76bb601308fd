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
import { deckOf } from '../slides/deck.ts';
import type { HandoutCount } from '../slides/handout.ts';
import { handoutSize, type PageSize, slideSize } from '../slides/page-size.ts';
import { exitStatus } from '../verbs/exit-status.ts';
import type { slides as verb } from '../verbs/slides.ts';
import { UsageError } from '../verbs/usage-error.ts';
import type { CallOf } from '../verbs/verb.ts';
import { openLesson } from './lesson.ts';
import { lookOf } from './open-film.ts';
import { messagesOf, type Terminal } from './terminal.ts';

type Call = CallOf<typeof verb>;

export async function slides(call: Call, terminal: Terminal): Promise<number> {
  const path = call.scene;
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
    if (!checked.sound && !call.stamp) {
      terminal.err(printReport(reportOf(lesson.file, checked, lesson.diagnostics), terminal.errPaint));
      terminal.err('proofreel: no slides, since the scene is not sound; fix it, or add --stamp to see it stamped\n');
      return exitStatus.unsound;
    }
    if (checked.steps.length === 0)
      throw new UsageError('the scene has no steps, so there is nothing to put on a slide');
    const deck = deckOf(checked, lesson.schedule, look, wishes);
    const result = await writeSlides(deck, {
      ...wishes,
      signal: interrupt.signal,
      onProgress: call.quiet ? undefined : (progress) => line.show(progress),
    });
    line.clear();
    if (result.kind === 'refused') throw new UsageError(result.message);
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

function wishesOf({ out, builds, exercise, handout, size, lang }: Call): Wishes {
  const kind = kindOf(out);
  if (builds && exercise)
    throw new UsageError(
      '--exercise stops before the conclusions and --builds leads up to them; leave one of them out',
    );
  if (handout !== undefined && kind !== 'pdf' && kind !== 'folder')
    throw new UsageError(`--handout makes sheets of paper: write a .pdf, or a folder of PNG pictures, not a .${kind}`);
  if (handout !== undefined && (size === '16:9' || size === '4:3'))
    throw new UsageError(`a handout is printed on paper: --size A4 or --size Letter, not ${size}`);
  return {
    out,
    kind,
    builds,
    exercise,
    handout,
    size: handout === undefined ? slideSize(size ?? '16:9') : handoutSize(size),
    language: lang,
  };
}

function kindOf(out: string): SlidesKind {
  const ending = extname(out).toLowerCase().slice(1);
  if (ending === '' || /[/\\]$/.test(out)) return 'folder';
  if (isSlidesKind(ending)) return ending;
  throw new UsageError(
    `slides are written as .pdf, .pptx, .html or a folder of PNG pictures (slides/), not as .${ending}`,
  );
}

function counted(count: number, kind: SlidesKind): string {
  const noun = kind === 'pdf' || kind === 'folder' ? 'page' : 'slide';
  return `${count} ${noun}${count === 1 ? '' : 's'}`;
}
