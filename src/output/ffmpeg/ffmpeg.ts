/**
 * The ffmpeg programs: finding them, running an encoder on frames that we feed it, calling ffprobe. The only file that
 * uses fluent-ffmpeg, which is no longer developed.
 */
import { type ChildProcess, execFile, spawn } from 'node:child_process';
import { accessSync, constants, statSync } from 'node:fs';
import { delimiter, join } from 'node:path';
import { Readable } from 'node:stream';
import ffmpeg from 'fluent-ffmpeg';
import { diskIsFull, MachineFailure, systemCode } from '../machine/machine-failure.ts';
import { fileInput, pipedInput, textInput } from './allowed-input.ts';
import { endWithUs } from './child-guard.ts';

/** What ffmpeg reads besides the frames: a file by its absolute path, or a text that is handed over in the call. */
export type Input =
  | { readonly kind: 'file'; readonly file: string; readonly options: readonly string[] }
  | { readonly kind: 'text'; readonly text: string; readonly format: 'ffmetadata' };

/** One run of ffmpeg. All options are words as ffmpeg takes them, one each. */
export interface Run {
  readonly inputs: readonly Input[];
  /** Undefined where nothing is filtered. */
  readonly filter: string | undefined;
  readonly outputOptions: readonly string[];
  /** An absolute path. */
  readonly output: string;
  /** Called now and then with the number of frames in the file, for when the frames fed do not tell. */
  readonly onEncoded?: ((frameCount: number) => void) | undefined;
}

/** One run of the encoder on frames that we feed it. */
export interface Encoding extends Run {
  /** The first input is the stream of frames. */
  readonly frameOptions: readonly string[];
}

/**
 * Runs the encoder on the frames from `frames`, one array each, requested as fast as the encoder takes them.
 * When this returns or throws, no child process is left. Throws a `MachineFailure` if the encoder fails, the signal's
 * reason if it is aborted, and anything that `frames` throws.
 */
export async function encode(
  encoding: Encoding,
  frames: Iterator<Uint8Array>,
  signal: AbortSignal | undefined,
): Promise<void> {
  await start(encoding, { options: encoding.frameOptions, frames }, signal);
}

/** The same, only on files. */
export async function run(work: Run, signal: AbortSignal | undefined): Promise<void> {
  await start(work, undefined, signal);
}

async function start(
  work: Run,
  piped: { readonly options: readonly string[]; readonly frames: Iterator<Uint8Array> } | undefined,
  signal: AbortSignal | undefined,
): Promise<void> {
  signal?.throwIfAborted();
  const words: string[] = [];
  let stopped: { readonly reason: unknown } | undefined;
  const source = new Readable({
    highWaterMark: 0, // One frame is large enough; do not draw ahead of the encoder.
    read() {
      try {
        const next = piped?.frames.next();
        this.push(next === undefined || next.done === true ? null : next.value);
      } catch (error) {
        stop(error);
      }
    },
  });
  const command = ffmpeg({ stdoutLines: 50 }).setFfmpegPath(program('ffmpeg'));
  // As separate arguments: an array would be split again at spaces.
  if (piped !== undefined) command.input(source).inputOptions(...pipedInput, ...piped.options);
  for (const input of work.inputs) command.input(nameOf(input)).inputOptions(...optionsOf(input));
  if (work.filter !== undefined) command.complexFilter(work.filter);
  command.output(work.output).outputOptions('-loglevel', 'error', ...work.outputOptions, '-nostats');
  if (work.onEncoded !== undefined) command.outputOptions('-progress', 'pipe:2');

  // The file is deleted, so the encoder need not be asked to finish it: SIGKILL is immediate and certain.
  const stop = (reason: unknown): void => {
    stopped ??= { reason };
    command.kill('SIGKILL');
  };
  const onAbort = (): void => stop(signal?.reason);
  signal?.addEventListener('abort', onAbort);
  try {
    await new Promise<void>((resolve, reject) => {
      command.on('start', () => {
        // Stopped while the library was still looking for its program: there was no child to kill until now.
        if (stopped !== undefined) command.kill('SIGKILL');
        const { ffmpegProc } = command as { readonly ffmpegProc?: ChildProcess };
        if (work.inputs.length > 0 && ffmpegProc !== undefined) endWithUs(ffmpegProc);
      });
      command.on('stderr', (line) => {
        const [, key, value] = /^([a-z_0-9]+)=(.*)$/.exec(line) ?? [];
        if (key === undefined || work.onEncoded === undefined) words.push(line);
        else if (key === 'frame') work.onEncoded(Number(value));
      });
      command.on('end', () => resolve());
      command.on('error', (error) => reject(encoderFailure(error.message, words)));
      command.run();
    });
    if (stopped !== undefined) throw stopped.reason;
  } catch (error) {
    throw stopped === undefined ? error : stopped.reason;
  } finally {
    signal?.removeEventListener('abort', onAbort);
    source.destroy();
  }
}

