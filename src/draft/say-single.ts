/**
 * A single in words: why the digit goes there.
 */
import { membersOf } from '../grid/candidates.ts';
import { type Cell, cellOf, digitOf, type HouseShape } from '../grid/grid.ts';
import type { PlanStep } from '../plan/plan.ts';
import { isPlaced } from '../proof/is-placed.ts';
import type { Position } from '../proof/kernel.ts';
import type { Wording } from './wording.ts';

/** Why the digit goes there; undefined for an argument that is not a single. */
export function singleInWords(wording: Wording, { name, position, instance }: PlanStep): string | undefined {
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
