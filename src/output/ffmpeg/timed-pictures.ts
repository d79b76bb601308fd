/**
 * The pictures of a file one after the other, each with the exact moment at which it is shown.
 */
import { spawn } from 'node:child_process';
import { MachineFailure } from '../machine/machine-failure.ts';
import { fileInput } from './allowed-input.ts';
import { program } from './ffmpeg.ts';

export interface TimedDecoding {
  /** An absolute path. */
  readonly file: string;
  /** Seconds from the file's start; pictures that are first shown before are left out. */
  readonly from: number;
  /** Filters that may leave pictures out, but change no time. */
  readonly filter: string;
  /** Of what comes out, by ffmpeg's name, and the bytes that one picture takes in it. */
  readonly pixelFormat: 'gray' | 'rgb24';
  readonly frameBytes: number;
}

export interface TimedBytes {
  /** From the file's start: the picture's own time, or that of its sound where that begins earlier. */
  readonly seconds: number;
  /** Valid until the next picture is asked for. */
  readonly bytes: Uint8Array;
}

/** Pictures that wait while the caller works, at most. */
const ahead = 2;

/**
 * Reads no further ahead than a few pictures, so that memory stays bounded. When the caller stops, the program is
 * ended. Throws a `MachineFailure` where the file cannot be decoded to its end, or the signal's reason.
 */
export async function* timedPictures(
  decoding: TimedDecoding,
  signal: AbortSignal | undefined,
): AsyncGenerator<TimedBytes> {
  signal?.throwIfAborted();
  const child = spawn(program('ffmpeg'), wordsOf(decoding), { stdio: ['ignore', 'pipe', 'pipe'] });
  const times = new Times();
  const waiting: Buffer[] = [];
  const spare: Buffer[] = [];
  let filling: Buffer = Buffer.alloc(decoding.frameBytes);
  let filled = 0;
  let ended: { readonly status: number | string | null } | undefined;
  let wake: () => void = () => undefined;
  const rouse = (): void => wake();
  child.stderr.setEncoding('utf8').on('data', (text: string) => {
    times.read(text);
    rouse();
  });
  child.stdout.on('data', (bytes: Buffer) => {
    for (let at = 0; at < bytes.length; ) {
      const taken = bytes.copy(filling, filled, at);
      at += taken;
      filled += taken;
      if (filled < decoding.frameBytes) continue;
      waiting.push(filling);
      filling = spare.pop() ?? Buffer.alloc(decoding.frameBytes);
      filled = 0;
    }
    if (waiting.length >= ahead) child.stdout.pause();
    rouse();
  });
  child.on('error', (error) => {
    if (child.pid !== undefined) return;
    ended = { status: error.message };
    rouse();
  });
  child.on('close', (code, killed) => {
    ended ??= { status: killed ?? code };
    rouse();
  });
  const stop = (): void => {
    child.kill('SIGKILL');
  };
  signal?.addEventListener('abort', stop);
  try {
    for (;;) {
      const seconds = waiting.length > 0 ? times.next() : undefined;
      if (seconds !== undefined) {
        const bytes = waiting.shift()!;
        if (waiting.length < ahead) child.stdout.resume();
        yield { seconds, bytes };
        spare.push(bytes);
        continue;
      }
      signal?.throwIfAborted();
      if (ended !== undefined) break;
      await new Promise<void>((resolve) => {
        wake = resolve;
      });
    }
    if (ended.status !== 0)
      throw new MachineFailure(
        `the recording cannot be decoded: ${times.complaint ?? `ffmpeg ended with ${ended.status}`}`,
      );
  } finally {
    signal?.removeEventListener('abort', stop);
    stop();
  }
}

function wordsOf({ file, from, filter, pixelFormat }: TimedDecoding): readonly string[] {
  return [
    ...['-nostdin', '-hide_banner', '-nostats', '-loglevel', 'level+info'],
    // Times count from the file's start, wherever reading begins.
    ...['-copyts', '-start_at_zero', ...(from > 0 ? ['-ss', from.toFixed(6)] : [])],
    ...[...fileInput, '-i', file, '-map', '0:v:0', '-an', '-sn', '-dn'],
    // What follows `showinfo` numbers the pictures evenly, so that none is dropped or doubled on its way out.
    ...['-vf', `${filter},format=${pixelFormat},showinfo=checksum=0,settb=1/25,setpts=N`, '-r', '25'],
    ...['-pix_fmt', pixelFormat, '-f', 'rawvideo', 'pipe:1'],
  ];
}

/** What ffmpeg says: the time of each picture by the filter `showinfo`, and complaints. */
class Times {
  #rest = '';
  #tick = 0;
  readonly #seconds: number[] = [];
  /** The last error that was said. */
  complaint: string | undefined;

  read(text: string): void {
    const lines = (this.#rest + text).split(/[\r\n]/);
    this.#rest = lines.pop() ?? '';
    for (const line of lines) this.#readLine(line);
  }

  /** The time of the next picture; undefined while it has not been said. */
  next(): number | undefined {
    return this.#seconds.shift();
  }

  #readLine(line: string): void {
    if (line.includes('Parsed_showinfo')) {
      const base = /config in time_base: (\d+)\/(\d+)/.exec(line);
      if (base !== null) this.#tick = Number(base[1]) / Number(base[2]);
      const time = / pts: *(-?\d+)/.exec(line);
      if (time !== null) this.#seconds.push(Number(time[1]) * this.#tick);
    } else if (/\[(error|fatal)\]/.test(line)) {
      const said = line.replace(/^(\[[^\]]*\] *)+/, '').trim();
      if (said !== '' && said !== 'Conversion failed!') this.complaint = said;
    }
  }
}
