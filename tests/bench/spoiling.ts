/**
 * Sound scenes spoilt as an editor's slip would: one change to the text of one step, by chance from a seed.
 */
import {
  type Edit,
  edited,
  itemIndent,
  lineEnd,
  lineStart,
  linesBefore,
  takenOut,
} from '../../src/check/scene-text.ts';
import type { CheckedScene, CheckedStep } from '../../src/check/verdict.ts';
import { type Candidate, difference, membersOf } from '../../src/grid/candidates.ts';
import { cellOf, digitOf, type Grid } from '../../src/grid/grid.ts';
import { printCell } from '../../src/grid/notation/print.ts';
import type { Span } from '../../src/scene/diagnostic.ts';
import type { Step } from '../../src/scene/scene.ts';
import type { Chance } from '../random.ts';

export interface ToSpoil {
  readonly text: string;
  readonly checked: CheckedScene;
}

/** A slip in the step at this place; no edits where it cannot be made there. */
type Slip = (scene: ToSpoil, place: number, chance: Chance) => readonly Edit[];

export const slips: Readonly<Record<string, Slip>> = {
  'a conclusion too many': ({ checked }, place, chance) => {
    const [grid, step] = [checked.scene.puzzle.grid, checked.steps[place]!];
    const [last, open] = [listedOf(step.step).at(-1), openIn(step)];
    if (last === undefined || open.length === 0) return [];
    return [{ start: last.end, end: last.end, text: ` ${removal(grid, chance.pick(open))}` }];
  },
  'another conclusion': ({ checked }, place, chance) => {
    const [grid, step] = [checked.scene.puzzle.grid, checked.steps[place]!];
    const [first, open] = [listedOf(step.step)[0], openIn(step)];
    return first === undefined || open.length === 0 ? [] : [{ ...first, text: removal(grid, chance.pick(open)) }];
  },
  'a set left out': ({ text, checked }, place, chance) => {
    const sets = distinct(checked.steps[place]!.step.from.map(({ span }) => span));
    return sets.length < 2 ? [] : [takenOut(text, chance.pick(sets))];
  },
  'another set': ({ text, checked }, place, chance) => {
    const sets = distinct(checked.steps[place]!.step.from.map(({ span }) => span));
    return sets.length === 0 ? [] : anotherNumber(text, chance.pick(sets), checked.scene.puzzle.grid, chance);
  },
  'another cell in a chain': ({ text, checked }, place, chance) => {
    const [chain] = checked.steps[place]!.step.chains;
    return chain === undefined ? [] : anotherNumber(text, chain.span, checked.scene.puzzle.grid, chance);
  },
  'another name': ({ checked }, place, chance) => {
    const because = checked.steps[place]!.step.because;
    return because === undefined ? [] : [{ ...because.span, text: chance.pick(names) }];
  },
  'a step left out': ({ text, checked }, place) => [{ ...linesOf(text, checked.steps[place]!.step), text: '' }],
  'a step too early': ({ text, checked }, place) => {
    const [before, step] = [checked.steps[place - 1]?.step, checked.steps[place]!.step];
    if (before === undefined) return [];
    const lines = linesOf(text, step);
    const moved = text.slice(lines.start, lines.end);
    const start = lineStart(text, before.span.start);
    return [
      { start, end: start, text: moved.endsWith('\n') ? moved : `${moved}\n` },
      { ...lines, text: '' },
    ];
  },
  'a false step that holds': ({ text, checked }, place) => {
    const { step } = checked.steps[place]!;
    if (step.so?.kind !== 'listed' || step.fails) return [];
    return [{ ...after(text, step), text: `${indentOf(text, step)}  fails: true\n` }];
  },
  'a step repeated as a false one': ({ text, checked }, place) => {
    const { step } = checked.steps[place]!;
    if (step.so?.kind !== 'listed' || step.fails) return [];
    const own = text.slice(lineStart(text, step.span.start), after(text, step).start).replace(/\n?$/, '\n');
    return [
      {
        ...after(text, step),
        text: `${own.replace(/^([ ]*- id: [^\s]+)/, '$1-false')}${indentOf(text, step)}  fails: true\n`,
      },
    ];
  },
  'a removal that nothing shows': ({ text, checked }, place, chance) => {
    const step = checked.steps[place]!;
    const { grid } = checked.scene.puzzle;
    const later = checked.steps.slice(place).flatMap((each) => removedBy(each));
    const victims = later.length > 0 && chance.below(2) === 0 ? later : openIn(step);
    if (victims.length === 0) return [];
    const victim = chance.pick(victims);
    const indent = indentOf(text, step.step);
    const from = `${digitOf(grid, victim)}${chance.pick(['r', 'c', 'b'])}${1 + chance.below(grid.size)}`;
    const lines = ['- id: slip', `  from: ${from}`, `  so: ${removal(grid, victim)}`].map((line) => indent + line);
    return [linesBefore(text, step.step.span.start, lines)];
  },
  'a cascade out of order': ({ text, checked }, place, chance) => {
    const conclusions = cascadeOf(checked.steps[place]!.step);
    if (conclusions.length < 2) return [];
    const at = chance.below(conclusions.length - 1);
    const [one, other] = [conclusions[at]!, conclusions[at + 1]!];
    return [
      { ...one, text: text.slice(other.start, other.end) },
      { ...other, text: text.slice(one.start, one.end) },
    ];
  },
  'a wrong digit in a cascade': ({ text, checked }, place, chance) => {
    const conclusions = cascadeOf(checked.steps[place]!.step);
    if (conclusions.length === 0) return [];
    const span = chance.pick(conclusions);
    const digit = 1 + chance.below(checked.scene.puzzle.grid.size);
    return [{ ...span, text: text.slice(span.start, span.end).replace(/=\d/, `=${digit}`) }];
  },
  'a digit left out of a cascade': ({ text, checked }, place, chance) => {
    const conclusions = cascadeOf(checked.steps[place]!.step);
    return conclusions.length < 2 ? [] : [takenOut(text, chance.pick(conclusions))];
  },
  'a list too short': ({ text, checked }, place, chance) => {
    const lists = checked.steps[place]!.step.pencil.map(({ span }) => span);
    if (lists.length === 0) return [];
    const span = chance.pick(lists);
    return [{ ...span, text: text.slice(span.start, span.end).replace(/\d(?=\d+r)/, '') }];
  },
};

