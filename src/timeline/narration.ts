/**
 * A narration: what is said, and when. Read from WebVTT, SRT or JSON words; a part that is broken becomes a fault with
 * its line, and the rest is still used.
 */
import type { Cue, CuesRead, NarrationFault } from './cue.ts';
import { readSrt } from './srt.ts';
import { readVtt } from './vtt.ts';
import { readWordsJson } from './words-json.ts';

export interface Narration {
  /** The file's name, for messages. */
  readonly name: string;
  /** In order of `start`; of equal ones, in the file's order. */
  readonly cues: readonly Cue[];
}

export interface NarrationReading {
  readonly narration: Narration;
  /** In order of `line`. */
  readonly faults: readonly NarrationFault[];
}

/** Faults that are reported one by one. */
const mostFaults = 20;

/**
 * Reads a narration. The format follows from the first line (`WEBVTT`, or the `[` or `{` of JSON), else from the
 * extension of `name`, else it is SRT. Byte order marks and all kinds of line break are accepted.
 */
export function readNarration(text: string, name: string): NarrationReading {
  if (text.includes('\0')) {
    const message = 'this is not text; a narration is WebVTT, SRT, or JSON words';
    return { narration: { name, cues: [] }, faults: [{ line: 1, message }] };
  }
  const plain = text.replace(/^\uFEFF/, '').replace(/\r\n?/g, '\n');
  const { cues, faults } = readerFor(plain, name)(plain);
  const inOrder = [...cues].sort((a, b) => {
    const difference = a.start.numerator * b.start.denominator - b.start.numerator * a.start.denominator;
    return difference < 0n ? -1 : difference > 0n ? 1 : a.number - b.number;
  });
  return { narration: { name, cues: inOrder }, faults: firstOf(faults) };
}

/** The faults in order; for a file that is broken throughout, the first few and how many more there are. */
function firstOf(faults: readonly NarrationFault[]): readonly NarrationFault[] {
  const inOrder = [...faults].sort((a, b) => a.line - b.line);
  if (inOrder.length <= mostFaults + 1) return inOrder;
  const message = `${inOrder.length - mostFaults} more places from here on cannot be read; fix the ones before first`;
  return [...inOrder.slice(0, mostFaults), { line: inOrder[mostFaults]!.line, message }];
}

function readerFor(text: string, name: string): (text: string) => CuesRead {
  if (text.startsWith('WEBVTT')) return readVtt;
  if (/^\s*[[{]/.test(text)) return readWordsJson;
  const ending = /\.([a-z]+)$/i.exec(name)?.[1]?.toLowerCase();
  if (ending === 'vtt') return readVtt;
  return ending === 'json' ? readWordsJson : readSrt;
}
