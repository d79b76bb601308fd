/**
 * `show`: the beats of a step, each with one mark. The shape of each is checked before; here its text is read, and held
 * against what the step claims.
 */
import type { Grid } from '../grid/grid.ts';
import { parseCandidates } from '../grid/notation/candidates.ts';
import { parseCells } from '../grid/notation/cells.ts';
import { printCandidate, printCell } from '../grid/notation/print.ts';
import { parseTargets } from '../grid/notation/targets.ts';
import type { Reading, Target } from '../grid/terms.ts';
import type { Claims } from './claims.ts';
import { listed, quoted } from './faults.ts';
import { fraction, fractionFromDecimal } from './fraction.ts';
import { type MarkName, markNames } from './language-step.ts';
import { readLinks } from './links.ts';
import { didYouMean } from './nearest-word.ts';
import { type Context, readNotation, readNumber, timeOf } from './reading.ts';
import type { Beat, BeatMark, Located } from './scene.ts';
import { readSight } from './sight.ts';
import { itemsOf, type MapNode, spanIn, type TextNode, textOf, valueOf } from './yaml-tree.ts';

/** The beats; undefined where the step has no `show`. `claims` is undefined for a step that claims nothing. */
export function readShow(step: MapNode, claims: Claims | undefined, context: Context): readonly Beat[] | undefined {
  const show = valueOf(step, 'show');
  if (show?.kind !== 'list') return undefined;
  return show.items.flatMap((item) => (item.kind === 'map' ? readBeat(item, claims, context) : []));
}

function readBeat(map: MapNode, claims: Claims | undefined, context: Context): readonly Beat[] {
  const entry = map.entries.find(({ key }) => markNames.includes(key.text));
  const at = timeOf(map, 'at', 'any', context);
  const group = readGroup(textOf(map, 'group'), context);
  if (entry === undefined) return [];
  const mark = readMark(entry.key.text, entry.key, map, claims, context);
  const keep = textOf(map, 'keep')?.text === 'true';
  return mark === undefined ? [] : [{ span: map.span, at, group, keep, mark }];
}

/** The name of a group that the scene has. */
function readGroup(node: TextNode | undefined, { groups, faults }: Context): string | undefined {
  if (node === undefined || groups.has(node.text)) return node?.text;
  const known = [...groups.keys()];
  const meant = didYouMean(node.text, known);
  const there = known.length === 0 ? 'it has none yet' : `it has ${listed(known, 'and')}`;
  const mend = meant === '' ? `; ${there}, so add it under "groups" with a colour` : meant;
  faults.error('unknown-group', node.span, `the scene has no group ${quoted(node.text)}${mend}`);
  return undefined;
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
      return needsClaim(kind, key, claims, context) ? notYet(kind, key, context) : undefined;
    case 'sides':
      for (const item of itemsOf(valueOf(map, 'groups'))) if (item.kind === 'text') readGroup(item, context);
      readNotation(node, parseCandidates, context);
      return notYet(kind, key, context);
    default:
      return kind satisfies never;
  }
}

function isMarkName(key: string): key is MarkName {
  return markNames.includes(key);
}

function notYet(kind: 'suppose' | 'sides', key: TextNode, { faults }: Context): undefined {
  const instead =
    kind === 'sides'
      ? 'circle the candidates of each side in a group of its own'
      : 'draw the links, or circle what follows';
  faults.error('not-yet', key.span, `this version does not draw "${kind}"; leave the beat out, or ${instead}`);
  return undefined;
}

function needsClaim(kind: string, key: TextNode, claims: Claims | undefined, { faults }: Context): claims is Claims {
  if (claims !== undefined) return true;
  const message = `"${kind}" draws what a step claims, and this step claims nothing; add so, chain, only, pencil or cascade, or leave the beat out`;
  faults.error('no-claim', key.span, message);
  return false;
}

const targetNames: Readonly<Record<Target['kind'], string>> = {
  cells: 'cells (r3c2)',
  house: 'houses (c3)',
  candidates: 'candidates (4r3c2)',
  digit: 'a digit (4)',
};

function withTargets<Kind extends 'fill' | 'circle' | 'outline' | 'focus'>(
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

function readStrike(node: TextNode, map: MapNode, claims: Claims, context: Context): BeatMark | undefined {
  const { faults, grid } = context;
  const gone = timeOf(map, 'gone', 'any', context);
  if (isAll(node)) {
    if (claims.removesAny) return { kind: 'strike', candidates: 'all', gone };
    faults.error(
      'not-concluded',
      node.span,
      'this step removes nothing that could be struck; add the removal to so, or leave the beat out',
    );
    return undefined;
  }
  const candidates = readNotation(node, parseCandidates, context);
  for (const { span, value } of candidates === undefined ? [] : itemsIn(node, parseCandidates, grid)) {
    const strange = value.filter((candidate) => !claims.removes(candidate)).map((each) => printCandidate(grid, each));
    if (strange.length === 0) continue;
    const verb = strange.length === 1 ? 'is' : 'are';
    const message = `${strange.join(' ')} ${verb} not among the step's removals; a cross is a claim, so add it to so or leave it out`;
    faults.error('not-concluded', span, message);
  }
  return candidates === undefined ? undefined : { kind: 'strike', candidates, gone };
}

function readPlace(node: TextNode, claims: Claims, context: Context): BeatMark | undefined {
  const { faults, grid } = context;
  if (isAll(node)) {
    if (claims.placesAny) return { kind: 'place', cells: 'all' };
    faults.error(
      'not-concluded',
      node.span,
      'this step places nothing; add the placement to so, or leave the beat out',
    );
    return undefined;
  }
  const cells = readNotation(node, parseCells, context);
  for (const { span, value } of cells === undefined ? [] : itemsIn(node, parseCells, grid)) {
    const strange = value.filter((cell) => !claims.places(cell)).map((each) => printCell(grid, each));
    if (strange.length === 0) continue;
    const message = `the step places nothing in ${strange.join(' ')}; a written digit is a claim, so add it to so or leave it out`;
    faults.error('not-concluded', span, message);
  }
  return cells === undefined ? undefined : { kind: 'place', cells };
}

/** The items of a list that is known to be readable, each with its place. */
function itemsIn<T>(
  node: TextNode,
  parse: (grid: Grid, text: string) => Reading<T>,
  grid: Grid,
): readonly Located<T>[] {
  return [...node.text.matchAll(/[^\s,]+/g)].flatMap((match) => {
    const reading = parse(grid, match[0]);
    return reading.ok ? [{ value: reading.value, span: spanIn(node, match.index, match.index + match[0].length) }] : [];
  });
}

function readLabel(node: TextNode, context: Context): BeatMark | undefined {
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
  if (isAll(node)) return { kind: 'clear', what: 'all' };
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

function isAll(node: TextNode): boolean {
  return node.text.trim().toLowerCase() === 'all';
}
