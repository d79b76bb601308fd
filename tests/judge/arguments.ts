/**
 * Arguments by the page of the language: what sets a chain names, which links hold, what a deadly pattern adds.
 * Every question is answered by going through all choices.
 */
import {
  type Board,
  candidate,
  candidateName,
  cellIn,
  cellName,
  choiceFrom,
  digitIn,
  digitsLeft,
  type House,
  isPlaced,
  type Position,
  placesLeft,
} from './rules.ts';

export interface Node {
  readonly digits: readonly number[];
  readonly cells: readonly number[];
}

export interface Chain {
  readonly nodes: readonly Node[];
  /** `links[i]` leads from node i to the next one; the last of a loop leads back to node 0. */
  readonly links: readonly ('=' | '-')[];
  readonly loop: boolean;
}

export type Deadly =
  | { readonly parts: readonly Node[] }
  | { readonly grid: true; readonly without: readonly number[] | undefined };

export type SetRef =
  | { readonly cell: number }
  | { readonly digit: number; readonly house: House }
  | { readonly step: string };

export interface Argument {
  readonly from: readonly SetRef[];
  readonly chains: readonly Chain[];
  readonly deadly: Deadly | undefined;
}

export interface NamedSet {
  readonly name: string;
  readonly members: readonly number[];
}

export interface JudgedLink {
  readonly kind: '=' | '-';
  readonly holds: boolean;
  /** Whether this may be given as what breaks it. */
  readonly mayBeBrokenBy: (candidates: readonly number[]) => boolean;
  /** The lists of sets that it may name; one list without any for a weak link. */
  readonly ways: readonly (readonly NamedSet[])[];
}

export interface Built {
  /** Where links may name different sets: every way to do so. */
  readonly alternatives: readonly (readonly NamedSet[])[];
  readonly links: readonly JudgedLink[];
  readonly faulty: boolean;
  readonly assumesOneSolution: boolean;
}

export interface Knowledge {
  readonly board: Board;
  readonly givens: readonly number[];
  readonly oneSolution: boolean;
  readonly eithers: ReadonlyMap<string, readonly number[]>;
}

export function buildArgument(known: Knowledge, position: Position, argument: Argument): Built {
  const { board } = known;
  let faulty = false;
  const named: NamedSet[] = [];
  const others: NamedSet[] = [];
  for (const ref of argument.from) {
    const set = setOf(known, position, ref);
    if (set === undefined) faulty = true;
    else named.push(set);
    if (set !== undefined && 'step' in ref) others.push(set);
  }
  const guardians = argument.deadly === undefined ? undefined : guardiansOf(known, position, argument.deadly);
  if (guardians === 'refused') faulty = true;
  if (guardians !== undefined && guardians !== 'refused') {
    others.push(guardians);
    named.push(guardians);
  }
  const links = argument.chains.flatMap((chain) => {
    const roles = rolesOf(chain.links);
    if (roles.includes('fault')) faulty = true;
    return chain.links.map((kind, index) => {
      const [a, b] = [chain.nodes[index]!, chain.nodes[(index + 1) % chain.nodes.length]!];
      return judgeLink({ board, position, a, b, others }, kind, roles[index]!);
    });
  });
  const alternatives = links.reduce<readonly (readonly NamedSet[])[]>(
    (all, link) => all.flatMap((sets) => link.ways.map((way) => withoutDoubles([...sets, ...way]))),
    [withoutDoubles(named)],
  );
  return { alternatives, links, faulty, assumesOneSolution: guardians !== undefined && guardians !== 'refused' };
}

function withoutDoubles(sets: readonly NamedSet[]): NamedSet[] {
  return [...new Map(sets.map((set) => [set.name, set])).values()];
}

function setOf({ board, eithers }: Knowledge, position: Position, ref: SetRef): NamedSet | undefined {
  if ('cell' in ref) return cellSet(board, position, ref.cell);
  if ('house' in ref) return houseSet(board, position, ref.digit, ref.house);
  const members = eithers.get(ref.step)?.filter((one) => position.possible.has(one));
  return members && { name: `step ${ref.step}`, members };
}

