/**
 * Chains by chance: walks along links that hold, with grouped nodes and almost locked sets, and now and then a fault.
 */
import { type Argument, type Chain, type Deadly, isWeak, type Node } from './arguments.ts';
import type { Claim } from './claims.ts';
import { concludeFrom, type Setting } from './conclude.ts';
import { candidate, cellIn, digitIn, digitsLeft, placesLeft } from './rules.ts';

/** A chain and what is concluded from it; `first` are two candidates that a deadly pattern or a step links. */
export function inventChain(
  setting: Setting,
  deadly?: Deadly,
  first?: readonly number[],
  step?: string,
): Claim[] | undefined {
  const { chance } = setting;
  for (let tries = 0; tries < 8; tries++) {
    const chain = walk(setting, first);
    if (chain === undefined) continue;
    const chains = [chance.below(3) === 0 ? spoilt(setting, chain) : chain];
    const second = chance.below(8) === 0 ? walk(setting) : undefined;
    if (second !== undefined) chains.push(second);
    const argument: Argument = { from: step === undefined ? [] : [{ step }], chains, deadly };
    const so = concludeFrom(setting, argument, true);
    if (so !== undefined) return [so];
  }
  return undefined;
}

function walk(setting: Setting, first?: readonly number[]): Chain | undefined {
  const {
    truth: { board },
    position,
    chance,
  } = setting;
  const open = [...position.possible].filter((one) => !position.placed.has(one));
  if (open.length === 0) return undefined;
  const single = (one: number): Node => ({ digits: [digitIn(board, one)], cells: [cellIn(board, one)] });
  const start = chance.pick(open);
  let nodes: Node[] = first === undefined ? [single(start)] : first.map(single);
  if (first === undefined) {
    const next = chance.shuffled(strongFrom(setting, nodes[0]!))[0];
    if (next === undefined) return undefined;
    nodes.push(next);
  }
  const links: ('=' | '-')[] = ['='];
  const goal = 1 + 2 * chance.below(4);
  while (links.length < goal) {
    const pairs = chance.shuffled(pairsAfter(setting, nodes.at(-1)!));
    const fresh = pairs.find((pair) => pair.every((node) => !nodes.some((other) => isSame(other, node))));
    if (fresh === undefined) break;
    nodes.push(...fresh);
    links.push('-', '=');
  }
  const closes = nodes.length > 3 && isWeak(board, position, nodes.at(-1)!, nodes[0]!);
  if (closes && chance.below(2) === 0) return { nodes, links: [...links, '-'], loop: true };
  if (chance.below(12) === 0) nodes = nodes.map((node) => withIdleCell(setting, node));
  return { nodes, links, loop: false };
}

/** Nodes that are true where this one is not. */
function strongFrom({ truth: { board }, position }: Setting, node: Node): Node[] {
  const found: Node[] = [];
  if (node.digits.length > 1) return found;
  const digit = node.digits[0]!;
  const inCell = node.cells.length === 1 ? digitsLeft(board, position, node.cells[0]!) : [];
  if (inCell.length === 2) {
    found.push(
      ...inCell
        .filter((one) => digitIn(board, one) !== digit)
        .map((one) => ({ digits: [digitIn(board, one)], cells: node.cells })),
    );
  }
  for (const house of board.houses) {
    if (!node.cells.every((cell) => house.cells.includes(cell))) continue;
    const rest = placesLeft(board, position, digit, house)
      .map((one) => cellIn(board, one))
      .filter((cell) => !node.cells.includes(cell));
    const isGroup = board.houses.some((other) => other !== house && rest.every((cell) => other.cells.includes(cell)));
    if (rest.length > 0 && (rest.length === 1 || isGroup)) found.push({ digits: [digit], cells: rest });
  }
  return found;
}

