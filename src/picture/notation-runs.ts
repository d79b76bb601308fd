/**
 * Cells, candidates, houses, conclusions and links within a sentence: where they are, so that they can be set as
 * notation. The forms are those of section 1 of the language.
 */

/** A part of a text, set in one way. */
export interface Run {
  readonly text: string;
  readonly isNotation: boolean;
}

const place = String.raw`(?:[rR]\d+[cC]\d+|[bB]\d+[pP]\d+|[rcbd]\d+)`;
const digits = String.raw`(?:\(\d+(?:[-=]\d+)*\)|\d+)`;
const node = `(?:${digits}?${place})`;
const joint = '(?:<>|[-=|≠−–])';
const notation = new RegExp(`(?<![A-Za-z0-9])[-+]?${node}(?:${joint}(?:${node}|${digits}))*(?![A-Za-z0-9])`, 'gu');
/** Before the joint of a chain: the only place where one wider than its room may be broken. */
const beforeJoint = /(?<=[\d)])(?=(?:<>|[-=|≠−–])(?:\(\d+(?:[-=]\d+)*\)|\d*)[rRcCbB])/;

/** The text's parts, in order; together they are the text. */
export function runsOf(text: string): Run[] {
  const runs: Run[] = [];
  let from = 0;
  for (const match of text.matchAll(notation)) {
    if (match.index > from) runs.push({ text: text.slice(from, match.index), isNotation: false });
    runs.push({ text: match[0], isNotation: true });
    from = match.index + match[0].length;
  }
  if (from < text.length) runs.push({ text: text.slice(from), isNotation: false });
  return runs;
}

/** A chain cut before each of its joints; anything else unchanged. */
export function linksOf(text: string): string[] {
  return text.split(beforeJoint);
}
