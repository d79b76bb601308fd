/**
 * `link`: which links of the step's chains are drawn: `all`, `1`, `1-3`, `2:1-3`.
 */
import type { Claims } from '../scene/claims.ts';
import { quoted } from '../scene/faults.ts';
import type { Context } from '../scene/reading.ts';
import type { BeatMarks, LinkRange } from '../scene/scene.ts';
import { spanIn, type TextNode } from '../scene/yaml-tree.ts';

/** The links of a beat, each range within its chain; undefined after a report. */
export function readLinks(
  node: TextNode,
  key: TextNode,
  claims: Claims,
  { faults }: Context,
): BeatMarks['link'] | undefined {
  const { links } = claims;
  if (links !== undefined && links.length === 0) {
    if (claims.mayHaveLinks) return readRanges(node, undefined, faults);
    faults.error(
      'no-chain',
      key.span,
      'there are no links to draw: the step has no chain; add chain, or leave the beat out',
    );
    return undefined;
  }
  return readRanges(node, links, faults);
}

function readRanges(
  node: TextNode,
  links: readonly number[] | undefined,
  faults: Context['faults'],
): BeatMarks['link'] | undefined {
  if (node.text.trim().toLowerCase() === 'all') return { kind: 'link', links: 'all' };
  const ranges: LinkRange[] = [];
  let isRight = true;
  for (const match of node.text.matchAll(/[^\s,]+/g)) {
    const span = spanIn(node, match.index, match.index + match[0].length);
    const range = rangeOf(match[0]);
    const wrong =
      range === undefined
        ? `${quoted(match[0])} names no links; write all, 1, 1-3, or 2:1-3 for the second chain`
        : whyNoLink(range, links);
    if (wrong !== undefined) {
      faults.error(range === undefined ? 'notation' : 'no-such-link', span, wrong);
      isRight = false;
    } else if (range !== undefined) ranges.push(range);
  }
  return isRight ? { kind: 'link', links: ranges } : undefined;
}

function rangeOf(text: string): LinkRange | undefined {
  const match = /^(?:(\d{1,3}):)?(\d{1,3})(?:[-\u2013](\d{1,3}))?$/.exec(text);
  if (match === null) return undefined;
  const first = Number(match[2]);
  return { chain: Number(match[1] ?? 1), first, last: Number(match[3] ?? first) };
}

function whyNoLink({ chain, first, last }: LinkRange, links: readonly number[] | undefined): string | undefined {
  if (first === 0) return 'links are counted from 1';
  if (last < first) return `${first}-${last} runs backwards; write ${last}-${first}`;
  if (links === undefined) return undefined;
  const count = links[chain - 1];
  if (count === undefined) {
    return `there is no chain ${chain}; the step has ${links.length === 1 ? 'one chain' : `${links.length} chains, counted from 1`}`;
  }
  if (last <= count) return undefined;
  return `there is no link ${last}; chain ${chain} has ${count === 1 ? 'one link' : `links 1 to ${count}`}`;
}
