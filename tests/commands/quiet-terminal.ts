/** A terminal that keeps what is written to it. */
import type { Terminal } from '../../src/commands/terminal.ts';

export interface KeptTerminal extends Terminal {
  readonly said: { out: string; err: string };
}

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
  };
}
