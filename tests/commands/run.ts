/**
 * The command line run in this process, with a terminal that keeps what is written to it.
 */
import { main } from '../../src/commands/main.ts';
import type { Terminal } from '../../src/commands/terminal.ts';

export interface Ran {
  readonly status: number;
  /** Standard output. */
  readonly out: string;
  /** Standard error. */
  readonly err: string;
}

/** `words`: a whole call without the program's name, `run('check', 'lesson.yaml')`. */
export async function run(...words: readonly string[]): Promise<Ran> {
  const terminal = keptTerminal();
  const status = await main(words, terminal);
  return { status, ...terminal.said };
}

export interface KeptTerminal extends Terminal {
  readonly said: { out: string; err: string };
}

/** Nobody watches it, and it has no colours. */
export function keptTerminal(): KeptTerminal {
  const said = { out: '', err: '' };
  const plain = (words: string) => words;
  const paint = { bold: plain, dim: plain, red: plain, green: plain, yellow: plain };
  return {
    said,
    out: (text) => {
      said.out += text;
    },
    err: (text) => {
      said.err += text;
    },
    outPaint: paint,
    errPaint: paint,
    isWatched: false,
    columns: undefined,
  };
}
