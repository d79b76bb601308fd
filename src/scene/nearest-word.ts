/**
 * The known word that a misspelt one was most likely meant to be.
 */
import { distance } from 'fastest-levenshtein';

/**
 * The known words nearest to `word`, nearest first, at most `most`; words that differ by more than about a third of the
 * letters are left out. Case is ignored.
 */
export function nearestWords(word: string, known: readonly string[], most = 1): readonly string[] {
  const lower = word.toLowerCase();
  const allowed = Math.max(1, Math.floor(word.length * 0.4));
  return known
    .map((each) => ({ each, steps: stepsBetween(lower, each.toLowerCase()) }))
    .filter(({ steps, each }) => steps <= allowed && steps < each.length)
    .sort((a, b) => a.steps - b.steps)
    .slice(0, most)
    .map(({ each }) => each);
}

/** `; did you mean "circle"?` for a message, or nothing if no known word is near. */
export function didYouMean(word: string, known: readonly string[]): string {
  const [near] = nearestWords(word, known);
  return near === undefined ? '' : `; did you mean "${near}"?`;
}

/** Edits between two words; two neighbouring letters in the wrong order count as one. */
function stepsBetween(a: string, b: string): number {
  const steps = distance(a, b);
  if (a.length !== b.length || steps !== 2) return steps;
  const first = [...a].findIndex((letter, index) => letter !== b[index]);
  return a[first] === b[first + 1] && a[first + 1] === b[first] ? 1 : steps;
}
