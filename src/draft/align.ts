/**
 * Where in an unscripted recording the steps of a draft are spoken of.
 *
 * Each step has features that a speaker would name: its argument, its cells, its houses, its digits. An utterance
 * scores for a step by those of its features heard in it, and against it by cells and arguments that are not among
 * them; the next utterance counts three quarters. Of all ways to assign utterances to steps in order, the one with the
 * highest score is taken (dynamic programming; Needleman and Wunsch, Journal of Molecular Biology 48, 1970, has the
 * method for two sequences).
 */
import { membersOf } from '../grid/candidates.ts';
import { columnOf, rowOf } from '../grid/geometry.ts';
import { cellOf, digitOf, type Grid } from '../grid/grid.ts';
import type { Plan, PlanStep } from '../plan/plan.ts';
import type { DraftStep } from './draft-step.ts';
import type { Heard, Utterance } from './heard.ts';

/** By step: the index of the utterance with which it begins; undefined if it was not heard. */
export type Alignment = readonly (number | undefined)[];

/** The score of each kind of thing heard, for a step that has it, and against one that does not. */
const weights = { name: 6, cell: 3, box: 1, row: 1, column: 1, digit: 1.5 } as const;
const against = { name: 4, cell: 1, box: 0.25, row: 0.25, column: 0.25, digit: 0 } as const;
/** A step with a lower score was not heard. */
const least = 3;

export function align(steps: readonly DraftStep[], plan: Plan, utterances: readonly Utterance[]): Alignment {
  const features = steps.map((step) => featuresOf(step, plan));
  const scores = features.map((own) =>
    utterances.map(({ heard }, index) => {
      const here = scoreOf(own, heard);
      const next = utterances[index + 1];
      return here <= 0 ? 0 : here + (next === undefined ? 0 : 0.75 * Math.max(0, scoreOf(own, next.heard)));
    }),
  );
  return bestInOrder(scores, utterances.length);
}

/** `best[s][u]`: the highest score of the steps before `s` with the utterances before `u`. */
function bestInOrder(scores: readonly (readonly number[])[], count: number): Alignment {
  const best = Array.from({ length: scores.length + 1 }, () => new Array<number>(count + 1).fill(0));
  for (const [step, row] of scores.entries()) {
    for (let utterance = 0; utterance < count; utterance++) {
      const matched = row[utterance]! >= least ? best[step]![utterance]! + row[utterance]! : 0;
      best[step + 1]![utterance + 1] = Math.max(best[step]![utterance + 1]!, best[step + 1]![utterance]!, matched);
    }
  }
  const found = new Array<number | undefined>(scores.length).fill(undefined);
  let utterance = count;
  for (let step = scores.length; step > 0; ) {
    const here = best[step]![utterance]!;
    if (utterance > 0 && best[step]![utterance - 1] === here) utterance--;
    else if (best[step - 1]![utterance] === here) step--;
    else {
      found[step - 1] = utterance - 1;
      step--;
      utterance--;
    }
  }
  return found;
}

function scoreOf(own: Features, heard: ReadonlySet<Heard>): number {
  let score = 0;
  for (const each of heard) {
    const kind = each.slice(0, each.indexOf(' ')) as keyof typeof weights;
    const share = own.get(each);
    score += share === undefined ? -against[kind] : share * weights[kind];
  }
  return score;
}

/** What a speaker would name for a step, and how much each counts: 1, or less for one of many. */
export type Features = ReadonlyMap<Heard, number>;

/** A digit of a cascade is one of many; a speaker may name any of them or none. */
const ofMany = 0.3;

export function featuresOf(step: DraftStep, plan: Plan): Features {
  const { grid } = plan.start;
  const features = new Map<Heard, number>();
  const add = (share: number, heard: readonly Heard[]) => {
    for (const each of heard) features.set(each, Math.max(share, features.get(each) ?? 0));
  };
  if (step.because !== undefined) add(1, [`name ${step.because}`]);
  for (const [place, index] of step.covers.entries()) {
    const planned = plan.steps[index]!;
    add(1, [`name ${planned.name}`]);
    // Of the steps that an argument opens, the first is said with its reason.
    const isSaid = step.cascade === undefined || (place === 0 && step.id.startsWith('opened'));
    add(isSaid ? 1 : ofMany, ofArgument(grid, planned));
  }
  for (const text of [...(step.only ?? []), ...(step.pencil ?? '').split(' ')]) add(1, ofList(grid, text));
  return features;
}

/** From `1r1 in r1c34`, or from `78r4c1`. */
function ofList(grid: Grid, text: string): Heard[] {
  const heard: Heard[] = [];
  for (const [, digits = '', rows = '', columns = ''] of text.matchAll(/(\d*)r(\d+)c(\d+)/g)) {
    for (const row of rows) {
      for (const column of columns) {
        const cell = (Number(row) - 1) * grid.size + Number(column) - 1;
        heard.push(`cell ${cell}`, `row ${row}`, `column ${column}`);
      }
    }
    for (const digit of digits) heard.push(`digit ${digit}`);
  }
  const places = /^(\d)([rcb])(\d) in/.exec(text);
  const kinds = { r: 'row', c: 'column', b: 'box' } as const;
  if (places !== null) heard.push(`digit ${places[1]}`, `${kinds[places[2] as 'r' | 'c' | 'b']} ${places[3]}`);
  return heard;
}

function ofArgument(grid: Grid, { instance }: PlanStep): Heard[] {
  const concluded = instance.conclusions.flatMap((each) =>
    each.kind === 'impossible' ? [each.candidate] : membersOf(each.candidates),
  );
  const named = instance.sets.flatMap(({ members }) => membersOf(members));
  const houses = instance.sets.flatMap(({ source }) =>
    source.kind === 'places' ? [`${source.house.kind} ${source.house.number}`] : [],
  );
  const places = [...concluded, ...named].flatMap((candidate) => {
    const cell = cellOf(grid, candidate);
    const lines = [`row ${rowOf(grid, cell)}`, `column ${columnOf(grid, cell)}`];
    return [`cell ${cell}`, ...lines, `digit ${digitOf(grid, candidate)}`];
  });
  return [...houses, ...places];
}
