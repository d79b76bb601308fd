/**
 * What a step says of its argument and of what follows from it: each key's description for an editor, and its reader.
 */
import { parseChain } from '../grid/notation/chain.ts';
import { parseConclusions } from '../grid/notation/conclusions.ts';
import { parseDeadly } from '../grid/notation/deadly.ts';
import { parseOnly, parsePencil } from '../grid/notation/lists.ts';
import { printConclusion } from '../grid/notation/print.ts';
import { parseSets } from '../grid/notation/sets.ts';
import type { Chain, Conclusion, SetName } from '../grid/terms.ts';
import { argumentNames } from '../techniques/all-techniques.ts';
import { canonicalName, nearestNames } from './argument-names.ts';
import type { ReadList, ReadOf } from './definition.ts';
import type { Span } from './diagnostic.ts';
import { type Faults, listed, quoted } from './faults.ts';
import { beatTime } from './language-times.ts';
import { notation, text } from './language-values.ts';
import { type Context, parsed, readNotation, saysAll } from './reading.ts';
import type { Located, So, Step } from './scene.ts';
import { eachOf, either, keys, listOf, type Opening, optional } from './structures.ts';
import { meaningOfUnjudged } from './unjudged-names.ts';
import { spanIn, type TextNode } from './yaml-tree.ts';

type GridNeeds = Pick<Context, 'grid' | 'faults'>;

/** A chain with the place of its conclusions: from its arrow on, or the whole chain if it has none. */
export type ArrowedChain = Located<Chain> & { readonly arrow: Span };

export const becauseText = () =>
  text(
    {
      description: 'The name of the argument, in standard terminology. If it is given it must be right.',
      suggestions: { words: argumentNames, besides: 'Any usual spelling of such a name.' },
    },
    readBecause,
  );

function readBecause(
  node: TextNode,
  { faults }: { readonly faults: Faults },
): NonNullable<Step['because']> | undefined {
  const name = canonicalName(node.text);
  if (name !== undefined) return { name, written: node.text, span: node.span };
  const means = meaningOfUnjudged(node.text);
  if (means !== undefined) {
    faults.error(
      'unknown-name',
      node.span,
      `${quoted(node.text)} ${means}; the name itself can be shown with "called"`,
    );
    return undefined;
  }
  const near = nearestNames(node.text);
  const fix =
    near.length > 0
      ? `did you mean ${listed(near.map((each) => `"${each}"`))}?`
      : 'a name of your own goes under "called"';
  faults.error('unknown-name', node.span, `no argument is known as ${quoted(node.text)}; ${fix}`);
  return undefined;
}

export const fromText = () =>
  notation(
    'The sets that the conclusion is drawn from: cells, places of a digit in a house, or what a step proved.',
    ['7c58', 'r9c13', 'step towers'],
    (node, needs: GridNeeds): readonly Located<SetName>[] | undefined =>
      readNotation(node, parseSets, needs)?.map(({ name, at, length }) => ({
        value: name,
        span: spanIn(node, at, at + length),
      })),
  );

const chainText = () =>
  notation(
    'A chain: = is a strong link, - a weak one; => and conclusions may follow.',
    ['(7)r1c5=r9c5-r9c8=r2c8', '(7=8)r1c2-(8=5)r4c2-(5=7)r4c9'],
    (node, needs: GridNeeds): ArrowedChain | undefined => {
      const chain = readNotation(node, parseChain, needs);
      return chain === undefined ? undefined : { value: chain, span: node.span, arrow: arrowOf(node) };
    },
  );

function arrowOf(node: TextNode): Span {
  const arrow = node.text.search(/=>|[\u21d2\u2192]/);
  return arrow === -1 ? node.span : spanIn(node, arrow, node.text.trimEnd().length);
}

export const chainTexts = () => either([chainText(), listOf(chainText())], 'A chain of links, or a list of chains.');

/** Those chains that can be read. */
export function readChains(
  written: ReadOf<ReturnType<typeof chainTexts>> | undefined,
  needs: GridNeeds,
): readonly ArrowedChain[] {
  return eachOf(written).flatMap((chain) => chain?.read(needs) ?? []);
}

