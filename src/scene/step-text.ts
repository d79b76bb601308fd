/**
 * A step that could be put into a scene, and its text.
 */
import type { ArgumentName } from '../techniques/all-techniques.ts';

/** A step that could come before another: its lines of a scene, by key. */
export interface ProposedStep {
  /** The argument's name. */
  readonly because: ArgumentName;
  readonly from: string | undefined;
  readonly chain: string | undefined;
  readonly deadly: string | undefined;
  readonly so: string;
}

/** The step as in a scene, an item of `steps`, without indentation and without a final line break. */
export function stepText(step: ProposedStep, id: string): string {
  const lines = [`- id: ${id}`, `  because: ${step.because}`];
  if (step.from !== undefined) lines.push(`  from: ${step.from}`);
  if (step.chain !== undefined) lines.push(`  chain: ${step.chain}`);
  if (step.deadly !== undefined) lines.push(`  deadly: ${step.deadly}`);
  return [...lines, `  so: ${step.so}`].join('\n');
}

/** Ids for a number of steps inserted before another, none of them already used: `kite-first`, `kite-first-2`. */
export function idsBefore(id: string, count: number, taken: ReadonlySet<string>): readonly string[] {
  const ids: string[] = [];
  for (let index = 1; ids.length < count; index++) {
    const next = index === 1 ? `${id}-first` : `${id}-first-${index}`;
    if (!taken.has(next)) ids.push(next);
  }
  return ids;
}
