/**
 * Nodes of the time graph: the moments that the times of a lesson depend on (when a step begins, the given time of a
 * beat, when the video is over). Each names the nodes that it depends on; they are sorted by that, and each is resolved
 * once, after everything that it depends on.
 */
import { Bug } from '../grid/bug.ts';
import type { Diagnostic } from '../scene/diagnostic.ts';

/** The value of a node that this one depends on; asking for any other is a `Bug`. */
export type ValueOf = <T>(node: TimeNode<T>) => T;
/** What is wrong with a time; the node then gets the value that it would have without that time. */
export type Report = (fault: Diagnostic) => void;

/** Made first and resolved later: its value is there once `resolveAll` has run. */
export class TimeNode<T> {
  /** For a `Bug` and for tests: `begin of "a"`. */
  readonly name: string;
  /** A function, so that it may name nodes that are created after this one. */
  readonly dependsOn: () => readonly TimeNode<unknown>[];
  readonly #resolve: (valueOf: ValueOf, report: Report) => T;
  #resolved: { readonly value: T } | undefined;

  constructor(
    name: string,
    dependsOn: () => readonly TimeNode<unknown>[],
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
    const value = this.#resolve((node) => {
      if (!known.has(node)) throw new Bug(`${this.name} does not say that it depends on ${node.name}`);
      return node.value;
    }, report);
    this.#resolved = { value };
  }
}

/** Resolves every node and all its dependencies; returns the faults, in the order in which they were found. */
export function resolveAll(nodes: readonly TimeNode<unknown>[]): readonly Diagnostic[] {
  const faults: Diagnostic[] = [];
  for (const node of inOrder(nodes)) node.resolve((fault) => faults.push(fault));
  return faults;
}

/**
 * The nodes and all that they depend on, each after its dependencies, otherwise in the order given. A cycle is a `Bug`:
 * no kind of time can name what comes after it.
 */
export function inOrder(nodes: readonly TimeNode<unknown>[]): readonly TimeNode<unknown>[] {
  const sorted = new Set<TimeNode<unknown>>();
  const path: TimeNode<unknown>[] = [];
  const visit = (node: TimeNode<unknown>): void => {
    if (sorted.has(node)) return;
    if (path.includes(node)) {
      const circle = [...path.slice(path.indexOf(node)), node];
      throw new Bug(circle.map(({ name }) => name).join(' depends on '));
    }
    path.push(node);
    for (const other of node.dependsOn()) visit(other);
    path.pop();
    sorted.add(node);
  };
  for (const node of nodes) visit(node);
  return [...sorted];
}
