/**
 * Changes to the text of a scene that leave everything else unchanged: comments, order, layout.
 */
import type { Span } from '../scene/diagnostic.ts';

/** The span (UTF-16 offsets) is replaced by the text. */
export interface Edit extends Span {
  readonly text: string;
}

/**
 * The text with all edits made; if two overlap, only the one that begins earlier is made. What is put in has the line ends
 * of the text's first line.
 */
export function edited(text: string, edits: readonly Edit[]): string {
  const ending = /\r?\n/.exec(text)?.[0] ?? '\n';
  let done = '';
  let at = 0;
  for (const edit of [...edits].sort((a, b) => a.start - b.start || a.end - b.end)) {
    if (edit.start < at) continue;
    done += text.slice(at, edit.start) + edit.text.replace(/\r?\n/g, ending);
    at = edit.end;
  }
  return done + text.slice(at);
}

/** Where the line that contains the offset begins. */
export function lineStart(text: string, offset: number): number {
  return text.lastIndexOf('\n', offset - 1) + 1;
}

/** Where the line that contains the offset ends: before its line end (`\n` or `\r\n`), or at the end of the text. */
export function lineEnd(text: string, offset: number): number {
  const end = text.indexOf('\n', offset);
  if (end < 0) return text.length;
  return end > offset && text[end - 1] === '\r' ? end - 1 : end;
}

/** Where the line after the one that contains the offset begins, or the end of the text. */
export function nextLine(text: string, offset: number): number {
  const end = text.indexOf('\n', offset);
  return end < 0 ? text.length : end + 1;
}

/** Deletes the span from a list of texts, with the space or comma that separates it from the next. */
export function takenOut(text: string, { start, end }: Span): Edit {
  const before = /(?<=[^\s:[{-])[ \t]*,?[ \t]+$/.exec(text.slice(lineStart(text, start), start))?.[0] ?? '';
  if (before !== '') return { start: start - before.length, end, text: '' };
  const after = /^[ \t]*,?[ \t]*/.exec(text.slice(end))?.[0] ?? '';
  return { start, end: end + after.length, text: '' };
}

/** The spaces before the dash of the list item that begins at the offset; undefined if it is in flow style. */
export function itemIndent(text: string, offset: number): string | undefined {
  const match = /^([ ]*)-[ ]+$/.exec(text.slice(lineStart(text, offset), offset));
  return match?.[1];
}

/** Puts whole lines before the line that contains the offset. */
export function linesBefore(text: string, offset: number, lines: readonly string[]): Edit {
  const start = lineStart(text, offset);
  return { start, end: start, text: lines.map((line) => `${line}\n`).join('') };
}

/** Turns the lines from one offset to another into comments, each indented like the first. */
export function commentedOut(text: string, span: Span): Edit {
  const [start, end] = [lineStart(text, span.start), lineEnd(text, Math.max(span.start, span.end - 1))];
  const own = text.slice(start, end).replace(/(\r?\n)+$/, '');
  const lines = own.split(/\r?\n/);
  const indent = /^[ ]*/.exec(lines[0]!)![0];
  const commented = lines.map((line) => {
    const inner = line.startsWith(indent) ? line.slice(indent.length) : line.trimStart();
    return inner === '' ? `${indent}#` : `${indent}# ${inner}`;
  });
  return { start, end: start + own.length, text: commented.join('\n') };
}
