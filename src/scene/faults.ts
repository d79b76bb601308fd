/**
 * Collects the faults of a file: reading continues after each, so that all are reported together.
 */
import type { Code } from './codes.ts';
import type { Diagnostic, Severity, Span } from './diagnostic.ts';

export type Note = NonNullable<Diagnostic['notes']>[number];

export interface Faults {
  /** `message`: what was found, then what would be right. */
  error(code: Code, span: Span, message: string, notes?: readonly Note[]): void;
  warning(code: Code, span: Span, message: string, notes?: readonly Note[]): void;
  /** The fault at this place is explained: further errors within it only follow from it, and are dropped. */
  settle(span: Span): void;
  /** Adds a fault that was collected elsewhere. */
  take(fault: Diagnostic): void;
  /** How many errors were collected so far. */
  errorCount(): number;
  /** All that was collected, by place; what was said twice of one place (an aliased text) appears once. */
  inOrder(): readonly Diagnostic[];
}

/** An empty collection of faults. */
export function gatherFaults(): Faults {
  const gathered: Diagnostic[] = [];
  const settled: Span[] = [];
  function add(severity: Severity, code: Code, span: Span, message: string, notes: readonly Note[]): void {
    const known = gathered.some(
      (other) => other.code === code && other.span.start === span.start && other.message === message,
    );
    const follows = settled.some((each) => span.start >= each.start && span.end <= each.end);
    if (!known && !follows) gathered.push({ code, severity, span, message, ...(notes.length > 0 ? { notes } : {}) });
  }
  return {
    error: (code, span, message, notes = []) => add('error', code, span, message, notes),
    warning: (code, span, message, notes = []) => add('warning', code, span, message, notes),
    settle: (span) => settled.push(span),
    take: (fault) => gathered.push(fault),
    errorCount: () => gathered.filter((fault) => fault.severity === 'error').length,
    inOrder: () => [...gathered].sort((a, b) => a.span.start - b.span.start || a.span.end - b.span.end),
  };
}

/** The text between quotes for a message, long ones shortened, line breaks as spaces. */
export function quoted(text: string): string {
  const line = text
    .replace(/\s+/g, ' ')
    .trim()
    .replace(/\p{Cc}/gu, '\ufffd');
  return `"${line.length > 60 ? `${line.slice(0, 57)}...` : line}"`;
}

/** `a`, `a or b`, `a, b or c`; with `and` for a list of all. */
export function listed(words: readonly string[], link = 'or'): string {
  const last = words.at(-1) ?? '';
  return words.length < 2 ? last : `${words.slice(0, -1).join(', ')} ${link} ${last}`;
}
