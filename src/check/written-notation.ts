/**
 * Formal notation in the words of a step: in its title, its sentence, its notes and labels. Viewers read it as claims, so
 * it is held against the position that the step reaches.
 *
 * A sentence that supposes something, weighs cases or asks claims nothing. What cannot be read as notation is text.
 */
import type { Grid } from '../grid/grid.ts';
import { parseChain } from '../grid/notation/chain.ts';
import { parseConclusions } from '../grid/notation/conclusions.ts';
import type { Chain, Conclusion } from '../grid/terms.ts';
import type { Step } from '../scene/scene.ts';

export interface WrittenText {
  readonly where: 'title' | 'say' | 'note' | 'label';
  /** As it is written: `r4c5≠5`. */
  readonly text: string;
  readonly conclusions: readonly Conclusion[];
  readonly chain: Chain | undefined;
}

const sentences = /[^.?!…;]+[.?!…;]?/g;
const loose =
  /\?|\b(?:if|suppos\w*|assum\w*|imagin\w*|would|were|could|might|may|can|unless|whether|until|when|or|try)\b/i;

const cells = 'r[1-9]+c[1-9]+';
/** Nodes, at least two, with links between them, and what follows an arrow. */
const chains = new RegExp(
  String.raw`\(\d+(?:[=-]\d+)*\)${cells}(?:\s*[=-]\s*(?:\(\d+(?:[=-]\d+)*\))?${cells})+(?:\s*(?:=>|⇒|→)\s*${cells}(?:<>|≠|=)\d+)*`,
  'g',
);
const conclusions = new RegExp(String.raw`(?<![\w)=<>≠-])${cells}(?:<>|≠|=)\d+(?![\w(=-])`, 'g');

/** All notation that the step's words hold, in order. */
export function notationIn(grid: Grid, step: Step): readonly WrittenText[] {
  const texts: { readonly where: WrittenText['where']; readonly text: string }[] = [];
  if (step.title !== undefined) texts.push({ where: 'title', text: step.title });
  if (step.say !== undefined) texts.push({ where: 'say', text: step.say.value });
  for (const { mark } of step.show ?? []) {
    if (mark.kind === 'note' || mark.kind === 'label') texts.push({ where: mark.kind, text: mark.text });
  }
  return texts.flatMap(({ where, text }) =>
    [...text.matchAll(sentences)]
      .filter(([sentence]) => !loose.test(sentence))
      .flatMap(([sentence]) => statedIn(grid, sentence).map((stated) => ({ where, ...stated }))),
  );
}

function statedIn(grid: Grid, sentence: string): Omit<WrittenText, 'where'>[] {
  const found: Omit<WrittenText, 'where'>[] = [];
  const rest = sentence.replace(chains, (text) => {
    const read = parseChain(grid, text);
    if (read.ok) found.push({ text, conclusions: read.value.concludes, chain: read.value });
    return ' '.repeat(text.length);
  });
  for (const [text] of rest.matchAll(conclusions)) {
    const read = parseConclusions(grid, text);
    if (read.ok) found.push({ text, conclusions: read.value.map(({ conclusion }) => conclusion), chain: undefined });
  }
  return found;
}
