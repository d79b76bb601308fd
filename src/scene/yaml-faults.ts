/**
 * Faults of YAML's syntax in words for authors of lessons, each at the place to fix.
 */
import { type Document, isCollection, isScalar, visit, type YAMLParseError } from 'yaml';
import type { Span } from './diagnostic.ts';
import { type Faults, listed, quoted } from './faults.ts';

/**
 * Reports the faults of syntax and returns the offset up to which the tree is reliable: the first fault after which
 * YAML no longer knows what belongs where, else the file's end. Nothing is reported after that one.
 */
export function explainSyntax(file: string, document: Document.Parsed, faults: Faults): number {
  for (const error of document.errors) {
    const [start] = error.pos;
    if (error.code === 'BAD_SCALAR_START') {
      const sign = file[start] ?? '';
      faults.error(
        'yaml-syntax',
        { start, end: start + 1 },
        `a plain text cannot begin with ${sign} in YAML; put it in quotes`,
      );
    } else if (error.code === 'BAD_DQ_ESCAPE') {
      faults.error(
        'yaml-syntax',
        spanOf(error),
        'a backslash between double quotes begins an escape; write it twice, or use single quotes',
      );
    } else if (error.code === 'UNEXPECTED_TOKEN' && error.message.includes('scalar at node end')) {
      faults.error(
        'yaml-syntax',
        spanOf(error),
        'text continues after the closing quote; put the whole of it in quotes',
      );
    } else {
      return explainStructure(file, document, error, faults);
    }
  }
  return file.length;
}

function explainStructure(file: string, document: Document.Parsed, error: YAMLParseError, faults: Faults): number {
  const [start] = error.pos;
  if (error.code === 'TAB_AS_INDENT') {
    faults.error('tab-indent', spanOf(error), 'a tab at the beginning of the line; YAML requires spaces there');
    return start;
  }
  if (error.message.startsWith('Missing closing')) {
    const quote = openQuote(document, start) ?? start;
    faults.error(
      'yaml-syntax',
      { start: quote, end: quote + 1 },
      'this quote is never closed; put another at the end of the text',
    );
    return quote;
  }
  if (/^Flow (map|sequence)/.test(error.message)) return explainOpenBrace(file, document, start, faults);
  const line = lineAt(file, start);
  if (error.message.includes('without - indicator') || error.code === 'BAD_INDENT') {
    explainIndent(file, line, faults);
    return line.start;
  }
  if (error.code === 'MULTILINE_IMPLICIT_KEY' || error.message.startsWith('Implicit map keys')) {
    faults.error(
      'yaml-syntax',
      line,
      `there is no colon and space in ${quoted(file.slice(line.start, line.end))}; write \`key: value\``,
    );
    return line.start;
  }
  if (error.message.includes('on same line with key')) {
    faults.error(
      'yaml-syntax',
      spanOf(error),
      'a list begins on the line of its key; put its first `- ` on the next line, or write [a, b]',
    );
    return start;
  }
  faults.error(
    'yaml-syntax',
    spanOf(error),
    `this is not YAML: ${error.message.charAt(0).toLowerCase()}${error.message.slice(1)}`,
  );
  return start;
}

function explainOpenBrace(file: string, document: Document.Parsed, at: number, faults: Faults): number {
  const open = openCollection(document, at) ?? at;
  const closing = file[open] === '[' ? ']' : '}';
  faults.error(
    'yaml-syntax',
    { start: open, end: open + 1 },
    `this ${file[open]} is never closed; put a ${closing} at the end`,
  );
  return open;
}

function explainIndent(file: string, line: Span, faults: Faults): void {
  const depth = columnAt(file, line.start);
  const above = depthsAbove(file, line.start);
  const where = above.length === 0 ? '' : `; the lines above are at ${listed(above.map(String), 'and')}`;
  faults.error(
    'indentation',
    line,
    `this line is indented by ${depth}${where}: indent it like the lines that it belongs to`,
  );
}

/**
 * The depths at which a line could continue: those of the lines above that are still open, `- ` and what follows it.
 */
function depthsAbove(file: string, offset: number): readonly number[] {
  const depths = new Set<number>();
  let least = Number.POSITIVE_INFINITY;
  for (const line of file
    .slice(0, file.lastIndexOf('\n', offset) + 1)
    .split('\n')
    .reverse()) {
    const found = /^( *)((?:- +)*)[^\s#]/.exec(line);
    if (found === null) continue;
    const [outer, inner] = [found[1]!.length, found[1]!.length + found[2]!.length];
    if (inner < least) depths.add(inner);
    if (outer < least) depths.add(outer);
    least = Math.min(least, outer);
    if (least === 0) break;
  }
  return [...depths].sort((a, b) => a - b);
}

function openQuote(document: Document.Parsed, end: number): number | undefined {
  let found: number | undefined;
  visit(document, {
    Scalar(_, node) {
      if (isScalar(node) && node.type?.startsWith('QUOTE') && node.range && node.range[1] >= end) found = node.range[0];
    },
  });
  return found;
}

/** The last brace or bracket before `at` that is never closed. */
export function openCollection(document: Document.Parsed, at: number): number | undefined {
  let found: number | undefined;
  visit(document, {
    Collection(_, node) {
      if (!isCollection(node) || node.srcToken?.type !== 'flow-collection' || node.srcToken.offset > at) return;
      const isClosed = node.srcToken.end.some(({ type }) => type === 'flow-map-end' || type === 'flow-seq-end');
      if (!isClosed) found = node.srcToken.offset;
    },
  });
  return found;
}

/** The line at an offset, without its indentation and end. */
function lineAt(file: string, offset: number): Span {
  const begin = file.lastIndexOf('\n', offset - 1) + 1;
  const next = file.indexOf('\n', begin);
  const whole = file.slice(begin, next === -1 ? file.length : next);
  const start = begin + whole.length - whole.trimStart().length;
  return { start, end: Math.max(start, begin + whole.trimEnd().length) };
}

function columnAt(file: string, offset: number): number {
  return offset - file.lastIndexOf('\n', offset - 1) - 1;
}

function spanOf(error: YAMLParseError): Span {
  return { start: error.pos[0], end: Math.max(error.pos[0] + 1, error.pos[1]) };
}
