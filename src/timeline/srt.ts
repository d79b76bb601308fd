/**
 * SRT (SubRip). No standard describes it: a number, a time line with commas before the thousandths, lines of text, a
 * blank line, as players commonly accept it. A missing number, and a full stop instead of the comma, are harmless and
 * accepted.
 */
import { compare, type Fraction, fraction } from '../scene/fraction.ts';
import type { Cue, CuesRead, NarrationFault } from './cue.ts';
import { wordsOf } from './cue-text.ts';

const wanted = 'write 00:01:02,500 --> 00:01:04,000';

/** Reads SRT, its line breaks as `\n` and without a byte order mark. The number of a cue is its identifier. */
export function readSrt(text: string): CuesRead {
  const lines = text.split('\n');
  const cues: Cue[] = [];
  const faults: NarrationFault[] = [];
  let number = 0;
  for (let at = 0; at < lines.length; ) {
    if (lines[at]!.trim() === '') {
      at++;
      continue;
    }
    const first = at;
    while (at < lines.length && lines[at]!.trim() !== '') at++;
    const block = lines.slice(first, at);
    number++;
    const timeLine = block.slice(0, 2).findIndex((line) => line.includes('-->'));
    if (timeLine === -1) {
      faults.push({ line: first + 1, message: `no time line precedes this text; ${wanted} above it` });
      continue;
    }
    const times = readTimes(block[timeLine]!);
    if (typeof times === 'string') {
      faults.push({ line: first + timeLine + 1, message: times });
      continue;
    }
    const said = withoutTags(block.slice(timeLine + 1).join('\n'));
    const identifier = timeLine === 1 ? block[0]!.trim() : undefined;
    cues.push({ identifier, number, start: times.start, end: times.end, text: said, words: wordsOf(said, []) });
  }
  return { cues, faults };
}

function readTimes(line: string): { readonly start: Fraction; readonly end: Fraction } | string {
  const match = /^\s*([\d:.,]+)\s*-->\s*([\d:.,]+)(?:\s.*)?$/.exec(line);
  if (match === null) return `no times can be read from this line; ${wanted}`;
  const [from, to] = [match[1]!, match[2]!];
  const [start, end] = [readTime(from), readTime(to)];
  if (start === undefined || end === undefined)
    return `"${start === undefined ? from : to}" is not a time of SRT; ${wanted}`;
  if (compare(end, start) <= 0) return `the cue ends at ${to}, not after its start ${from}; the end must be later`;
  return { start, end };
}

/** Exactly three digits after the comma: `,5` is half a second to some players and five thousandths to others. */
function readTime(text: string): Fraction | undefined {
  const match = /^(?:(\d+):)?([0-5]?\d):([0-5]?\d)[,.](\d{3})$/.exec(text);
  if (match === null) return undefined;
  const [hours, minutes, seconds, thousandths] = [match[1] ?? '0', match[2]!, match[3]!, match[4]!].map(BigInt);
  return fraction(((hours! * 60n + minutes!) * 60n + seconds!) * 1000n + thousandths!, 1000n);
}

/** Tags in common use, `<i>` and similar and `{\an8}`; any other `<` is text. */
function withoutTags(text: string): string {
  return text.replace(/<\/?(?:b|i|u|s|font)(?:\s[^<>]*)?>/gi, '').replace(/\{\\[^{}]*\}/g, '');
}
