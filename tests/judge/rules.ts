/**
 * A second reading of the rules of proof, written from the page of the language and not from the checker: boards,
 * positions, sets, conflicts, what a choice is. Slow and plain; it shares no code with `src`.
 */

export interface House {
  readonly name: string;
  readonly kind: 'r' | 'c' | 'b';
  readonly cells: readonly number[];
}

export interface Board {
  readonly size: number;
  readonly boxes: string;
  readonly houses: readonly House[];
  /** By candidate (`cell * size + digit - 1`) and candidate. */
  readonly conflicts: readonly (readonly boolean[])[];
}

export interface Position {
  readonly possible: ReadonlySet<number>;
  readonly placed: ReadonlySet<number>;
}

export type Conclusion = { readonly not: number } | { readonly oneOf: readonly number[] };

export function boardOf(boxRows: number, boxColumns: number): Board {
  const size = boxRows * boxColumns;
  const range = [...Array(size).keys()];
  const rowOf = (cell: number) => Math.floor(cell / size);
  const columnOf = (cell: number) => cell % size;
  const boxOf = (cell: number) =>
    Math.floor(rowOf(cell) / boxRows) * (size / boxColumns) + Math.floor(columnOf(cell) / boxColumns);
  const cells = [...Array(size * size).keys()];
  const kinds = [
    ['r', rowOf],
    ['c', columnOf],
    ['b', boxOf],
  ] as const;
  const houses = kinds.flatMap(([kind, of]) =>
    range.map((index) => ({ kind, name: `${kind}${index + 1}`, cells: cells.filter((cell) => of(cell) === index) })),
  );
  const candidates = [...Array(size * size * size).keys()];
  const conflicts = candidates.map((a) =>
    candidates.map((b) => {
      const [cellA, cellB] = [Math.floor(a / size), Math.floor(b / size)];
      if (cellA === cellB) return a !== b;
      return a % size === b % size && kinds.some(([, of]) => of(cellA) === of(cellB));
    }),
  );
  return { size, boxes: `${boxRows}x${boxColumns}`, houses, conflicts };
}

export const cellIn = (board: Board, candidate: number): number => Math.floor(candidate / board.size);
export const digitIn = (board: Board, candidate: number): number => (candidate % board.size) + 1;
export const candidate = (board: Board, cell: number, digit: number): number => cell * board.size + digit - 1;
export const cellName = (board: Board, cell: number): string =>
  `r${Math.floor(cell / board.size) + 1}c${(cell % board.size) + 1}`;
export const candidateName = (board: Board, of: number): string =>
  `${digitIn(board, of)}${cellName(board, cellIn(board, of))}`;

export function conclusionName(board: Board, conclusion: Conclusion): string {
  if ('not' in conclusion)
    return `${cellName(board, cellIn(board, conclusion.not))}<>${digitIn(board, conclusion.not)}`;
  const [first, ...others] = conclusion.oneOf;
  if (others.length === 0) return `${cellName(board, cellIn(board, first!))}=${digitIn(board, first!)}`;
  return `either ${[...conclusion.oneOf]
    .sort((a, b) => a - b)
    .map((each) => candidateName(board, each))
    .join(' ')}`;
}

export function digitsLeft(board: Board, { possible }: Position, cell: number): number[] {
  return [...Array(board.size).keys()].map((at) => cell * board.size + at).filter((each) => possible.has(each));
}

export function placesLeft(board: Board, { possible }: Position, digit: number, house: House): number[] {
  return house.cells.map((cell) => candidate(board, cell, digit)).filter((each) => possible.has(each));
}

export function isPlaced(board: Board, { placed }: Position, cell: number): boolean {
  return [...placed].some((each) => cellIn(board, each) === cell);
}

/** A placement takes what it sees, a removal takes itself, an either/or takes nothing. */
export function entered(board: Board, position: Position, conclusions: readonly Conclusion[]): Position {
  const possible = new Set(position.possible);
  const placed = new Set(position.placed);
  for (const conclusion of conclusions) {
    if ('not' in conclusion) possible.delete(conclusion.not);
    else if (conclusion.oneOf.length === 1) {
      const digit = conclusion.oneOf[0]!;
      placed.add(digit);
      for (const other of possible) if (board.conflicts[digit]![other]!) possible.delete(other);
    }
  }
  return { possible, placed };
}

