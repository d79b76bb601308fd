/**
 * What a step that tells itself draws beside its argument, over the scenes of the names: each mark held against what it
 * says, worked out here from the board alone.
 */
import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { has, membersOf } from '../../src/grid/candidates.ts';
import { type Cell, candidateAt, cellOf, digitOf } from '../../src/grid/grid.ts';
import type { MarkShape } from '../../src/timeline/film.ts';
import { type Told, tell } from './stage.ts';

type OfKind<K extends MarkShape['kind']> = Extract<MarkShape, { kind: K }>;

const scenes = [
  'skyscraper',
  'aic',
  'grouped-aic',
  'xy-wing',
  'w-wing',
  'als-xz',
  'continuous-loop',
  'simple-colouring',
  'locked-candidates',
  'naked-triple',
  'hidden-pair',
  'unique-rectangle-type-2',
];
const fish = ['x-wing', 'swordfish', 'finned-x-wing', 'sashimi-swordfish', 'franken-swordfish', 'finned-mutant-x-wing'];

function named(name: string): Told {
  return tell(readFileSync(new URL(`../../scenes/names/${name}.yaml`, import.meta.url), 'utf8'));
}

function shapes<K extends MarkShape['kind']>({ film }: Told, kind: K): OfKind<K>[] {
  return film.marks.flatMap(({ shape }) => (shape.kind === kind ? [shape as OfKind<K>] : []));
}

describe.each([...scenes, ...fish])('%s', (name) => {
  const told = named(name);
  const { grid } = told.film;
  const step = told.checked.steps[0]!;
  const removed = new Set(shapes(told, 'strike').map(({ candidate }) => candidate));

  test('every line to what goes joins two candidates that cannot both be true', () => {
    for (const { from, to } of shapes(told, 'reach')) {
      expect(has(grid.conflicts[from]!, to)).toBe(true);
      expect([has(step.possibleBefore, from), removed.has(to)]).toEqual([true, true]);
    }
  });

  test('all that goes is seen to go: by lines, along a dashed house, or in its own cell', () => {
    const dashed = shapes(told, 'outline').filter(({ line }) => line === 'dashed');
    const marked = new Set(
      [
        ...shapes(told, 'circle').map(({ candidate }) => candidate),
        ...shapes(told, 'link').flatMap((link) => link.to),
      ].map((candidate) => cellOf(grid, candidate)),
    );
    for (const candidate of removed) {
      const cell = cellOf(grid, candidate);
      const isReached = shapes(told, 'reach').some(({ to }) => to === candidate);
      expect(isReached || dashed.some(({ cells }) => cells.includes(cell)) || marked.has(cell)).toBe(true);
    }
  });

  test('what opens is the only digit left in its cell, or its only place left in a house', () => {
    const isLeft = (cell: Cell, digit: ReturnType<typeof digitOf>) => {
      const candidate = candidateAt(grid, cell, digit);
      return has(step.possibleBefore, candidate) && !removed.has(candidate);
    };
    for (const { candidate } of shapes(told, 'opens')) {
      const [cell, digit] = [cellOf(grid, candidate), digitOf(grid, candidate)];
      const isNaked = grid.digits.filter((each) => isLeft(cell, each)).length === 1;
      const isHidden = grid.housesOf[cell]!.some(
        (house) => house.cells.filter((each) => isLeft(each, digit)).length === 1,
      );
      expect([isLeft(cell, digit), isNaked || isHidden]).toEqual([true, true]);
      expect(membersOf(step.placedBefore).map((placed) => cellOf(grid, placed))).not.toContain(cell);
    }
  });
});

describe.each(fish)('the houses of a %s', (name) => {
  const told = named(name);
  const outlines = shapes(told, 'outline');
  const houses = (line: 'solid' | 'dashed') => outlines.filter((outline) => outline.line === line);
  const inHouses = (cell: Cell, line: 'solid' | 'dashed') =>
    houses(line).filter(({ cells }) => cells.includes(cell)).length;
  const { grid } = told.film;

  test('bases solid, as many covers dashed', () => {
    const bases = told.checked.steps[0]!.argument.sets.map(({ name: set }) => set.replace(/^\d/, ''));
    const drawn = houses('solid').map(
      ({ cells }) => grid.houses.find((house) => house.cells.every((cell, at) => cell === cells[at]))?.name,
    );
    expect(drawn).toEqual(bases);
    expect(houses('dashed')).toHaveLength(bases.length);
  });

  test('what goes lies in more covers than bases; each place lies in a cover, or is a fin with a line to what goes', () => {
    const removed = shapes(told, 'strike').map(({ candidate }) => candidate);
    for (const each of removed) {
      const cell = cellOf(grid, each);
      expect(inHouses(cell, 'dashed')).toBeGreaterThan(inHouses(cell, 'solid'));
    }
    const fins = new Set(shapes(told, 'reach').map(({ from }) => from));
    for (const { candidate } of shapes(told, 'circle')) {
      const cell = cellOf(grid, candidate);
      expect(inHouses(cell, 'dashed') >= inHouses(cell, 'solid') || fins.has(candidate)).toBe(true);
    }
  });
});
