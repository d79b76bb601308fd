/**
 * A fault in the user's file, as a value. Line, column and the marker are computed at printing.
 */
import type { Code } from './codes.ts';

/** The place of something in the scene's text: UTF-16 offsets, `end` excluded. */
export interface Span {
  readonly start: number;
  readonly end: number;
}

export type Severity = 'error' | 'warning';

export interface Diagnostic {
  readonly code: Code;
  readonly severity: Severity;
  readonly span: Span;
  /** What was found, then what would be right, in scene notation. */
  readonly message: string;
  /** Other relevant places, each with its own words. */
  readonly notes?: readonly { readonly span: Span; readonly message: string }[];
}
