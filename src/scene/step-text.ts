/**
 * A step that could be put into a scene, and its text.
 */

/** A step that could stand before another: its lines of a scene, by key. */
export interface ProposedStep {
  /** The argument's name. */
  readonly because: string;
  readonly from: string | undefined;
  readonly chain: string | undefined;
  readonly deadly: string | undefined;
  readonly so: string;
}

/** The step as it stands in a scene, an item of `steps`, without indentation and without an end of line. */
export function stepText(step: ProposedStep, id: string): string {
  const lines = [`- id: ${id}`, `  because: ${step.because}`];
  if (step.from !== undefined) lines.push(`  from: ${step.from}`);
  if (step.chain !== undefined) lines.push(`  chain: ${step.chain}`);
  if (step.deadly !== undefined) lines.push(`  deadly: ${step.deadly}`);
  return [...lines, `  so: ${step.so}`].join('\n');
}

/** An id for the step that is put before another as its `index`-th, counted from 0: `kite-first`, `kite-first-2`. */
export function idBefore(id: string, index: number): string {
  return index === 0 ? `${id}-first` : `${id}-first-${index + 1}`;
}
