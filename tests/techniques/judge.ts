/** One row of a table of arguments with a name each. */

import { expect } from 'vitest';
import type { ArgumentName } from '../../src/techniques/all-techniques.ts';
import { judgeName } from '../../src/techniques/judge-name.ts';
import { shapeOf, type Written } from './written-argument.ts';

export interface Row extends Written {
  /** What the row is about. */
  readonly about: string;
  readonly name: ArgumentName;
  /** `warns`: it fits, with a warning. */
  readonly is: 'fits' | 'warns' | 'misnamed';
  /** Names that fit, in this order, among others perhaps. */
  readonly fits?: readonly ArgumentName[];
  /** Names that do not fit. */
  readonly not?: readonly ArgumentName[];
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
