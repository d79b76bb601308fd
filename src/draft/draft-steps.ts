/**
 * How a plan is presented, step by step: easy digits grouped as an author would, what is written down before an
 * argument needs it, the argument, and what it opens.
 *
 * Lists are written late: those of a cell when an argument first rests on that cell, the places of a digit right before
 * the argument that rests on them. The steps of the plan are presented in its order, so that each is shown in the
 * position in which it was proved.
 */

import { membersOf } from '../grid/candidates.ts';
import { printConclusion } from '../grid/notation/print.ts';
import type { Plan, PlanStep } from '../plan/plan.ts';
import { techniqueNamed } from '../techniques/all-techniques.ts';
import type { Family } from '../techniques/technique.ts';
import { argumentText, conclusionsText, nameBorne } from './argument-text.ts';
import { add, type DraftSoFar, type DraftStep, idOf } from './draft-step.ts';
import { addLists } from './lists-first.ts';
import { argumentInWords } from './say-argument.ts';
import { singleInWords } from './say-single.ts';
import type { Wording } from './wording.ts';

/** The draft's steps for a plan, in order. */
export function draftSteps(plan: Plan, wording: Wording): readonly DraftStep[] {
  const draft: DraftSoFar = { wording, steps: [], ids: new Set(), listed: new Set(), placesSaid: new Set() };
  const sections = sectionsOf(plan.steps);
  const isFull = membersOf(plan.end.placed).length === plan.end.grid.cells.length;
  for (const [index, section] of sections.entries()) {
    const isLast = index === sections.length - 1;
    if (index === 0) addOpening(draft, plan, section, { isLast, isFull });
    else addArgument(draft, section, isLast && isFull);
  }
  return draft.steps;
}

/** Whether the step can be part of a cascade: it is free, and its argument need not be named. */
export function isGathered({ name, cost }: PlanStep): boolean {
  return cost === 0 && gathered.includes(techniqueNamed(name).family);
}

const gathered: readonly Family[] = ['singles', 'locked candidates'];

interface Numbered {
  readonly step: PlanStep;
  readonly index: number;
}

/** An argument and the easy steps after it; the first section has no argument. */
interface Section {
  readonly argument: Numbered | undefined;
  readonly easy: readonly Numbered[];
}

function sectionsOf(steps: readonly PlanStep[]): readonly Section[] {
  const sections: { argument: Numbered | undefined; easy: Numbered[] }[] = [{ argument: undefined, easy: [] }];
  for (const [index, step] of steps.entries()) {
    if (isGathered(step)) sections.at(-1)!.easy.push({ step, index });
    else sections.push({ argument: { step, index }, easy: [] });
  }
  return sections;
}

/** `isLast`: no argument follows; `isFull`: the plan fills the board. */
function addOpening(
  draft: DraftSoFar,
  { start }: Plan,
  { easy }: Section,
  { isLast, isFull }: { readonly isLast: boolean; readonly isFull: boolean },
): void {
  const { wording } = draft;
  const given = wording.number(membersOf(start.givens).length);
  if (easy.length === 0) {
    add(draft, 'start', { title: wording.title('start'), say: wording.sentence('start', { given }), covers: [] });
    draft.steps[0] = { ...draft.steps[0]!, note: wording.title('start-note') };
    return;
  }
  const digits = placementsIn(easy);
  const count = wording.number(digits);
  const goesOn = digits === 1 ? 'one-opening' : 'opening';
  const key = !isLast ? goesOn : isFull ? 'opening-whole' : digits === 1 ? 'one-opening' : 'more';
  add(draft, 'opening', {
    chapter: wording.title('chapter-easy'),
    title: wording.title(digits === 1 ? 'one-opening' : 'opening', { count }),
    say: wording.sentence(key, { given, count }),
    ...cascade(draft, easy),
  });
}

/** `isHome`: the easy steps after it fill the board. */
function addArgument(draft: DraftSoFar, { argument, easy }: Section, isHome: boolean): void {
  const { wording } = draft;
  const { step, index } = argument!;
  const { position, instance } = step;
  const name = nameBorne(step);
  const chapter = wording.nameOf(name);
  const isListed = addLists(draft, step, chapter);
  const words = argumentInWords({ wording, name, position, instance });
  add(draft, idOf(name), {
    ...(isListed ? {} : { chapter }),
    title: words.title,
    say: words.say,
    because: name,
    ...(chapter.toLowerCase() === name.toLowerCase() ? {} : { called: wording.name(name) }),
    ...argumentText(step),
    so: conclusionsText(wording.grid, instance.conclusions),
    covers: [index],
  });
  if (easy.length === 0) return;
  if (!isHome) addOpened(draft, easy);
  else if (easy.length <= 4) addOpened(draft, easy, wording.sentence('home-short'));
  else {
    addOpened(draft, easy.slice(0, 1));
    addHome(draft, easy.slice(1));
  }
}

/** What follows immediately: the first digit is said with its reason. */
function addOpened(draft: DraftSoFar, easy: readonly Numbered[], after = ''): void {
  const { wording } = draft;
  const place = easy.findIndex(({ step }) => singleInWords(wording, step) !== undefined);
  const first = easy[place] === undefined ? undefined : singleInWords(wording, easy[place].step);
  const more = placementsIn(easy) - 1;
  const count = wording.number(more);
  const say =
    first === undefined
      ? wording.sentence('more', { count: wording.number(easy.length) })
      : wording.sentence(more === 0 ? 'opened' : more === 1 ? 'opened-one-more' : 'opened-more', { first, count });
  add(draft, 'opened', {
    title: wording.title(after === '' ? 'opened' : 'home'),
    say: after === '' ? say : `${say} ${after}`,
    ...cascade(draft, easy),
  });
}

function addHome(draft: DraftSoFar, easy: readonly Numbered[]): void {
  const { wording } = draft;
  add(draft, 'home', {
    chapter: wording.title('chapter-home'),
    title: wording.title('home'),
    say: wording.sentence('home', { count: wording.number(easy.length) }),
    ...cascade(draft, easy),
  });
}

function cascade({ wording }: DraftSoFar, easy: readonly Numbered[]): Pick<DraftStep, 'cascade' | 'covers'> {
  const conclusions = easy.flatMap(({ step }) => step.instance.conclusions);
  return {
    cascade: conclusions.map((each) => printConclusion(wording.grid, each)).join(' '),
    covers: easy.map(({ index }) => index),
  };
}

function placementsIn(easy: readonly Numbered[]): number {
  return easy.filter(({ step }) => step.instance.conclusions.some(({ kind }) => kind === 'one-of')).length;
}
