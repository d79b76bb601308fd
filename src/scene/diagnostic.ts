/**
 * A fault in the user's file, as a value. Line, column and the marker are worked out at printing.
 */
import type { Code } from './codes.ts';

/** Where something stands in the scene's text: UTF-16 offsets, `end` not included. */
export interface Span {
  readonly start: number;
  readonly end: number;
}

export type Severity = 'error' | 'warning';

export interface Diagnostic {
  readonly code: Code;
  readonly severity: Severity;
  readonly span: Span;
  /** What is there, then what would be right, in scene notation. */
  readonly message: string;
  /** Other places that matter, each with its own words. */
  readonly notes?: readonly { readonly span: Span; readonly message: string }[];
}
