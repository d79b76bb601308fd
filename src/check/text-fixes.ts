/**
 * What would fix a step in the text of its scene, the mildest first: the edits, and what the comment says about them.
 */
import { type Cell, candidateAt, cellOf, digitOf, type Grid } from '../grid/grid.ts';
import { compactly } from '../grid/notation/compact.ts';
import { printCandidate, printConclusion, printOnly, printPencil } from '../grid/notation/print.ts';
import type { Conclusion } from '../grid/terms.ts';
import type { Located, Step } from '../scene/scene.ts';
import { idsBefore, stepText } from '../scene/step-text.ts';
import { commentedOut, type Edit, itemIndent, lineStart, linesBefore, takenOut } from './scene-text.ts';
import { type CheckedStep, stepsBefore } from './verdict.ts';

export interface TextFix {
  readonly what: string;
  readonly edits: readonly Edit[];
}

/** The comment on a step that is commented out. */
export const takenOutWhole = 'taken out, since it could not be fixed';

/** `ids`: of all steps of the scene. Yields nothing if the step is in flow style. */
export function* textFixes(
  text: string,
  grid: Grid,
  checked: CheckedStep,
  ids: ReadonlySet<string>,
): Generator<TextFix> {
  const { step } = checked;
  const indent = itemIndent(text, step.span.start);
  if (indent === undefined) return;
  const note = (what: string) => linesBefore(text, step.span.start, [`${indent}# fixed: ${what}`]);
  if (step.fails)
    yield {
      what: 'it holds, so it is not marked as failing',
      edits: [note('it holds'), ...withoutKey(text, step, 'fails')],
    };
  yield* renamed(text, checked, note);
  yield* movedBehind(text, grid, checked, note);
  yield* stepsPut(text, checked, ids, indent);
  yield* setsAdded(text, checked, note);
  yield* listsFilled(grid, checked, note);
  yield* conclusionsTakenOut(text, grid, checked, note);
  const whole = commentedOut(text, step.span);
  const reason = `${indent}# ${takenOutWhole}:`;
  yield {
    what: takenOutWhole,
    edits: [{ ...whole, text: `${reason}\n${whole.text}` }],
  };
}

function* renamed(
  text: string,
  { step, name, conclusions }: CheckedStep,
  note: (what: string) => Edit,
): Generator<TextFix> {
  const wrong = [
    { name, because: step.because },
    ...conclusions
      .filter((each) => each.origin === 'cascade')
      .map((each) => ({ name: each.name, because: step.cascade[each.item]?.because })),
  ];
  for (const { name, because } of wrong) {
    if (name?.judged !== 'misnamed' || because === undefined) continue;
    const [better] = name.fits;
    if (better === undefined) {
      yield {
        what: `${name.given} does not fit it, and no other name does`,
        edits: [note(`${name.given} does not fit it`), ...withoutKey(text, step, 'because')],
      };
    } else {
      yield {
        what: `its name is ${better}, not ${name.given}`,
        edits: [note(`it said ${name.given}`), { ...because.span, text: better }],
      };
    }
  }
}

/** Steps inserted before this one. */
function* stepsPut(
  text: string,
  { step, fixes }: CheckedStep,
  ids: ReadonlySet<string>,
  indent: string,
): Generator<TextFix> {
  for (const { fix } of fixes) {
    const steps = stepsBefore(fix);
    if (steps.length === 0) continue;
    const newIds = idsBefore(step.id, steps.length, ids);
    const lines = steps.flatMap((each, index) => {
      const own = stepText(each, newIds[index]!)
        .split('\n')
        .map((line) => `${indent}${line}`);
      return [`${indent}# fixed: ${step.id} needs this first`, ...own];
    });
    yield {
      what: `a step inserted before it: ${steps.map((each) => each.because).join(', ')}`,
      edits: [linesBefore(text, step.span.start, lines)],
    };
  }
}

/** Further sets, at the end of `from` or in a new `from`. */
function* setsAdded(text: string, { step, fixes }: CheckedStep, note: (what: string) => Edit): Generator<TextFix> {
  for (const { fix } of fixes) {
    if (fix.kind !== 'name further sets') continue;
    const names = fix.names.join(' ');
    const last = step.from.at(-1);
    const own =
      step.soSpan === undefined
        ? undefined
        : linesBefore(text, step.soSpan.start, [`${keyIndent(text, step.soSpan.start)}from: ${names}`]);
    const edit = last === undefined ? own : { start: last.span.end, end: last.span.end, text: ` ${names}` };
    if (edit !== undefined) yield { what: `${names} added`, edits: [note(`${names} added`), edit] };
  }
}

