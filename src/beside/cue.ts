/**
 * A cue of text, and what makes it readable.
 *
 * Limits, common practice of broadcasters: two lines of 42 characters, 17 characters a second if there is time for it
 * and 20 at most, on screen for at least one second and at most seven.
 */

/** On screen from `from` to `to`, in milliseconds. */
export interface TextCue {
  readonly name: string | undefined;
  readonly from: number;
  readonly to: number;
  /** One or two. */
  readonly lines: readonly string[];
}

export const limits = {
  lineLength: 42,
  lines: 2,
  charactersASecond: 20,
  easyCharactersASecond: 17,
  shortest: 1000,
  longest: 7000,
} as const;

/** Characters as they are read: without direction marks, a letter with its accents as one. */
export function lengthOf(text: string): number {
  return [...text.normalize('NFC')].filter((sign) => !/[\p{M}\p{Cf}]/u.test(sign)).length;
}

/** Characters a second. */
export function speedOf({ lines, from, to }: TextCue): number {
  return (1000 * lengthOf(lines.join(' '))) / Math.max(1, to - from);
}
