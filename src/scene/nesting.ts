/**
 * A guard before the YAML parser, which recurses into every level of nesting and would overflow on thousands of them.
 */
import type { Span } from './diagnostic.ts';

/** Far above what a scene needs (six), far below what the parser can handle. */
const mostLevels = 100;
const mostIndent = 400;

/** The place where brackets are nested, or a line is indented, deeper than any scene needs. Quotes are ignored. */
export function tooDeepAt(file: string): Span | undefined {
  let depth = 0;
  let indent = 0;
  for (let at = 0; at < file.length; at++) {
    const sign = file[at];
    if (sign === '\n') indent = 0;
    else if (indent >= 0) indent = sign === ' ' || sign === '-' ? indent + 1 : -1;
    if (sign === '[' || sign === '{') depth++;
    else if ((sign === ']' || sign === '}') && depth > 0) depth--;
    if (depth > mostLevels || indent > mostIndent) return { start: at, end: at + 1 };
  }
  return undefined;
}
