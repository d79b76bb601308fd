/**
 * Keys that the language does not have: their messages, and what they were most likely meant to be.
 */
import type { Homes } from './definition-words.ts';
import { type Faults, listed, quoted } from './faults.ts';
import { didYouMean, nearestWords } from './nearest-word.ts';
import { type Entry, type MapNode, type TextNode, textOf, valueOf } from './yaml-tree.ts';

/** What a map may contain. */
export interface KnownKeys {
  readonly known: readonly string[];
  /** What a message calls the map: `a step`. */
  readonly title: string;
}

/** Keys that had another name in earlier versions, each with its name today. */
const renamed: ReadonlyMap<string, string> = new Map([['said', 'subtitles']]);

/** The name that this key has today, if the map has a key of that name. */
function nameToday(key: string, known: readonly string[]): string | undefined {
  const today = renamed.get(key);
  return today !== undefined && known.includes(today) ? today : undefined;
}

/** Says what would be right instead of a key that the map cannot have. */
export function reportUnknown(
  entry: Entry,
  map: MapNode,
  { known, title }: KnownKeys,
  { faults, homesOf }: { readonly faults: Faults; readonly homesOf: () => Homes },
): void {
  const { key } = entry;
  const cutText = cutTextBefore(map, entry);
  if (cutText !== undefined) {
    const quotes = textOf(map, cutText.text)?.text.includes('"') === true ? 'single quotes' : 'quotes';
    const message = `the comma before ${quoted(key.text)} ends the text of ${quoted(cutText.text)} in YAML; put the whole value in ${quotes}`;
    faults.error('comma-in-text', key.span, message);
    faults.settle(cutText.span);
    faults.settle(valueOf(map, cutText.text)?.span ?? cutText.span);
    return;
  }
  const today = nameToday(key.text, known);
  const meant = today === undefined ? didYouMean(key.text, known) : `; it is now ${quoted(today)}`;
  const home = homesOf().get(key.text);
  const fix =
    meant !== ''
      ? meant
      : home !== undefined
        ? `; it belongs to ${listed(home)}`
        : `; its keys are ${listed(known, 'and')}`;
  faults.error('unknown-key', key.span, `${title} has no key ${quoted(key.text)}${fix}`);
}

/**
 * The map with each misspelt key as the known one nearest to it, unless that one is also present. Places remain those
 * of the file.
 */
export function withMeantKeys(map: MapNode, known: readonly string[]): MapNode {
  const taken = new Set(map.entries.map(({ key }) => key.text));
  const entries = map.entries.map((entry): Entry => {
    if (known.includes(entry.key.text) || cutTextBefore(map, entry) !== undefined) return entry;
    const meant = nameToday(entry.key.text, known) ?? nearestWords(entry.key.text, known)[0];
    if (meant === undefined || taken.has(meant)) return entry;
    taken.add(meant);
    return { ...entry, key: { ...entry.key, text: meant } };
  });
  return { ...map, entries };
}

/** Whether a key that was not recognised as this one may still be it, so that it is not reported as missing. */
export function mayBeMisspelt(map: MapNode, key: string, known: readonly string[]): boolean {
  return map.entries.some(
    (entry) =>
      !known.includes(entry.key.text) &&
      (nameToday(entry.key.text, [key]) !== undefined || nearestWords(entry.key.text, [key]).length > 0),
  );
}

/** Between braces, the key of the text that a comma has cut before this entry, which is the rest of that text. */
function cutTextBefore(map: MapNode, entry: Entry): TextNode | undefined {
  if (!map.braces || entry.value.kind !== 'nothing') return undefined;
  const before = map.entries[map.entries.indexOf(entry) - 1];
  return before?.value.kind === 'text' ? before.key : undefined;
}
