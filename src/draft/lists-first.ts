/**
 * What is written down before an argument: lists of cells when an argument first rests on them, the places of a digit right
 * before the argument that rests on those.
 */

import { has, membersOf } from '../grid/candidates.ts';
import { type Cell, candidatesInCell, cellOf, digitOf } from '../grid/grid.ts';
import { printOnly, printPencil } from '../grid/notation/print.ts';
import type { PlanStep } from '../plan/plan.ts';
import { isPlaced } from '../proof/is-placed.ts';
import type { OneOf, Position } from '../proof/kernel.ts';
import { techniqueNamed } from '../techniques/all-techniques.ts';
import type { Phrase } from '../techniques/technique.ts';
import { add, type DraftSoFar, idOf } from './draft-step.ts';
import type { Wording } from './wording.ts';

/** Lists of up to this many cells are read out cell by cell; more are counted. */
const listsReadOut = 6;
/** Places are said before an argument of at most this many of them. */
const placesReadOut = 4;

/** Writes down what the argument first needs; whether there was anything to write. */
export function addLists(draft: DraftSoFar, step: PlanStep, chapter: string): boolean {
  const { wording } = draft;
  const cells = cellsToList(draft, step);
  const places = placesToSay(draft, step);
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
  add(draft, `${idOf(step.name)}-${digit === undefined ? 'lists' : 'places'}`, {
    chapter,
    title,
    say,
    ...(places.length === 0 ? {} : { only: places.map(({ text }) => text) }),
    ...(cells.length === 0 ? {} : { pencil: cells.map((cell) => listText(step.position, cell)).join(' ') }),
    covers: [],
  });
  for (const cell of cells) draft.listed.add(cell);
  for (const { text } of places) draft.placesSaid.add(text);
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
function cellsToList({ wording: { grid }, listed }: DraftSoFar, { position, instance }: PlanStep): Cell[] {
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

/** Sentences that say where the digits go. */
const saysItsPlaces: readonly Phrase[] = ['hidden subset', 'fish'];

/** The places of one digit that the argument rests on, if they are few and its own sentence does not say them. */
function placesToSay(
  { wording: { grid }, placesSaid }: DraftSoFar,
  { name, instance }: PlanStep,
): readonly (Pick<PlacesSet, 'source' | 'members'> & { readonly text: string })[] {
  if (saysItsPlaces.includes(techniqueNamed(name).phrase)) return [];
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
