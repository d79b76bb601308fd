/**
 * What messages say about a definition: which value is expected, and where a key belongs.
 */
import type { Definition } from './definition.ts';
import { listed } from './faults.ts';

/** By key: what the maps that have it are called ("the video", "a step"). */
export type Homes = ReadonlyMap<string, readonly string[]>;

/** Where each key of the definition belongs, for misplaced keys. */
export function homesOf(definition: Definition): Homes {
  const homes = new Map<string, string[]>();
  visit(definition);
  return homes;
  function visit(each: Definition): void {
    if (each.kind === 'either') for (const option of each.options) visit(option);
    if (each.kind === 'marked') for (const map of Object.values(each.maps)) visit(map);
    if (each.kind === 'list') visit(each.item);
    if (each.kind !== 'map') return;
    for (const [key, value] of Object.entries(each.shape)) {
      const known = homes.get(key) ?? [];
      if (!known.includes(each.title)) homes.set(key, [...known, each.title]);
      visit(value);
    }
  }
}

/** What is expected here, for a message: `a text`, `a list`, `true or false`. */
export function expected(definition: Definition): string {
  switch (definition.kind) {
    case 'text':
      return definition.suggestions === undefined ? 'a text' : listed([listed(definition.suggestions.words), 'a text']);
    case 'choice':
      return listed(definition.words);
    case 'list':
      return 'a list';
    case 'map':
    case 'entries':
    case 'marked':
      return 'a map of keys';
    case 'either':
      return listed([...new Set(definition.options.map(expected))]);
    default:
      return definition satisfies never;
  }
}
