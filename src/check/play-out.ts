/**
 * A proof played out: from one candidate taken as true (or as not true), what is forced, one thing after another, until
 * something clashes, the conclusions follow, or a chain is followed to its far end.
 *
 * There is no trial here. A link whose near end is settled settles its far end; a set with one member left makes that
 * member true. So every ghost follows from the argument's sets together with the supposition, which a test checks
 * against the kernel. If an argument needs cases, the play-out reaches no end, and says so.
 */
import { type Candidate, has, membersOf } from '../grid/candidates.ts';
import { cellOf, digitOf, type Grid } from '../grid/grid.ts';
import type { ChainNode, Conclusion } from '../grid/terms.ts';
import type { Argument, CheckedLink } from './verdict.ts';

/** One candidate, taken as true or as not true. */
export interface Supposition {
  readonly candidate: Candidate;
  readonly isTrue: boolean;
}

/** What follows from the supposition, about one candidate, or about a grouped or almost locked node. */
export interface Ghost {
  /** The node's candidates that were possible when the step began. */
  readonly candidates: readonly Candidate[];
  /** True: in each of these at least one is true. Not true: in one of these (mostly there is only one) none is. */
  readonly clauses: readonly (readonly Candidate[])[];
  readonly isTrue: boolean;
  /** A link or a set in notation; `conflict`: it sees a candidate that is already true. */
  readonly reason:
    | { readonly kind: 'supposed' | 'conflict' }
    | { readonly kind: 'link' | 'set'; readonly name: string };
  /** What it follows from, as indices into the list of ghosts, all before it. */
  readonly follows: readonly number[];
}

export type PlayEnd =
  /**
   * Ghosts that contradict each other, or the members of a set one of which had to be true. If only one: it is true and
   * not true.
   */
  | { readonly kind: 'clash'; readonly between: readonly (readonly Candidate[])[] }
  | { readonly kind: 'conclusions' }
  | { readonly kind: 'chain' }
  /** Nothing more is forced. */
  | { readonly kind: 'none' };

/** In order; ghosts that the end does not rest on are left out, unless there is no end. */
export interface PlayOut {
  readonly ghosts: readonly Ghost[];
  readonly end: PlayEnd;
}

/**
 * Plays the argument out from the supposition: by its links if it has any; if it has none, or they do not suffice, by
 * its sets too.
 */
export function playOut(
  grid: Grid,
  argument: Pick<Argument, 'sets' | 'links'>,
  conclusions: readonly Conclusion[],
  supposition: Supposition,
): PlayOut {
  const { sets } = argument;
  const links = argument.links
    .filter(({ holds, role }) => holds && role !== 'out of turn')
    .map(linkOf.bind(undefined, grid));
  const byLinks = links.length === 0 ? undefined : run({ grid, links, sets: [], conclusions }, supposition);
  if (byLinks !== undefined && byLinks.end.kind !== 'none' && byLinks.end.kind !== 'chain') return byLinks;
  const bySets = run({ grid, links, sets, conclusions }, supposition);
  return byLinks?.end.kind === 'chain' && bySets.end.kind === 'none' ? byLinks : bySets;
}

interface Statement {
  readonly candidates: readonly Candidate[];
  readonly clauses: readonly (readonly Candidate[])[];
}

interface Link {
  readonly name: string;
  readonly isStrong: boolean;
  readonly from: Statement;
  readonly to: Statement;
  readonly isFirst: boolean;
  readonly isLast: boolean;
}

interface Play {
  readonly grid: Grid;
  readonly links: readonly Link[];
  readonly sets: Argument['sets'];
  readonly conclusions: readonly Conclusion[];
}

interface Ended {
  readonly end: PlayEnd;
  readonly rests: readonly number[];
}

function run(play: Play, { candidate, isTrue }: Supposition): PlayOut {
  const ghosts: Ghost[] = [{ ...single(candidate), isTrue, reason: { kind: 'supposed' }, follows: [] }];
  let ended = endedAt(play, ghosts);
  while (ended === undefined) {
    const found = emptiedSet(play, ghosts) ?? nextByLink(play, ghosts) ?? nextBySet(play, ghosts);
    if (found === undefined) break;
    ghosts.push(...found.ghosts);
    ended = found.ended ?? endedAt(play, ghosts);
  }
  ended ??= atFarEnd(play, ghosts);
  return ended === undefined
    ? { ghosts, end: { kind: 'none' } }
    : { ghosts: restedOn(ghosts, ended.rests), end: ended.end };
}

interface Found {
  readonly ghosts: readonly Ghost[];
  readonly ended?: Ended;
}