const cellSet = (board: Board, position: Position, cell: number): NamedSet => ({
  name: cellName(board, cell),
  members: digitsLeft(board, position, cell),
});

const houseSet = (board: Board, position: Position, digit: number, house: House): NamedSet => ({
  name: `${digit}${house.name}`,
  members: placesLeft(board, position, digit, house),
});

/** Links alternate; a `=` may replace a weak link, a `-` may not replace a strong one. */
export function rolesOf(links: readonly ('=' | '-')[]): ('strong' | 'weak' | 'fault')[] {
  const firstWeak = links.indexOf('-');
  const roles: ('strong' | 'weak' | 'fault')[] = [];
  for (const [index, kind] of links.entries()) {
    const before = roles.at(-1);
    if (index <= firstWeak || firstWeak === -1) {
      const offset = firstWeak === -1 ? index + 1 : firstWeak - index;
      roles.push(offset % 2 === 0 ? 'weak' : 'strong');
    } else if (before === 'strong') roles.push('weak');
    else roles.push(kind === '-' ? 'fault' : 'strong');
  }
  return roles;
}

interface Ends {
  readonly board: Board;
  readonly position: Position;
  readonly a: Node;
  readonly b: Node;
  readonly others: readonly NamedSet[];
}

function judgeLink(ends: Ends, kind: '=' | '-', role: 'strong' | 'weak' | 'fault'): JudgedLink {
  const weak = judgeWeak(ends);
  if (kind === '-') return { kind, ...weak, ways: [[]] };
  const strong = judgeStrong(ends);
  if (role === 'strong') return { kind, ...strong };
  return {
    kind,
    holds: strong.holds && weak.holds,
    mayBeBrokenBy: strong.holds ? weak.mayBeBrokenBy : strong.mayBeBrokenBy,
    ways: [[]],
  };
}

/** Whether the candidates taken for true say that the node is true. */
function isTrue(board: Board, node: Node, chosen: readonly number[]): boolean {
  if (node.digits.length <= node.cells.length) {
    return node.digits.every((digit) => node.cells.some((cell) => chosen.includes(candidate(board, cell, digit))));
  }
  return node.cells.every((cell) => node.digits.some((digit) => chosen.includes(candidate(board, cell, digit))));
}

function partsOf({ board, position }: Ends, node: Node): number[][] {
  const standing = (all: readonly number[]) => all.filter((one) => position.possible.has(one));
  return node.digits.length <= node.cells.length
    ? node.digits.map((digit) => standing(node.cells.map((cell) => candidate(board, cell, digit))))
    : node.cells.map((cell) => standing(node.digits.map((digit) => candidate(board, cell, digit))));
}

/** All ways to take one from each, free of conflicts or not. */
function* products(sets: readonly (readonly number[])[]): Generator<number[]> {
  const [first, ...others] = sets;
  if (first === undefined) yield [];
  else for (const one of first) for (const rest of products(others)) yield [one, ...rest];
}

function isFree(board: Board, chosen: readonly number[]): boolean {
  return chosen.every((one) => chosen.every((other) => !board.conflicts[one]![other]!));
}

/** Whether the two nodes are not both true. */
export function isWeak(board: Board, position: Position, a: Node, b: Node): boolean {
  return judgeWeak({ board, position, a, b, others: [] }).holds;
}

function judgeWeak(ends: Ends): { readonly holds: boolean; readonly mayBeBrokenBy: JudgedLink['mayBeBrokenBy'] } {
  const { board, position, a, b } = ends;
  let holds = true;
  for (const chosen of products([...partsOf(ends, a), ...partsOf(ends, b)])) if (isFree(board, chosen)) holds = false;
  const mayBeBrokenBy = (chosen: readonly number[]) =>
    isFree(board, chosen) &&
    chosen.every((one) => position.possible.has(one)) &&
    isTrue(board, a, chosen) &&
    isTrue(board, b, chosen);
  return { holds, mayBeBrokenBy };
}

