/**
 * Proofs played out: a table of what is shown on one board; and on generated boards, a check by the kernel's own search
 * that every ghost follows from the sets together with the supposition.
 */
import { describe, expect, it, test } from 'vitest';
import { type BuiltArgument, buildFound } from '../../src/check/argument.ts';
import { type Ghost, type PlayOut, playOut, type Supposition } from '../../src/check/play-out.ts';
import { playStep, suppositionsOf } from '../../src/check/suppositions.ts';
import { type Candidate, membersOf } from '../../src/grid/candidates.ts';
import { type BoxShape, type Grid, gridOf } from '../../src/grid/grid.ts';
import { printCandidates } from '../../src/grid/notation/print.ts';
import type { Conclusion } from '../../src/grid/terms.ts';
import { checkScene } from '../../src/lesson/check-scene.ts';
import { readScene } from '../../src/lesson/read-scene.ts';
import { choose } from '../../src/proof/choice.ts';
import { prove } from '../../src/proof/kernel.ts';
import { allTechniques } from '../../src/techniques/all-techniques.ts';
import { instancesOf } from '../../src/techniques/find-argument.ts';
import { type Chance, chanceFrom } from '../random.ts';
import { skyscraper, towers } from '../staging/stage.ts';
import { advanced, generatedPuzzle } from '../techniques/generated-positions.ts';

/** Each play-out of the beat as its ghosts and its end: `3r1c3`, `no 3r1c5`, `clash 3r6c4 ~ 3r5c5`. */
function played(step: string, suppose: string): string[] {
  const { scene, diagnostics } = readScene(towers(`  - {id: s, ${step}, show: [{suppose: ${suppose}}]}`));
  if (scene === undefined) throw new Error(diagnostics.map(({ message }) => message).join('\n'));
  const { grid } = scene.puzzle;
  const [checked] = checkScene(scene).steps;
  const mark = scene.steps[0]?.show?.[0]?.mark;
  if (checked === undefined || mark?.kind !== 'suppose') throw new Error('no beat to play out');
  return suppositionsOf(grid, checked, mark.suppose).map((each) => printed(grid, playStep(grid, checked, each)));
}

function printed(grid: Grid, { ghosts, end }: PlayOut): string {
  const said = ghosts.map(({ candidates, isTrue }) => `${isTrue ? '' : 'no '}${printCandidates(grid, candidates)}`);
  const between = end.kind === 'clash' ? ` ${end.between.map((node) => printCandidates(grid, node)).join(' ~ ')}` : '';
  return [...said, `${end.kind}${between}`].join(', ');
}

describe('played out on the board of two towers', () => {
  const bySets = 'from: 3c35, so: r5c1<>3 r6c46<>3';
  const rows: readonly (readonly [what: string, step: string, suppose: string, expected: readonly string[]])[] = [
    [
      'a victim, along the chain',
      skyscraper,
      '3r6c4',
      ['3r6c4, no 3r6c3, 3r1c3, no 3r1c5, 3r5c5, clash 3r6c4 ~ 3r5c5'],
    ],
    [
      'the near end not true, until the conclusions fall',
      skyscraper,
      'no 3r6c3',
      ['no 3r6c3, 3r1c3, no 3r1c5, 3r5c5, no 3r5c1, no 3r6c4, no 3r6c6, conclusions'],
    ],
    [
      'the far end not true, backwards',
      skyscraper,
      'no 3r5c5',
      ['no 3r5c5, 3r1c5, no 3r1c3, 3r6c3, no 3r5c1, no 3r6c4, no 3r6c6, conclusions'],
    ],
    ['a chain that concludes nothing, to its far end', 'chain: (3)r6c3=r1c3', 'no 3r6c3', ['no 3r6c3, 3r1c3, chain']],
    [
      'a = in place of a weak link, from its true end',
      'chain: (6)r3c4=r6c4=r6c6',
      'no 6r3c4',
      ['no 6r3c4, 6r6c4, no 6r6c6, chain'],
    ],
    ['and not from the other, for it names no set', 'chain: (6)r3c4=r6c4=r6c6', 'no 6r6c6', ['no 6r6c6, none']],
    ['a victim, by sets', bySets, '3r6c4', ['3r6c4, no 3r6c3, 3r1c3, no 3r1c5, no 3r5c5, clash 3r1c5 ~ 3r5c5']],
    [
      'each place of a set',
      bySets,
      'each 3c3',
      [
        '3r1c3, no 3r1c5, 3r5c5, no 3r5c1, no 3r6c4, no 3r6c6, conclusions',
        '3r6c3, no 3r5c1, no 3r6c4, no 3r6c6, conclusions',
      ],
    ],
    ['a placement by a single', 'so: r3c5=5', 'no 5r3c5', ['no 5r3c5, clash 5r3c5']],
  ];
  test.each(rows)('%s', (_, step, suppose, expected) => {
    expect(played(step, suppose)).toEqual(expected);
  });

  it('a false step reaches no end', () => {
    const trap = 'fails: true, from: 3c4, so: r6c6<>3';
    expect(played(trap, '3r6c6').every((each) => each.endsWith(', none'))).toBe(true);
  });
});

