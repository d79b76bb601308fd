/**
 * The lines that the keys of a step take up in the text of its scene, for a step in block style.
 */
import type { Span } from '../scene/diagnostic.ts';
import type { Step } from '../scene/scene.ts';
import { type Edit, itemIndent, lineEnd, lineStart, nextLine } from './scene-text.ts';

/** The step's lines, from its dash to the end of its last line, that line's end included. */
export function linesOfStep(text: string, { span }: Step): Span {
  const own = text.slice(span.start, span.end).trimEnd();
  return { start: lineStart(text, span.start), end: nextLine(text, span.start + own.length) };
}

/**
 * The lines of a key and its value. Undefined where the step lacks the key, or has it on the line of its dash, which
 * cannot go.
 */
export function linesOfKey(text: string, step: Step, key: string): Span | undefined {
  const indent = itemIndent(text, step.span.start);
  if (indent === undefined) return undefined;
  const { end } = linesOfStep(text, step);
  let start: number | undefined;
  for (let at = nextLine(text, step.span.start); at < end; at = nextLine(text, at)) {
    const line = text.slice(at, lineEnd(text, at));
    const isKey = new RegExp(`^${indent}[ ]+[\\w-]+:`).test(line) && indentOf(line) === keyIndent(text, step);
    if (isKey && start !== undefined) return { start, end: at };
    if (isKey && line.trimStart().startsWith(`${key}:`)) start = at;
  }
  return start === undefined ? undefined : { start, end };
}

/** Takes keys out of the step with their lines. */
export function withoutKeys(text: string, step: Step, keys: readonly string[]): Edit[] {
  return keys.flatMap((key): Edit[] => {
    const lines = linesOfKey(text, step, key);
    if (lines === undefined) return [];
    // At the very end of a text without a last line feed, the one before the key goes instead.
    const isLast = lines.end === text.length && !text.endsWith('\n');
    return [{ ...lines, start: isLast ? lineEnd(text, lines.start - 1) : lines.start, text: '' }];
  });
}

/** How many blanks stand before the keys of the step. */
export function keyIndent(text: string, { span }: Step): number {
  return span.start - lineStart(text, span.start);
}

function indentOf(line: string): number {
  return line.length - line.trimStart().length;
}