function judgeStrong(ends: Ends): Omit<JudgedLink, 'kind'> {
  const { board, position, a, b, others } = ends;
  const same = sameCells(a, b);
  const digits = [...new Set([...a.digits, ...b.digits])].sort();
  const houses = board.houses.filter((house) => [...a.cells, ...b.cells].every((cell) => house.cells.includes(cell)));
  const standing = [a, b].flatMap((node) => partsOf(ends, node).flat());
  const ways = [
    ...(same ? [a.cells.map((cell) => cellSet(board, position, cell))] : []),
    ...houses.map((house) => digits.map((digit) => houseSet(board, position, digit, house))),
    ...others.filter((set) => standing.every((one) => set.members.includes(one))).map((set) => [set]),
  ];
  const escapes = (way: readonly NamedSet[]) => {
    for (const chosen of products(way.map((set) => set.members))) {
      if (isFree(board, chosen) && !isTrue(board, a, chosen) && !isTrue(board, b, chosen)) return true;
    }
    return false;
  };
  const holding = ways.filter((way) => !escapes(way));
  if (holding.length > 0) return { holds: true, ways: holding, mayBeBrokenBy: (chosen) => chosen.length === 0 };
  const count = (way: readonly NamedSet[]) => new Set(way.flatMap((set) => set.members)).size;
  const fewest = Math.min(...ways.map(count));
  const nearest = same ? ways.slice(0, 1) : ways.filter((way) => count(way) === fewest);
  const own = new Set(standing);
  const mayBeBrokenBy = (chosen: readonly number[]) => {
    if (ways.length === 0) return chosen.length === 0;
    return nearest.some((way) => {
      const strangers = way.flatMap((set) => set.members).filter((one) => !own.has(one));
      if (strangers.length > 0) return [...new Set(strangers)].sort((x, y) => x - y).join() === chosen.join();
      const takesAll = way.every((set) => set.members.some((one) => chosen.includes(one)));
      return takesAll && isFree(board, chosen) && !isTrue(board, a, chosen) && !isTrue(board, b, chosen);
    });
  };
  return { holds: false, ways: nearest.length === 0 ? [[]] : nearest, mayBeBrokenBy };
}

function sameCells(a: Node, b: Node): boolean {
  return a.cells.length === b.cells.length && a.cells.every((cell) => b.cells.includes(cell));
}

export function guardiansOf(known: Knowledge, position: Position, deadly: Deadly): NamedSet | 'refused' {
  const { board, givens, oneSolution } = known;
  if (!oneSolution) return 'refused';
  if ('grid' in deadly) {
    const extras = deadly.without ?? onlyExtrasOf(board, position);
    if (extras === undefined || extras.length === 0 || !isGrave(board, position, extras)) return 'refused';
    return { name: 'deadly grid', members: [...extras].sort((x, y) => x - y) };
  }
  const digitsOf = new Map<number, Set<number>>();
  for (const part of deadly.parts) {
    for (const cell of part.cells) digitsOf.set(cell, new Set([...(digitsOf.get(cell) ?? []), ...part.digits]));
  }
  if (givens.some((given) => digitsOf.has(cellIn(board, given)))) return 'refused';
  const cells = [...digitsOf].map(([cell, digits]) => [...digits].map((digit) => candidate(board, cell, digit)));
  const fillings = [...products(cells)].filter((filling) => isFree(board, filling));
  const contents = fillings.map((filling) =>
    board.houses
      .map((house) =>
        filling
          .filter((one) => house.cells.includes(cellIn(board, one)))
          .map((one) => digitIn(board, one))
          .sort()
          .join(''),
      )
      .join(),
  );
  const hasTwin = (content: string) => contents.filter((other) => other === content).length > 1;
  if (fillings.length === 0 || !contents.every(hasTwin)) return 'refused';
  const members = [...digitsOf].flatMap(([cell, digits]) =>
    digitsLeft(board, position, cell).filter((one) => !digits.has(digitIn(board, one))),
  );
  return members.length === 0 ? 'refused' : { name: 'deadly', members: members.sort((x, y) => x - y) };
}

