/**
 * A scene that is not sound, mended: step after step, each mend marked by a comment, until it checks sound. What cannot
 * be mended (what a solution contradicts, what no argument was found for) is taken out, and stands as a comment.
 */

import { type Cell, candidateAt, cellOf, digitOf, type Grid } from '../grid/grid.ts';
import { compactly } from '../grid/notation/compact.ts';
import { printCandidate, printConclusion, printOnly, printPencil } from '../grid/notation/print.ts';
import type { Conclusion } from '../grid/terms.ts';
import { readScene } from '../scene/read.ts';
import type { Located, Step } from '../scene/scene.ts';
import { idsBefore, stepText } from '../scene/step-text.ts';
import { checkScene } from './check-scene.ts';
import { commentedOut, type Edit, edited, itemIndent, lineStart, linesBefore } from './scene-text.ts';
import { type CheckedScene, type CheckedStep, stepsBefore } from './verdict.ts';

export interface MendedScene {
  readonly text: string;
  /** What was done, a line each: the step's id and the mend. */
  readonly done: readonly string[];
  /** Whether the mended scene is sound. It is not where a step stands in flow style, which is left as it is. */
  readonly sound: boolean;
}

/** What is said of a step that becomes a comment. */
export const takenOutWhole = 'taken out, since it could not be mended';

/** At most this many mends: more than any lesson has steps. */
const roundsBound = 200;

/** Mends the scene of this text, which can be read. */
export function mendScene(text: string): MendedScene {
  const done: string[] = [];
  let reached = text;
  for (let round = 0; round < roundsBound; round++) {
    const checked = checkedText(reached);
    if (checked === undefined) break;
    if (checked.sound) return { text: reached, done, sound: true };
    const root = checked.steps.find((step) => checked.summary.toMend.includes(step.step.id));
    const next = root === undefined ? undefined : mendStep(reached, checked, root);
    if (root === undefined || next === undefined) break;
    done.push(`${root.step.id}: ${next.what}`);
    reached = next.text;
  }
  return { text: reached, done, sound: checkedText(reached)?.sound ?? false };
}

function checkedText(text: string): CheckedScene | undefined {
  const { scene } = readScene(text);
  if (scene === undefined) return undefined;
  const checked = checkScene(scene);
  return checked.errors.length > 0 ? undefined : checked;
}

interface Way {
  readonly what: string;
  readonly edits: readonly Edit[];
}

/** The first way to mend the step whose text can be read and leaves the step better off. */
function mendStep(
  text: string,
  checked: CheckedScene,
  step: CheckedStep,
): { readonly text: string; readonly what: string } | undefined {
  const ids = new Set(checked.steps.map((each) => each.step.id));
  for (const { what, edits } of waysToMend(text, checked.scene.puzzle.grid, step, ids)) {
    const next = edited(text, edits);
    const again = checkedText(next);
    if (again === undefined || next === text) continue;
    const after = again.steps.find((each) => each.step.id === step.step.id);
    if (after === undefined || after.sound || faultsOf(after) < faultsOf(step)) return { text: next, what };
  }
  return undefined;
}

function faultsOf(step: CheckedStep): number {
  const conclusions = step.conclusions.filter((each) => each.verdict === 'unproved' || each.verdict === 'false').length;
  const links = step.links.filter((link) => !link.holds).length;
  return conclusions + links + step.faults.length + (step.name?.judged === 'misnamed' ? 1 : 0);
}

function* waysToMend(text: string, grid: Grid, checked: CheckedStep, ids: ReadonlySet<string>): Generator<Way> {
  const { step } = checked;
  const indent = itemIndent(text, step.span.start);
  if (indent === undefined) return;
  const note = (what: string) => linesBefore(text, step.span.start, [`${indent}# mended: ${what}`]);
  if (step.fails)
    yield {
      what: 'it holds, so it is not marked as failing',
      edits: [note('it holds'), ...withoutKey(text, step, 'fails')],
    };
  yield* renamed(text, checked, note);
  yield* stepsPut(text, checked, ids, indent);
  yield* setsAdded(text, checked, note);
  yield* listsFilled(grid, checked, note);
  yield* conclusionsTakenOut(text, grid, checked, note);
  const takenOut = commentedOut(text, step.span);
  const reason = `${indent}# ${takenOutWhole}:`;
  yield {
    what: takenOutWhole,
    edits: [{ ...takenOut, text: `${reason}\n${takenOut.text}` }],
  };
}

function* renamed(
  text: string,
  { step, name, conclusions }: CheckedStep,
  note: (what: string) => Edit,
): Generator<Way> {
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
        what: `it is no ${name.given}, and bears no other name`,
        edits: [note(`it is no ${name.given}`), ...withoutKey(text, step, 'because')],
      };
    } else {
      yield {
        what: `its name is ${better}, not ${name.given}`,
        edits: [note(`it said ${name.given}`), { ...because.span, text: better }],
      };
    }
  }
}

