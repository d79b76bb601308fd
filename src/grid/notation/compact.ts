/**
 * Conclusions in notation, those of one cell written together: for lists that are read, not parsed one by one.
 */

/** Removals of one cell together, in notation: `r4c1<>4 r4c1<>8` becomes `r4c1<>48`. */
export function compactly(conclusions: readonly string[]): string[] {
  const compact = new Map<string, string>();
  for (const text of conclusions) {
    const [cell, digit] = text.split('<>');
    const key = digit === undefined ? text : `${cell}<>`;
    compact.set(key, `${compact.get(key) ?? ''}${digit ?? ''}`);
  }
  return [...compact].map(([key, digits]) => `${key}${digits}`);
}