function isGrave(board: Board, position: Position, extras: readonly number[]): boolean {
  if (!extras.every((one) => position.possible.has(one))) return false;
  const open = [...Array(board.size ** 2).keys()].filter((cell) => !isPlaced(board, position, cell));
  const left = (cell: number) => digitsLeft(board, position, cell).filter((one) => !extras.includes(one));
  if (open.length === 0 || !open.every((cell) => left(cell).length === 2)) return false;
  return board.houses.every((house) =>
    [...Array(board.size).keys()].every((at) => {
      const cells = house.cells.filter((cell) => open.includes(cell));
      const count = cells.filter((cell) => left(cell).includes(candidate(board, cell, at + 1))).length;
      return count === 0 || count === 2;
    }),
  );
}

/** The extras, if exactly one choice of them makes the grid deadly; found by trying every pair in every open cell. */
function onlyExtrasOf(board: Board, position: Position): number[] | undefined {
  const open = [...Array(board.size ** 2).keys()].filter((cell) => !isPlaced(board, position, cell));
  const pairs = open.map((cell) => {
    const digits = digitsLeft(board, position, cell);
    return digits.flatMap((one, index) => digits.slice(index + 1).map((other) => [one, other]));
  });
  if (pairs.reduce((product, each) => product * each.length, 1) > 3000) return undefined;
  const found: number[][] = [];
  const choose = (index: number, kept: readonly number[]): void => {
    if (index === pairs.length) {
      const extras = open.flatMap((cell) => digitsLeft(board, position, cell)).filter((one) => !kept.includes(one));
      if (isGrave(board, position, extras)) found.push(extras);
      return;
    }
    for (const pair of pairs[index]!) choose(index + 1, [...kept, ...pair]);
  };
  choose(0, []);
  return found.length === 1 ? found[0] : undefined;
}

/** As it is written in a scene. */
export function argumentLines(board: Board, argument: Argument): string[] {
  const from = argument.from.map((ref) => {
    if ('cell' in ref) return cellName(board, ref.cell);
    return 'house' in ref ? `${ref.digit}${ref.house.name}` : `step ${ref.step}`;
  });
  const chains = argument.chains.map((chain) => JSON.stringify(chainText(board, chain)));
  return [
    ...(from.length > 0 ? [`from: ${from.join(' ')}`] : []),
    ...(chains.length > 0 ? [`chain: ${chains.length === 1 ? chains[0] : `[${chains.join(', ')}]`}`] : []),
    ...(argument.deadly === undefined ? [] : [`deadly: ${deadlyText(board, argument.deadly)}`]),
  ];
}

const cellsText = (board: Board, cells: readonly number[]) => cells.map((cell) => cellName(board, cell)).join('|');

export function chainText(board: Board, { nodes, links, loop }: Chain): string {
  const order = loop ? [...nodes, nodes[0]!] : nodes;
  const written = (node: Node, before: Node | undefined) => {
    const carriesOn = before !== undefined && before.digits.join('') === node.digits.join('');
    return `${carriesOn ? '' : `(${node.digits.join('')})`}${cellsText(board, node.cells)}`;
  };
  return order.map((node, index) => written(node, order[index - 1]) + (links[index] ?? '')).join('');
}

function deadlyText(board: Board, deadly: Deadly): string {
  if ('grid' in deadly) {
    if (deadly.without === undefined) return 'grid';
    return `grid without ${deadly.without.map((one) => candidateName(board, one)).join(' ')}`;
  }
  return deadly.parts.map((part) => part.digits.join('') + cellsText(board, part.cells)).join(' ');
}

/** Whether the sets leave a choice at all: in a true position they do. */
export function haveChoice(board: Board, sets: readonly NamedSet[]): boolean {
  return (
    choiceFrom(
      board,
      sets.map((set) => set.members),
    ) !== undefined
  );
}
