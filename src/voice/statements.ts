/**
 * What a sentence says of the board: cells, placements, removals, places of a digit in a house, names of arguments.
 *
 * English, and meant to be heard loosely. A sentence that supposes something, asks, or weighs cases states nothing; a
 * number that counts things ("four cells") is not a digit; "one" on its own is hardly ever a digit.
 */
import { cellAt, digit, houseAt } from '../grid/geometry.ts';
import type { Cell, Digit, Grid, HouseShape } from '../grid/grid.ts';
import { canonicalName } from '../scene/argument-names.ts';
import type { ArgumentName } from '../techniques/all-techniques.ts';
import { formsOf } from '../timeline/word-forms.ts';
import { counted, hypothetical, placing, refusing, removing, standingVerbs, uncertainNames } from './lexicon.ts';

/** `words`: the span of the sentence's words that say it, last one included. */
export type Statement = { readonly words: readonly [first: number, last: number] } & (
  | { readonly kind: 'cell'; readonly cell: Cell }
  | { readonly kind: 'placed'; readonly digit: Digit; readonly cell: Cell }
  | { readonly kind: 'removed'; readonly digit: Digit; readonly cell: Cell | undefined }
  | { readonly kind: 'places'; readonly digit: Digit; readonly house: HouseShape }
  | { readonly kind: 'name'; readonly name: ArgumentName; readonly isReference: boolean }
);

/** A word, or several that stand for one thing, as it matters here. */
interface Token {
  readonly text: string;
  readonly words: readonly [number, number];
  readonly cell: Cell | undefined;
  readonly house: HouseShape | undefined;
  readonly digit: Digit | undefined;
}

/** The most words in an argument's name. */
const longestName = 5;
/** How far apart the parts of a statement may be, in tokens. */
const near = 4;

