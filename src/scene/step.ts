/**
 * One step: its argument, its conclusions, its times and its marks.
 */

import { parseChain } from '../grid/notation/chain.ts';
import { parseConclusions } from '../grid/notation/conclusions.ts';
import { parseDeadly } from '../grid/notation/deadly.ts';
import { parseOnly, parsePencil } from '../grid/notation/lists.ts';
import { printConclusion } from '../grid/notation/print.ts';
import { parseSets } from '../grid/notation/sets.ts';
import type { Chain, Conclusion, SetName } from '../grid/terms.ts';
import { checkAgreement } from './agreement.ts';
import { canonicalName, nearestNames } from './argument-names.ts';
import { type Claims, claimsOf } from './claims.ts';
import type { Span } from './diagnostic.ts';
import { listed, quoted } from './faults.ts';
import { type Context, locatedText, readNotation, timeOf } from './reading.ts';
import type { CascadeItem, Located, Step } from './scene.ts';
import { readShow } from './show.ts';
import { itemsOf, keyOf, type MapNode, spanIn, type TextNode, type Tree, textOf, valueOf } from './yaml-tree.ts';

/** A step with all that could be read of it; what could not was reported. `index` counts from 0. */
export function readStep(map: MapNode, index: number, context: Context): Step {
  const { faults, grid } = context;
  const before = faults.errorCount();
  const chains = readChains(map, context);
  const { so, soSpan } = readSo(map, context);
  const claiming = {
    from: readFrom(map, context),
    chains,
    deadly: readDeadly(map, context),
    so,
    only: readItems(map, 'only', context, (node, at) => {
      const places = readNotation(node, parseOnly, context);
      return places === undefined ? undefined : { places, at, span: node.span };
    }),
    pencil: readItems(map, 'pencil', context, (node, at) => {
      const lists = readNotation(node, parsePencil, context);
      return lists === undefined ? undefined : { lists, at, span: node.span };
    }),
    cascade: readItems(map, 'cascade', context, (node, at, item) => readCascadeItem(node, at, item, context)),
  };
  const isWhole = faults.errorCount() === before;
  if (isWhole || so !== undefined) {
    checkAgreement({ chains, conclusions: so, named: 'so', conclusionsSpan: soSpan, grid, faults });
  }
  checkClaimKeys(map, so, context);
  const idNode = textOf(map, 'id');
  return {
    id: idNode?.text ?? '',
    span: map.span,
    idSpan: idNode?.span ?? map.span,
    at: timeOf(map, 'at', index === 0 ? 'unanchored' : 'any', context),
    until: timeOf(map, 'until', 'any', context),
    title: textOf(map, 'title')?.text,
    say: locatedText(map, 'say'),
    chapter: textOf(map, 'chapter')?.text,
    because: readBecause(map, context),
    called: textOf(map, 'called')?.text,
    ...claiming,
    soSpan,
    fails: textOf(map, 'fails')?.text === 'true',
    show: readShow(map, showClaims(map, claimsOf(claiming, grid, isWhole)), context),
  };
}

const claimKeys = ['so', 'chain', 'only', 'pencil', 'cascade'];

/** Undefined where the step claims nothing. */
function showClaims(map: MapNode, claims: Claims): Claims | undefined {
  return claimKeys.some((key) => keyOf(map, key) !== undefined) ? claims : undefined;
}

/** `fails` needs conclusions, and sets without any are most likely a forgotten `so`. */
function checkClaimKeys(map: MapNode, so: Step['so'], { faults }: Context): void {
  const has = (key: string) => keyOf(map, key) !== undefined;
  const fails = textOf(map, 'fails');
  if (fails?.text === 'true' && !has('so')) {
    faults.error(
      'no-claim',
      fails.span,
      'this step should fail and concludes nothing; add so: and the conclusions that do not follow',
    );
  } else if (fails?.text === 'true' && so?.kind === 'all') {
    faults.error(
      'so-all',
      textOf(map, 'so')!.span,
      'so: all stands for what the argument proves, and this step should fail; name the conclusions',
    );
  }
  const sets = keyOf(map, 'from') ?? keyOf(map, 'deadly');
  if (sets !== undefined && !claimKeys.some(has)) {
    faults.warning(
      'no-conclusion',
      sets.span,
      `"${sets.text}" names sets and nothing is concluded from them; add so: and the conclusions`,
    );
  }
}

function readFrom(map: MapNode, context: Context): readonly Located<SetName>[] {
  const node = textOf(map, 'from');
  const sets = node === undefined ? undefined : readNotation(node, parseSets, context);
  return (sets ?? []).map(({ name, at, length }) => ({ value: name, span: spanIn(node!, at, at + length) }));
}

type ReadChain = Located<Chain> & { readonly arrow: Span };

