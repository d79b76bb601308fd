/**
 * The text of a WebVTT cue: tags stripped, escapes decoded, timestamp tags kept as the times of the words after them.
 * W3C WebVTT, section 6.4, "WebVTT cue text parsing rules", except that of the named HTML character references only
 * those that the WebVTT syntax lists (and `&quot;`, `&apos;`) are decoded.
 */
import { compare, type Fraction, fraction } from '../scene/fraction.ts';
import type { Word } from './cue.ts';

/** A moment within a text: what follows from `offset` on is said from `seconds` on. */
export interface Stamp {
  readonly offset: number;
  readonly seconds: Fraction;
}

export interface CueTextFault {
  /** Lines after the first line of the text. */
  readonly linesDown: number;
  readonly message: string;
}

export interface CueText {
  readonly text: string;
  readonly stamps: readonly Stamp[];
  readonly faults: readonly CueTextFault[];
}

const references: ReadonlyMap<string, string> = new Map([
  ['amp', '&'],
  ['lt', '<'],
  ['gt', '>'],
  ['nbsp', '\u00A0'],
  ['lrm', '\u200E'],
  ['rlm', '\u200F'],
  ['quot', '"'],
  ['apos', "'"],
]);

/**
 * Reads the text of a cue that lasts from `start` to `end`; a stamp outside this range, or before an earlier stamp, is
 * a fault.
 */
export function readCueText(source: string, start: Fraction, end: Fraction): CueText {
  const stamps: Stamp[] = [];
  const faults: CueTextFault[] = [];
  let text = '';
  let latest = start;
  for (let at = 0; at < source.length; ) {
    const linesDown = source.slice(0, at).split('\n').length - 1;
    const sign = source[at]!;
    if (sign === '&') {
      const read = readReference(source, at);
      text += read.text;
      at += read.length;
    } else if (sign === '<') {
      const close = source.indexOf('>', at);
      if (close === -1) {
        faults.push({ linesDown, message: 'a `<` begins a tag that never ends; a plain `<` is written `&lt;`' });
        break;
      }
      const tag = source.slice(at + 1, close);
      at = close + 1;
      if (!/^\d/.test(tag)) continue;
      const seconds = readTimestamp(tag);
      const refused = refusal(tag, seconds, latest, end);
      if (refused !== undefined) faults.push({ linesDown, message: refused });
      else if (seconds !== undefined) {
        stamps.push({ offset: text.length, seconds });
        latest = seconds;
      }
    } else {
      text += sign;
      at++;
    }
  }
  return { text, stamps, faults };
}

/**
 * Words are separated by white space. A word takes the last stamp that is after the previous word and not after its own
 * first character.
 */
export function wordsOf(text: string, stamps: readonly Stamp[]): readonly Word[] {
  const words: Word[] = [];
  let next = 0;
  for (const match of text.matchAll(/\S+/g)) {
    const [from, to] = [match.index, match.index + match[0].length];
    let start: Fraction | undefined;
    while (next < stamps.length && stamps[next]!.offset <= from) start = stamps[next++]!.seconds;
    // Stamps within the word are those of its syllables.
    while (next < stamps.length && stamps[next]!.offset < to) next++;
    words.push({ text: match[0], start, from, to });
  }
  return words;
}

/**
 * A WebVTT timestamp in seconds, exactly: hours optional and of at least two digits, minutes and seconds of two digits
 * up to 59, three digits after a full stop. Undefined for any other text. W3C WebVTT, section 6.3, "collect a WebVTT
 * timestamp".
 */
export function readTimestamp(text: string): Fraction | undefined {
  const match = /^(?:(\d{2,}):)?([0-5]\d):([0-5]\d)\.(\d{3})$/.exec(text);
  if (match === null) return undefined;
  const [hours, minutes, seconds, thousandths] = [match[1] ?? '0', match[2]!, match[3]!, match[4]!].map(BigInt);
  return fraction(((hours! * 60n + minutes!) * 60n + seconds!) * 1000n + thousandths!, 1000n);
}

function refusal(tag: string, seconds: Fraction | undefined, latest: Fraction, end: Fraction): string | undefined {
  if (seconds === undefined) return `<${tag}> is not a timestamp; one is written <00:01:02.500>`;
  if (compare(seconds, latest) < 0)
    return `<${tag}> goes back before the time reached in this cue; the word is used without it`;
  if (compare(seconds, end) > 0) return `<${tag}> is after the end of its cue; the word is used without it`;
  return undefined;
}

function readReference(source: string, at: number): { readonly text: string; readonly length: number } {
  const match = /^&(?:([a-z]+)|#(\d{1,7})|#[xX]([0-9a-fA-F]{1,6}));/.exec(source.slice(at, at + 12));
  if (match === null) return { text: '&', length: 1 };
  const length = match[0].length;
  if (match[1] !== undefined) return { text: references.get(match[1]) ?? match[0], length };
  const point = match[2] === undefined ? Number.parseInt(match[3]!, 16) : Number(match[2]);
  const isSign = point > 0 && point <= 0x10ffff && !(point >= 0xd800 && point <= 0xdfff);
  return { text: isSign ? String.fromCodePoint(point) : '\uFFFD', length };
}
