/**
 * Words in the form used for comparison when speech may differ from what was written: numbers as figures, cells and
 * houses in notation however they are spoken ("r three c five", "row three, column five"), and words without meaning
 * marked.
 */
import { figuresAt } from './number-words.ts';

/** One word as compared, and the words of the text that it represents. */
export interface WordForm {
  /** Lower case, without punctuation: `so`, `21`, `r3c5`. */
  readonly form: string;
  /** Indices of words of the text; of `row three` the first is `row`. */
  readonly first: number;
  readonly last: number;
  /**
   * Spoken without meaning anything: `um`, or a word said twice in a row. With or without it, it is the same sentence.
   */
  readonly filler: boolean;
}

/** Common practice of transcripts: what a speaker says while thinking, and what a reader adds or omits. */
const fillers = new Set(
  'um uh er erm eh hmm hm mm mhm ah oh well so now okay ok right alright just actually basically really like'.split(
    ' ',
  ),
);
const fillerPairs = new Set(['you know', 'i mean', 'sort of', 'kind of', 'of course']);

const houseLetters: ReadonlyMap<string, string> = new Map([
  ...['r', 'row'].map((word) => [word, 'r'] as const),
  ...['c', 'col', 'column'].map((word) => [word, 'c'] as const),
  ...['b', 'box'].map((word) => [word, 'b'] as const),
]);

/** The forms of a text's words, in order; a word without a letter or figure has none. */
export function formsOf(words: readonly string[]): readonly WordForm[] {
  const numbered = withFigures(words.flatMap(piecesOf));
  return withFillers(withCells(numbered));
}

interface Piece {
  readonly form: string;
  readonly first: number;
  readonly last: number;
}

/** The letters and figures of one word, split at any other character between them: `X-wing` is two. */
function piecesOf(word: string, index: number): readonly Piece[] {
  const plain = word
    .normalize('NFKC')
    .toLowerCase()
    .replace(/['\u2018\u2019\u02BC]/g, '');
  return plain
    .split(/[^\p{L}\p{N}\p{M}]+/u)
    .filter((form) => form !== '')
    .map((form) => ({ form, first: index, last: index }));
}

function withFigures(pieces: readonly Piece[]): Piece[] {
  const forms = pieces.map(({ form }) => form);
  const read: Piece[] = [];
  for (let at = 0; at < pieces.length; ) {
    const number = figuresAt(forms, at);
    const length = number?.length ?? 1;
    read.push(joined(pieces.slice(at, at + length), number?.figures ?? forms[at]!));
    at += length;
  }
  return read;
}

/** `row 3` is `r3`, `r3` and `c5` are `r3c5`, `7r3c5` is `7` and `r3c5`. */
function withCells(pieces: readonly Piece[]): Piece[] {
  const houses: Piece[] = [];
  for (let at = 0; at < pieces.length; at++) {
    const [piece, next] = [pieces[at]!, pieces[at + 1]];
    const letter = houseLetters.get(piece.form);
    const digits = /^(\d+)(r\d+c\d+)$/.exec(piece.form);
    if (letter !== undefined && next !== undefined && /^\d+$/.test(next.form)) {
      houses.push(joined([piece, next], letter + next.form));
      at++;
    } else if (digits !== null) houses.push({ ...piece, form: digits[1]! }, { ...piece, form: digits[2]! });
    else houses.push(piece);
  }
  const cells: Piece[] = [];
  for (const piece of houses) {
    const before = cells.at(-1);
    if (before !== undefined && /^r\d+$/.test(before.form) && /^c\d+$/.test(piece.form))
      cells[cells.length - 1] = joined([before, piece], before.form + piece.form);
    else cells.push(piece);
  }
  return cells;
}

function withFillers(pieces: readonly Piece[]): WordForm[] {
  return pieces.map((piece, index) => {
    const [before, after] = [pieces[index - 1]?.form, pieces[index + 1]?.form];
    const { form } = piece;
    const isPair = fillerPairs.has(`${form} ${after}`) || fillerPairs.has(`${before} ${form}`);
    return { ...piece, filler: fillers.has(form) || isPair || form === before };
  });
}

function joined(pieces: readonly Piece[], form: string): Piece {
  return { form, first: pieces[0]!.first, last: pieces.at(-1)!.last };
}