function nameOf(input: Input): string {
  return input.kind === 'file' ? input.file : `data:text/plain;base64,${Buffer.from(input.text).toString('base64')}`;
}

function optionsOf(input: Input): readonly string[] {
  return input.kind === 'file' ? [...fileInput, ...input.options] : [...textInput, '-f', input.format];
}

/** One run of the decoder. */
export interface Decoding {
  readonly file: string;
  /** ffmpeg's name; undefined: ffmpeg's default. */
  readonly decoder: string | undefined;
  readonly filter: string;
  /** The output format, by ffmpeg's name, and the bytes that one picture takes in it. */
  readonly pixelFormat: string;
  readonly frameBytes: number;
}

/** Passes every picture to `onPicture`, valid until it returns. Throws a `MachineFailure`, or the signal's reason. */
export async function decode(
  { file, decoder, filter, pixelFormat, frameBytes }: Decoding,
  onPicture: (bytes: Uint8Array) => void,
  signal: AbortSignal | undefined,
): Promise<void> {
  signal?.throwIfAborted();
  const child = spawn(
    program('ffmpeg'),
    [
      ...['-nostdin', '-v', 'error', '-threads', '1', ...(decoder === undefined ? [] : ['-c:v', decoder])],
      ...[...fileInput, '-i', file, '-map', '0:v', '-vf', filter, '-pix_fmt', pixelFormat, '-f', 'rawvideo', 'pipe:1'],
    ],
    { stdio: ['ignore', 'pipe', 'pipe'], killSignal: 'SIGKILL', ...(signal === undefined ? {} : { signal }) },
  );
  const words: string[] = [];
  child.stderr.setEncoding('utf8').on('data', (text: string) => words.push(...text.split('\n')));
  const picture = Buffer.alloc(frameBytes);
  let filled = 0;
  child.stdout.on('data', (bytes: Buffer) => {
    for (let at = 0; at < bytes.length; ) {
      const taken = bytes.copy(picture, filled, at);
      at += taken;
      filled += taken;
      if (filled < frameBytes) continue;
      onPicture(picture);
      filled = 0;
    }
  });
  const status = await new Promise<number | string | null>((resolve) => {
    let failed: string | undefined;
    child.on('error', (error) => {
      failed = error.message;
      if (child.pid === undefined) resolve(failed);
    });
    child.on('close', (code, killed) => resolve(failed ?? killed ?? code));
  });
  signal?.throwIfAborted();
  if (status === 0 && words.every((line) => line.trim() === '')) return;
  throw new MachineFailure(`what was encoded cannot be decoded: ${lastWords(words) ?? `ffmpeg ended with ${status}`}`);
}

/**
 * What ffprobe reports about a file, as JSON, or undefined if it cannot read it as media. `options` are ffprobe's. Its
 * error messages are added to `complaints`. Throws a `MachineFailure` if there is no ffprobe.
 */