/** A node that this one rules out, with one that is then true. */
function pairsAfter(setting: Setting, node: Node): [Node, Node][] {
  const {
    truth: { board },
    position,
    chance,
  } = setting;
  const pairs: [Node, Node][] = [];
  const starts: Node[] = [...position.possible]
    .filter((one) => !position.placed.has(one))
    .map((one) => ({ digits: [digitIn(board, one)], cells: [cellIn(board, one)] }));
  for (const digit of node.digits) {
    for (const box of board.houses.filter((house) => house.kind === 'b')) {
      for (const line of board.houses.filter((house) => house.kind !== 'b')) {
        const cells = box.cells.filter(
          (cell) => line.cells.includes(cell) && position.possible.has(candidate(board, cell, digit)),
        );
        if (cells.length > 1) starts.push({ digits: [digit], cells });
      }
    }
  }
  for (const start of chance
    .shuffled(starts)
    .filter((each) => isWeak(board, position, node, each))
    .slice(0, 25)) {
    for (const next of strongFrom(setting, start)) pairs.push([start, next]);
  }
  if (chance.below(3) === 0)
    pairs.push(...almostLocked(setting).filter(([start]) => isWeak(board, position, node, start)));
  return pairs;
}

/** Some sets of cells with one digit more than cells, each as a digit and the rest. */
function almostLocked({ truth: { board }, position, chance }: Setting): [Node, Node][] {
  return Array.from({ length: 40 }).flatMap((): [Node, Node][] => {
    const house = chance.pick(board.houses);
    const open = house.cells.filter((cell) => digitsLeft(board, position, cell).length > 1);
    const cells = chance
      .shuffled(open)
      .slice(0, 2 + chance.below(2))
      .sort((a, b) => a - b);
    const digits = [
      ...new Set(cells.flatMap((cell) => digitsLeft(board, position, cell).map((one) => digitIn(board, one)))),
    ].sort();
    if (cells.length < 2 || digits.length !== cells.length + 1) return [];
    return digits.map((digit) => [
      { digits: [digit], cells },
      { digits: digits.filter((other) => other !== digit), cells },
    ]);
  });
}

/** The chain with one fault, or with a `=` in place of a `-`. */
function spoilt({ truth: { board }, position, chance }: Setting, chain: Chain): Chain {
  const { nodes, links, loop } = chain;
  const at = chance.below(links.length);
  const swap = links.map((kind, index) => (index === at ? (kind === '=' ? '-' : '=') : kind));
  const way = chance.below(4);
  if (way === 0) return { nodes, links: swap, loop };
  if (way === 1 && nodes.length > 3 && !loop) {
    const without = 1 + chance.below(nodes.length - 2);
    const kept = nodes.filter((_, index) => index !== without);
    const isDoubled = kept.some((node, index) => index > 0 && isSame(node, kept[index - 1]!));
    if (!isDoubled) return { nodes: kept, links: links.filter((_, index) => index !== without), loop };
  }
  const place = chance.below(nodes.length);
  const node = nodes[place]!;
  const others = [...position.possible].filter((one) => {
    const shares = board.houses.some(
      (house) => house.cells.includes(cellIn(board, one)) && node.cells.every((cell) => house.cells.includes(cell)),
    );
    return shares && (node.digits.includes(digitIn(board, one)) || way === 3);
  });
  if (others.length === 0) return chain;
  const one = chance.pick(others);
  const other: Node = { digits: [digitIn(board, one)], cells: [cellIn(board, one)] };
  if (nodes.some((each) => isSame(each, other))) return chain;
  return { nodes: nodes.map((each, index) => (index === place ? other : each)), links, loop };
}

function withIdleCell({ truth: { board }, position, chance }: Setting, node: Node): Node {
  if (node.digits.length > 1) return node;
  const houses = board.houses.filter((house) => node.cells.every((cell) => house.cells.includes(cell)));
  const idle = chance
    .pick(houses)
    .cells.filter(
      (cell) => !node.cells.includes(cell) && !position.possible.has(candidate(board, cell, node.digits[0]!)),
    );
  if (idle.length === 0) return node;
  return { digits: node.digits, cells: [...node.cells, chance.pick(idle)].sort((a, b) => a - b) };
}

function isSame(a: Node, b: Node): boolean {
  return a.digits.join() === b.digits.join() && a.cells.join() === b.cells.join();
}
