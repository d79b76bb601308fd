/**
 * `proofreel render`: the film as a file. A scene that is not sound is refused, or stamped.
 */
import { flashesOf } from '../output/film-flashes.ts';
import { listenForInterrupt } from '../output/interrupt.ts';
import { progressLine } from '../output/progress.ts';
import { type RenderOptions, renderFilm } from '../output/render.ts';
import { printReport } from '../report/print-report.ts';
import { reportOf } from '../report/report-of.ts';
import type { Scene } from '../scene/scene.ts';
import { footageStart } from '../timeline/length.ts';
import { printFrame } from '../timeline/seconds.ts';
import { exitStatus } from '../verbs.ts';
import { BadCall } from './bad-call.ts';
import { flashesInWords } from './flash-warnings.ts';
import { pathBeside } from './lesson.ts';
import { type OpenFilm, openFilm } from './open-film.ts';
import type { Terminal } from './terminal.ts';

export interface RenderCall {
  readonly out?: string;
  readonly stamp?: boolean;
  readonly key?: string;
  readonly lossless?: boolean;
  readonly look?: string;
  readonly as?: string;
  readonly quiet?: boolean;
}

export async function render(path: string, call: RenderCall, terminal: Terminal): Promise<number> {
  if (call.out === undefined)
    throw new BadCall('render needs -o OUT: a .mp4, .mov or .webm, or a folder for PNG frames');
  const interrupt = listenForInterrupt();
  const line = progressLine(process.stderr);
  try {
    const opened = await openFilm(path, call, terminal);
    if (opened === undefined) return exitStatus.unusable;
    const { lesson, painter } = opened;
    if (!lesson.checked.sound && call.stamp !== true) {
      terminal.err(printReport(reportOf(lesson.file, lesson.checked, lesson.diagnostics), terminal.errPaint));
      terminal.err(
        'proofreel: not rendered, since the scene is not sound; mend it, or add --stamp to see it stamped\n',
      );
      return exitStatus.unsound;
    }
    warnOfFlashes(opened, terminal);
    const result = await renderFilm(painter, call.out, {
      ...mediaOf(lesson.scene, path),
      key: call.key,
      lossless: call.lossless,
      signal: interrupt.signal,
      onProgress: call.quiet === true ? undefined : (progress) => line.show(progress),
    });
    line.clear();
    switch (result.kind) {
      case 'refused':
        throw new BadCall(result.message);
      case 'interrupted':
        terminal.err('proofreel: interrupted; nothing was written\n');
        return exitStatus.interrupted;
      case 'written': {
        for (const notice of result.notices) terminal.err(`proofreel: ${notice}\n`);
        const stamped = lesson.checked.sound ? '' : ', stamped where it is not proved';
        terminal.err(`${result.path}: ${result.frameCount} frames, ${result.drawn} of them drawn${stamped}\n`);
        return exitStatus.sound;
      }
    }
  } finally {
    line.clear();
    interrupt.release();
  }
}

function warnOfFlashes({ film, look }: OpenFilm, terminal: Terminal): void {
  for (const from of flashesOf(film, look)) {
    const at = printFrame(film.rate, from);
    terminal.err(`proofreel: warning: ${flashesInWords(at)}\n`);
  }
}

function mediaOf(scene: Scene, path: string): Pick<RenderOptions, 'footage' | 'audio'> {
  const { footage, audio } = scene.video;
  return {
    footage:
      footage === undefined ? undefined : { file: pathBeside(path, footage.file.value), start: footageStart(scene) },
    audio: audio === undefined ? undefined : pathBeside(path, audio.value),
  };
}
