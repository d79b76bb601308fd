/**
 * WebVTT. W3C WebVTT, section 6.1, "WebVTT parser algorithm", step by step; what a player would drop silently is a
 * fault here, and a missing signature does not discard the cues.
 */
import { compare, type Fraction } from '../scene/fraction.ts';
import type { Cue, CuesRead, NarrationFault } from './cue.ts';
import { readCueText, readTimestamp, wordsOf } from './cue-text.ts';

/** Lines between two blank ones, or up to a time line that begins another cue. */
interface Block {
  /** Index of its first line. */
  readonly first: number;
  readonly lines: readonly string[];
  /** The index of the time line among the lines: 0, or 1 after an identifier. */
  readonly timeLine: 0 | 1 | undefined;
}

/** Reads WebVTT, its line breaks as `\n` and without a byte order mark. */
export function readVtt(text: string): CuesRead {
  const lines = text.replaceAll('\0', '\uFFFD').split('\n');
  const cues: Cue[] = [];
  const faults: NarrationFault[] = [];
  const identifiers = new Map<string, number>();
  let number = 0;
  for (const block of blocksOf(lines, afterHeader(lines, faults))) {
    if (block.timeLine === undefined) {
      const fault = faultWithoutTimes(block);
      if (fault !== undefined) faults.push(fault);
      continue;
    }
    number++;
    const cue = readCue(block, block.timeLine, number, faults);
    if (cue === undefined) continue;
    cues.push(cue);
    if (cue.identifier === undefined) continue;
    const before = identifiers.get(cue.identifier);
    if (before === undefined) identifiers.set(cue.identifier, block.first + 1);
    else {
      const message = `"${cue.identifier}" already names a cue (line ${before}); "cue ${cue.identifier}" means that one`;
      faults.push({ line: block.first + 1, message });
    }
  }
  return { cues, faults };
}

/** The index of the first line after the header block, which a blank line or a time line ends. */
function afterHeader(lines: readonly string[], faults: NarrationFault[]): number {
  if (!/^WEBVTT(?:[ \t]|$)/.test(lines[0] ?? '')) {
    faults.push({ line: 1, message: 'a WebVTT file begins with a line `WEBVTT`; players refuse it without' });
    return 0;
  }
  let at = 1;
  while (at < lines.length && lines[at] !== '' && !lines[at]!.includes('-->')) at++;
  return at;
}

function* blocksOf(lines: readonly string[], from: number): Generator<Block> {
  for (let at = from; at < lines.length; ) {
    if (lines[at] === '') {
      at++;
      continue;
    }
    const first = at;
    let timeLine: 0 | 1 | undefined;
    for (; at < lines.length && lines[at] !== ''; at++) {
      if (!lines[at]!.includes('-->')) continue;
      const index = at - first;
      if (index > 1 || timeLine !== undefined) break;
      timeLine = index === 0 ? 0 : 1;
    }
    yield { first, lines: lines.slice(first, at), timeLine };
  }
}

function readCue(block: Block, timeLine: 0 | 1, number: number, faults: NarrationFault[]): Cue | undefined {
  const line = block.first + timeLine + 1;
  const written = block.lines[timeLine]!;
  const times = readTimes(written);
  if (typeof times === 'string') {
    faults.push({ line, message: times });
    return undefined;
  }
  const {
    text,
    stamps,
    faults: inText,
  } = readCueText(block.lines.slice(timeLine + 1).join('\n'), times.start, times.end);
  for (const fault of inText) faults.push({ line: line + 1 + fault.linesDown, message: fault.message });
  const identifier = timeLine === 1 ? block.lines[0] : undefined;
  return { identifier, number, start: times.start, end: times.end, text, words: wordsOf(text, stamps) };
}

/** The two times of a time line, ignoring settings after them; or what is wrong. */
function readTimes(line: string): { readonly start: Fraction; readonly end: Fraction } | string {
  const match = /^\s*([\d:.,]+)\s*-->\s*([\d:.,]+)(?:\s.*)?$/.exec(line);
  const wanted = 'write 00:01:02.500 --> 00:01:04.000';
  if (match === null) return `no times can be read from this line; ${wanted}`;
  const [from, to] = [match[1]!, match[2]!];
  if (from.includes(',') || to.includes(','))
    return `WebVTT has a full stop before the thousandths, not a comma; ${wanted}`;
  const [start, end] = [readTimestamp(from), readTimestamp(to)];
  if (start === undefined || end === undefined) {
    return `"${start === undefined ? from : to}" is not a time of WebVTT; ${wanted}`;
  }
  if (compare(end, start) <= 0) return `the cue ends at ${to}, not after its start ${from}; the end must be later`;
  return { start, end };
}

function faultWithoutTimes(block: Block): NarrationFault | undefined {
  const first = block.lines[0]!;
  if (/^NOTE(?:[ \t]|$)/.test(first) || /^(?:STYLE|REGION)\s*$/.test(first)) return undefined;
  const message = 'a text without a time line is not part of any cue; put `00:01:02.500 --> 00:01:04.000` above it';
  return { line: block.first + 1, message };
}