/** What one sentence states, in order of its words. */
export function statementsIn(sentence: readonly string[], grid: Grid): readonly Statement[] {
  const tokens = tokensOf(sentence, grid);
  const cells = tokens.flatMap(({ cell, words }): Statement[] =>
    cell === undefined ? [] : [{ kind: 'cell', cell, words }],
  );
  // "We can remove the 8" removes it.
  const removes = tokens.some(({ text }) => removing.has(text));
  const isLoose =
    /\?["')\u201d\u2019]*$/.test(sentence.at(-1) ?? '') ||
    tokens.some(({ text }) => hypothetical.has(text) && !(removes && text === 'can'));
  const clauses = isLoose ? [] : clausesOf(tokens, sentence);
  return [...cells, ...clauses.flatMap(statedIn), ...namesIn(tokens)].sort((a, b) => a.words[0] - b.words[0]);
}

function tokensOf(sentence: readonly string[], grid: Grid): readonly Token[] {
  const forms = formsOf(sentence).filter(({ filler }) => !filler);
  return forms.map(({ form, first, last }, index): Token => {
    const cell = /^r(\d+)c(\d+)$/.exec(form);
    const house = /^([rcb])(\d+)$/.exec(form);
    const kind =
      house === null ? undefined : ({ r: 'row', c: 'column', b: 'box' } as const)[house[1] as 'r' | 'c' | 'b'];
    const isWithin = (text: string | undefined) => Number(text) >= 1 && Number(text) <= grid.size;
    return {
      text: form,
      words: [first, last],
      cell:
        cell !== null && isWithin(cell[1]) && isWithin(cell[2])
          ? cellAt(grid, Number(cell[1]), Number(cell[2]))
          : undefined,
      house: kind === undefined ? undefined : houseAt(grid, kind, Number(house![2])),
      digit: digitAt(
        forms.map(({ form: each }) => each),
        index,
        sentence[first]!,
        grid,
      ),
    };
  });
}

/** The digit that is meant by the form at `index`, if it does not count something. */
function digitAt(forms: readonly string[], index: number, word: string, grid: Grid): Digit | undefined {
  const [, figures, plural] = /^(\d+)(s?)$/.exec(forms[index]!) ?? [];
  if (figures === undefined || Number(figures) < 1 || Number(figures) > grid.size) return undefined;
  const [before, after] = [forms[index - 1] ?? '', forms[index + 1] ?? ''];
  const isPlural = plural === 's';
  if (!isPlural && (counted.has(after) || counted.has(forms[index + 2] ?? ''))) return undefined;
  if (!isPlural && after === 'of') return undefined;
  // "one" is a pronoun far more often than a digit.
  if (!isPlural && /^one\b/i.test(word) && before !== 'a') return undefined;
  return digit(grid, Number(figures));
}

function clausesOf(tokens: readonly Token[], sentence: readonly string[]): readonly (readonly Token[])[] {
  const clauses: Token[][] = [[]];
  for (const token of tokens) {
    clauses.at(-1)!.push(token);
    if (/[,;:.!\u2026\u2013\u2014]["')\u201d\u2019]*$/.test(sentence[token.words[1]]!)) clauses.push([]);
  }
  return clauses;
}

function statedIn(clause: readonly Token[]): Statement[] {
  const isRefused = clause.some(({ text }) => refusing.has(text));
  const isRemoved = clause.some(({ text }, at) => removing.has(text) || isLeaving(clause, at));
  const isPlaced = clause.some(({ text }) => placing.has(text) || standingVerbs.has(text));
  return clause.flatMap((token, index): Statement[] => {
    if (token.digit === undefined) return [];
    const about = { digit: token.digit };
    const cell = nearest(clause, index, (each) => each.cell !== undefined);
    const house = nearest(clause, index, (each) => each.house !== undefined);
    const words = spanOf(token, cell ?? house);
    const found: Statement[] = [];
    if (house?.house !== undefined && cell === undefined)
      found.push({ kind: 'places', ...about, house: house.house, words });
    if (isRemoved || (isRefused && isDenied(clause, index)))
      found.push({ kind: 'removed', ...about, cell: cell?.cell, words });
    else if (!isRefused && isPlaced && cell?.cell !== undefined && !isJoined(clause, index))
      found.push({ kind: 'placed', ...about, cell: cell.cell, words });
    return found;
  });
}

/** "goes from", "goes away", or "goes" at the end: it does not go in. */
function isLeaving(clause: readonly Token[], at: number): boolean {
  return /^go(es)?$/.test(clause[at]!.text) && ['from', 'away', 'out', 'too', undefined].includes(clause[at + 1]?.text);
}

/** The nearest such token, before or after; undefined if another digit stands between. */
function nearest(clause: readonly Token[], index: number, isWanted: (token: Token) => boolean): Token | undefined {
  for (let away = 1; away <= near; away++) {
    for (const at of [index + away, index - away]) {
      const token = clause[at];
      if (token === undefined || !isWanted(token)) continue;
      const between = clause.slice(Math.min(at, index) + 1, Math.max(at, index));
      if (!between.some((each) => each.digit !== undefined)) return token;
    }
  }
  return undefined;
}

function spanOf(token: Token, other: Token | undefined): readonly [number, number] {
  const spans = [token.words, ...(other === undefined ? [] : [other.words])];
  return [Math.min(...spans.map(([first]) => first)), Math.max(...spans.map(([, last]) => last))];
}

/** "not a seven", "no seven", "loses its seven": the refusal comes shortly before the digit. */
function isDenied(clause: readonly Token[], index: number): boolean {
  return clause.slice(Math.max(0, index - near), index).some(({ text }) => refusing.has(text));
}

/** "four or five", "four and five": none of them is placed. */
function isJoined(clause: readonly Token[], index: number): boolean {
  return [clause[index - 1], clause[index + 1]].some(
    (each) => each !== undefined && (each.text === 'or' || each.text === 'and' || each.digit !== undefined),
  );
}

function namesIn(tokens: readonly Token[]): Statement[] {
  const found: Statement[] = [];
  for (let at = 0; at < tokens.length; ) {
    const length = lengthOfName(tokens, at);
    const name = length === 0 ? undefined : canonicalName(textOf(tokens, at, length));
    const before = tokens.slice(Math.max(0, at - 3), at).map(({ text }) => text);
    if (name !== undefined && !before.some((text) => uncertainNames.has(text))) {
      const words = [tokens[at]!.words[0], tokens[at + length - 1]!.words[1]] as const;
      found.push({
        kind: 'name',
        name,
        words,
        isReference: ['the', 'that', 'this', 'our'].includes(before.at(-1) ?? ''),
      });
    }
    at += Math.max(1, length);
  }
  return found;
}

function lengthOfName(tokens: readonly Token[], at: number): number {
  for (let length = Math.min(longestName, tokens.length - at); length > 0; length--) {
    if (canonicalName(textOf(tokens, at, length)) !== undefined) return length;
  }
  return 0;
}

function textOf(tokens: readonly Token[], at: number, length: number): string {
  return tokens
    .slice(at, at + length)
    .map(({ text }) => text)
    .join(' ');
}