/** A set with no member left, although one of them had to be true. */
function emptiedSet({ grid, sets }: Play, ghosts: readonly Ghost[]): Found | undefined {
  for (const set of sets) {
    const members = membersOf(set.members);
    const sources = members.map((member) => ruledOutBy(grid, ghosts, member));
    if (!sources.every((source) => source !== undefined)) continue;
    const { added, places } = madeExplicit(
      ghosts,
      members.map(single),
      sources.map((source) => [source]),
    );
    const [only, ...others] = members;
    const blocking = sources[0] === undefined ? [] : [ghosts[sources[0]]!.candidates];
    const between =
      only !== undefined && others.length === 0 ? [[only], ...blocking] : members.map((member) => [member]);
    return {
      ghosts: added,
      ended: { end: { kind: 'clash', between: distinct(between) }, rests: [...places, ...sources] },
    };
  }
  return undefined;
}

function nextBySet({ grid, sets }: Play, ghosts: readonly Ghost[]): Found | undefined {
  for (const set of sets) {
    const members = membersOf(set.members);
    if (isGranted(ghosts, members) !== undefined) continue;
    const sources = members.map((member) => ruledOutBy(grid, ghosts, member));
    const left = members.filter((_, index) => sources[index] === undefined);
    const [only, ...others] = left;
    if (only === undefined || others.length > 0) continue;
    const gone = members.filter((member) => member !== only);
    const { added, places } = madeExplicit(
      ghosts,
      gone.map(single),
      sources.flatMap((source) => (source === undefined ? [] : [[source]])),
    );
    return {
      ghosts: [...added, { ...single(only), isTrue: true, reason: { kind: 'set', name: set.name }, follows: places }],
    };
  }
  return undefined;
}

function nextByLink({ grid, links }: Play, ghosts: readonly Ghost[]): Found | undefined {
  for (const { name, isStrong, from, to } of links) {
    for (const [near, far] of [
      [from, to],
      [to, from],
    ] as const) {
      if (placeOf(ghosts, far, isStrong) !== undefined) continue;
      const sources = isStrong ? falseBy(grid, ghosts, near) : trueBy(ghosts, near);
      if (sources === undefined) continue;
      const { added, places } = isStrong ? madeExplicit(ghosts, [near], [sources]) : { added: [], places: sources };
      return { ghosts: [...added, { ...far, isTrue: isStrong, reason: { kind: 'link', name }, follows: places }] };
    }
  }
  return undefined;
}

/** A clash among the ghosts, or all conclusions reached. */
function endedAt(play: Play, ghosts: Ghost[]): Ended | undefined {
  const { grid } = play;
  for (const [place, ghost] of ghosts.entries()) {
    for (const clause of ghost.isTrue ? ghost.clauses : []) {
      const sources = allRuledOutBy(grid, ghosts, clause);
      if (sources === undefined || clause.length === 0) continue;
      return clashOf(ghosts, [place, ...sources]);
    }
    const granted = ghost.isTrue ? undefined : trueBy(ghosts, ghost);
    if (granted !== undefined) return clashOf(ghosts, [place, ...granted]);
  }
  return conclusionsReached(play, ghosts);
}

function clashOf(ghosts: readonly Ghost[], rests: readonly number[]): Ended {
  return { end: { kind: 'clash', between: distinct(rests.map((place) => ghosts[place]!.candidates)) }, rests };
}

/** Whether every conclusion follows; the removals then become the last ghosts. */
function conclusionsReached({ grid, conclusions }: Play, ghosts: Ghost[]): Ended | undefined {
  if (conclusions.length === 0) return undefined;
  const removed: Candidate[] = [];
  const sources: number[] = [];
  const granted: number[] = [];
  for (const conclusion of conclusions) {
    if (conclusion.kind === 'impossible') {
      const source = ruledOutBy(grid, ghosts, conclusion.candidate);
      if (source === undefined) return undefined;
      removed.push(conclusion.candidate);
      sources.push(source);
    } else {
      const source = isGranted(ghosts, membersOf(conclusion.candidates));
      if (source === undefined) return undefined;
      granted.push(source);
    }
  }
  const { added, places } = madeExplicit(
    ghosts,
    removed.map(single),
    sources.map((source) => [source]),
  );
  ghosts.push(...added);
  return { end: { kind: 'conclusions' }, rests: [...places, ...granted] };
}

/** When nothing more follows: whether a chain was followed to one of its ends. */
function atFarEnd({ links }: Play, ghosts: readonly Ghost[]): Ended | undefined {
  const ends = links.flatMap(({ isFirst, isLast, from, to }) => [...(isFirst ? [from] : []), ...(isLast ? [to] : [])]);
  const place = ghosts.findLastIndex(
    (ghost) => ghost.reason.kind === 'link' && ends.some((end) => keyOf(end) === keyOf(ghost)),
  );
  return place < 0 ? undefined : { end: { kind: 'chain' }, rests: [place] };
}

/**
 * The ghost that makes the candidate impossible: it is about the candidate itself, or every member of one of its
 * clauses conflicts with it.
 */
