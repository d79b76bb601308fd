/**
 * `proofreel render`: films as files. A scene that is not sound is refused, or stamped.
 */
import { join } from 'node:path';
import { firstContainer } from '../output/codecs/codecs.ts';
import { flashesOf } from '../output/flashes/film-flashes.ts';
import { type Interrupt, listenForInterrupt } from '../output/interrupt.ts';
import { excerpt } from '../output/painters/excerpt.ts';
import { filmPainter } from '../output/painters/film-painter.ts';
import { scaledFilm } from '../output/painters/scaled-film.ts';
import { type ProgressLine, progressLine, workText } from '../output/progress.ts';
import { renderFilm } from '../output/render.ts';
import { cacheFolder } from '../output/segments/segment-cache.ts';
import { printReport } from '../report/print-report.ts';
import { reportOf } from '../report/report-of.ts';
import { printFrame } from '../timeline/seconds.ts';
import { exitStatus } from '../verbs/exit-status.ts';
import { UsageError } from '../verbs/usage-error.ts';
import { flashesInWords } from './flash-warnings.ts';
import { type OpenFilm, openFilm } from './open-film.ts';
import { nameOf, planOf, type RenderCall, type RenderPlan } from './render-call.ts';
import { type FilmFile, filesOf } from './render-files.ts';
import { type Piece, piecesOf } from './render-pieces.ts';
import { tracksOf } from './render-tracks.ts';
import { messagesOf, type Terminal } from './terminal.ts';

/** What one scene is rendered with. */
interface Session {
  readonly plan: RenderPlan;
  readonly call: RenderCall;
  readonly interrupt: Interrupt;
  readonly line: ProgressLine;
  readonly terminal: Terminal;
}

/** Renders one scene after the other; the status is the worst of theirs. */
export async function render(call: RenderCall, terminal: Terminal): Promise<number> {
  const { scenes } = call;
  const plan = planOf(call);
  const session = { plan, call, interrupt: listenForInterrupt(), line: progressLine(messagesOf(terminal)), terminal };
  let worst: number = exitStatus.sound;
  try {
    for (const scene of scenes) {
      const status = await renderScene(scene, scenes.length > 1, session);
      if (status === exitStatus.interrupted) return status;
      worst = Math.max(worst, status);
    }
    return worst;
  } finally {
    session.line.clear();
    session.interrupt.release();
  }
}

async function renderScene(path: string, isOneOfMany: boolean, session: Session): Promise<number> {
  const { plan, call, terminal } = session;
  const opened = await openFilm(path, call, terminal);
  if (opened === undefined) return exitStatus.unusable;
  const { lesson, look } = opened;
  if (!lesson.checked.sound && !call.stamp) {
    terminal.err(printReport(reportOf(lesson.file, lesson.checked, lesson.diagnostics), terminal.errPaint));
    terminal.err('proofreel: not rendered, since the scene is not sound; fix it, or add --stamp to see it stamped\n');
    return exitStatus.unsound;
  }
  const { pieces, passed } = piecesOf(lesson.schedule, plan);
  warnOfFlashes(opened, terminal);
  for (const id of passed) terminal.err(`proofreel: step ${id} is on no frame, so it has no video\n`);
  const film = plan.scale === 1 ? opened.film : scaledFilm(opened.film, plan.scale, { even: true });
  const painter = filmPainter(film, look);
  if (call.matte && !painter.transparent)
    throw new UsageError('--matte: these frames are not transparent (draw: board), so there is no matte to write');
  for (const piece of pieces) {
    const cut =
      piece.from === 0 && piece.until === painter.frameCount ? painter : excerpt(painter, piece.from, piece.until);
    for (const file of filesOf(cut, nameFor(path, piece, opened, isOneOfMany, session), call.matte)) {
      const status = await renderFile(file, path, piece, opened, session);
      if (status !== exitStatus.sound) return status;
    }
  }
  return exitStatus.sound;
}

/** The name of the file or folder of one piece. */
function nameFor(
  path: string,
  { step }: Piece,
  { film, lesson }: OpenFilm,
  isOneOfMany: boolean,
  { plan, call }: Session,
): string {
  if (!plan.several) return plan.out;
  const staysTransparent = film.draw !== 'board' && call.key === undefined && lesson.scene.video.footage === undefined;
  const usual = staysTransparent || call.lossless || call.png ? 'mov' : 'mp4';
  const format = plan.format ?? (call.codec === undefined ? usual : firstContainer(call.codec));
  const name = step === undefined ? nameOf(path) : isOneOfMany ? join(nameOf(path), step) : step;
  return join(plan.out, format === 'png' ? `${name}/` : `${name}.${format}`);
}

async function renderFile(
  { name, painter, kind }: FilmFile,
  path: string,
  piece: Piece,
  { lesson }: OpenFilm,
  { call, plan, interrupt, line, terminal }: Session,
): Promise<number> {
  const tracks = tracksOf(lesson, path, piece, plan.byStep);
  const result = await renderFilm(painter, name, {
    ...tracks,
    footage: kind === 'film' ? tracks.footage : undefined,
    audio: kind === 'matte' ? undefined : tracks.audio,
    key: call.key,
    lossless: call.lossless,
    png: call.png,
    codec: call.codec,
    part: plan.part,
    cache: call.noCache ? undefined : cacheFolder(),
    compatible: call.compatible,
    holds: call.holds,
    signal: interrupt.signal,
    onStart: call.quiet ? undefined : (work) => terminal.err(`${workText(work)}\n`),
    onProgress: call.quiet ? undefined : (progress) => line.show(progress),
  });
  line.clear();
  switch (result.kind) {
    case 'refused':
      throw new UsageError(result.message);
    case 'interrupted':
      terminal.err('proofreel: interrupted; nothing was written\n');
      return exitStatus.interrupted;
    case 'written': {
      for (const notice of result.notices) terminal.err(`proofreel: ${notice}\n`);
      const kept = result.kept === 0 ? '' : `, ${result.kept} from an earlier render`;
      const stamped = lesson.checked.sound ? '' : ', stamped where it is not proved';
      terminal.err(`${result.path}: ${result.frameCount} frames, ${result.drawn} of them drawn${kept}${stamped}\n`);
      return exitStatus.sound;
    }
  }
}

function warnOfFlashes({ film, look }: OpenFilm, terminal: Terminal): void {
  for (const from of flashesOf(film, look)) {
    const at = printFrame(film.rate, from);
    terminal.err(`proofreel: warning: ${flashesInWords(at)}\n`);
  }
}
