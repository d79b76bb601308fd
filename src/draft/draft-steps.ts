/**
 * What is told of a plan, step by step: easy digits gathered as a teller would, what is written down before an argument
 * needs it, the argument, and what it opens.
 *
 * Lists are written late: those of a cell when an argument first rests on that cell, the places of a digit right before the
 * argument that rests on them. The steps of the plan are told in its order, so that each stands in the position in which
 * it was proved.
 */
import { has, membersOf } from '../grid/candidates.ts';
import { type Cell, candidatesInCell, cellOf, digitOf, type HouseShape } from '../grid/grid.ts';
import {
  printCandidates,
  printChain,
  printConclusion,
  printDeadly,
  printOnly,
  printPencil,
  printSet,
} from '../grid/notation/print.ts';
import type { Conclusion } from '../grid/terms.ts';
import type { Plan, PlanStep } from '../plan/plan.ts';
import { isPlaced, type OneOf, type Position } from '../proof/kernel.ts';
import { techniqueNamed } from '../techniques/all-techniques.ts';
import { recogniseIn } from '../techniques/judge-name.ts';
import { argumentInWords } from './say-argument.ts';
import type { Wording } from './wording.ts';

/** A step of a scene, its values in scene notation. */
export interface DraftStep {
  readonly id: string;
  readonly chapter?: string | undefined;
  readonly title: string;
  readonly say: string;
  readonly because?: string | undefined;
  readonly called?: string | undefined;
  readonly from?: string | undefined;
  readonly chain?: string | undefined;
  readonly deadly?: string | undefined;
  readonly so?: string | undefined;
  readonly only?: readonly string[] | undefined;
  readonly pencil?: string | undefined;
  readonly cascade?: string | undefined;
  /** A callout beside the board. */
  readonly note?: string | undefined;
  /** When it begins, where that is known. */
  readonly at?: string | undefined;
  /** A comment before it, without `#`. */
  readonly remark?: string | undefined;
  /** The steps of the plan that are told here: numbers from 0. */
  readonly tells: readonly number[];
}

/** Cells whose lists are read out cell by cell; beyond that they are counted. */
const listsReadOut = 6;
/** Places are said before an argument of at most this many of them. */
const placesReadOut = 4;

/** The told steps of a plan, in order. */
export function draftSteps(plan: Plan, wording: Wording): readonly DraftStep[] {
  const told: Draft = { wording, steps: [], ids: new Set(), listed: new Set(), placesSaid: new Set() };
  const runs = runsOf(plan.steps);
  for (const [index, run] of runs.entries()) {
    const isLast = index === runs.length - 1;
    if (index === 0) tellOpening(told, plan, run, isLast);
    else tellArgument(told, run, isLast);
  }
  return told.steps;
}

/** Names that say of groups what they are, from the more special to the more general. */
const general = ['empty rectangle', 'grouped X-chain', 'grouped AIC'];

/** The plan's name for the argument, or where that leaves a detail unsaid (`AIC` of a grouped one) the name that says it. */
function nameBorne({ name, position, instance }: PlanStep): string {
  const shape = { ...instance, position, chains: instance.chain === undefined ? [] : [instance.chain] };
  const fits = (each: string) => {
    const technique = techniqueNamed(each);
    return technique !== undefined && recogniseIn(technique, shape)?.kind === 'fits';
  };
  if (fits(name)) return name;
  const others = [`grouped ${name}`, name.replace('finned', 'sashimi'), name.replace('sashimi', 'finned'), ...general];
  return others.find(fits) ?? name;
}

/** Whether a cascade can tell the step: it costs nothing, and needs no argument to be named. */
export function isGathered({ name, cost }: PlanStep): boolean {
  return cost === 0 && gathered.includes(name);
}

const gathered: readonly string[] = [
  'full house',
  'hidden single',
  'naked single',
  'pointing pair',
  'pointing triple',
  'claiming',
  'box-line reduction',
  'locked candidates',
];

