/**
 * The place in the file of each character of a scalar's text. Quotes, escapes, indentation and folding make the text
 * differ from its source; a fault in the third line of a folded text must still point to that line.
 */

/**
 * For each UTF-16 unit of `text` its offset in `file`, and one more: the end of the text.
 * `start` to `end` is the scalar's source, quotes or block header included.
 */
export function offsetsOf(
  file: string,
  start: number,
  end: number,
  text: string,
  style: ScalarStyle,
): readonly number[] {
  const offsets: number[] = [];
  let at = start;
  if (style === 'block') {
    const header = file.indexOf('\n', start);
    at = header === -1 ? end : header + 1;
  } else if (style !== 'plain') at++;
  // Source and text have the same characters in the same order, except for white space and escapes.
  for (let unit = 0; unit < text.length; ) {
    if (isSpace(text[unit]!) && !(style === 'double' && file[at] === '\\')) {
      offsets.push(at);
      if (at < end && isSpace(file[at]!)) at++;
      unit++;
      continue;
    }
    while (at < end && (isSpace(file[at]!) || isLineEscape(file, at, style))) at += isSpace(file[at]!) ? 1 : 2;
    const taken = style === 'double' && file[at] === '\\' ? escapeAt(file, at) : { source: 1, text: 1 };
    for (let part = 0; part < taken.text && unit < text.length; part++, unit++) offsets.push(at);
    at += style === 'single' && file[at] === "'" ? 2 : taken.source;
  }
  offsets.push(text === '' ? start : Math.min(at, end));
  return offsets;
}

export type ScalarStyle = 'plain' | 'single' | 'double' | 'block';

function isSpace(sign: string): boolean {
  return sign === ' ' || sign === '\n' || sign === '\r' || sign === '\t';
}

/** A backslash at a line's end joins the lines and adds nothing to the text. */
function isLineEscape(file: string, at: number, style: ScalarStyle): boolean {
  return style === 'double' && file[at] === '\\' && /[\r\n]/.test(file[at + 1] ?? '');
}

/** How many units an escape takes in the source, and in the text (YAML 1.2.2, section 5.7). */
function escapeAt(file: string, at: number): { readonly source: number; readonly text: number } {
  switch (file[at + 1]) {
    case 'x':
      return { source: 4, text: 1 };
    case 'u':
      return { source: 6, text: 1 };
    case 'U':
      return { source: 10, text: Number.parseInt(file.slice(at + 2, at + 10), 16) > 0xffff ? 2 : 1 };
    default:
      return { source: 2, text: 1 };
  }
}
