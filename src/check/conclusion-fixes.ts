/**
 * Fixes of a step by what it concludes: less, or what its argument proves in fact.
 */
import type { Grid } from '../grid/grid.ts';
import { compactly } from '../grid/notation/compact.ts';
import { printConclusion, printConclusions } from '../grid/notation/print.ts';
import type { Conclusion } from '../grid/terms.ts';
import type { Located } from '../scene/scene.ts';
import { type Edit, takenOut } from './scene-text.ts';
import type { Note, TextFix } from './text-fixes.ts';
import type { CheckedStep } from './verdict.ts';

/** The conclusions of a false step that have no counterexample, if others have. */
export function* heldTakenOut(
  text: string,
  grid: Grid,
  { step, conclusions }: CheckedStep,
  note: Note,
): Generator<TextFix> {
  if (step.so?.kind !== 'listed') return;
  const held = conclusions.filter((each) => each.counterexample === undefined).map((each) => each.text);
  const isHeld = (conclusion: Conclusion) => held.includes(printConclusion(grid, conclusion));
  const list = step.so.conclusions;
  if (held.length === 0 || list.every(({ value }) => isHeld(value))) return;
  const what = `${compactly(held).join(' ')} taken out`;
  yield { what, edits: [note(what), ...withoutConclusions(text, grid, list, isHeld)] };
}

/** If the argument proves none of the removals in `so`, but others: those in place of them. */
export function* conclusionsProvedInstead(
  text: string,
  grid: Grid,
  { step, conclusions, missed }: CheckedStep,
  note: Note,
): Generator<TextFix> {
  const { so, chains } = step;
  const own = conclusions.filter(({ origin }) => origin === 'so');
  if (so?.kind !== 'listed' || missed.length === 0 || own.some(({ verdict }) => verdict === 'proved')) return;
  const [first, last] = [so.conclusions[0], so.conclusions.at(-1)];
  if (first === undefined || last === undefined) return;
  const proved = printConclusions(
    grid,
    missed.map((candidate): Conclusion => ({ kind: 'impossible', candidate })),
  ).join(' ');
  const what = `${proved} in place of ${compactly(own.map((each) => each.text)).join(' ')}`;
  yield {
    what,
    edits: [note(what), { start: first.span.start, end: last.span.end, text: proved }, ...withoutArrows(text, chains)],
  };
}

/**
 * Conclusions that do not follow are removed; a chain must then not end with them either. First only the false ones,
 * since the rest may follow without them.
 */
export function* conclusionsTakenOut(
  text: string,
  grid: Grid,
  { step, conclusions }: CheckedStep,
  note: Note,
): Generator<TextFix> {
  const arrows = withoutArrows(text, step.chains);
  const lists = [
    ...(step.so?.kind === 'listed' ? [step.so.conclusions] : []),
    ...step.cascade.map((item) => item.conclusions),
  ];
  for (const kinds of [['false'], ['false', 'unproved']]) {
    const bad = conclusions.filter((each) => kinds.includes(each.verdict)).map((each) => each.text);
    const isBad = (conclusion: Conclusion) => bad.includes(printConclusion(grid, conclusion));
    const edits = lists.flatMap((list) => {
      const isLeft = list.some((each) => !isBad(each.value));
      return isLeft ? withoutConclusions(text, grid, list, isBad) : [];
    });
    if (edits.length === 0) continue;
    const what = `${compactly(bad).join(' ')} taken out`;
    yield { what, edits: [note(what), ...edits, ...arrows] };
  }
}

/** Each text that states a bad conclusion is rewritten with only the good ones among its conclusions. */
function withoutConclusions(
  text: string,
  grid: Grid,
  list: readonly Located<Conclusion>[],
  isBad: (conclusion: Conclusion) => boolean,
): Edit[] {
  const spans = new Map(list.filter((each) => isBad(each.value)).map((each) => [each.span.start, each.span]));
  return [...spans.values()].map((span) => {
    const good = list.filter((each) => each.span.start === span.start && !isBad(each.value));
    if (good.length === 0) return takenOut(text, span);
    return { ...span, text: compactly(good.map((each) => printConclusion(grid, each.value))).join(' ') };
  });
}

/** What stands after the arrow of a chain must not disagree with `so`. */
function withoutArrows(text: string, chains: CheckedStep['step']['chains']): Edit[] {
  return chains.flatMap(({ span }): Edit[] => {
    const arrow = text.slice(span.start, span.end).search(/\s*(=>|⇒|→)/);
    return arrow < 0 ? [] : [{ start: span.start + arrow, end: span.end, text: '' }];
  });
}
