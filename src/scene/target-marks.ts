/**
 * Marks that lie on cells, houses and candidates: `fill`, `focus`, `circle`, `outline`, `label`.
 */
import { parseTargets } from '../grid/notation/targets.ts';
import type { Target } from '../grid/terms.ts';
import { listed, quoted } from './faults.ts';
import { type Context, readNotation } from './reading.ts';
import type { BeatMark } from './scene.ts';
import { spanIn, type TextNode } from './yaml-tree.ts';

const targetNames: Readonly<Record<Target['kind'], string>> = {
  cells: 'cells (r3c2)',
  house: 'houses (c3)',
  candidates: 'candidates (4r3c2)',
  digit: 'a digit (4)',
};

/** A mark on targets of the kinds that it takes; undefined after a report. */
export function withTargets<Kind extends 'fill' | 'circle' | 'outline' | 'focus'>(
  kind: Kind,
  node: TextNode,
  takes: readonly Target['kind'][],
  context: Context,
): { readonly kind: Kind; readonly targets: readonly Target[] } | undefined {
  const targets = readNotation(node, parseTargets, context);
  const wrong = targets?.find((target) => !takes.includes(target.kind));
  if (wrong !== undefined) {
    const due = listed(takes.map((each) => targetNames[each]));
    const other = wrong.kind === 'cells' || wrong.kind === 'house' ? 'fill or outline' : 'circle';
    context.faults.error(
      'notation',
      node.span,
      `"${kind}" goes round ${due}, not round ${targetNames[wrong.kind]}; for those write ${other}`,
    );
    return undefined;
  }
  return targets === undefined ? undefined : { kind, targets };
}

/** `7r1c5 "roof"`: one cell or candidate and a word; undefined after a report. */
export function readLabel(node: TextNode, context: Context): BeatMark | undefined {
  const { faults } = context;
  const match = /^([^"\u201c\u201d]*)["\u201c\u201d]([^"\u201c\u201d]*)["\u201c\u201d]\s*$/s.exec(node.text);
  const text = match?.[2]?.trim() ?? '';
  if (match === null || text === '') {
    faults.error(
      'notation',
      node.span,
      `${quoted(node.text)} is no label; write a cell or a candidate, and the word between double quotes: 4r3c2 "roof"`,
    );
    return undefined;
  }
  const targets = readNotation({ ...node, text: match[1]! }, parseTargets, context);
  const [target] = targets ?? [];
  if (targets === undefined) return undefined;
  if (target !== undefined && targets.length === 1 && isOnePlace(target)) return { kind: 'label', target, text };
  faults.error(
    'notation',
    spanIn(node, 0, match[1]!.trimEnd().length),
    'a label is tied to one cell (r3c2) or one candidate (4r3c2); write a beat for each',
  );
  return undefined;
}

function isOnePlace(target: Target): boolean {
  if (target.kind === 'cells') return target.cells.length === 1;
  return target.kind === 'candidates' && target.candidates.length === 1;
}