/** Steps that go before this one. */
function* stepsPut(
  text: string,
  { step, mends }: CheckedStep,
  ids: ReadonlySet<string>,
  indent: string,
): Generator<Way> {
  for (const { mend } of mends) {
    const steps = stepsBefore(mend);
    if (steps.length === 0) continue;
    const newIds = idsBefore(step.id, steps.length, ids);
    const lines = steps.flatMap((each, index) => {
      const own = stepText(each, newIds[index]!)
        .split('\n')
        .map((line) => `${indent}${line}`);
      return [`${indent}# mended: ${step.id} needs this first`, ...own];
    });
    yield {
      what: `a step put before it: ${steps.map((each) => each.because).join(', ')}`,
      edits: [linesBefore(text, step.span.start, lines)],
    };
  }
}

/** Further sets, at the end of `from` or in a `from` of its own. */
function* setsAdded(text: string, { step, mends }: CheckedStep, note: (what: string) => Edit): Generator<Way> {
  for (const { mend } of mends) {
    if (mend.kind !== 'name further sets') continue;
    const names = mend.names.join(' ');
    const last = step.from.at(-1);
    const own =
      step.soSpan === undefined
        ? undefined
        : linesBefore(text, step.soSpan.start, [`${keyIndent(text, step.soSpan.start)}from: ${names}`]);
    const edit = last === undefined ? own : { start: last.span.end, end: last.span.end, text: ` ${names}` };
    if (edit !== undefined) yield { what: `${names} added`, edits: [note(`${names} added`), edit] };
  }
}

/** Lists of `pencil` and `only` that leave out what is possible are written again with it. */
function* listsFilled(grid: Grid, { step, conclusions }: CheckedStep, note: (what: string) => Edit): Generator<Way> {
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
  const what = `${leftOut.map((candidate) => printCandidate(grid, candidate)).join(' ')} written down too`;
  yield { what, edits: [note(what), ...edits] };
}

/** What does not follow leaves the conclusions; a chain then must not end with it either. */
function* conclusionsTakenOut(
  text: string,
  grid: Grid,
  { step, conclusions }: CheckedStep,
  note: (what: string) => Edit,
): Generator<Way> {
  const bad = conclusions
    .filter((each) => each.verdict === 'false' || each.verdict === 'unproved')
    .map((each) => each.text);
  const isBad = (conclusion: Conclusion) => bad.includes(printConclusion(grid, conclusion));
  const lists = [
    ...(Array.isArray(step.so) ? [step.so as readonly Located<Conclusion>[]] : []),
    ...step.cascade.map((item) => item.conclusions),
  ];
  const edits = lists.flatMap((list) => {
    const isLeft = list.some((each) => !isBad(each.value));
    return isLeft ? withoutConclusions(grid, list, isBad) : [];
  });
  if (edits.length === 0) return;
  const arrows = step.chains.flatMap(({ span }): Edit[] => {
    const arrow = text.slice(span.start, span.end).search(/\s*(=>|⇒|→)/);
    return arrow < 0 ? [] : [{ start: span.start + arrow, end: span.end, text: '' }];
  });
  const what = `${compactly(bad).join(' ')} taken out`;
  yield { what, edits: [note(what), ...edits, ...arrows] };
}

/** Each text that states a bad conclusion is written again with the good ones among those that it states. */
function withoutConclusions(
  grid: Grid,
  list: readonly Located<Conclusion>[],
  isBad: (conclusion: Conclusion) => boolean,
): Edit[] {
  const spans = new Map(list.filter((each) => isBad(each.value)).map((each) => [each.span.start, each.span]));
  return [...spans.values()].map((span) => {
    const good = list.filter((each) => each.span.start === span.start && !isBad(each.value));
    return { ...span, text: compactly(good.map((each) => printConclusion(grid, each.value))).join(' ') };
  });
}

/** The line of a key of the step, if it stands on one line of its own. */
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

/** The list that `so: all` stands for, written out wherever a step says so. */
export function spellOut(text: string, checked: CheckedScene): string {
  const { grid } = checked.scene.puzzle;
  const edits = checked.steps.flatMap(({ step, conclusions }): Edit[] => {
    if (step.so !== 'all' || step.soSpan === undefined) return [];
    const removed = conclusions.filter((each) => each.origin === 'so' && each.verdict === 'proved');
    if (removed.length === 0) return [];
    return [
      { ...step.soSpan, text: compactly(removed.map((each) => printConclusion(grid, each.conclusion))).join(' ') },
    ];
  });
  return edited(text, edits);
}
