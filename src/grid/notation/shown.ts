/**
 * Notation as viewers and listings show it, beside the form that is typed and that stands in JSON: `r4c5≠5` for
 * `r4c5<>5`, and an either/or as one says it.
 */

const either = /\beither((?: \d+r\d+c\d+)+)/g;

/**
 * A text with the conclusions in it as they are shown: `r1c7≠7`, `r8c4=8`, `either 7r1c5 or 7r2c8`. For what is read,
 * never for what is to be typed or pasted.
 */
export function asShown(text: string): string {
  return text.replaceAll('<>', '≠').replace(either, (_, candidates: string) => `either ${alternatives(candidates)}`);
}

/** `7r1c5, 7r2c8 or 7r3c3`. */
function alternatives(candidates: string): string {
  const all = candidates.trim().split(' ');
  return all.length === 1 ? all.join('') : `${all.slice(0, -1).join(', ')} or ${all.at(-1)}`;
}