interface Draft {
  readonly wording: Wording;
  readonly steps: DraftStep[];
  readonly ids: Set<string>;
  /** Cells whose list was written. */
  readonly listed: Set<Cell>;
  /** Places that were said, as printed. */
  readonly placesSaid: Set<string>;
}

interface Numbered {
  readonly step: PlanStep;
  readonly index: number;
}

/** An argument and the easy steps after it; the first run has no argument. */
interface Run {
  readonly argument: Numbered | undefined;
  readonly easy: readonly Numbered[];
}

function runsOf(steps: readonly PlanStep[]): readonly Run[] {
  const runs: { argument: Numbered | undefined; easy: Numbered[] }[] = [{ argument: undefined, easy: [] }];
  for (const [index, step] of steps.entries()) {
    if (isGathered(step)) runs.at(-1)!.easy.push({ step, index });
    else runs.push({ argument: { step, index }, easy: [] });
  }
  return runs;
}

function tellOpening(told: Draft, { start }: Plan, { easy }: Run, isLast: boolean): void {
  const { wording } = told;
  const given = wording.number(membersOf(start.givens).length);
  if (easy.length === 0) {
    add(told, 'start', { title: wording.title('start'), say: wording.sentence('start', { given }), tells: [] });
    told.steps[0] = { ...told.steps[0]!, note: wording.title('start-note') };
    return;
  }
  const digits = placementsIn(easy);
  const count = wording.number(digits);
  const key = isLast ? 'opening-whole' : digits === 1 ? 'one-opening' : 'opening';
  add(told, 'opening', {
    chapter: wording.title('chapter-easy'),
    title: wording.title(digits === 1 ? 'one-opening' : 'opening', { count }),
    say: wording.sentence(key, { given, count }),
    ...cascade(told, easy),
  });
}

function tellArgument(told: Draft, { argument, easy }: Run, isLast: boolean): void {
  const { wording } = told;
  const { step, index } = argument!;
  const { position, instance } = step;
  const name = nameBorne(step);
  const chapter = wording.nameOf(name);
  const isListed = tellLists(told, step, chapter);
  const words = argumentInWords({ wording, name, position, instance });
  add(told, idOf(name), {
    ...(isListed ? {} : { chapter }),
    title: words.title,
    say: words.say,
    because: name,
    ...(chapter.toLowerCase() === name.toLowerCase() ? {} : { called: wording.name(name) }),
    ...argumentText(step),
    so: conclusionsText(wording, instance.conclusions),
    tells: [index],
  });
  if (easy.length === 0) return;
  if (!isLast) tellOpened(told, easy);
  else if (easy.length <= 4) tellOpened(told, easy, wording.sentence('home-short'));
  else {
    tellOpened(told, easy.slice(0, 1));
    tellHome(told, easy.slice(1));
  }
}

/** What comes at once: the first digit is said with its reason. */
function tellOpened(told: Draft, easy: readonly Numbered[], after = ''): void {
  const { wording } = told;
  const place = easy.findIndex(({ step }) => singleInWords(wording, step) !== undefined);
  const first = easy[place] === undefined ? undefined : singleInWords(wording, easy[place].step);
  const more = placementsIn(easy) - 1;
  const count = wording.number(more);
  const say =
    first === undefined
      ? wording.sentence('more', { count: wording.number(easy.length) })
      : wording.sentence(more === 0 ? 'opened' : more === 1 ? 'opened-one-more' : 'opened-more', { first, count });
  add(told, 'opened', {
    title: wording.title(after === '' ? 'opened' : 'home'),
    say: after === '' ? say : `${say} ${after}`,
    ...cascade(told, easy),
  });
}

function tellHome(told: Draft, easy: readonly Numbered[]): void {
  const { wording } = told;
  add(told, 'home', {
    chapter: wording.title('chapter-home'),
    title: wording.title('home'),
    say: wording.sentence('home', { count: wording.number(easy.length) }),
    ...cascade(told, easy),
  });
}

function cascade({ wording }: Draft, easy: readonly Numbered[]): Pick<DraftStep, 'cascade' | 'tells'> {
  const conclusions = easy.flatMap(({ step }) => step.instance.conclusions);
  return {
    cascade: conclusions.map((each) => printConclusion(wording.grid, each)).join(' '),
    tells: easy.map(({ index }) => index),
  };
}

