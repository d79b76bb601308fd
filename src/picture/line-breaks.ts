/**
 * Where a line may end. Between words; in Chinese and Japanese, which have no spaces, between any two letters except
 * for the most common rules about what must not begin or end a line (after Unicode Standard Annex #14, classes ID, CL,
 * NS, OP; the list of marks is from memory).
 */
import { linksOf } from './notation-runs.ts';

/** A piece of text that is not broken, and whether a space comes before it. */
export interface Piece {
  readonly text: string;
  readonly isSpaced: boolean;
}

const ideographic = /[\p{Script=Han}\p{Script=Hiragana}\p{Script=Katakana}\u3000-\u303f\uff00-\uffef]/u;
const neverFirst = /[、。，．・：；？！）」』】〕〉》”’ー々ぁぃぅぇぉっゃゅょァィゥェォッャュョ,.!?)\]}:;%]/u;
const neverLast = /[（「『【〔〈《“‘([{]/u;

/** The pieces of a text in order. */
export function piecesOf(text: string): Piece[] {
  return text
    .split(/\s+/)
    .filter((word) => word !== '')
    .flatMap((word) => spaced(ideographic.test(word) ? cutBetween(word, mayBreak) : [word]));
}

/**
 * A piece that is wider than its room, cut as a last resort: a chain before its joints, and if that is not enough,
 * between any letters.
 */
export function cutSmall({ text, isSpaced }: Piece, fits: (text: string) => boolean): Piece[] {
  const parts = linksOf(text).flatMap((part) => (fits(part) ? [part] : cutBetween(part, () => true)));
  return parts.map((part, index) => ({ text: part, isSpaced: index === 0 && isSpaced }));
}

/** Whether the text runs from right to left, by its first letter (Unicode Standard Annex #9, rule P2). */
export function isRightToLeft(text: string): boolean {
  const first = /\p{L}/u.exec(text)?.[0];
  return (
    first !== undefined &&
    /[\u0590-\u08ff\ufb1d-\ufdff\ufe70-\ufeff]|[\u{10800}-\u{10fff}\u{1e800}-\u{1efff}]/u.test(first)
  );
}

function spaced(parts: readonly string[]): Piece[] {
  return parts.map((text, index) => ({ text, isSpaced: index === 0 }));
}

function mayBreak(before: string, after: string): boolean {
  if (!ideographic.test(before) && !ideographic.test(after)) return false;
  return !neverLast.test(before) && !neverFirst.test(after);
}

/** Letters keep the marks that belong to them (accents, vowel signs, joiners). */
function cutBetween(word: string, may: (before: string, after: string) => boolean): string[] {
  const letters = word.match(/\P{M}(?:[\p{M}\u200c]|\u200d\P{M})*/gu) ?? [word];
  const parts: string[] = [];
  letters.forEach((letter, index) => {
    const before = letters[index - 1];
    if (before === undefined || may(before, letter)) parts.push(letter);
    else parts.push(`${parts.pop() ?? ''}${letter}`);
  });
  return parts;
}
