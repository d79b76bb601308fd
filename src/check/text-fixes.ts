/**
 * What would fix a step in the text of its scene, the mildest first: the edits, and what the comment says about them.
 */
import { type Cell, candidateAt, cellOf, digitOf, type Grid } from '../grid/grid.ts';
import { printCandidate, printConclusion, printOnly, printPencil } from '../grid/notation/print.ts';
import { idsBefore, stepText } from '../scene/step-text.ts';
import { givesAnArgument } from './argument.ts';
import { conclusionsProvedInstead, conclusionsTakenOut, heldTakenOut } from './conclusion-fixes.ts';
import { keyIndent, linesOfKey, linesOfStep, withoutKeys } from './key-lines.ts';
import { commentedOut, type Edit, itemIndent, linesBefore, takenOut } from './scene-text.ts';
import { type CheckedScene, type CheckedStep, stepsBefore } from './verdict.ts';

export interface TextFix {
  readonly what: string;
  readonly edits: readonly Edit[];
}

/** Puts the comment on what was fixed before the step. */
export type Note = (what: string) => Edit;

/** The comment on a step that is commented out. */
export const takenOutWhole = 'taken out, since it could not be fixed';

/**
 * Ways to fix the step of the scene, by the fixes found for it. Yields nothing if it is in flow style. Whether a way
 * serves must be seen by reading and checking the text again.
 */
export function* textFixes(text: string, { scene, steps }: CheckedScene, checked: CheckedStep): Generator<TextFix> {
  const { step } = checked;
  const { grid } = scene.puzzle;
  const indent = itemIndent(text, step.span.start);
  if (indent === undefined) return;
  const note = (what: string) => linesBefore(text, step.span.start, [`${indent}# fixed: ${what}`]);
  if (step.fails) {
    yield* heldTakenOut(text, grid, checked, note);
    yield {
      what: 'it holds, so it is not marked as failing',
      edits: [note('it holds'), ...withoutKeys(text, step, ['fails'])],
    };
    return;
  }
  yield* renamed(text, checked, note);
  yield* movedBehind(text, grid, checked, note);
  yield* stepsPut(text, checked, new Set(steps.map((each) => each.step.id)), indent);
  if (!scene.video.narration) yield* stepMoved(text, steps, checked, indent);
  yield* setsAdded(text, checked, note);
  yield* listsFilled(grid, checked, note);
  yield* conclusionsProvedInstead(text, grid, checked, note);
  yield* conclusionsTakenOut(text, grid, checked, note);
}

/** The step as a comment, as it stands. Nothing if it is in flow style. */
export function wholeTakenOut(text: string, { step }: CheckedStep): TextFix | undefined {
  const indent = itemIndent(text, step.span.start);
  if (indent === undefined) return undefined;
  const whole = commentedOut(text, step.span);
  return { what: takenOutWhole, edits: [{ ...whole, text: `${indent}# ${takenOutWhole}:\n${whole.text}` }] };
}

/** The step with another argument for what it concludes, in place of its own. */
export function* arguedOtherwise(text: string, { step, fixes }: CheckedStep): Generator<TextFix> {
  const indent = itemIndent(text, step.span.start);
  const so = linesOfKey(text, step, 'so');
  if (indent === undefined || so === undefined) return;
  for (const { fix } of fixes) {
    if (fix.kind !== 'argue otherwise') continue;
    const [, ...lines] = stepText(fix.step, step.id).split('\n');
    const own = lines.map((line) => `${' '.repeat(keyIndent(text, step))}${line.trimStart()}`);
    const what = `another argument in place of its own: ${fix.step.because}`;
    yield {
      what,
      edits: [
        linesBefore(text, step.span.start, [`${indent}# fixed: another argument`]),
        ...withoutKeys(text, step, ['because', 'from', 'chain', 'deadly']),
        { ...so, text: own.map((line) => `${line}\n`).join('') },
      ],
    };
  }
}

function* renamed(text: string, { step, name, conclusions, fixes }: CheckedStep, note: Note): Generator<TextFix> {
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
        edits: [note(`${name.given} does not fit it`), ...withoutKeys(text, step, ['because'])],
      };
    } else {
      yield {
        what: `its name is ${better}, not ${name.given}`,
        edits: [note(`it said ${name.given}`), { ...because.span, text: better }],
      };
    }
  }
  // Where the argument is to be found by its name, the name of one that is there.
  if (step.because === undefined || givesAnArgument(step)) return;
  for (const { fix } of fixes) {
    if (fix.kind !== 'prove it apart' || fix.step.because === step.because.name) continue;
    yield {
      what: `its name is ${fix.step.because}, not ${step.because.written}`,
      edits: [note(`it said ${step.because.written}`), { ...step.because.span, text: fix.step.because }],
    };
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

/** The step behind one that comes later, if that is what it needs. No step must have a time of its own. */
function* stepMoved(
  text: string,
  steps: readonly CheckedStep[],
  { step }: CheckedStep,
  indent: string,
): Generator<TextFix> {
  const place = steps.findIndex((each) => each.step.id === step.id);
  const timed = steps.some((each) => each.step.at !== undefined || each.step.until !== undefined);
  const own = linesOfStep(text, step);
  if (timed || /\bat: *[^+\s]/.test(text.slice(own.start, own.end))) return;
  for (const { step: later } of steps.slice(place + 1, place + 1 + movesTried)) {
    if (itemIndent(text, later.span.start) !== indent) return;
    const { end } = linesOfStep(text, later);
    const lines = `${indent}# fixed: moved behind ${later.id}\n${text.slice(own.start, own.end).replace(/\r?\n$/, '')}`;
    const put = end === text.length && !text.endsWith('\n') ? `\n${lines}` : `${lines}\n`;
    yield {
      what: `moved behind ${later.id}`,
      edits: [
        { ...own, text: '' },
        { start: end, end, text: put },
      ],
    };
  }
}

/** A step that comes too early comes a few steps too early. */
const movesTried = 3;

/** Further sets, at the end of `from` or in a new `from`. */
function* setsAdded(text: string, { step, fixes }: CheckedStep, note: Note): Generator<TextFix> {
  for (const { fix } of fixes) {
    if (fix.kind !== 'name further sets') continue;
    const names = fix.names.join(' ');
    const last = step.from.at(-1);
    const own =
      step.soSpan === undefined
        ? undefined
        : linesBefore(text, step.soSpan.start, [`${' '.repeat(keyIndent(text, step))}from: ${names}`]);
    const edit = last === undefined ? own : { start: last.span.end, end: last.span.end, text: ` ${names}` };
    if (edit !== undefined) yield { what: `${names} added`, edits: [note(`${names} added`), edit] };
  }
}

/** Lists of `pencil` and `only` that leave out possible candidates are rewritten to include them. */
function* listsFilled(grid: Grid, { step, conclusions }: CheckedStep, note: Note): Generator<TextFix> {
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
function* movedBehind(text: string, grid: Grid, { step, fixes }: CheckedStep, note: Note): Generator<TextFix> {
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
