/**
 * The ffmpeg programs: finding them, running an encoder on frames that we hand it, asking ffprobe. The only file that
 * knows fluent-ffmpeg, which is no longer developed.
 */
import { execFile } from 'node:child_process';
import { Readable } from 'node:stream';
import ffmpeg from 'fluent-ffmpeg';
import { diskIsFull, MachineFailure, systemCode } from './machine-failure.ts';

/** One run of the encoder. All options are words as ffmpeg takes them, one each. */
export interface Encoding {
  /** The first input is the stream of frames. */
  readonly frameOptions: readonly string[];
  readonly files: readonly { readonly file: string; readonly options: readonly string[] }[];
  readonly filter: string;
  readonly outputOptions: readonly string[];
  /** An absolute path. */
  readonly output: string;
}

/**
 * Runs the encoder on the frames that `frames` gives, one array each, asked for as fast as the encoder takes them.
 * When this returns or throws, no child process is left. Throws a `MachineFailure` if the encoder fails, the signal's
 * reason if it is aborted, and whatever `frames` throws.
 */
export async function encode(encoding: Encoding, frames: Iterator<Uint8Array>, signal: AbortSignal | undefined): Promise<void> {
  signal?.throwIfAborted();
  const words: string[] = [];
  let stopped: { readonly reason: unknown } | undefined;
  const source = new Readable({
    highWaterMark: 0, // One frame is large enough; do not draw ahead of the encoder.
    read() {
      try {
        const next = frames.next();
        this.push(next.done === true ? null : next.value);
      } catch (error) {
        stop(error);
      }
    },
  });
  const command = ffmpeg({ stdoutLines: 50 }).setFfmpegPath(program('ffmpeg'));
  // Words one by one: an array of them would be split again at spaces.
  command.input(source).inputOptions('-loglevel', 'error', ...encoding.frameOptions);
  for (const { file, options } of encoding.files) {
    command.input(file);
    if (options.length > 0) command.inputOptions(...options);
  }
  command.complexFilter(encoding.filter).output(encoding.output).outputOptions(...encoding.outputOptions, '-nostats');

  // The file is thrown away, so the encoder need not be asked to finish it: SIGKILL is at once and certain.
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
      });
      command.on('stderr', (line) => words.push(line));
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

/**
 * What ffprobe says of a file in its JSON form, or undefined where it cannot read it as media. `options` as ffprobe
 * takes them. Throws a `MachineFailure` where there is no ffprobe.
 */
export async function probe(file: string, options: readonly string[], signal?: AbortSignal): Promise<unknown> {
  const answer = await run('ffprobe', ['-v', 'error', '-of', 'json', ...options, file], signal);
  return answer.kind === 'done' ? JSON.parse(answer.stdout) : undefined;
}

/**
 * Throws a `MachineFailure` with a sentence on what to install, unless ffmpeg and ffprobe run and ffmpeg has these
 * encoders. To be asked before any work: the library throws out of reach where its program is missing.
 */
export async function requireEncoders(names: readonly string[], signal?: AbortSignal): Promise<void> {
  await run('ffprobe', ['-version'], signal);
  const answer = await run('ffmpeg', ['-hide_banner', '-encoders'], signal);
  if (answer.kind === 'failed') throw new MachineFailure(`ffmpeg does not run: ${answer.lastWords}; ${howToGet}`);
  // A line: " V....D libx264              libx264 H.264 / AVC / ..."
  const known = new Set(answer.stdout.split('\n').map((line) => /^ [VAS]\S{5} (\S+)/.exec(line)?.[1]));
  const missing = names.filter((name) => !known.has(name));
  if (missing.length === 0) return;
  throw new MachineFailure(`this ffmpeg was built without ${missing.join(' and ')}; ${howToGet}`);
}

const howToGet = 'install a full ffmpeg (Debian and Ubuntu: apt-get install ffmpeg; macOS: brew install ffmpeg)';

type Answer =
  | { readonly kind: 'done'; readonly stdout: string }
  | { readonly kind: 'failed'; readonly lastWords: string };

/** A short run of one of the programs, to its end. */
function run(name: 'ffmpeg' | 'ffprobe', words: readonly string[], signal: AbortSignal | undefined): Promise<Answer> {
  return new Promise((resolve, reject) => {
    const options = { maxBuffer: 64 * 1024 * 1024, killSignal: 'SIGKILL', ...(signal === undefined ? {} : { signal }) } as const;
    execFile(program(name), words, options, (error, stdout, stderr) => {
      if (error === null) return resolve({ kind: 'done', stdout });
      if (signal?.aborted === true) return reject(signal.reason);
      const code = systemCode(error);
      if (code === undefined) return resolve({ kind: 'failed', lastWords: lastWords(stderr.split('\n')) ?? error.message });
      const found = code === 'ENOENT' ? 'is not installed' : `cannot be started (${code})`;
      reject(new MachineFailure(`${name} ${found}; ${howToGet}`));
    });
  });
}

/** The environment may name another program, by the library's own custom: `FFMPEG_PATH`, `FFPROBE_PATH`. */
function program(name: 'ffmpeg' | 'ffprobe'): string {
  return process.env[name === 'ffmpeg' ? 'FFMPEG_PATH' : 'FFPROBE_PATH'] || name;
}

/** The sentence for an encoder that ended badly. `message` is the library's, `words` are ffmpeg's own lines. */
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

/** The last line that says something, without ffmpeg's "[libx264 @ 0x55d0c8]" before it. */
function lastWords(lines: readonly string[]): string | undefined {
  const last = lines.findLast((line) => /\S/.test(line) && !/^Conversion failed!/.test(line));
  return last?.replace(/^(\[[^\]]*\] *)+/, '').trim();
}
