/**
 * An argument of a scene, examined in a position: its sets, its links, and what is wrong with it.
 */
import { Bug } from '../grid/bug.ts';
import { type Candidate, has, intersection, membersOf } from '../grid/candidates.ts';
import { type Cell, candidateAt, type Digit, type Grid } from '../grid/grid.ts';
import { printCells, printDeadly, printNode, printSet } from '../grid/notation/print.ts';
import { inSeries } from '../grid/notation/spoken.ts';
import type { Chain, ChainNode, Conclusion, Deadly, SetName } from '../grid/terms.ts';
import { guardiansOf } from '../proof/guardians.ts';
import { digitsIn, eitherOf, type OneOf, type Position, type Proof, placesIn } from '../proof/kernel.ts';
import { candidatesOf, judgeStrong, judgeWeak } from '../proof/links.ts';
import type { Span } from '../scene/diagnostic.ts';
import type { Located } from '../scene/scene.ts';
import type { FoundArgument } from '../techniques/find-argument.ts';
import { rolesOf } from './chain-roles.ts';
import type { CheckedLink, StepFault } from './verdict.ts';

/** The reasons that a step, or an item of a cascade, gives. */
export interface GivenArgument {
  readonly from: readonly Located<SetName>[];
  readonly chains: readonly Located<Chain>[];
  readonly deadly: Located<Deadly> | undefined;
}

/** The either/ors that can be named, by step: as proved, or as assumed in a position that supposes them. */
export type Eithers = ReadonlyMap<string, Proof | Conclusion>;

export interface NamedSet {
  readonly name: string;
  readonly set: OneOf;
}

export interface BuiltArgument {
  /** Each set once, in the order of `from`, `chain`, `deadly`. */
  readonly sets: readonly NamedSet[];
  readonly links: readonly CheckedLink[];
  readonly faults: readonly StepFault[];
  /** Cells listed in a node that no longer have the digit. */
  readonly idleCells: readonly { readonly text: string; readonly span: Span }[];
  /** Strong links within cells that are no almost locked set, and hold by something else. */
  readonly notLocked: readonly { readonly text: string; readonly span: Span }[];
  readonly assumesOneSolution: boolean;
  /** Defined if the argument was searched for by name: how many others of that name would also have done. */
  readonly found: { readonly others: number } | undefined;
}

export function givesAnArgument(given: GivenArgument): boolean {
  return given.from.length > 0 || given.chains.length > 0 || given.deadly !== undefined;
}

/** Builds the argument in this position; nothing is concluded yet. */
export function buildArgument(position: Position, given: GivenArgument, eithers: Eithers): BuiltArgument {
  const sets = new Map<string, OneOf>();
  const faults: StepFault[] = [];
  const others: NamedSet[] = [];
  for (const { value } of given.from) {
    const set = setNamed(position, value, eithers);
    if (set === undefined) {
      const step = value.kind === 'step' ? value.id : '';
      faults.push({ code: 'either-unproved', message: `step ${step} has not proved an either/or to build on` });
      continue;
    }
    const name = printSet(position.grid, value);
    if (value.kind === 'step') others.push({ name, set });
    sets.set(name, set);
  }
  const guardians = given.deadly === undefined ? undefined : guardiansOf(position, given.deadly.value);
  if (guardians !== undefined && 'refused' in guardians) {
    faults.push({ code: 'deadly-refused', message: `this deadly pattern is refused: ${guardians.refused}` });
  }
  if (given.deadly !== undefined && guardians !== undefined && 'members' in guardians) {
    others.push({ name: `deadly ${printDeadly(position.grid, given.deadly.value)}`, set: guardians });
  }

  const links: CheckedLink[] = [];
  const idleCells: { text: string; span: Span }[] = [];
  const notLocked: { text: string; span: Span }[] = [];
  for (const [index, chain] of given.chains.entries()) {
    const judged = judgeChain(position, chain.value, index + 1, others);
    links.push(...judged.links);
    faults.push(...judged.faults);
    for (const { name, set } of judged.sets) if (!sets.has(name)) sets.set(name, set);
    for (const text of idleCellsOf(position, chain.value)) idleCells.push({ text, span: chain.span });
    for (const text of judged.notLocked) notLocked.push({ text, span: chain.span });
  }
  for (const { name, set } of others) if (set.source.kind === 'guardians') sets.set(name, set);
  return {
    sets: [...sets].map(([name, set]) => ({ name, set })),
    links,
    faults,
    idleCells,
    notLocked,
    assumesOneSolution: others.some(({ set }) => set.assumesOneSolution),
    found: undefined,
  };
}

/** An argument found by its name, as if it had been given. */
export function buildFound(position: Position, { instance, others }: FoundArgument): BuiltArgument {
  const { deadly, chain } = instance;
  const sets = instance.sets.map((set): NamedSet => {
    const isGuardians = set.source.kind === 'guardians' && deadly !== undefined;
    return { name: isGuardians ? `deadly ${printDeadly(position.grid, deadly)}` : nameOfSet(position.grid, set), set };
  });
  return {
    sets,
    links: chain === undefined ? [] : judgeChain(position, chain, 1, sets).links,
    faults: [],
    idleCells: [],
    notLocked: [],
    assumesOneSolution: sets.some(({ set }) => set.assumesOneSolution),
    found: { others },
  };
}

/** The name of a cell's or a house's set in scene notation. */
export function nameOfSet(grid: Grid, set: OneOf): string {
  const { source } = set;
  if (source.kind === 'cell' || source.kind === 'places') return printSet(grid, source);
  throw new Bug('only the sets of cells and houses name themselves');
}

