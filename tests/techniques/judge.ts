/** One row of a table of arguments with a name each. */
import { expect } from 'vitest';
import { judgeName } from '../../src/techniques/judge-name.ts';
import { shapeOf, type Written } from './written-argument.ts';

export interface Row extends Written {
  /** What the row is about. */
  readonly about: string;
  readonly name: string;
  /** `warns`: it fits, with a warning. */
  readonly is: 'fits' | 'warns' | 'misnamed';
  /** Names that fit, in this order, among others perhaps. */
  readonly fits?: readonly string[];
  /** Names that do not fit. */
  readonly not?: readonly string[];
}

export function check(row: Row): void {
  const { judged, fits, warning } = judgeName(shapeOf(row), row.name);
  expect(judged === 'fits' && warning !== undefined ? 'warns' : judged).toBe(row.is);
  if (row.is === 'misnamed') expect(fits).not.toContain(row.name);
  else expect(fits).toContain(row.name);
  const wanted = row.fits ?? [];
  expect(fits.filter((name) => wanted.includes(name))).toEqual(wanted);
  expect(fits.filter((name) => (row.not ?? []).includes(name))).toEqual([]);
}