export const deadlyText = () =>
  notation(
    'A deadly pattern whose guardians are a set: cells with their digits, or grid.',
    ['12r34c58', 'grid', 'grid without 7r1c5'],
    (node, needs: GridNeeds): NonNullable<Step['deadly']> | undefined => {
      const deadly = readNotation(node, parseDeadly, needs);
      return deadly === undefined ? undefined : { value: deadly, span: node.span };
    },
  );

export const soText = () =>
  notation(
    'The conclusions; all stands for every removal that the argument proves.',
    ['r1c79<>7', 'r8c4=8', 'all'],
    readSo,
  );

/** The only place that knows how `so: all` is written. */
function readSo(node: TextNode, needs: GridNeeds): So | undefined {
  if (saysAll(node)) return { kind: 'all' };
  const all = /(?:^|[\s,])(all)(?=[\s,]|$)/i.exec(node.text);
  if (all === null) return withoutDoubles(readConclusions(node, needs), needs);
  const at = all.index + all[0].length - 3;
  const message = 'so: all is used on its own, for every removal that the argument proves; leave out the rest or "all"';
  needs.faults.error('so-all', spanIn(node, at, at + 3), message);
  return undefined;
}

/** A conclusion given twice is most likely a slip; it counts once. */
function withoutDoubles(
  conclusions: readonly Located<Conclusion>[] | undefined,
  { grid, faults }: GridNeeds,
): So | undefined {
  const said = new Map<string, Located<Conclusion>>();
  for (const each of conclusions ?? []) {
    const written = printConclusion(grid, each.value);
    const first = said.get(written);
    if (first === undefined) said.set(written, each);
    else
      faults.warning('said-twice', each.span, `${written} appears twice in so; leave one out`, [
        { span: first.span, message: 'the first is here' },
      ]);
  }
  return conclusions === undefined ? undefined : { kind: 'listed', conclusions: [...said.values()] };
}

/** Conclusions, each with its place. */
export function readConclusions(node: TextNode, needs: GridNeeds): readonly Located<Conclusion>[] | undefined {
  const read = readNotation(node, parseConclusions, needs);
  return read?.map(({ conclusion, at, length }) => ({ value: conclusion, span: spanIn(node, at, at + length) }));
}

const onlyText = () => notation('The only places of a digit in a house.', ['4b5 in r4c46'], parsed(parseOnly));

const onlyItem = keys('an item of only', 'Places, and when they are shown.', {
  only: onlyText(),
  at: optional(beatTime()),
});

const pencilText = () => notation('All the digits still possible in a cell.', ['2358r9c1 28r9c3'], parsed(parsePencil));

const pencilItem = keys('an item of pencil', 'Candidate lists, and when they are shown.', {
  pencil: pencilText(),
  at: optional(beatTime()),
});

const cascadeText = () =>
  notation('Placements and removals, one after the other.', ['r9c8=1 r6c9=1 r4c79<>6'], readConclusions);

const cascadeItem = keys('an item of cascade', 'Placements and removals with a time or an argument of their own.', {
  cascade: cascadeText(),
  at: optional(beatTime()),
  because: optional(becauseText()),
  from: optional(fromText()),
  chain: optional(chainTexts()),
});

/** A text, or a list of texts and of maps that contain the text with a time of its own. */
function claimItems<Text extends Opening, Item extends Opening>(each: Text, item: Item, description: string) {
  return either([each, listOf(either([each, item]))], description);
}

export const onlyItems = () =>
  claimItems(onlyText(), onlyItem, 'Places written down: only there can the digit of the house be.');

export const pencilItems = () =>
  claimItems(pencilText(), pencilItem, 'Candidate lists written down: these are all the digits still possible.');

export const cascadeItems = () =>
  claimItems(
    cascadeText(),
    cascadeItem,
    'Placements and removals in order, each by a single or by locked candidates from all before it.',
  );

/** One item of each as written: a text, or a map that contains it. */
export type OnlyWritten = ItemOf<typeof onlyItems>;
export type PencilWritten = ItemOf<typeof pencilItems>;
export type CascadeWritten = ItemOf<typeof cascadeItems>;

type ItemOf<Items extends () => unknown> =
  Extract<ReadOf<ReturnType<Items>>, { kind: 'list' }> extends ReadList<infer Item> ? Item | undefined : never;
