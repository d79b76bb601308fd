/**
 * `groups`: the scene's colour groups.
 */
import type { Faults } from './faults.ts';
import { listed, quoted } from './faults.ts';
import type { GroupEntries } from './language.ts';
import { didYouMean } from './nearest-word.ts';
import type { Context } from './reading.ts';
import { type GroupColour, groupColours } from './scene.ts';
import type { TextNode } from './yaml-tree.ts';

/**
 * By name the colour, in the order of the file. A group without a known colour (reported already) is kept as orange.
 */
export function readGroups(written: GroupEntries | undefined, faults: Faults): ReadonlyMap<string, GroupColour> {
  const groups = new Map<string, GroupColour>();
  const asWritten = new Map<GroupColour, string>();
  const entries = written?.entries ?? [];
  for (const [index, { key, value: colour }] of entries.entries()) {
    if (/[\s,]/.test(key.text) || key.text === 'all') {
      faults.error(
        'bad-name',
        key.span,
        `${quoted(key.text)} cannot name a group; take one word, without spaces and commas, and not "all"`,
      );
    }
    if (index === groupColours.length) {
      const message = `${entries.length} groups are given here, and six at most can be told apart; leave some out`;
      faults.error('out-of-range', key.span, message);
    }
    const known = colour?.read();
    const other = known === undefined ? undefined : asWritten.get(known);
    if (colour !== undefined && other !== undefined) {
      faults.warning(
        'same-colour',
        colour.span,
        `${quoted(other)} is ${known} too, so the two cannot be told apart; take another colour`,
      );
    } else if (known !== undefined) asWritten.set(known, key.text);
    groups.set(key.text, known ?? 'orange');
  }
  return groups;
}

/** The name of a group that the scene has; undefined if none is named, or after a report. */
export function groupNamed(
  node: TextNode | undefined,
  { groups, faults }: Pick<Context, 'groups' | 'faults'>,
): string | undefined {
  if (node === undefined || groups.has(node.text)) return node?.text;
  const known = [...groups.keys()];
  const meant = didYouMean(node.text, known);
  const there = known.length === 0 ? 'it has none yet' : `it has ${listed(known, 'and')}`;
  const fix = meant === '' ? `; ${there}, so add it under "groups" with a colour` : meant;
  faults.error('unknown-group', node.span, `the scene has no group ${quoted(node.text)}${fix}`);
  return undefined;
}
