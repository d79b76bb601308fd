/**
 * From offsets to lines and columns, and a fault as a person reads it: created once, at printing.
 */
import type { Diagnostic, Span } from './diagnostic.ts';

/** Both from 1. A column is a character as an editor counts it (a code point); a byte order mark does not count. */
export interface Place {
  readonly line: number;
  readonly column: number;
}

/** The line and column of an offset into the text, `0` to `text.length`. */
export function placeOf(text: string, offset: number): Place {
  const before = text.slice(0, offset);
  const lineStart = before.lastIndexOf('\n') + 1;
  const line = countOf(before, '\n') + 1;
  return { line, column: [...withoutMark(before.slice(lineStart))].length + 1 };
}

/**
 * The fault for a terminal or a log:
 *
 *     lamp-room.yaml:20:1: error unknown-key: a scene has no key "gruops"; did you mean "groups"?
 *       20 | gruops:
 *          | ^^^^^^
 *
 * and each further place in the same form after it. Ends without a line break.
 */
export function printDiagnostic(file: string, text: string, diagnostic: Diagnostic): string {
  const { severity, code, message, span, notes = [] } = diagnostic;
  const parts = [printPlace(file, text, span, `${severity} ${code}: ${message}`)];
  for (const note of notes) parts.push(printPlace(file, text, note.span, `note: ${note.message}`));
  return parts.join('\n');
}

function printPlace(file: string, text: string, span: Span, message: string): string {
  const { line, column } = placeOf(text, span.start);
  const shown = excerpt(text, span);
  const number = String(line).padStart(4);
  const gutter = ' '.repeat(number.length);
  return [
    `${file}:${line}:${column}: ${message}`,
    `${number} | ${shown.line}`.trimEnd(),
    `${gutter} | ${shown.marker}`,
  ].join('\n');
}

/** How much of a long line is shown before and after the fault, in characters. */
const aroundFault = 60;

/** The line with the fault, cut if it is long, and the marker under the fault, to the end of its line. */
function excerpt(text: string, span: Span): { readonly line: string; readonly marker: string } {
  const lineStart = text.lastIndexOf('\n', span.start - 1) + 1;
  const nextBreak = text.indexOf('\n', span.start);
  const lineEnd = nextBreak === -1 ? text.length : nextBreak;
  const before = withoutMark(text.slice(lineStart, span.start));
  const fault = text.slice(span.start, Math.max(span.start, Math.min(span.end, lineEnd))).trimEnd();
  const after = text.slice(span.start + fault.length, lineEnd).trimEnd();
  const head = before.length > 2 * aroundFault ? `... ${before.slice(-aroundFault)}` : before;
  const tail = after.length > 2 * aroundFault ? `${after.slice(0, aroundFault)} ...` : after;
  // A tab is repeated, so that the marker is aligned at any tab width.
  const indent = [...head].map((sign) => (sign === '\t' ? '\t' : ' '.repeat(columnsOf(sign)))).join('');
  const width = [...fault].reduce((sum, sign) => sum + columnsOf(sign), 0);
  return { line: printable(head + fault + tail), marker: indent + '^'.repeat(Math.max(1, width)) };
}

/** How many columns a terminal gives to a character (Unicode UAX #11; the wide blocks from memory). */
function columnsOf(sign: string): number {
  if (/[\p{Mn}\p{Me}\p{Cf}]/u.test(sign)) return 0;
  if (
    /\p{Emoji_Presentation}|[\u1100-\u115f\u2e80-\u303e\u3041-\ua4cf\uac00-\ud7a3\uf900-\ufaff\ufe30-\ufe6f\uff00-\uff60\uffe0-\uffe6]|[\u{20000}-\u{3fffd}]/u.test(
      sign,
    )
  ) {
    return 2;
  }
  return 1;
}

/** A control character in a file must not reach the terminal, where it could do anything. */
function printable(line: string): string {
  return line.replace(/(?!\t)\p{Cc}/gu, '\ufffd');
}

function withoutMark(text: string): string {
  return text.startsWith('\ufeff') ? text.slice(1) : text;
}

function countOf(text: string, sign: string): number {
  return text.split(sign).length - 1;
}
