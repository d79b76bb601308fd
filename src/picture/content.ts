/**
 * What a picture is made of, as text: equal texts, equal pictures, in this film or in any other. So a picture is known
 * again where it returns, and after a change somewhere else in the film. Frame numbers and places in lists do not
 * enter, for they change when something else is added; only how the marks of a step stand in time to one another does,
 * as routes, rooms and slots hang on it.
 */
import type { Look } from '../scene/look.ts';
import type { Film, Mark, Shown } from '../timeline/film.ts';
import type { Drawing, Inked } from './drawing.ts';

export interface Contents {
  /** What all pictures of the film share. */
  readonly common: string;
  /** The rest of one picture. */
  of(drawing: Drawing): string;
}

/** The contents of the film's pictures in that look. */
export function contentsOf(film: Film, look: Look): Contents {
  const { grid } = film;
  const words = film.marks.map(({ shape, group }) => JSON.stringify([shape, group]));
  const headings = film.headings.map(({ from: _, until: __, ...heading }) => JSON.stringify(heading));
  const companies = new Map<string, string>();
  const companyOf = (marks: readonly Mark[]): string => {
    const steps = [...new Set(marks.map((mark) => mark.step))];
    const key = JSON.stringify(steps);
    const known = companies.get(key) ?? companyText(film, steps);
    companies.set(key, known);
    return known;
  };
  const calls = callouts(film);
  return {
    common: JSON.stringify([
      ...[film.width, film.height, film.draw, film.small, film.title, film.credit, film.standing, look],
      ...[grid.size, grid.boxRows, grid.boxColumns, grid.houses.map(({ name, cells }) => [name, cells])],
      film.marks.some(({ shape }) => shape.kind === 'note' || shape.kind === 'ask' || shape.kind === 'stamp'),
    ]),
    of(drawing) {
      const marks = drawing.marks.map(({ index }) => film.marks[index]!);
      return [
        drawing.board === undefined ? '' : JSON.stringify(film.board[drawing.board]?.shape),
        drawing.headings.map((ink) => inked(headings[ink.index]!, ink)).join(),
        drawing.written
          .map((ink) => inked(`${film.written[ink.index]!.cell}=${film.written[ink.index]!.digit}`, ink))
          .join(),
        drawing.candidates.map((ink) => inked(`${film.candidates[ink.index]!.candidate}`, ink)).join(),
        drawing.marks.map((ink) => inked(words[ink.index]!, ink)).join(),
        marks.length === 0 ? '' : companyOf(marks),
        [...new Set(marks.flatMap((mark) => calls.get(mark) ?? []))].join(),
      ].join('\n');
    },
  };
}

function inked(content: string, { progress, alpha }: Inked): string {
  return progress === 1 && alpha === 1 ? content : `${content}:${progress}:${alpha}`;
}

/** All marks of these steps, those still to come among them, and the digits that stand beside them at their time. */
function companyText(film: Film, steps: readonly string[]): string {
  const marks = film.marks.filter(({ step }) => steps.includes(step));
  const from = Math.min(...marks.map((mark) => mark.from));
  const until = Math.max(...marks.map((mark) => mark.until));
  const within = (shown: Shown): readonly [number, number] => [
    Math.max(shown.from, from) - from,
    Math.min(shown.until, until) - from,
  ];
  const beside = <T extends Shown>(things: readonly T[]): readonly T[] =>
    things.filter((thing) => thing.from < until && thing.until > from);
  return JSON.stringify([
    marks.map((mark) => [steps.indexOf(mark.step), mark.shape, mark.group, within(mark)]),
    beside(film.candidates).map((small) => [small.candidate, within(small)]),
    beside(film.written).map((written) => [written.cell, within(written)]),
  ]);
}

/** By note or question: all of those with which it shares the plan of their places. */
function callouts(film: Film): ReadonlyMap<Mark, string> {
  const texts = new Map<Mark, string>();
  let group: Mark[] = [];
  const close = (): void => {
    const from = group[0]?.from ?? 0;
    const text = JSON.stringify(group.map((mark) => [mark.shape, mark.from - from, mark.until - from]));
    for (const mark of group) texts.set(mark, text);
    group = [];
  };
  let until = -1;
  for (const mark of film.marks) {
    if (mark.shape.kind !== 'note' && mark.shape.kind !== 'ask') continue;
    if (mark.from >= until) close();
    group.push(mark);
    until = Math.max(until, mark.until);
  }
  close();
  return texts;
}
