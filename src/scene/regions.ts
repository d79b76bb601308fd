/**
 * `regions`: a drawing of the board in letters, one a cell; the cells of one letter are a region, which replaces a box.
 * Regions are numbered in reading order, whatever their letters are.
 */
import type { Code } from './codes.ts';
import { quoted } from './faults.ts';

/** Board sizes that can be drawn: cells in a row. */
export const drawnSizes = [4, 5, 6, 7, 8, 9] as const;

/** A fault in the drawing: its place in the text, what was found and what would be right. */
export interface RegionsFault {
  readonly code: Extract<Code, 'regions-sign' | 'regions-count' | 'regions-uneven'>;
  readonly at: number;
  readonly length: number;
  readonly message: string;
}

export type RegionsReading =
  /** By cell the number of its region, from 0. */
  | { readonly kind: 'read'; readonly regions: readonly number[] }
  | { readonly kind: 'faulty'; readonly faults: readonly RegionsFault[] };

/** Reads the drawing. Letters may be upper or lower case; spaces, line breaks and | - + are ignored. */
export function readRegions(text: string): RegionsReading {
  const signs = [...text.matchAll(/[^\s|+-]/gu)].map((match) => ({ sign: match[0].toLowerCase(), at: match.index }));
  const strange = signs.filter(({ sign }) => !/^[a-z1-9]$/.test(sign));
  if (strange.length > 0) return faulty(strange.map(({ sign, at }) => strangeSign(sign, at)));
  const size = drawnSizes.find((each) => each * each === signs.length);
  if (size === undefined) return faulty([wrongCount(text, signs.length)]);
  const letters = [...new Set(signs.map(({ sign }) => sign))];
  const uneven = letters.filter((letter) => signs.filter(({ sign }) => sign === letter).length !== size);
  if (uneven.length > 0) {
    const counts = uneven.map((letter) => `${letter} ${signs.filter(({ sign }) => sign === letter).length}`).join(', ');
    const first = signs.find(({ sign }) => uneven.includes(sign))!;
    const message = `${letters.length} regions are drawn, and not all have ${size} cells (${counts}); a board of ${size} rows has ${size} regions of ${size} cells`;
    return faulty([{ code: 'regions-uneven', at: first.at, length: 1, message }]);
  }
  return { kind: 'read', regions: signs.map(({ sign }) => letters.indexOf(sign)) };
}

function faulty(faults: readonly RegionsFault[]): RegionsReading {
  return { kind: 'faulty', faults };
}

function strangeSign(sign: string, at: number): RegionsFault {
  const message = `${quoted(sign)} names no region; each cell is the letter of its region, such as a`;
  return { code: 'regions-sign', at, length: sign.length, message };
}

function wrongCount(text: string, count: number): RegionsFault {
  const from = text.length - text.trimStart().length;
  const squares = drawnSizes.map((size) => `${size * size}`);
  const sizes = `${squares.slice(0, -1).join(', ')} or ${squares.at(-1)}`;
  const message = `${count} ${count === 1 ? 'cell is' : 'cells are'} drawn; a board has ${sizes}, as many rows as columns`;
  return { code: 'regions-count', at: from, length: Math.max(1, text.trim().length), message };
}