function placementsIn(easy: readonly Numbered[]): number {
  return easy.filter(({ step }) => step.instance.conclusions.some(({ kind }) => kind === 'one-of')).length;
}

/** Why the digit goes there; undefined for what is no single. */
function singleInWords(wording: Wording, { name, position, instance }: PlanStep): string | undefined {
  const [set] = instance.sets;
  const [conclusion] = instance.conclusions;
  if (set === undefined || conclusion?.kind !== 'one-of') return undefined;
  const candidate = membersOf(conclusion.candidates)[0]!;
  const [cell, digit] = [cellOf(wording.grid, candidate), digitOf(wording.grid, candidate)];
  const slots = { cell: wording.cell(cell), digit: wording.digit(digit), 'a-digit': wording.aDigit(digit) };
  const full = name === 'full house' ? fullHouseOf(position, cell) : undefined;
  if (full !== undefined)
    return wording.part('full-house', {
      ...slots,
      house: wording.house(full),
      cell: wording.cellsWithin(full, [cell]),
    });
  if (set.source.kind !== 'places') return wording.part('naked-single', slots);
  const { house } = set.source;
  return wording.part('hidden-single', {
    ...slots,
    house: wording.house(house),
    cell: wording.cellsWithin(house, [cell]),
  });
}

function fullHouseOf(position: Position, cell: Cell): HouseShape | undefined {
  return position.grid.housesOf[cell]!.find((house) =>
    house.cells.every((other) => other === cell || isPlaced(position, other)),
  );
}

/** Writes down what the argument first needs; whether there was anything to write. */
function tellLists(told: Draft, step: PlanStep, chapter: string): boolean {
  const { wording } = told;
  const cells = cellsToList(told, step);
  const places = placesToSay(told, step);
  if (cells.length === 0 && places.length === 0) return false;
  const digits = [...new Set(places.map(({ source }) => source.digit))].sort((a, b) => a - b);
  const parts = places.map(({ source, members }) =>
    wording.part('places-part', {
      house: wording.house(source.house),
      digit: wording.digit(source.digit),
      cells: wording.cellsWithin(
        source.house,
        membersOf(members).map((candidate) => cellOf(wording.grid, candidate)),
      ),
      count: wording.number(membersOf(members).length),
    }),
  );
  const [digit] = digits;
  const title =
    digit === undefined
      ? wording.title(cells.length === 1 ? 'one-list' : 'lists', { count: wording.number(cells.length) })
      : wording.title('places', { ...about(wording, digit) });
  const say = [
    ...(digit === undefined
      ? []
      : [wording.sentence('places', { ...about(wording, digit), parts: wording.inTurn(parts) })]),
    ...(cells.length === 0 ? [] : [listsInWords(wording, cells)]),
  ].join(' ');
  add(told, `${idOf(step.name)}-${digit === undefined ? 'lists' : 'places'}`, {
    chapter,
    title,
    say,
    ...(places.length === 0 ? {} : { only: places.map(({ text }) => text) }),
    ...(cells.length === 0 ? {} : { pencil: cells.map((cell) => listText(step.position, cell)).join(' ') }),
    tells: [],
  });
  for (const cell of cells) told.listed.add(cell);
  for (const { text } of places) told.placesSaid.add(text);
  return true;
}

function about(wording: Wording, digit: Parameters<Wording['digit']>[0]) {
  return { digit: wording.digit(digit), 'a-digit': wording.aDigit(digit), digits: wording.digits(digit) };
}

function listsInWords(wording: Wording, cells: readonly Cell[]): string {
  const [cell] = cells;
  if (cells.length === 1 && cell !== undefined) return wording.sentence('one-list', { cell: wording.cell(cell) });
  const count = wording.number(cells.length);
  if (cells.length > listsReadOut) return wording.sentence('many-lists', { count });
  return wording.sentence('lists', { count, cells: wording.cells(cells) });
}