function ruledOutBy(grid: Grid, ghosts: readonly Ghost[], candidate: Candidate): number | undefined {
  const place = ghosts.findIndex(({ isTrue, clauses }) =>
    isTrue
      ? clauses.some((clause) => clause.length > 0 && clause.every((member) => has(grid.conflicts[member]!, candidate)))
      : clauses.length === 1 && clauses[0]!.includes(candidate),
  );
  return place < 0 ? undefined : place;
}

function allRuledOutBy(grid: Grid, ghosts: readonly Ghost[], members: readonly Candidate[]): number[] | undefined {
  const sources = members.map((member) => ruledOutBy(grid, ghosts, member));
  return sources.every((source) => source !== undefined) ? [...new Set(sources)] : undefined;
}

/** The ghost that says that one of these is true. */
function isGranted(ghosts: readonly Ghost[], members: readonly Candidate[]): number | undefined {
  const place = ghosts.findIndex(
    ({ isTrue, clauses }) =>
      isTrue && clauses.some((clause) => clause.length > 0 && clause.every((member) => members.includes(member))),
  );
  return place < 0 ? undefined : place;
}

function trueBy(ghosts: readonly Ghost[], { clauses }: Statement): number[] | undefined {
  const sources = clauses.map((clause) => isGranted(ghosts, clause));
  return sources.every((source) => source !== undefined) ? [...new Set(sources)] : undefined;
}

function falseBy(grid: Grid, ghosts: readonly Ghost[], statement: Statement): number[] | undefined {
  const said = placeOf(ghosts, statement, false);
  if (said !== undefined) return [said];
  for (const clause of statement.clauses) {
    const sources = allRuledOutBy(grid, ghosts, clause);
    if (sources !== undefined) return sources;
  }
  return undefined;
}

/** Each statement as a ghost that is not true; those that exist already stay where they are. */
function madeExplicit(
  ghosts: readonly Ghost[],
  statements: readonly Statement[],
  sources: readonly (readonly number[])[],
): { readonly added: readonly Ghost[]; readonly places: readonly number[] } {
  const added: Ghost[] = [];
  const places = statements.map((statement, index) => {
    const known = placeOf([...ghosts, ...added], statement, false);
    if (known !== undefined) return known;
    added.push({ ...statement, isTrue: false, reason: { kind: 'conflict' }, follows: sources[index] ?? [] });
    return ghosts.length + added.length - 1;
  });
  return { added, places };
}

function placeOf(ghosts: readonly Ghost[], statement: Statement, isTrue: boolean): number | undefined {
  const key = keyOf(statement);
  const place = ghosts.findIndex((ghost) => ghost.isTrue === isTrue && keyOf(ghost) === key);
  return place < 0 ? undefined : place;
}

/** The ghosts at these places with everything they follow from, in order. */
function restedOn(ghosts: readonly Ghost[], places: readonly number[]): Ghost[] {
  const kept = new Set<number>();
  const keep = (place: number) => {
    if (kept.has(place)) return;
    kept.add(place);
    for (const earlier of ghosts[place]!.follows) keep(earlier);
  };
  // The supposition is shown even if the end would be reached without it.
  for (const place of [0, ...places]) keep(place);
  const order = [...kept].sort((a, b) => a - b);
  return order.map((place) => {
    const ghost = ghosts[place]!;
    return { ...ghost, follows: ghost.follows.map((earlier) => order.indexOf(earlier)) };
  });
}

function linkOf(grid: Grid, link: CheckedLink, index: number, all: readonly CheckedLink[]): Link {
  return {
    name: `${link.from}${link.kind === 'strong' ? '=' : '-'}${link.to}`,
    isStrong: link.role === 'strong',
    from: statementOf(grid, link.fromNode, link.fromCandidates),
    to: statementOf(grid, link.toNode, link.toCandidates),
    isFirst: all[index - 1]?.chain !== link.chain,
    isLast: all[index + 1]?.chain !== link.chain,
  };
}

/** k digits in m cells: if k <= m, each digit is in one of the cells; if k > m, each cell has one of the digits. */
function statementOf(grid: Grid, { digits, cells }: ChainNode, candidates: readonly Candidate[]): Statement {
  const clauses =
    digits.length <= cells.length
      ? digits.map((digit) => candidates.filter((candidate) => digitOf(grid, candidate) === digit))
      : cells.map((cell) => candidates.filter((candidate) => cellOf(grid, candidate) === cell));
  return { candidates, clauses };
}

function single(candidate: Candidate): Statement {
  return { candidates: [candidate], clauses: [[candidate]] };
}

function keyOf({ clauses }: Statement): string {
  return clauses.map((clause) => clause.join(' ')).join('/');
}

function distinct(groups: readonly (readonly Candidate[])[]): (readonly Candidate[])[] {
  return [...new Map(groups.map((group) => [group.join(' '), group])).values()];
}
