/**
 * `show`: the beats of a step, each with one mark. The shape of each is checked before; here its text is read, and held
 * against what the step claims.
 */
import { readSides, readSuppose } from './argument-marks.ts';
import { readPlace, readStrike } from './claimed-marks.ts';
import type { Claims } from './claims.ts';
import { quoted } from './faults.ts';
import { fraction, fractionFromDecimal } from './fraction.ts';
import { groupNamed } from './groups.ts';
import { type MarkName, markNames } from './language-step.ts';
import { readLinks } from './links.ts';
import { didYouMean } from './nearest-word.ts';
import { readNumber } from './numbers.ts';
import { type Context, saysAll, timeOf } from './reading.ts';
import type { Beat, BeatMark } from './scene.ts';
import { readSight } from './sight.ts';
import { readLabel, withTargets } from './target-marks.ts';
import { type MapNode, spanIn, type TextNode, textOf, valueOf } from './yaml-tree.ts';

/** The beats; undefined where the step has no `show`. `claims` is undefined for a step that claims nothing. */
export function readShow(step: MapNode, claims: Claims | undefined, context: Context): readonly Beat[] | undefined {
  const show = valueOf(step, 'show');
  if (show?.kind !== 'list') return undefined;
  return show.items.flatMap((item) => (item.kind === 'map' ? readBeat(item, claims, context) : []));
}

function readBeat(map: MapNode, claims: Claims | undefined, context: Context): readonly Beat[] {
  const entry = map.entries.find(({ key }) => markNames.includes(key.text));
  const at = timeOf(map, 'at', 'any', context);
  const group = groupNamed(textOf(map, 'group'), context);
  if (entry === undefined) return [];
  const mark = readMark(entry.key.text, entry.key, map, claims, context);
  const keep = textOf(map, 'keep')?.text === 'true';
  return mark === undefined ? [] : [{ span: map.span, at, group, keep, mark }];
}

function readMark(
  kind: string,
  key: TextNode,
  map: MapNode,
  claims: Claims | undefined,
  context: Context,
): BeatMark | undefined {
  if (!isMarkName(kind)) return undefined;
  if (kind === 'sight') return readSight(map, context);
  const node = textOf(map, kind);
  if (node === undefined) return undefined;
  switch (kind) {
    case 'fill':
    case 'focus':
      return withTargets(kind, node, ['cells', 'house', 'candidates', 'digit'], context);
    case 'circle':
      return withTargets(kind, node, ['candidates', 'digit'], context);
    case 'outline':
      return withTargets(kind, node, ['cells', 'house'], context);
    case 'link':
      return needsClaim(kind, key, claims, context) ? readLinks(node, key, claims, context) : undefined;
    case 'strike':
      return needsClaim(kind, key, claims, context) ? readStrike(node, map, claims, context) : undefined;
    case 'place':
      return needsClaim(kind, key, claims, context) ? readPlace(node, claims, context) : undefined;
    case 'label':
      return readLabel(node, context);
    case 'note':
      return { kind, text: node.text };
    case 'ask':
      return { kind, text: node.text, hold: readHold(map, context) };
    case 'clear':
      return readClear(node, context);
    case 'suppose':
      return needsClaim(kind, key, claims, context) ? readSuppose(node, context) : undefined;
    case 'sides':
      return readSides(node, map, context);
    default:
      return kind satisfies never;
  }
}

function isMarkName(key: string): key is MarkName {
  return markNames.includes(key);
}

function needsClaim(kind: string, key: TextNode, claims: Claims | undefined, { faults }: Context): claims is Claims {
  if (claims !== undefined) return true;
  const message = `"${kind}" draws what a step claims, and this step claims nothing; add so, chain, only, pencil or cascade, or leave the beat out`;
  faults.error('no-claim', key.span, message);
  return false;
}

const defaultHold = fraction(5n);
const mostHold = 600;

function readHold(map: MapNode, { faults }: Context) {
  const node = textOf(map, 'hold');
  const seconds = node === undefined ? undefined : { ...node, text: node.text.trim().replace(/ ?s$/, '') };
  if (
    seconds === undefined ||
    readNumber(seconds, { what: '"hold", in seconds,', least: 0, most: mostHold, faults }) === undefined
  )
    return defaultHold;
  return fractionFromDecimal(seconds.text) ?? defaultHold;
}

function readClear(node: TextNode, { stepIds, groups, faults }: Context): BeatMark | undefined {
  if (saysAll(node)) return { kind: 'clear', what: 'all' };
  const what: string[] = [];
  for (const match of node.text.matchAll(/[^\s,]+/g)) {
    const [name] = match;
    what.push(name);
    if (stepIds.has(name) || groups.has(name)) continue;
    const known = [...stepIds.keys(), ...groups.keys()];
    const span = spanIn(node, match.index, match.index + name.length);
    const meant = didYouMean(name, [...known, 'all']);
    faults.error(
      'unknown-step',
      span,
      `${quoted(name)} is no step and no group of the scene${meant === '' ? '; write the id of a step, the name of a group, or all' : meant}`,
    );
  }
  return { kind: 'clear', what };
}
