/**
 * Where a command writes: data to `out`, progress and messages to `err`; colours only on a terminal.
 */
import pc from 'picocolors';
import type { MaybeTerminal } from '../output/progress.ts';
import type { Paint } from '../report/print-report.ts';

export interface Terminal {
  readonly out: (text: string) => void;
  readonly err: (text: string) => void;
  readonly outPaint: Paint;
  readonly errPaint: Paint;
  /** Whether the messages go to a terminal, so that a progress line makes sense. */
  readonly isWatched: boolean;
  /** The terminal's width; undefined if it is not known. */
  readonly columns: number | undefined;
}

/** The stream for a progress line: the messages of this terminal. */
export function messagesOf(terminal: Terminal): MaybeTerminal {
  return {
    isTTY: terminal.isWatched,
    get columns() {
      return terminal.columns;
    },
    write: terminal.err,
  };
}

/** The process's own streams. `NO_COLOR` (no-color.org) turns colours off. */
export function processTerminal(): Terminal {
  const wantsColour = (stream: NodeJS.WriteStream) => stream.isTTY === true && !process.env.NO_COLOR;
  return {
    out: (text) => process.stdout.write(text),
    err: (text) => process.stderr.write(text),
    outPaint: pc.createColors(wantsColour(process.stdout)),
    errPaint: pc.createColors(wantsColour(process.stderr)),
    isWatched: process.stderr.isTTY === true,
    get columns() {
      return process.stderr.columns;
    },
  };
}
