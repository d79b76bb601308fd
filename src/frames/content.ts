/**
 * The contents of a picture, as text: equal texts give equal pictures, in this film or any other. So a picture is
 * recognised when it returns, and after a change somewhere else in the film. Frame numbers and list indices are not
 * included, because they change when something else is added; only times relative to the marks of a step are, as
 * routes, rooms and slots depend on them.
 *
 * Every key of the film and of the drawing is included automatically, so that a new one cannot be forgotten.
 */

import { areTogether, calloutGroups } from '../picture/callout-plan.ts';
import type { Drawing, Inked } from '../picture/ink.ts';
import type { Look } from '../scene/look.ts';
import type { Film, Mark, Shown } from '../timeline/film.ts';

export interface Contents {
  /** What all pictures of the film share. */
  readonly common: string;
  /** The rest of one picture. */
  of(drawing: Drawing): string;
}

/** The contents of the film's pictures in that look. */
export function contentsOf(film: Film, look: Look): Contents {
  const { grid, rate: _, frameCount: __, ...rest } = film;
  const lists = new Map<string, readonly Shown[]>();
  const common: unknown[] = [look, grid.size, grid.boxRows, grid.boxColumns, grid.houses.map((house) => house.cells)];
  for (const [key, value] of Object.entries(rest)) {
    if (key === 'board') continue;
    if (Array.isArray(value) && value.every(isShown)) {
      lists.set(key, value);
      common.push([key, value.length > 0]); // Room is reserved for what is to come.
    } else common.push([key, value]);
  }
  const callouts = ['note', 'ask', 'stamp'].filter((kind) => film.marks.some(({ shape }) => shape.kind === kind));
  common.push(callouts, film.headings[0]?.title);
  const texts = new Map([...lists].map(([key, things]) => [key, things.map((thing) => JSON.stringify(bare(thing)))]));
  const company = companies(film, lists);
  const calls = calloutPlans(film);
  // The room of the headings depends on all notes and questions shown at the same time.
  const withHeadings = film.headings.map((heading) => [
    ...new Set([...calls].flatMap(([mark, text]) => (areTogether(mark, heading) ? text : []))),
  ]);
  return {
    common: JSON.stringify(common),
    of(drawing) {
      const parts: unknown[] = [];
      for (const [key, value] of Object.entries(drawing)) {
        const things = texts.get(key);
        if (things === undefined || !Array.isArray(value))
          parts.push(key === 'board' ? placement(film, drawing) : value);
        else parts.push(value.map((ink: Inked) => inked(things[ink.index] ?? '', ink)));
      }
      const marks = drawing.marks.flatMap(({ index }) => film.marks[index] ?? []);
      parts.push(company(marks), [...new Set(marks.flatMap((mark) => calls.get(mark) ?? []))]);
      parts.push([...new Set(drawing.headings.flatMap(({ index }) => withHeadings[index] ?? []))]);
      return JSON.stringify(parts);
    },
  };
}

function isShown(thing: unknown): boolean {
  return typeof thing === 'object' && thing !== null && 'from' in thing && 'until' in thing;
}

/** Without its time, and without its step's name, which only groups marks. */
function bare(thing: object): unknown {
  return { ...thing, from: undefined, until: undefined, step: undefined };
}

function placement(film: Film, { board }: Drawing): unknown {
  return board === undefined ? null : { ...film.board[board], from: undefined };
}

function inked(content: string, { progress, alpha }: Inked): string {
  return progress === 1 && alpha === 1 ? content : `${content}:${progress}:${alpha}`;
}

/**
 * For the marks on screen: all marks of their steps, including those still to come, and everything that is on screen
 * together with these at some time, with times relative to the first of them.
 */
function companies(film: Film, lists: ReadonlyMap<string, readonly Shown[]>): (marks: readonly Mark[]) => string {
  const known = new Map<string, string>();
  return (marks) => {
    if (marks.length === 0) return '';
    const steps = [...new Set(marks.map(({ step }) => step))];
    const key = JSON.stringify(steps);
    const text = known.get(key) ?? companyText(film, lists, steps);
    known.set(key, text);
    return text;
  };
}

function companyText(film: Film, lists: ReadonlyMap<string, readonly Shown[]>, steps: readonly string[]): string {
  const own = film.marks.filter(({ step }) => steps.includes(step));
  const from = Math.min(...own.map((mark) => mark.from));
  const until = Math.max(...own.map((mark) => mark.until));
  const within = (shown: Shown): readonly number[] => [
    Math.max(shown.from, from) - from,
    Math.min(shown.until, until) - from,
  ];
  const together = <T extends Shown>(things: readonly T[]): readonly T[] =>
    things.filter((thing) => thing.from < until && thing.until > from);
  const marks = together(film.marks);
  const names = [...new Set(marks.map(({ step }) => step))];
  const parts: unknown[] = [marks.map((mark) => [names.indexOf(mark.step), bare(mark), within(mark)])];
  for (const [key, things] of lists) {
    if (!apart.has(key)) parts.push([key, together(things).map((thing) => [bare(thing), within(thing)])]);
  }
  return JSON.stringify(parts);
}

/** Marks are included above; words do not affect where marks are. */
const apart: ReadonlySet<string> = new Set(['marks', 'headings', 'said']);

/** For each note or question: all those whose places are planned together with its own. */
function calloutPlans(film: Film): ReadonlyMap<Mark, string> {
  const texts = new Map<Mark, string>();
  for (const group of calloutGroups(film)) {
    const from = group[0]?.from ?? 0;
    const text = JSON.stringify(group.map((mark) => [mark.shape, mark.from - from, mark.until - from]));
    for (const mark of group) texts.set(mark, text);
  }
  return texts;
}
