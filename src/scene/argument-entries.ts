/**
 * Names of arguments in a user's file: each known, and none twice, in any spelling.
 */
import type { ArgumentName } from '../techniques/all-techniques.ts';
import { canonicalName, nearestNames } from './argument-names.ts';
import { type Faults, listed, quoted } from './faults.ts';
import type { TextNode } from './yaml-tree.ts';

/** The name there; a fault if it is not one. */
export function readArgumentName(node: TextNode, faults: Faults): ArgumentName | undefined {
  const found = canonicalName(node.text);
  if (found !== undefined) return found;
  const near = nearestNames(node.text);
  const fix = near.length === 0 ? '' : `; did you mean ${listed(near, 'or')}?`;
  faults.error('unknown-name', node.span, `no argument is called ${quoted(node.text)}${fix}`);
  return undefined;
}

/** The entries by name, in the order of the file; a fault for a key that names no argument, or one already named. */
export function entriesByName<Value>(
  entries: readonly { readonly key: TextNode; readonly value: Value }[],
  faults: Faults,
): readonly { readonly name: ArgumentName; readonly value: Value }[] {
  const seen = new Map<ArgumentName, TextNode>();
  return entries.flatMap(({ key, value }) => {
    const name = readArgumentName(key, faults);
    if (name === undefined) return [];
    const earlier = seen.get(name);
    if (earlier !== undefined) {
      const notes = [{ span: earlier.span, message: 'the first is here' }];
      faults.error('duplicate-key', key.span, `${name} appears twice here; keep one of the two`, notes);
      return [];
    }
    seen.set(name, key);
    return [{ name, value }];
  });
}