function readChains(map: MapNode, context: Context): readonly ReadChain[] {
  return itemsOf(valueOf(map, 'chain')).flatMap((node): readonly ReadChain[] => {
    const chain = node.kind === 'text' ? readNotation(node, parseChain, context) : undefined;
    return chain === undefined || node.kind !== 'text' ? [] : [{ value: chain, span: node.span, arrow: arrowOf(node) }];
  });
}

/** From the arrow to the end of the chain, the whole chain where it has none. */
function arrowOf(node: TextNode): Span {
  const arrow = node.text.search(/=>|[\u21d2\u2192]/);
  return arrow === -1 ? node.span : spanIn(node, arrow, node.text.trimEnd().length);
}

function readDeadly(map: MapNode, context: Context): Step['deadly'] {
  const node = textOf(map, 'deadly');
  const deadly = node === undefined ? undefined : readNotation(node, parseDeadly, context);
  return deadly === undefined ? undefined : { value: deadly, span: node!.span };
}

function readSo(map: MapNode, context: Context): Pick<Step, 'so' | 'soSpan'> {
  const node = textOf(map, 'so');
  if (node === undefined) return { so: undefined, soSpan: undefined };
  if (/^\s*all\s*$/i.test(node.text)) return { so: { kind: 'all' }, soSpan: node.span };
  const all = /(?:^|[\s,])(all)(?=[\s,]|$)/i.exec(node.text);
  if (all !== null) {
    const at = all.index + all[0].length - 3;
    context.faults.error(
      'so-all',
      spanIn(node, at, at + 3),
      'so: all stands alone, for every removal that the argument proves; leave out the rest or "all"',
    );
    return { so: undefined, soSpan: node.span };
  }
  return { so: withoutDoubles(readConclusions(node, context), context), soSpan: node.span };
}

/** What is said twice most likely was meant otherwise once; it counts once. */
function withoutDoubles(
  conclusions: readonly Located<Conclusion>[] | undefined,
  { grid, faults }: Context,
): Step['so'] {
  const said = new Map<string, Located<Conclusion>>();
  for (const each of conclusions ?? []) {
    const written = printConclusion(grid, each.value);
    const first = said.get(written);
    if (first === undefined) said.set(written, each);
    else
      faults.warning('said-twice', each.span, `${written} stands twice in so; leave one out`, [
        { span: first.span, message: 'the first stands here' },
      ]);
  }
  return conclusions === undefined ? undefined : { kind: 'listed', conclusions: [...said.values()] };
}

function readConclusions(node: TextNode, context: Context): readonly Located<Conclusion>[] | undefined {
  const read = readNotation(node, parseConclusions, context);
  return read?.map(({ conclusion, at, length }) => ({ value: conclusion, span: spanIn(node, at, at + length) }));
}

function readBecause(map: MapNode, { faults }: Context): Step['because'] {
  const node = textOf(map, 'because');
  if (node === undefined) return undefined;
  const name = canonicalName(node.text);
  if (name !== undefined) return { name, written: node.text, span: node.span };
  const near = nearestNames(node.text);
  const mend =
    near.length > 0
      ? `did you mean ${listed(near.map((each) => `"${each}"`))}?`
      : 'a name of your own goes under "called"';
  faults.error('unknown-name', node.span, `no argument is known as ${quoted(node.text)}; ${mend}`);
  return undefined;
}

/** A text, or a list of texts and of maps that hold the text under the same key. */
function readItems<Item>(
  map: MapNode,
  key: 'only' | 'pencil' | 'cascade',
  context: Context,
  read: (node: TextNode, at: CascadeItem['at'], item: MapNode | undefined) => Item | undefined,
): readonly Item[] {
  return itemsOf(valueOf(map, key)).flatMap((item: Tree): readonly Item[] => {
    const node = item.kind === 'map' ? textOf(item, key) : item.kind === 'text' ? item : undefined;
    const at = item.kind === 'map' ? timeOf(item, 'at', 'any', context) : undefined;
    const built = node === undefined ? undefined : read(node, at, item.kind === 'map' ? item : undefined);
    return built === undefined ? [] : [built];
  });
}

function readCascadeItem(
  node: TextNode,
  at: CascadeItem['at'],
  item: MapNode | undefined,
  context: Context,
): CascadeItem | undefined {
  const conclusions = readConclusions(node, context);
  const because = item === undefined ? undefined : readBecause(item, context);
  const from = item === undefined ? [] : readFrom(item, context);
  const chains = item === undefined ? [] : readChains(item, context);
  if (conclusions === undefined) return undefined;
  const { grid, faults } = context;
  const so = { kind: 'listed', conclusions } as const;
  checkAgreement({ chains, conclusions: so, named: 'cascade', conclusionsSpan: node.span, grid, faults });
  return { conclusions, at, because, from, chains, span: node.span };
}
