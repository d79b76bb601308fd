/**
 * Characters in a plain text that YAML takes for its own: `say: Look: here`, `{note: row #2}`. Such a character spoils
 * everything after it, so it is reported and skipped, and the rest of the file is read as it was meant.
 */
import type { Document, YAMLParseError } from 'yaml';
import type { Span } from './diagnostic.ts';
import type { Faults } from './faults.ts';
import { openCollection } from './yaml-faults.ts';
import { parseYaml } from './yaml-tree.ts';

/** A file that needs more rounds of repair than this is not a scene at all. */
const mostRounds = 40;

/** A character of a plain text that YAML takes for its own. */
interface Stray {
  readonly at: number;
  readonly code: 'colon-in-text' | 'cut-short' | 'indentation';
}

const advice = 'put the sentence in quotes, or on the next line after `>`';
const strayWords: Readonly<Record<Stray['code'], string>> = {
  'colon-in-text': `a colon and a space inside a plain text; ${advice}`,
  'cut-short': `a space and # begin a comment here, and YAML drops the rest of the line; ${advice}`,
  indentation:
    'this line is indented deeper than the key before it, so YAML takes it for the rest of that text; indent it like the lines that it belongs to',
};

/**
 * The documents of the file, read with every `: ` inside a plain text, and every ` #` inside braces, replaced by a
 * character of the same length that means nothing to YAML, so that the rest can be read. The first on each line is
 * reported. `repaired` is what was read.
 */
export function parseWithTextsRepaired(
  file: string,
  faults: Faults,
): { readonly repaired: string; readonly documents: readonly Document.Parsed[] } {
  let repaired = file;
  const reportedLines = new Set<number>();
  for (let round = 0; ; round++) {
    const documents = parseYaml(repaired);
    // One at a time: what comes after it may be nonsense until it is repaired.
    const first = firstStray(repaired, documents);
    if (first === undefined || round === mostRounds || isPastOrder(repaired, documents, first.at)) {
      return { repaired, documents };
    }
    const { at, code } = first;
    repaired = `${repaired.slice(0, at)}${code === 'cut-short' ? '\uff03' : '\uff1a'}${repaired.slice(at + 1)}`;
    const line = repaired.lastIndexOf('\n', at);
    const isSaid = reportedLines.has(line) || (code === 'indentation' && reportedLines.has(lineBefore(repaired, line)));
    if (!isSaid)
      faults.error(
        code,
        code === 'indentation' ? keyBefore(repaired, at) : { start: at, end: at + 1 },
        strayWords[code],
      );
    reportedLines.add(line);
  }
}

/** Whether a tab or an open bracket on an earlier line has already confused YAML about what belongs where. */
function isPastOrder(file: string, documents: readonly Document.Parsed[], at: number): boolean {
  const line = file.lastIndexOf('\n', at);
  return documents.some((document) => {
    const tab = document.errors.find(({ code }) => code === 'TAB_AS_INDENT')?.pos[0];
    return (tab ?? at) <= line || (openCollection(document, at) ?? at) <= line;
  });
}

function lineBefore(file: string, line: number): number {
  return line <= 0 ? -1 : file.lastIndexOf('\n', line - 1);
}

/** The word and the colon at an offset. */
function keyBefore(file: string, colon: number): Span {
  const word = /[\w-]*$/.exec(file.slice(file.lastIndexOf('\n', colon) + 1, colon))?.[0] ?? '';
  return { start: colon - word.length, end: colon + 1 };
}

function firstStray(file: string, documents: readonly Document.Parsed[]): Stray | undefined {
  const strays = documents.flatMap((document) =>
    document.errors.flatMap((error) => strayOf(file, document, error) ?? []),
  );
  return strays.sort((a, b) => a.at - b.at)[0];
}

function strayOf(file: string, document: Document.Parsed, error: YAMLParseError): Stray | undefined {
  const [start] = error.pos;
  if (/^Flow (map|sequence)/.test(error.message)) {
    const open = openCollection(document, start);
    const hash = open === undefined ? undefined : hashAfter(file, open);
    return hash === undefined ? undefined : { at: hash, code: 'cut-short' };
  }
  if (error.code !== 'BLOCK_AS_IMPLICIT_KEY' && error.code !== 'BLOCK_IN_FLOW') return undefined;
  // YAML took the text for a key because of a colon in it: `say: Look: here`.
  const before = file.slice(file.lastIndexOf('\n', start - 1) + 1, start);
  const colon = file.slice(start).search(/:(?=\s|$)/);
  if (!/[\w-]+['"]?:\s+$/.test(before) || colon === -1) return undefined;
  // A key on a line of its own, too far to the right, continues the text of the previous line.
  const isKey = /\n\s*[\w-]+$/.test(file.slice(start, start + colon));
  return { at: start + colon, code: isKey ? 'indentation' : 'colon-in-text' };
}

/** The ` #` on the line of an offset, after it. */
function hashAfter(file: string, offset: number): number | undefined {
  const found = /^[^\n]*?\s#/.exec(file.slice(offset));
  return found === null ? undefined : offset + found[0].length - 1;
}
