/**
 * How far a render has come, printed: as one updated line on a terminal, as occasional separate lines in a file or log.
 */
import type { Progress, Work } from './machine/progress-meter.ts';

/** A stream that may be a terminal, such as `process.stderr`. */
export interface MaybeTerminal {
  readonly isTTY?: boolean;
  readonly columns?: number | undefined;
  write(text: string): unknown;
}

export interface ProgressLine {
  show(progress: Progress): void;
  /** Erases the line, so that what is printed next begins on a clean line. */
  clear(): void;
}

/** One line that is redrawn, at most ten times a second; on anything but a terminal, an occasional line. */
export function progressLine(
  stream: MaybeTerminal,
  now: () => number = () => performance.now(),
  noun = 'frames',
): ProgressLine {
  return stream.isTTY === true ? lineOnTerminal(stream, now, noun) : linesNowAndThen(stream, now, noun);
}

function lineOnTerminal(stream: MaybeTerminal, now: () => number, noun: string): ProgressLine {
  let shownAt: number | undefined;
  return {
    show(progress) {
      const moment = now();
      const isLast = progress.done === progress.total;
      if (!isLast && shownAt !== undefined && moment - shownAt < 100) return;
      shownAt = moment;
      stream.write(`\r${progressText(progress, (stream.columns ?? 80) - 1, noun)}${eraseToEnd}`);
    },
    clear() {
      if (shownAt === undefined) return;
      stream.write(`\r${eraseToEnd}`);
      shownAt = undefined;
    },
  };
}

/**
 * For a log: at least ten seconds after the last line (so that a short render prints none), and only when another tenth
 * is done or a minute has passed. No control codes.
 */
function linesNowAndThen(stream: MaybeTerminal, now: () => number, noun: string): ProgressLine {
  let last: { readonly at: number; readonly tenth: number } | undefined;
  return {
    show(progress) {
      const at = now();
      const tenth = progress.total === 0 ? 0 : Math.floor((10 * progress.done) / progress.total);
      last ??= { at, tenth };
      const waited = at - last.at;
      if (waited < 10_000 || (tenth === last.tenth && waited < 60_000)) return;
      last = { at, tenth };
      stream.write(`${progressWords(progress, noun)}\n`);
    },
    clear() {
      last = undefined;
    },
  };
}

/** `[=====     ] 1234/2850 frames, 61/s, 0:27 left`, no longer than `columnCount`. */
export function progressText(progress: Progress, columnCount: number, noun = 'frames'): string {
  const { done, total } = progress;
  const words = ` ${progressWords(progress, noun)}`;
  const room = Math.min(30, columnCount - words.length - 2);
  const filled = total === 0 ? room : Math.floor((room * done) / total);
  const bar = room < 5 ? '' : `[${'='.repeat(filled)}${' '.repeat(room - filled)}]`;
  return `${bar}${words}`.slice(0, Math.max(0, columnCount));
}

/** `1234/2850 frames, 61/s, 0:27 left`. */
function progressWords({ done, total, framesPerSecond, secondsLeft, kept }: Progress, noun: string): string {
  const rate = framesPerSecond < 10 ? framesPerSecond.toFixed(1) : framesPerSecond.toFixed(0);
  // A render that has drawn everything still waits for the encoder's last frames.
  const rest = done === total ? 'finishing' : secondsLeft === undefined ? '' : `${minutes(secondsLeft)} left`;
  const fromBefore = kept === 0 ? '' : `, ${kept} from before`;
  return `${done}/${total} ${noun}${fromBefore}, ${rate}/s${rest === '' ? '' : `, ${rest}`}`;
}

/** `1200 frames, 123 different: 61 to draw, about 4 s; the rest is kept from an earlier render`. */
export function workText({ frames, pictures, toMake, seconds }: Work): string {
  const rest = toMake === pictures ? '' : '; the rest is kept from an earlier render';
  const time =
    seconds < 1
      ? 'less than a second'
      : seconds < 100
        ? `about ${Math.round(seconds)} s`
        : `about ${Math.round(seconds / 60)} min`;
  const todo = toMake === 0 ? 'all of them kept from an earlier render' : `${toMake} to draw, ${time}${rest}`;
  return `${frames} frames, ${pictures} different: ${todo}`;
}

/** `0:27`, `12:05`, `1:00:00`; seconds rounded up, so that it says 0:00 only when it is done. */
function minutes(seconds: number): string {
  const whole = Math.ceil(seconds);
  const two = (value: number): string => String(value).padStart(2, '0');
  const [hours, rest] = [Math.floor(whole / 3600), whole % 3600];
  const short = `${Math.floor(rest / 60)}:${two(rest % 60)}`;
  return hours === 0 ? short : `${hours}:${short.padStart(5, '0')}`;
}

/** ECMA-48, erase in line. */
const eraseToEnd = '\u001b[K';