export async function probe(
  file: string,
  options: readonly string[],
  signal?: AbortSignal,
  complaints: string[] = [],
): Promise<unknown> {
  const words = ['-v', 'error', '-of', 'json', ...fileInput, ...options, file];
  const limits = {
    maxBuffer: 64 * 1024 * 1024,
    killSignal: 'SIGKILL',
    ...(signal === undefined ? {} : { signal }),
  } as const;
  const ffprobe = program('ffprobe');
  return new Promise((resolve, reject) => {
    const child = execFile(ffprobe, words, limits, (error, stdout, stderr) => {
      complaints.push(...stderr.split('\n'));
      if (error === null) resolve(JSON.parse(stdout));
      else if (signal?.aborted === true) reject(signal.reason);
      else if (systemCode(error) !== undefined) reject(new MachineFailure(`ffprobe cannot be started; ${howToGet}`));
      else resolve(undefined);
    });
    endWithUs(child);
  });
}

/**
 * The encoders that this ffmpeg has, by name. Throws a `MachineFailure` unless ffmpeg and ffprobe exist. Must be called
 * before any work: if its program is missing, the library throws where nothing can catch it.
 */
export async function availableEncoders(): Promise<ReadonlySet<string>> {
  ffmpeg.setFfmpegPath(program('ffmpeg'));
  program('ffprobe');
  return new Promise((resolve, reject) => {
    ffmpeg.availableEncoders((error: Error | null, encoders) => {
      if (error !== null) reject(new MachineFailure(`ffmpeg does not run (${error.message}); ${howToGet}`));
      else resolve(new Set(Object.keys(encoders)));
    });
  });
}

/**
 * Everything ffmpeg says about itself: its version, build options, and libraries. Throws a `MachineFailure` if there is
 * none.
 */
export async function encoderVersion(): Promise<string> {
  const ffmpegProgram = program('ffmpeg');
  return new Promise((resolve, reject) => {
    execFile(ffmpegProgram, ['-version'], (error, stdout) => {
      if (error === null) resolve(stdout);
      else reject(new MachineFailure(`ffmpeg does not run (${error.message.split('\n')[0]}); ${howToGet}`));
    });
  });
}

/** What to do if ffmpeg, or an encoder, is missing. */
export const howToGet = 'install a full ffmpeg (Debian and Ubuntu: apt-get install ffmpeg; macOS: brew install ffmpeg)';

/**
 * The program's path: from `FFMPEG_PATH` or `FFPROBE_PATH` (the library's convention), otherwise from the `PATH`.
 * Looked up each time, so that a missing program is noticed before anything is started.
 */
export function program(name: 'ffmpeg' | 'ffprobe'): string {
  const named = process.env[name === 'ffmpeg' ? 'FFMPEG_PATH' : 'FFPROBE_PATH'] ?? '';
  const file = process.platform === 'win32' ? `${name}.exe` : name;
  const folders = (process.env.PATH ?? '').split(delimiter).filter((folder) => folder !== '');
  const found = [named, ...folders.map((folder) => join(folder, file))].find(isProgram);
  if (found !== undefined) return found;
  const called = name === 'ffmpeg' ? name : 'ffprobe (a part of ffmpeg)';
  throw new MachineFailure(`${called} is not installed; ${howToGet}`);
}

function isProgram(file: string): boolean {
  try {
    accessSync(file, constants.X_OK);
    return statSync(file).isFile();
  } catch {
    return false;
  }
}

/** The sentence for an encoder that failed. `message` is the library's; `words` are ffmpeg's own lines. */
function encoderFailure(message: string, words: readonly string[]): MachineFailure {
  if (words.some((line) => line.includes('No space left on device'))) {
    return new MachineFailure(`cannot write the video: ${diskIsFull}`);
  }
  const killedBy = /killed with signal (\w+)/.exec(message)?.[1];
  if (killedBy !== undefined) {
    return new MachineFailure(`the encoder was killed (${killedBy}) before it was done; memory may have run out`);
  }
  return new MachineFailure(`the encoder failed: ${lastWords(words) ?? message}`);
}

/** The last meaningful line, without ffmpeg's "[libx264 @ 0x55d0c8]" prefix. */
function lastWords(lines: readonly string[]): string | undefined {
  const last = lines.findLast((line) => /\S/.test(line) && !/^Conversion failed!/.test(line));
  return last?.replace(/^(\[[^\]]*\] *)+/, '').trim();
}