function setNamed(position: Position, name: SetName, eithers: Eithers): OneOf | undefined {
  switch (name.kind) {
    case 'cell':
      return digitsIn(position, name.cell);
    case 'places':
      return placesIn(position, name.digit, name.house);
    case 'step': {
      const either = eithers.get(name.id);
      return either === undefined ? undefined : eitherOf(position, either);
    }
  }
}

interface JudgedChain {
  readonly links: readonly CheckedLink[];
  readonly sets: readonly NamedSet[];
  readonly faults: readonly StepFault[];
  readonly notLocked: readonly string[];
}

function judgeChain(position: Position, chain: Chain, number: number, others: readonly NamedSet[]): JudgedChain {
  const { grid } = position;
  const roles = rolesOf(chain);
  const sets: NamedSet[] = [];
  const faults: StepFault[] = [];
  const notLocked: string[] = [];
  const links = chain.links.map((link, index): CheckedLink => {
    const [from, to] = [chain.nodes[link.from]!, chain.nodes[link.to]!];
    const ends = {
      chain: number,
      kind: link.kind,
      role: roles[index]!,
      fromNode: from,
      toNode: to,
      from: printNode(grid, from),
      to: printNode(grid, to),
      fromCandidates: stillPossible(position, from),
      toCandidates: stillPossible(position, to),
    };
    if (link.kind === 'weak') {
      if (roles[index] === 'out of turn') {
        const message = `${ends.from}-${ends.to} is a weak link after a weak one: strong and weak links alternate`;
        faults.push({ code: 'weak-after-weak', message });
      }
      return { ...ends, ...judgeWeak(position, from, to) };
    }
    const strong = judgeStrong(
      position,
      from,
      to,
      others.map((other) => other.set),
    );
    if (strong.holds && strong.sets.every(({ source }) => source.kind === 'cell' || source.kind === 'places')) {
      notLocked.push(...strangersIn(position, from, to));
    }
    if (roles[index] === 'strong') {
      for (const set of strong.sets) {
        sets.push(others.find((other) => other.set === set) ?? { name: nameOfSet(grid, set), set });
      }
      return { ...ends, holds: strong.holds, brokenBy: strong.brokenBy };
    }
    const weak = judgeWeak(position, from, to);
    return { ...ends, holds: strong.holds && weak.holds, brokenBy: strong.holds ? weak.brokenBy : strong.brokenBy };
  });
  return { links, sets, faults, notLocked };
}

/**
 * What keeps the cells of a strong link that both ends share from being an almost locked set (one digit more than cells),
 * which such a link says that they are.
 */
function strangersIn({ grid, possible }: Position, from: ChainNode, to: ChainNode): string[] {
  if (from.cells.join() !== to.cells.join()) return [];
  const { cells } = from;
  const digitsOf = (cell: Cell) => grid.digits.filter((digit) => has(possible, candidateAt(grid, cell, digit)));
  const held = new Set(cells.flatMap(digitsOf));
  if (held.size <= cells.length + 1) return [];
  const named = new Set([...from.digits, ...to.digits]);
  const link = `(${from.digits.join('')}=${to.digits.join('')})${printCells(grid, cells)}`;
  const shape = cells.length === 1 ? 'a cell of two digits' : 'an almost locked set';
  if (named.size <= cells.length)
    return [
      `${link}: the cells hold ${held.size} digits between them, so they are not ${shape}, which has ${cells.length + 1}`,
    ];
  const strangers = cells.flatMap((cell) => {
    const more = digitsOf(cell).filter((digit) => !named.has(digit));
    return more.length === 0
      ? []
      : [`${printCells(grid, [cell])} also holds ${inSeries(more.map((digit) => `a ${digit}`))}`];
  });
  return [`${link}: ${inSeries(strangers)}, so ${cells.length === 1 ? 'this is' : 'these are'} not ${shape}`];
}

function stillPossible(position: Position, node: ChainNode): Candidate[] {
  return membersOf(intersection(candidatesOf(position.grid, node), position.possible));
}

/** In an almost locked set, the cells are those of the set, no matter which of them still have the digit. */
function idleCellsOf(position: Position, chain: Chain): string[] {
  const { grid, possible } = position;
  return distinctNodes(chain).flatMap((node) => {
    const isPossible = (cell: Cell, digit: Digit) => has(possible, candidateAt(grid, cell, digit));
    const idle = node.cells.filter((cell) => !node.digits.some((digit) => isPossible(cell, digit)));
    if (idle.length === 0 || (idle.length < node.cells.length && isInAlmostLockedSet(chain, node))) return [];
    const [which, digits] = [printCells(grid, idle), node.digits.join(' or ')];
    return node.cells.length === 1
      ? [`${printNode(grid, node)} is no longer possible`]
      : [`${printNode(grid, node)} lists ${which}, which no longer has a ${digits}`];
  });
}

function distinctNodes(chain: Chain): ChainNode[] {
  return [...new Map(chain.nodes.map((node) => [`${node.digits.join()} ${node.cells.join()}`, node])).values()];
}

function isInAlmostLockedSet(chain: Chain, node: ChainNode): boolean {
  return chain.links.some(({ from, to }) => {
    const [one, other] = [chain.nodes[from]!, chain.nodes[to]!];
    return (one === node || other === node) && one.cells.length > 1 && one.cells.join() === other.cells.join();
  });
}