/** The open cells that the argument rests on and whose lists are not on the board yet. */
function cellsToList({ wording: { grid }, listed }: Draft, { position, instance }: PlanStep): Cell[] {
  const ofSets = instance.sets.flatMap((set) => (set.source.kind === 'cell' ? [set.source.cell] : []));
  const { deadly } = instance;
  const guardians = instance.sets
    .filter((set) => set.source.kind === 'guardians')
    .flatMap((set) => membersOf(set.members).map((candidate) => cellOf(grid, candidate)));
  const ofPattern =
    deadly?.kind === 'pattern'
      ? deadly.parts.flatMap((part) => part.cells)
      : deadly === undefined
        ? []
        : grid.cells.filter((cell) => !isPlaced(position, cell));
  const cells = new Set([...ofSets, ...ofPattern, ...guardians]);
  return [...cells].filter((cell) => !listed.has(cell) && !isPlaced(position, cell)).sort((a, b) => a - b);
}

type PlacesSet = OneOf & { readonly source: Extract<OneOf['source'], { kind: 'places' }> };

/** The places of one digit that the argument rests on, where they are few and its own sentence does not say them. */
function placesToSay(
  { wording: { grid }, placesSaid }: Draft,
  { name, instance }: PlanStep,
): readonly (Pick<PlacesSet, 'source' | 'members'> & { readonly text: string })[] {
  if (/^(hidden|naked) |X-wing$|swordfish$|jellyfish$/.test(name)) return [];
  const places = instance.sets.flatMap((set) => (isPlaces(set) ? [set] : []));
  const isOneDigit = new Set(places.map(({ source }) => source.digit)).size === 1;
  if (places.length < 2 || places.length > placesReadOut || !isOneDigit) return [];
  return places
    .map(({ source, members }) => {
      const cells = membersOf(members).map((candidate) => cellOf(grid, candidate));
      return { source, members, text: printOnly(grid, { digit: source.digit, house: source.house, cells }) };
    })
    .filter(({ text }) => !placesSaid.has(text));
}

function isPlaces(set: OneOf): set is PlacesSet {
  return set.source.kind === 'places';
}

function listText({ grid, possible }: Position, cell: Cell): string {
  const digits = candidatesInCell(grid, cell)
    .filter((candidate) => has(possible, candidate))
    .map((candidate) => digitOf(grid, candidate));
  return printPencil(grid, { cell, digits });
}

/** The argument in scene notation: its chain where it has one, else its sets; and its deadly pattern. */
function argumentText({ position: { grid }, instance }: PlanStep): Pick<DraftStep, 'from' | 'chain' | 'deadly'> {
  const { chain, deadly, sets } = instance;
  const named = sets.flatMap(({ source }) =>
    source.kind === 'cell' || source.kind === 'places' ? [printSet(grid, source)] : [],
  );
  return {
    ...(chain === undefined ? {} : { chain: printChain(grid, { ...chain, concludes: [] }) }),
    ...(chain !== undefined || named.length === 0 ? {} : { from: named.join(' ') }),
    ...(deadly === undefined ? {} : { deadly: printDeadly(grid, deadly) }),
  };
}

/** Removals put together where that is shorter: `r1c79<>7`. */
function conclusionsText({ grid }: Wording, conclusions: readonly Conclusion[]): string {
  const removed = conclusions.flatMap((each) => (each.kind === 'impossible' ? [each.candidate] : []));
  const removals = removed.length === 0 ? [] : printCandidates(grid, removed).split(' ');
  const others = conclusions.filter(({ kind }) => kind === 'one-of').map((each) => printConclusion(grid, each));
  return [...removals.map((each) => each.replace(/^(\d+)(r.*)$/, '$2<>$1')), ...others].join(' ');
}

function idOf(name: string): string {
  return name
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, '-')
    .replace(/^-|-$/g, '');
}

/** Puts the step on, its id made its own. */
function add(told: Draft, id: string, step: Omit<DraftStep, 'id'>): void {
  let own = id;
  for (let number = 2; told.ids.has(own); number++) own = `${id}-${number}`;
  told.ids.add(own);
  told.steps.push({ id: own, ...step });
}
