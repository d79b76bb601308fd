/**
 * One of our YAML files: its syntax, then its content, all faults together.
 */
import type { Code } from './codes.ts';
import type { Diagnostic, Span } from './diagnostic.ts';
import { type Faults, gatherFaults } from './faults.ts';
import { tooDeepAt } from './nesting.ts';
import { parseWithTextsRepaired } from './plain-texts.ts';
import { explainSyntax } from './yaml-faults.ts';
import { type Tree, treeOf } from './yaml-tree.ts';

/** Faults that may be spurious if a part of the file could not be read: something is missing. */
const faultsOfAbsence: readonly string[] = [
  'missing-key',
  'no-value',
  'unknown-step',
  'unknown-group',
  'no-claim',
  'no-chain',
  'no-conclusion',
  'not-concluded',
  'so-missing',
  'givens-count',
  'no-solution',
] satisfies readonly Code[];

export interface YamlFileRead<T> {
  /** Undefined with any error. */
  readonly value: T | undefined;
  /** The same with errors; undefined if a fault of YAML leaves open what the rest of the file would say. */
  readonly rough: T | undefined;
  readonly diagnostics: readonly Diagnostic[];
}

/** What `read` makes of the file. `beginning` says how such a file begins, for an empty one. */
export function readYamlFile<T>(
  file: string,
  beginning: string,
  read: (tree: Tree, faults: Faults) => T | undefined,
): YamlFileRead<T> {
  const syntax = gatherFaults();
  const tooDeep = tooDeepAt(file);
  if (tooDeep !== undefined) {
    syntax.error('yaml-syntax', tooDeep, 'lists and maps are nested a hundred deep here; this is not a file of ours');
    return { value: undefined, rough: undefined, diagnostics: syntax.inOrder() };
  }
  const { repaired, documents } = parseWithTextsRepaired(file, syntax);
  const [first, second] = documents;
  if (first === undefined) {
    syntax.error('empty-file', { start: 0, end: 0 }, `the file is empty; ${beginning}`);
    return { value: undefined, rough: undefined, diagnostics: syntax.inOrder() };
  }
  if (second !== undefined) reportSecond(file, second.contents?.range?.[0] ?? second.range[0], syntax);
  const soundUntil = explainSyntax(repaired, first, syntax);
  const content = gatherFaults();
  const value = read(treeOf(file, first, content), content);
  const ofSyntax = syntax.inOrder();
  for (const fault of content.inOrder()) {
    // Anything after a fault of syntax may be nonsense, and what it hides is not missing.
    const isSound =
      soundUntil === file.length || (fault.span.end <= soundUntil && !faultsOfAbsence.includes(fault.code));
    if (isSound && !ofSyntax.some((other) => overlap(fault.span, other.span))) syntax.take(fault);
  }
  return {
    value: syntax.errorCount() === 0 ? value : undefined,
    rough: soundUntil === file.length && second === undefined ? value : undefined,
    diagnostics: syntax.inOrder(),
  };
}

function overlap(a: Span, b: Span): boolean {
  return a.start < b.end && b.start < a.end;
}

function reportSecond(file: string, content: number, faults: Faults): void {
  const dashes = file.lastIndexOf('\n---', content);
  const start = dashes === -1 ? content : dashes + 1;
  faults.error(
    'several-documents',
    { start, end: start + 3 },
    '`---` begins a second document here; a file holds one, so leave it out',
  );
}
