/**
 * Marks that the language has and this version does not draw: `suppose` and `sides`. They are read and checked like the
 * others, and then refused.
 */
import { parseCandidates } from '../grid/notation/candidates.ts';
import { parseSets } from '../grid/notation/sets.ts';
import { groupNamed } from './groups.ts';
import { type Context, readNotation } from './reading.ts';
import type { BeatMark } from './scene.ts';
import { itemsOf, type MapNode, spanIn, type TextNode, valueOf } from './yaml-tree.ts';

/** `7r1c7`, `no 7r1c5` or `each 7c5`; undefined after a report. */
export function readSuppose(node: TextNode, key: TextNode, context: Context): BeatMark | undefined {
  const { faults } = context;
  faults.error('not-yet', key.span, 'this version does not draw "suppose"; leave the beat out, or draw the links');
  const match = /^\s*(no|each)\s/i.exec(node.text);
  const word = match?.[1]?.toLowerCase();
  const from = match?.[0].length ?? 0;
  const what: TextNode = { ...node, text: node.text.slice(from), offsets: node.offsets.slice(from) };
  const named = word === 'each' ? readNotation(what, parseSets, context) : readNotation(what, parseCandidates, context);
  if (named === undefined) return undefined;
  if (named.length !== 1) {
    const due = word === 'each' ? 'one set, as in each 4c2' : 'one candidate, as in 4r3c2 or no 4r3c2';
    faults.error('notation', spanIn(what, 0, what.text.length), `${named.length} stand here; "suppose" takes ${due}`);
  }
  return { kind: 'suppose', suppose: word === 'no' ? 'not' : word === 'each' ? 'each' : 'true', text: node.text };
}

/** A candidate, and the groups of the two sides; undefined after a report. */
export function readSides(node: TextNode, key: TextNode, map: MapNode, context: Context): BeatMark | undefined {
  const { faults } = context;
  const instead = 'circle the candidates of each side in a group of its own';
  faults.error('not-yet', key.span, `this version does not draw "sides"; leave the beat out, or ${instead}`);
  const candidates = readNotation(node, parseCandidates, context);
  const value = valueOf(map, 'groups');
  const names = itemsOf(value).map((item) => (item.kind === 'text' ? groupNamed(item, context) : undefined));
  if (value !== undefined && names.length !== 2) {
    faults.error(
      'notation',
      value.span,
      `${names.length} ${names.length === 1 ? 'group stands' : 'groups stand'} here; "sides" has two, as in groups: [a, b]`,
    );
  }
  if (candidates !== undefined && candidates.length !== 1) {
    faults.error('notation', node.span, `${candidates.length} candidates stand here; "sides" takes one, as in 4r3c2`);
  }
  const [candidate] = candidates ?? [];
  const [first, second] = names;
  if (candidate === undefined) return undefined;
  return {
    kind: 'sides',
    candidate,
    groups: first === undefined || second === undefined ? undefined : [first, second],
  };
}
