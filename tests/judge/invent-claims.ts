/**
 * Claims by chance for the position reached: sets, chains, deadly patterns, cascades, lists, singles, either/ors.
 */
import { guardiansOf, type SetRef } from './arguments.ts';
import { type Claim, isContradicted, outcomeBySingle } from './claims.ts';
import { concludeFrom, type Setting } from './conclude.ts';
import { inventChain } from './invent-chain.ts';
import {
  type Board,
  type Conclusion,
  candidate,
  cellIn,
  digitIn,
  digitsLeft,
  entered,
  type Position,
  placesLeft,
} from './rules.ts';

/** The claims of one step; undefined where chance found none. */
export function inventClaims(setting: Setting): Claim[] | undefined {
  const { chance } = setting;
  const kind = chance.below(20);
  if (kind < 4) return inventSets(setting);
  if (kind < 10) return inventChain(setting);
  if (kind < 13) return inventDeadly(setting);
  if (kind < 15) return inventCascade(setting);
  if (kind < 17) return inventLists(setting);
  if (kind < 18) return inventSingle(setting);
  if (kind < 19) return inventFromEither(setting);
  const parts = [inventSets(setting), inventLists(setting), inventCascade(setting)];
  return parts.flatMap((part) => part ?? []);
}

/** Sets about one part of the board that prove something, and conclusions from them. */
function inventSets(setting: Setting): Claim[] | undefined {
  const { chance } = setting;
  for (let tries = 0; tries < 25; tries++) {
    const from = crowdedSets(setting);
    if (from.length === 0) return undefined;
    const needless = chance.below(6) === 0 ? crowdedSets(setting).slice(0, 1) : [];
    const so = concludeFrom(setting, { from: [...from, ...needless], chains: [], deadly: undefined });
    if (so !== undefined) return [so];
  }
  return undefined;
}

function crowdedSets({ truth: { board }, position, chance }: Setting): SetRef[] {
  const count = 1 + chance.below(4);
  const isOpen = (members: readonly number[]) => members.length > 1 && members.length < 5;
  const digit = 1 + chance.below(board.size);
  const house = chance.pick(board.houses);
  const inHouse = house.cells.map((cell): SetRef => ({ cell }));
  const digitsOfHouse = [...Array(board.size).keys()].map((at): SetRef => ({ digit: at + 1, house }));
  const ofDigit = board.houses.map((each): SetRef => ({ digit, house: each }));
  const ofKind = board.houses
    .filter((each) => each.kind === house.kind)
    .map((each): SetRef => ({ digit, house: each }));
  const bivalue = [...Array(board.size ** 2).keys()]
    .map((cell): SetRef => ({ cell }))
    .filter((ref) => membersOf(board, position, ref).length === 2);
  const pool = chance.pick([inHouse, digitsOfHouse, ofDigit, ofDigit, ofKind, bivalue, [...bivalue, ...ofDigit]]);
  return chance.shuffled(pool.filter((ref) => isOpen(membersOf(board, position, ref)))).slice(0, count);
}

function membersOf(board: Board, position: Position, ref: SetRef): number[] {
  if ('cell' in ref) return digitsLeft(board, position, ref.cell);
  return 'house' in ref ? placesLeft(board, position, ref.digit, ref.house) : [];
}