/** Lists of `pencil` and `only` that leave out possible candidates are rewritten to include them. */
function* listsFilled(
  grid: Grid,
  { step, conclusions }: CheckedStep,
  note: (what: string) => Edit,
): Generator<TextFix> {
  const leftOut = conclusions.flatMap((each) => {
    const isOpen = each.verdict === 'false' || each.verdict === 'unproved';
    return isOpen && each.conclusion.kind === 'impossible' ? [each.conclusion.candidate] : [];
  });
  const inCell = (cell: Cell) =>
    leftOut.filter((each) => cellOf(grid, each) === cell).map((each) => digitOf(grid, each));
  const ascending = <Value extends number>(values: readonly Value[]) => [...new Set(values)].sort((a, b) => a - b);
  const pencils = step.pencil.map(({ span, lists }): Edit => {
    const full = lists.map(({ cell, digits }) => ({ cell, digits: ascending([...digits, ...inCell(cell)]) }));
    return { ...span, text: full.map((list) => printPencil(grid, list)).join(' ') };
  });
  const onlies = step.only.map(({ span, places }): Edit => {
    const full = places.map(({ digit, house, cells }) => {
      const others = house.cells.filter((cell) => leftOut.includes(candidateAt(grid, cell, digit)));
      return { digit, house, cells: ascending([...cells, ...others]) };
    });
    return { ...span, text: full.map((each) => printOnly(grid, each)).join(', ') };
  });
  const edits = [...pencils, ...onlies];
  if (leftOut.length === 0 || edits.length === 0) return;
  const what = `${leftOut.map((candidate) => printCandidate(grid, candidate)).join(' ')} listed too`;
  yield { what, edits: [note(what), ...edits] };
}

/** A conclusion of a cascade that comes too early moves behind the one after which it follows. */
function* movedBehind(
  text: string,
  grid: Grid,
  { step, fixes }: CheckedStep,
  note: (what: string) => Edit,
): Generator<TextFix> {
  const all = step.cascade.flatMap((item) => item.conclusions.map((each) => ({ ...each, list: item.conclusions })));
  const placeOf = (conclusion: string) => all.find(({ value }) => printConclusion(grid, value) === conclusion);
  for (const { fix, conclusions } of fixes) {
    if (fix.kind !== 'move behind' || conclusions.length !== 1) continue;
    const [moved, after] = [placeOf(conclusions[0]!), placeOf(fix.after)];
    if (moved === undefined || after === undefined) continue;
    // A text that states several conclusions together is not moved, nor one that would leave an item empty.
    const isAlone = all.filter(({ span }) => span.start === moved.span.start).length === 1;
    if (!isAlone || moved.list.length < 2) continue;
    const what = `${conclusions[0]} moved after ${fix.after}`;
    const written = text.slice(moved.span.start, moved.span.end);
    const edits = [takenOut(text, moved.span), { start: after.span.end, end: after.span.end, text: ` ${written}` }];
    yield { what, edits: [note(what), ...edits] };
  }
}

/**
 * Conclusions that do not follow are removed; a chain must then not end with them either. First only the false ones,
 * since the rest may follow without them.
 */
function* conclusionsTakenOut(
  text: string,
  grid: Grid,
  { step, conclusions }: CheckedStep,
  note: (what: string) => Edit,
): Generator<TextFix> {
  const arrows = step.chains.flatMap(({ span }): Edit[] => {
    const arrow = text.slice(span.start, span.end).search(/\s*(=>|⇒|→)/);
    return arrow < 0 ? [] : [{ start: span.start + arrow, end: span.end, text: '' }];
  });
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

/** The line of a key of the step, if it is on a line of its own. */
function withoutKey(text: string, step: Step, key: string): Edit[] {
  const own = text.slice(step.span.start, step.span.end);
  const match = new RegExp(`^([ ]*)${key}:[^\n]*\n?`, 'm').exec(own);
  if (match === null) return [];
  const start = step.span.start + match.index;
  return [{ start, end: start + match[0].length, text: '' }];
}

function keyIndent(text: string, offset: number): string {
  const line = text.slice(lineStart(text, offset), offset);
  return line.replace(/^([ ]*)-[ ]/, '$1  ').match(/^[ ]*/)?.[0] ?? '';
}
