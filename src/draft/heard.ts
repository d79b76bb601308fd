/**
 * What a narration speaks of: cells, houses, digits and arguments heard in its words, sentence by sentence.
 */
import { cellAt } from '../grid/geometry.ts';
import type { Grid } from '../grid/grid.ts';
import { canonicalName } from '../scene/argument-names.ts';
import type { Fraction } from '../scene/fraction.ts';
import type { Narration } from '../timeline/narration.ts';
import { figuresAt } from '../timeline/number-words.ts';
import { startOfWord } from '../timeline/phrases.ts';
import type { Phrases } from './phrases.ts';

/** `cell 40`, `row 5`, `column 5`, `box 5`, `digit 7`, `name skyscraper`. */
export type Heard = string;

/** A sentence, or as much of one as is in a cue without a full stop. */
export interface Utterance {
  /** When its first word begins. */
  readonly seconds: Fraction;
  readonly text: string;
  /** Each once. */
  readonly heard: ReadonlySet<Heard>;
}

/** The words that a language has for lines, boxes, digits and arguments. */
interface Lexicon {
  readonly grid: Grid;
  readonly numbers: ReadonlyMap<string, number>;
  readonly lines: ReadonlyMap<string, 'row' | 'column' | 'box'>;
  readonly names: ReadonlyMap<string, string>;
}

/** The most words in an argument's name. */
const longestName = 5;

/** The utterances of the narration in order. */
export function utterancesOf(narration: Narration, phrases: Phrases, grid: Grid): readonly Utterance[] {
  const lexicon = lexiconOf(phrases, grid);
  const words = narration.cues.flatMap((cue) =>
    cue.words.map(({ text }, index) => ({
      text,
      seconds: startOfWord(cue, index),
      endsCue: index === cue.words.length - 1,
    })),
  );
  const isPunctuated = words.some(({ text }) => endsSentence(text));
  const utterances: Utterance[] = [];
  let first = 0;
  for (const [index, { text, endsCue }] of words.entries()) {
    const isEnd = isPunctuated ? endsSentence(text) : endsCue;
    if (!isEnd && index < words.length - 1) continue;
    const own = words.slice(first, index + 1);
    const spoken = own.map((word) => word.text);
    utterances.push({ seconds: own[0]!.seconds, text: spoken.join(' '), heard: heardIn(spoken, lexicon) });
    first = index + 1;
  }
  return utterances;
}

function endsSentence(word: string): boolean {
  return /[.?!\u2026]["')\u201d\u2019]*$/.test(word);
}

function lexiconOf({ words, parts, names }: Phrases, grid: Grid): Lexicon {
  const numbers = new Map<string, number>();
  for (const [value, word] of words.numbers.entries()) numbers.set(plain(word), value);
  for (const list of [words.digit, words.digits]) {
    for (const [index, word] of list.entries()) numbers.set(plain(word), index + 1);
  }
  const lines = new Map<string, 'row' | 'column' | 'box'>();
  for (const kind of ['row', 'column', 'box'] as const) {
    for (const key of [kind, kind === 'box' ? 'boxes' : (`${kind}s` as const)] as const) {
      const [word] = parts[key].split('{');
      if (word !== undefined && word.trim() !== '') lines.set(plain(word), kind);
    }
  }
  const own = [...names].map(([canonical, name]) => [piecesOf(name).join(' '), canonical] as const);
  return { grid, numbers, lines, names: new Map(own) };
}

/** Lower case without punctuation at its ends. */
function plain(word: string): string {
  return piecesOf(word).join('');
}

/** Letters and figures, split at other characters. */
function piecesOf(word: string): string[] {
  return word
    .normalize('NFKC')
    .toLowerCase()
    .replace(/['\u2019]/g, '')
    .split(/[^\p{L}\p{N}\p{M}]+/u)
    .filter((piece) => piece !== '');
}

function heardIn(words: readonly string[], lexicon: Lexicon): ReadonlySet<Heard> {
  const pieces = words.flatMap((word) => piecesOf(word)).flatMap(apart);
  return new Set([...namesIn(pieces, lexicon), ...placesIn(pieces, lexicon)]);
}

/** Splits `r3c5` into `r 3 c 5`; leaves `7s` unchanged. */
function apart(piece: string): string[] {
  const cell = /^r(\d)c(\d)$/.exec(piece);
  return cell === null ? [piece] : ['r', cell[1]!, 'c', cell[2]!];
}

function namesIn(pieces: readonly string[], { names }: Lexicon): Heard[] {
  const heard: Heard[] = [];
  for (const at of pieces.keys()) {
    for (let length = longestName; length > 0; length--) {
      const text = pieces.slice(at, at + length).join(' ');
      const name = names.get(text) ?? (at + length <= pieces.length ? canonicalName(text) : undefined);
      if (name === undefined) continue;
      heard.push(`name ${name}`);
      break;
    }
  }
  return heard;
}

/** Lines and boxes with the numbers after them, a cell if a row and a column come together, and digits on their own. */
function placesIn(pieces: readonly string[], { grid, numbers, lines }: Lexicon): Heard[] {
  const heard: Heard[] = [];
  let row: { readonly number: number; readonly end: number } | undefined;
  for (let at = 0; at < pieces.length; ) {
    const kind = lines.get(pieces[at]!) ?? ({ r: 'row', c: 'column', b: 'box' } as const)[pieces[at]!];
    const number = kind === undefined ? undefined : numberAt(pieces, at + 1, numbers);
    if (kind !== undefined && number !== undefined && number.value >= 1 && number.value <= grid.size) {
      const end = at + 1 + number.length;
      heard.push(`${kind} ${number.value}`);
      if (kind === 'column' && row !== undefined && at - row.end <= 1)
        heard.push(`cell ${cellAt(grid, row.number, number.value)}`);
      row = kind === 'row' ? { number: number.value, end } : undefined;
      at = end;
      continue;
    }
    const alone = numberAt(pieces, at, numbers);
    if (alone !== undefined && alone.value >= 1 && alone.value <= grid.size) heard.push(`digit ${alone.value}`);
    at += alone?.length ?? 1;
  }
  return heard;
}

function numberAt(
  pieces: readonly string[],
  at: number,
  numbers: ReadonlyMap<string, number>,
): { readonly value: number; readonly length: number } | undefined {
  const own = numbers.get(pieces[at] ?? '');
  if (own !== undefined) return { value: own, length: 1 };
  const figures = /^(\d+)s?$/.exec(pieces[at] ?? '');
  if (figures !== null) return { value: Number(figures[1]), length: 1 };
  const english = figuresAt(pieces, at);
  return english === undefined ? undefined : { value: Number.parseInt(english.figures, 10), length: english.length };
}