/**
 * Whether the sets, with the supposition, leave no conflict-free choice that takes one of each `also` and none of
 * `without`.
 */
function leavesNone(
  grid: Grid,
  argument: BuiltArgument,
  { candidate, isTrue }: Supposition,
  also: readonly (readonly Candidate[])[],
  without: readonly Candidate[] = [],
): boolean {
  const sets = [...argument.sets.map(({ set }) => membersOf(set.members)), ...also, ...(isTrue ? [[candidate]] : [])];
  const excluded = isTrue ? without : [...without, candidate];
  return (
    choose(
      grid,
      sets.map((members) => members.filter((member) => !excluded.includes(member))),
    ).kind === 'none'
  );
}

function follows(grid: Grid, argument: BuiltArgument, supposed: Supposition, { clauses, isTrue }: Ghost): boolean {
  if (isTrue) return clauses.every((clause) => leavesNone(grid, argument, supposed, [], clause));
  if (clauses.length > 1) return leavesNone(grid, argument, supposed, clauses);
  return clauses[0]!.every((member) => leavesNone(grid, argument, supposed, [[member]]));
}

function concluded(grid: Grid, argument: BuiltArgument, supposed: Supposition, conclusion: Conclusion): boolean {
  return conclusion.kind === 'impossible'
    ? leavesNone(grid, argument, supposed, [[conclusion.candidate]])
    : leavesNone(grid, argument, supposed, [], membersOf(conclusion.candidates));
}

interface Tally {
  ghosts: number;
  grouped: number;
  byLink: number;
  clashes: number;
  forced: number;
}

function judge(grid: Grid, argument: BuiltArgument, conclusions: readonly Conclusion[], chance: Chance, tally: Tally) {
  const sets = argument.sets.map(({ name, set }) => ({ name, members: set.members }));
  const near = sets.flatMap(({ members }) => membersOf(members));
  const victims = conclusions.flatMap((each) => (each.kind === 'impossible' ? [each.candidate] : []));
  const supposed: Supposition[] = [
    ...victims.slice(0, 3).map((candidate) => ({ candidate, isTrue: true })),
    ...chance
      .shuffled(near)
      .slice(0, 4)
      .map((candidate, index) => ({ candidate, isTrue: index % 2 === 0 })),
  ];
  for (const each of supposed) {
    const { ghosts, end } = playOut(grid, { sets, links: argument.links }, conclusions, each);
    for (const ghost of ghosts) {
      if (!follows(grid, argument, each, ghost)) throw new Error(`does not follow: ${printed(grid, { ghosts, end })}`);
      tally.ghosts++;
      if (ghost.candidates.length > 1) tally.grouped++;
      if (ghost.reason.kind === 'link') tally.byLink++;
      for (const place of ghost.follows) expect(place).toBeLessThan(ghosts.indexOf(ghost));
    }
    if (end.kind === 'clash') {
      tally.clashes++;
      expect(leavesNone(grid, argument, each, [])).toBe(true);
    }
    if (end.kind === 'conclusions') {
      expect(conclusions.every((conclusion) => concluded(grid, argument, each, conclusion))).toBe(true);
    }
  }
}

describe('on generated boards', () => {
  const boards: readonly (readonly [BoxShape, number])[] = [
    ['2x3', 6],
    ['3x3', 3],
  ];
  test('every ghost follows, and what is proved by forcing only ends in a clash', () => {
    const tally: Tally = { ghosts: 0, grouped: 0, byLink: 0, clashes: 0, forced: 0 };
    for (const [shape, count] of boards) {
      const grid = gridOf(shape);
      const chance = chanceFrom(2026);
      for (let board = 0; board < count; board++) {
        const position = advanced(generatedPuzzle(grid, chance).position);
        for (const { name } of allTechniques) {
          let seen = 0;
          for (const instance of instancesOf(position, name)) {
            if (++seen > 3) break;
            const argument = buildFound(position, { instance, others: 0 });
            judge(grid, argument, instance.conclusions, chance, tally);
            for (const conclusion of instance.conclusions) {
              if (conclusion.kind !== 'impossible') continue;
              const outcome = prove(position, instance.sets, conclusion);
              if (outcome.kind !== 'proved' || outcome.cases > 0) continue;
              const sets = argument.sets.map((named) => ({ name: named.name, members: named.set.members }));
              const supposed = { candidate: conclusion.candidate, isTrue: true };
              expect(playOut(grid, { sets, links: [] }, [], supposed).end.kind).toBe('clash');
              tally.forced++;
            }
          }
        }
      }
    }
    // Otherwise the boards might contain nothing to judge.
    expect(tally.ghosts).toBeGreaterThan(500);
    expect(tally.grouped).toBeGreaterThan(10);
    expect(tally.byLink).toBeGreaterThan(100);
    expect(tally.clashes).toBeGreaterThan(100);
    expect(tally.forced).toBeGreaterThan(50);
  }, 60_000);
});