function inventDeadly(setting: Setting): Claim[] | undefined {
  const { truth, position, chance } = setting;
  const { board } = truth;
  const size = board.size;
  if (size === 4 && chance.below(2) === 0) {
    const so = concludeFrom(setting, { from: [], chains: [], deadly: { grid: true, without: undefined } });
    return so && [so];
  }
  for (let tries = 0; tries < 150; tries++) {
    if (tries === 0 && chance.below(4) === 0) return inventWidePattern(setting);
    const [a, b] = [chance.below(size), chance.below(size)];
    const [c, d] = [chance.below(size), chance.below(size)];
    if (a === b || c === d) continue;
    const cells = [a * size + c, a * size + d, b * size + c, b * size + d];
    const counts = new Map<number, number>();
    for (const cell of cells)
      for (const one of digitsLeft(board, position, cell))
        counts.set(digitIn(board, one), (counts.get(digitIn(board, one)) ?? 0) + 1);
    const shared = [...counts]
      .filter(([, count]) => count >= 3)
      .map(([digit]) => digit)
      .sort();
    if (shared.length < 2) continue;
    const digits = chance.shuffled(shared).slice(0, 2).sort();
    const deadly = { parts: [{ digits, cells: cells.sort((x, y) => x - y) }] };
    const guardians = guardiansOf(truth, position, deadly);
    if (guardians === 'refused' && chance.below(60) > 0) continue;
    if (guardians !== 'refused' && guardians.members.length > 5) continue;
    if (guardians !== 'refused' && guardians.members.length === 2 && chance.below(2) === 0) {
      return inventChain(setting, deadly, guardians.members);
    }
    const beside = [
      [],
      [],
      crowdedSets(setting).slice(0, 1),
      cells.slice(0, 1).map((cell): SetRef => ({ cell })),
      [...board.houses]
        .filter((house) => cells.filter((cell) => house.cells.includes(cell)).length === 2)
        .slice(0, 1)
        .map((house): SetRef => ({ digit: digits[0]!, house })),
    ];
    const so = concludeFrom(setting, { from: chance.pick(beside), chains: [], deadly });
    if (so !== undefined) return [so];
  }
  return undefined;
}

/** Three digits in two rows and three columns, or the grid with its extras named: mostly refused. */
function inventWidePattern(setting: Setting): Claim[] | undefined {
  const { truth, position, chance } = setting;
  const { board } = truth;
  if (chance.below(3) === 0) {
    const without = chance
      .shuffled([...position.possible])
      .slice(0, 1 + chance.below(3))
      .sort((a, b) => a - b);
    const so = concludeFrom(setting, { from: [], chains: [], deadly: { grid: true, without } });
    return so && [so];
  }
  const boxRows = Number(board.boxes[0]);
  const band = boxRows * chance.below(board.size / boxRows);
  const top = band + (boxRows > 2 ? chance.below(2) : 0);
  const columns = chance
    .shuffled([...Array(board.size).keys()])
    .slice(0, 3)
    .sort();
  const cells = [top, top + 1].flatMap((row) => columns.map((column) => row * board.size + column));
  const digits = chance
    .shuffled([...Array(board.size).keys()].map((at) => at + 1))
    .slice(0, 3)
    .sort();
  const deadly = { parts: [{ digits, cells }] };
  const guardians = guardiansOf(truth, position, deadly);
  if (guardians === 'refused') {
    const so = concludeFrom(setting, { from: [{ cell: cells[0]! }], chains: [], deadly });
    return so && [so];
  }
  const some = chance.below(3) === 0 ? guardians.members.slice(1) : guardians.members;
  return some.length < 2
    ? undefined
    : [{ kind: 'so', argument: { from: [], chains: [], deadly }, so: [{ oneOf: some }] }];
}

function inventCascade({ truth, position, eithers, chance }: Setting): Claim[] | undefined {
  const { board } = truth;
  const items: Conclusion[][] = [[]];
  let at = position;
  for (let length = 1 + chance.below(5); length > 0; length--) {
    const open = [...at.possible].filter((one) => !at.placed.has(one));
    if (open.length === 0) break;
    const wanted = chance.below(8);
    let next: Conclusion | undefined;
    for (const one of chance.shuffled(open)) {
      const each: Conclusion = chance.below(2) === 0 ? { not: one } : { oneOf: [one] };
      const outcome = outcomeBySingle(board, at, each, 'either');
      if (
        wanted > 1
          ? outcome === 'proved'
          : wanted === 1
            ? outcome === 'open'
            : outcome === 'open' && !isContradicted(truth, each)
      ) {
        next = each;
        if (outcome === 'proved') at = entered(board, at, [each]);
        break;
      }
    }
    if (next === undefined) continue;
    if (chance.below(3) === 0) items.push([]);
    items.at(-1)!.push(next);
  }
  const full = items.filter((item) => item.length > 0);
  if (chance.below(3) === 0) {
    const from = crowdedSets({ truth, position: at, eithers, chance });
    const so =
      from.length === 0
        ? undefined
        : concludeFrom({ truth, position: at, eithers, chance }, { from, chains: [], deadly: undefined });
    const so2 =
      so?.kind === 'so' && so.so !== 'all'
        ? (so.so ?? []).filter((each) => 'not' in each || each.oneOf.length === 1)
        : [];
    if (so2.length > 0)
      return [...full.map((item): Claim => ({ kind: 'cascade', items: item })), { kind: 'cascade', items: so2, from }];
  }
  return full.length === 0 ? undefined : full.map((item) => ({ kind: 'cascade', items: item }));
}

