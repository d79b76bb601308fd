/**
 * Fixtures with the faults that they should give as comments under the faulty lines:
 *
 *     rate: fast
 *     #     ^^^^ error not-a-rate: "fast" is not a rate; ...
 *
 * These lines are taken out before the file is read, and put in again from what was found. The `#` hides the first
 * column of the marker.
 */
import type { Diagnostic } from '../../src/scene/diagnostic.ts';
import { placeOf, printDiagnostic } from '../../src/scene/locate.ts';

const annotation = /^#\s*\^*\s(?:error|warning|note)(?: [a-z-]+)?: .*\n/gm;

/** The file without what it expects. */
export function withoutAnnotations(fixture: string): string {
  return fixture.replace(annotation, '');
}

/** The file with the faults that were found under its lines, as a fixture has them. */
export function annotate(file: string, diagnostics: readonly Diagnostic[]): string {
  const lines = file.split('\n');
  const under: string[][] = lines.map(() => []);
  for (const diagnostic of diagnostics) {
    const printed = printDiagnostic('file', file, diagnostic).split('\n');
    const spans = [diagnostic.span, ...(diagnostic.notes ?? []).map((note) => note.span)];
    for (const [index, span] of spans.entries()) {
      const [header = '', , marker = ''] = printed.slice(3 * index, 3 * index + 3);
      const message = header.replace(/^file:\d+:\d+: /, '');
      under[placeOf(file, span.start).line - 1]!.push(`#${marker.replace(/^ *\| /, '').slice(1)} ${message}`);
    }
  }
  return lines.flatMap((line, index) => [line, ...under[index]!]).join('\n');
}
