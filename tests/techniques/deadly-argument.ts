/** Arguments from a deadly pattern as a scene writes them, with the names that must and must not fit. */

import { expect } from 'vitest';
import { buildArgument } from '../../src/check/argument.ts';
import { parseDeadly } from '../../src/grid/notation/deadly.ts';
import { printConclusion } from '../../src/grid/notation/print.ts';
import { parseSets } from '../../src/grid/notation/sets.ts';
import type { Reading } from '../../src/grid/terms.ts';
import { prove } from '../../src/proof/kernel.ts';
import type { ArgumentName } from '../../src/techniques/all-techniques.ts';
import { findArgument } from '../../src/techniques/find-argument.ts';
import { judgeName } from '../../src/techniques/judge-name.ts';
import type { Shape } from '../../src/techniques/technique.ts';
import { conclusionsIn, positionWith, type Written } from './written-argument.ts';

export interface DeadlyRow extends Omit<Written, 'chain'> {
  /** What the row is about. */
  readonly about: string;
  /** `12r12c14`, `grid`. */
  readonly deadly: string;
  /** The uniqueness names that fit it without a warning, in their order; no others do. */
  readonly fits: readonly ArgumentName[];
  /** Names that fit it with a warning. */
  readonly warns?: readonly ArgumentName[];
  /** Names that fit it, but by which the search does not find it. */
  readonly notFound?: readonly ArgumentName[];
}

const names: readonly ArgumentName[] = [
  'BUG+1',
  'unique rectangle type 1',
  'unique rectangle type 2',
  'unique rectangle type 3',
  'unique rectangle type 4',
  'unique rectangle type 5',
  'unique rectangle type 6',
  'hidden rectangle',
  'unique rectangle',
  'avoidable rectangle',
  'extended rectangle',
  'unique loop',
  'BUG+n',
];

/** Every uniqueness name is tried, so that each row also says which do not fit. */
export function checkNames(row: DeadlyRow): void {
  const shape = deadlyShape(row);
  const judged = names.map((name) => {
    const { judged, warning } = judgeName(shape, name);
    return `${name}: ${judged === 'fits' && warning !== undefined ? 'warns' : judged}`;
  });
  const due = names.map((name) => {
    if (row.fits.includes(name)) return `${name}: fits`;
    return `${name}: ${row.warns?.includes(name) ? 'warns' : 'misnamed'}`;
  });
  expect(judged).toEqual(due);
  expect(judgeName(shape, 'naked single').fits.filter((name) => names.includes(name))).toEqual(row.fits);
}

/** What a row concludes is found by each name that fits it. */
export function checkFound(row: DeadlyRow): void {
  const { position, conclusions, sets } = deadlyShape(row);
  const sought = row.fits.filter((name) => !row.notFound?.includes(name));
  const found = sought.map((name) => [name, findArgument(position, name, conclusions)] as const);
  expect(found.filter(([, argument]) => argument === undefined)).toEqual([]);
  for (const [, argument] of found) expect(argument!.instance.sets.length).toBeLessThanOrEqual(sets.length);
}

/** The argument in its position; it must prove what it concludes. */
export function deadlyShape(row: DeadlyRow): Shape {
  const position = positionWith(row);
  const { grid } = position;
  const at = <T>(value: T) => ({ value, span: { start: 0, end: 0 } });
  const from = row.from === undefined ? [] : read(parseSets(grid, row.from)).map(({ name }) => at(name));
  const deadly = read(parseDeadly(grid, row.deadly));
  const built = buildArgument(position, { from, chains: [], deadly: at(deadly) }, new Map());
  if (built.faults.length > 0) throw new Error(built.faults[0]!.message);
  const conclusions = conclusionsIn(grid, row.so);
  const sets = built.sets.map((named) => named.set);
  for (const conclusion of conclusions) {
    const { kind } = prove(position, sets, conclusion);
    if (kind !== 'proved') throw new Error(`${printConclusion(grid, conclusion)} is ${kind}`);
  }
  return { position, sets, chains: [], deadly, conclusions };
}

function read<T>(reading: Reading<T>): T {
  if (!reading.ok) throw new Error(reading.faults.map((fault) => fault.message).join('; '));
  return reading.value;
}