/** Lists that hold what is open, and lists that leave out what follows, what is true, or hold what is gone. */
function inventLists({ truth, position, chance, eithers }: Setting): Claim[] {
  const { board } = truth;
  return Array.from({ length: 1 + chance.below(2) }, (): Claim => {
    const spoil = chance.below(6);
    const listed = <T>(all: readonly T[], open: readonly T[], follows: (each: T) => boolean): T[] => {
      const kept = open.filter((each) => !(follows(each) && chance.below(3) > 0));
      if (spoil === 0 && kept.length > 1) kept.splice(chance.below(kept.length), 1);
      if (spoil === 1) kept.push(chance.pick(all));
      return kept.length > 0 ? [...new Set(kept)] : [...open];
    };
    const follows = (one: number) => outcomeBySingle(board, position, { not: one }, 'locked') === 'proved';
    if (chance.below(2) === 0) {
      const cell = chance.below(board.size ** 2);
      const open = digitsLeft(board, position, cell).map((one) => digitIn(board, one));
      const all = [...Array(board.size).keys()].map((at) => at + 1);
      const digits = listed(all, open, (digit) => follows(candidate(board, cell, digit)));
      const list = { cell, digits: digits.sort((a, b) => a - b) };
      const second = chance.below(3) === 0 ? otherList({ truth, position, chance, eithers }, cell) : [];
      return { kind: 'pencil', lists: [list, ...second] };
    }
    const [digit, house] = [1 + chance.below(board.size), chance.pick(board.houses)];
    const open = placesLeft(board, position, digit, house).map((one) => cellIn(board, one));
    const cells = listed(house.cells, open, (cell) => follows(candidate(board, cell, digit)));
    return { kind: 'only', digit, house, cells: cells.sort((a, b) => a - b) };
  }).sort((a, b) => Number(a.kind === 'pencil') - Number(b.kind === 'pencil'));
}

/** What is open in a cell that the first sees, but for what follows by locked candidates. */
function otherList(
  { truth: { board }, position, chance }: Setting,
  first: number,
): { cell: number; digits: number[] }[] {
  const house = chance.pick(board.houses.filter((each) => each.cells.includes(first)));
  const cell = chance.pick(house.cells.filter((each) => each !== first));
  const open = digitsLeft(board, position, cell);
  const kept = open.filter((one) => outcomeBySingle(board, position, { not: one }, 'locked') !== 'proved');
  return [{ cell, digits: (kept.length > 0 ? kept : open).map((one) => digitIn(board, one)) }];
}

/** A conclusion without an argument. */
function inventSingle({ truth: { board }, position, chance }: Setting): Claim[] | undefined {
  const argument = { from: [], chains: [], deadly: undefined };
  const open = chance.shuffled([...position.possible].filter((one) => !position.placed.has(one)));
  const all = open.map((one): Conclusion => (chance.below(3) === 0 ? { not: one } : { oneOf: [one] }));
  const found = all.find((each) => outcomeBySingle(board, position, each, 'single') === 'proved') ?? all[0];
  if (found === undefined) return undefined;
  return [
    {
      kind: 'so',
      argument,
      so: chance.below(8) === 0 && all[1] !== undefined && all[1] !== found ? [found, all[1]] : [found],
    },
  ];
}

function inventFromEither(setting: Setting): Claim[] | undefined {
  const { eithers, chance, position, truth } = setting;
  const known = [...eithers];
  if (known.length === 0) return undefined;
  const [step, members] = chance.pick(known);
  const ends = members.filter((one) => position.possible.has(one));
  if (ends.length === 2 && chance.below(2) === 0) return inventChain(setting, undefined, ends, step);
  const beside = chance.below(2) === 0 ? crowdedSets(setting).slice(0, 2) : [];
  const about = ends.map((one): SetRef => ({ cell: cellIn(truth.board, one) }));
  const so = concludeFrom(setting, {
    from: [{ step }, ...beside, ...about.slice(0, chance.below(2))],
    chains: [],
    deadly: undefined,
  });
  return so && [so];
}