/** The scene with a slip of this kind in one of its steps; undefined where none of them allows it. */
export function spoilt(scene: ToSpoil, kind: string, chance: Chance): string | undefined {
  const { text, checked } = scene;
  for (const place of chance.shuffled(checked.steps.map((_, index) => index))) {
    if (itemIndent(text, checked.steps[place]!.step.span.start) === undefined) continue;
    const next = edited(text, slips[kind]!(scene, place, chance));
    if (next !== text) return next;
  }
  return undefined;
}

/** Names that are taken for one another. */
const names = [
  'naked pair',
  'hidden pair',
  'X-wing',
  'skyscraper',
  'two-string kite',
  'XY-wing',
  'XY-chain',
  'claiming',
] as const;

function openIn({ possibleBefore, placedBefore }: CheckedStep): Candidate[] {
  return membersOf(difference(possibleBefore, placedBefore));
}

function removedBy({ conclusions }: CheckedStep): Candidate[] {
  return conclusions.flatMap(({ conclusion, verdict }) =>
    conclusion.kind === 'impossible' && verdict === 'proved' ? [conclusion.candidate] : [],
  );
}

function removal(grid: Grid, candidate: Candidate): string {
  return `${printCell(grid, cellOf(grid, candidate))}<>${digitOf(grid, candidate)}`;
}

function listedOf({ so }: Step): Span[] {
  return so?.kind === 'listed' ? distinct(so.conclusions.map(({ span }) => span)) : [];
}

function cascadeOf({ cascade }: Step): Span[] {
  return distinct(cascade.flatMap(({ conclusions }) => conclusions.map(({ span }) => span)));
}

function distinct(spans: readonly Span[]): Span[] {
  return [...new Map(spans.map((span) => [span.start, span])).values()];
}

/** One of the numbers after an `r`, `c` or `b`, changed. */
function anotherNumber(text: string, span: Span, { size }: Grid, chance: Chance): Edit[] {
  const places = [...text.slice(span.start, span.end).matchAll(/(?<=[rcb])\d/g)].map(({ index }) => span.start + index);
  if (places.length === 0) return [];
  const start = chance.pick(places);
  return [{ start, end: start + 1, text: String(1 + chance.below(size)) }];
}

function indentOf(text: string, step: Step): string {
  return itemIndent(text, step.span.start) ?? '';
}

/** The lines of the step, their ends included. */
function linesOf(text: string, step: Step): Span {
  return { start: lineStart(text, step.span.start), end: after(text, step).end };
}

/** Where the line after the step's last begins. */
function after(text: string, step: Step): Span {
  const own = text.slice(step.span.start, step.span.end).trimEnd();
  const end = Math.min(text.length, lineEnd(text, step.span.start + own.length) + 1);
  return { start: end, end };
}
