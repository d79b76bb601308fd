/**
 * Landmarks: the moments from which the times of a lesson are reckoned (when a step begins, when a beat was said to come,
 * when the video is over). Each names those that it depends on, so that all of them together are a graph; they are sorted
 * by it, and each is resolved once, after everything that it depends on.
 */
import { Bug } from '../grid/bug.ts';
import type { Diagnostic } from '../scene/diagnostic.ts';

/** The value of a landmark that this one depends on; asking for any other is a `Bug`. */
export type ValueOf = <T>(landmark: Landmark<T>) => T;
/** What is wrong with a time; the landmark then gets the value that it would have without that time. */
export type Report = (fault: Diagnostic) => void;

/** Made first and resolved later: its value is there once `resolveAll` has run. */
export class Landmark<T> {
  /** For a `Bug` and for tests: `begin of "a"`. */
  readonly name: string;
  /** A function, so that it may name landmarks that are made after this one. */
  readonly dependsOn: () => readonly Landmark<unknown>[];
  readonly #resolve: (valueOf: ValueOf, report: Report) => T;
  #resolved: { readonly value: T } | undefined;

  constructor(
    name: string,
    dependsOn: () => readonly Landmark<unknown>[],
    resolve: (valueOf: ValueOf, report: Report) => T,
  ) {
    this.name = name;
    this.dependsOn = dependsOn;
    this.#resolve = resolve;
  }

  get value(): T {
    if (this.#resolved === undefined) throw new Bug(`${this.name} is not resolved yet`);
    return this.#resolved.value;
  }

  resolve(report: Report): void {
    const known = new Set(this.dependsOn());
    const value = this.#resolve((landmark) => {
      if (!known.has(landmark)) throw new Bug(`${this.name} does not say that it depends on ${landmark.name}`);
      return landmark.value;
    }, report);
    this.#resolved = { value };
  }
}

/** Resolves every landmark and all that they depend on; what was wrong, in the order in which it was found. */
export function resolveAll(landmarks: readonly Landmark<unknown>[]): readonly Diagnostic[] {
  const faults: Diagnostic[] = [];
  for (const landmark of inOrder(landmarks)) landmark.resolve((fault) => faults.push(fault));
  return faults;
}

/**
 * The landmarks and all that they depend on, each after those that it depends on, else in the order given. A circle is a
 * `Bug`: no kind of time can name what comes after it.
 */
export function inOrder(landmarks: readonly Landmark<unknown>[]): readonly Landmark<unknown>[] {
  const sorted = new Set<Landmark<unknown>>();
  const path: Landmark<unknown>[] = [];
  const visit = (landmark: Landmark<unknown>): void => {
    if (sorted.has(landmark)) return;
    if (path.includes(landmark)) {
      const circle = [...path.slice(path.indexOf(landmark)), landmark];
      throw new Bug(circle.map(({ name }) => name).join(' depends on '));
    }
    path.push(landmark);
    for (const other of landmark.dependsOn()) visit(other);
    path.pop();
    sorted.add(landmark);
  };
  for (const landmark of landmarks) visit(landmark);
  return [...sorted];
}