export function startOf(board: Board, givens: readonly number[]): Position {
  const all = new Set(board.conflicts.keys());
  return entered(
    board,
    { possible: all, placed: new Set() },
    givens.map((given) => ({ oneOf: [given] })),
  );
}

/** One from every set, free of conflicts with one another and with `beside`; undefined if there is no such choice. */
export function choiceFrom(
  board: Board,
  sets: readonly (readonly number[])[],
  beside: readonly number[] = [],
): number[] | undefined {
  const free = (one: number, chosen: readonly number[]) => chosen.every((other) => !board.conflicts[one]![other]!);
  const choose = (left: readonly (readonly number[])[], chosen: readonly number[]): number[] | undefined => {
    const open = left.map((set) => set.filter((one) => free(one, chosen)));
    let fewest = open[0];
    for (const set of open) if (set.length < fewest!.length) fewest = set;
    if (fewest === undefined) return [...chosen];
    const others = open.filter((set) => set !== fewest);
    for (const one of fewest) {
      const found = choose(others, [...chosen, one]);
      if (found !== undefined) return found;
    }
    return undefined;
  };
  return choose(sets, beside);
}

export function proves(board: Board, sets: readonly (readonly number[])[], conclusion: Conclusion): boolean {
  if ('not' in conclusion) return choiceFrom(board, sets, [conclusion.not]) === undefined;
  const without = sets.map((set) => set.filter((one) => !conclusion.oneOf.includes(one)));
  return choiceFrom(board, without) === undefined;
}

export function isRedundant({ possible, placed }: Position, conclusion: Conclusion): boolean {
  return 'not' in conclusion ? !possible.has(conclusion.not) : conclusion.oneOf.some((one) => placed.has(one));
}

/** A choice of one candidate in every cell: up to `most` solutions within what is possible. */
export function solutionsWithin(board: Board, possible: ReadonlySet<number>, most: number): number[][] {
  const found: number[][] = [];
  const cells = [...Array(board.size * board.size).keys()];
  const search = (open: readonly (readonly number[])[], chosen: readonly number[]): void => {
    if (found.length >= most) return;
    let fewest: readonly number[] | undefined;
    for (const set of open) if (fewest === undefined || set.length < fewest.length) fewest = set;
    if (fewest === undefined) {
      found.push([...chosen].sort((a, b) => a - b));
      return;
    }
    if (fewest.length > 1) {
      for (const hidden of onlyPlaces(board, open)) {
        fewest = open.find((set) => set.includes(hidden))!.filter((one) => one === hidden);
        break;
      }
    }
    const cell = cellIn(board, fewest[0] ?? -1);
    for (const one of fewest) {
      const others = open.filter((set) => set.length > 0 && cellIn(board, set[0]!) !== cell);
      const left = others.map((set) => set.filter((other) => !board.conflicts[one]![other]!));
      if (left.every((set) => set.length > 0)) search(left, [...chosen, one]);
    }
  };
  const open = cells.map((cell) => digitsLeft(board, { possible, placed: new Set() }, cell));
  if (open.every((set) => set.length > 0)) search(open, []);
  return found;
}

/** A candidate of an open cell that is the only one of its digit in some house. */
function* onlyPlaces(board: Board, open: readonly (readonly number[])[]): Generator<number> {
  const cellsOpen = new Map(open.map((set) => [cellIn(board, set[0]!), set] as const));
  for (const house of board.houses) {
    const counts = new Map<number, number[]>();
    for (const cell of house.cells) {
      for (const one of cellsOpen.get(cell) ?? []) {
        const digit = digitIn(board, one);
        counts.set(digit, [...(counts.get(digit) ?? []), one]);
      }
    }
    for (const places of counts.values()) if (places.length === 1) yield places[0]!;
  }
}
