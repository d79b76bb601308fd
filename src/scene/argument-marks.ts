/**
 * Marks that draw a part of the step's argument: `suppose` plays it out, `sides` colours a cluster of its strong links.
 * Whether the argument has that part is for the check to say.
 */
import { parseCandidates } from '../grid/notation/candidates.ts';
import { parseSets } from '../grid/notation/sets.ts';
import { groupNamed } from './groups.ts';
import type { SideGroups } from './language-step.ts';
import { type Context, readNotation } from './reading.ts';
import type { BeatMark } from './scene.ts';
import { spanIn, type TextNode } from './yaml-tree.ts';

/** `7r1c7`, `no 7r1c5` or `each 7c5`; undefined after a report. */
export function readSuppose(node: TextNode, context: Context): BeatMark | undefined {
  const match = /^\s*(no|each)\s/i.exec(node.text);
  const word = match?.[1]?.toLowerCase();
  const from = match?.[0].length ?? 0;
  const what: TextNode = { ...node, text: node.text.slice(from), offsets: node.offsets.slice(from) };
  const { span } = node;
  if (word === 'each') {
    const set = onlyOne(what, readNotation(what, parseSets, context), 'one set, as in each 4c2', context);
    return set === undefined ? undefined : { kind: 'suppose', suppose: { kind: 'each', set: set.name }, span };
  }
  const due = 'one candidate, as in 4r3c2 or no 4r3c2';
  const candidate = onlyOne(what, readNotation(what, parseCandidates, context), due, context);
  if (candidate === undefined) return undefined;
  return { kind: 'suppose', suppose: { kind: word === 'no' ? 'not' : 'true', candidate }, span };
}

function onlyOne<T>(node: TextNode, named: readonly T[] | undefined, due: string, { faults }: Context): T | undefined {
  if (named === undefined) return undefined;
  if (named.length === 1) return named[0];
  const span = spanIn(node, 0, node.text.length);
  faults.error('notation', span, `${named.length} stand here; "suppose" takes ${due}`);
  return undefined;
}

/** A candidate, and the groups of the two sides; undefined after a report. */
export function readSides(node: TextNode, value: SideGroups | undefined, context: Context): BeatMark | undefined {
  const { faults } = context;
  const candidates = readNotation(node, parseCandidates, context);
  const names = (value?.items ?? []).map((item) => groupNamed(item?.node, context));
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
    candidate: { value: candidate, span: node.span },
    groups: first === undefined || second === undefined ? undefined : [first, second],
  };
}
