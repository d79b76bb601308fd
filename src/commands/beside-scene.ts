/**
 * The files that a scene names: its narration is read, and the lengths of its footage and audio are determined.
 */
import { existsSync, readFileSync } from 'node:fs';
import { dirname, resolve } from 'node:path';
import { otherThanFile } from '../output/machine/file-kind.ts';
import { MachineFailure } from '../output/machine/machine-failure.ts';
import type { Diagnostic } from '../scene/diagnostic.ts';
import type { Fraction } from '../scene/fraction.ts';
import type { Located, Scene } from '../scene/scene.ts';
import { type Narration, readNarration } from '../timeline/narration.ts';

/** The absolute path of a file that the scene names. */
export function pathBeside(scenePath: string, name: string): string {
  return resolve(dirname(resolve(scenePath)), name);
}

export interface Beside {
  readonly narration: Narration | undefined;
  readonly lengths: { readonly footageSeconds?: Fraction; readonly audioSeconds?: Fraction };
  readonly diagnostics: readonly Diagnostic[];
}

/**
 * What exists in `folder`, the scene's own; a missing or broken file becomes a fault at its name. `media` as for
 * `openLesson`.
 */
export async function readBeside(
  { video }: Pick<Scene, 'video'>,
  folder: string,
  media: 'needed' | 'if there',
): Promise<Beside> {
  const diagnostics: Diagnostic[] = [];
  const narration = video.narration === undefined ? undefined : readNarrationFile(video.narration, folder, diagnostics);
  const lengthOf = async (file: Located<string> | undefined, what: string): Promise<Fraction | undefined> => {
    if (file === undefined) return undefined;
    const path = resolve(folder, file.value);
    if (!existsSync(path)) {
      const severity = media === 'needed' ? 'error' : 'warning';
      diagnostics.push({
        code: 'file-not-found',
        severity,
        span: file.span,
        message: `there is no ${what} ${file.value} next to the scene${addressNote(file.value)}`,
      });
      return undefined;
    }
    const asked = await askLength(path, media);
    if ('seconds' in asked) return asked.seconds;
    diagnostics.push({
      code: 'media-not-read',
      severity: media === 'needed' ? 'error' : 'warning',
      span: file.span,
      message: asked.message,
    });
    return undefined;
  };
  const footageSeconds = await lengthOf(video.footage?.file, 'footage');
  const audioSeconds = await lengthOf(video.audio, 'audio');
  const lengths = {
    ...(footageSeconds === undefined ? {} : { footageSeconds }),
    ...(audioSeconds === undefined ? {} : { audioSeconds }),
  };
  return { narration, lengths, diagnostics };
}

/** How long the file lasts, or why that is not known. Without ffprobe a check continues; a render cannot. */
async function askLength(
  path: string,
  media: 'needed' | 'if there',
): Promise<{ readonly seconds: Fraction | undefined } | { readonly message: string }> {
  try {
    const { probeMedia } = await import('../output/ffmpeg/media.ts'); // only when needed: a check starts fast
    const probed = await probeMedia(path);
    return probed.kind === 'media' ? { seconds: probed.durationSeconds } : { message: probed.message };
  } catch (failure) {
    if (media === 'needed' || !(failure instanceof MachineFailure)) throw failure;
    return { message: `the length of ${path} is not known here: ${failure.message}` };
  }
}

function readNarrationFile(file: Located<string>, folder: string, diagnostics: Diagnostic[]): Narration | undefined {
  const path = resolve(folder, file.value);
  const fault = (message: string): undefined => {
    diagnostics.push({ code: 'file-not-found', severity: 'error', span: file.span, message });
  };
  if (!existsSync(path)) {
    return fault(`there is no narration ${file.value} next to the scene${addressNote(file.value)}`);
  }
  const other = otherThanFile(path);
  if (other !== undefined) return fault(`${file.value} is ${other}; name a narration (.vtt, .srt, .json)`);
  const text = readIfPossible(path);
  if (text === undefined) return fault(`${file.value} cannot be opened for reading`);
  const { narration, faults } = readNarration(text, file.value);
  for (const fault of faults) {
    const message = `${file.value}:${fault.line}: ${fault.message}`;
    diagnostics.push({ code: 'broken-cue', severity: 'warning', span: file.span, message });
  }
  return narration;
}

function readIfPossible(path: string): string | undefined {
  try {
    return readFileSync(path, 'utf8');
  } catch {
    return undefined;
  }
}

/** ffmpeg would take `https://...` and `pipe:0` for addresses; here they are names of files. */
function addressNote(name: string): string {
  return /^[a-z][a-z0-9+.-]+[:,]/i.test(name) ? '; no address is opened, name a file' : '';
}
