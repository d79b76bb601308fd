/**
 * Whatever is written, a parser answers: with a value whose printed form reads the same, or with faults inside the text.
 */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { gridOf } from '../../../src/grid/grid.ts';
import { type ReaderName, readers } from './readings.ts';

const grid = gridOf('2x3');
const pieces = [
  'r1c2',
  'r3',
  'c4',
  'b5',
  'b5p1',
  '4',
  '12',
  '7',
  '0',
  'r',
  'p',
  'x',
  'either',
  'step',
  'grid',
  'without',
];
const signs = ['=', '-', '−', '<>', '≠', '=>', '⇒', '(', ')', '|', ',', ' ', ' ', '\n', '+', 'in', '>', '!', 'é', '😀'];
const text = fc.array(fc.constantFrom(...pieces, ...signs), { maxLength: 14 }).map((parts) => parts.join(''));

describe.each(Object.keys(readers) as ReaderName[])('%s', (name) => {
  test('a value or faults', () => {
    fc.assert(
      fc.property(text, (written) => {
        const reading = readers[name](grid, written);
        if (reading.ok) return checkPrinted(name, reading.value);
        expect(reading.faults.length).toBeGreaterThan(0);
        for (const { at, length, message } of reading.faults) {
          expect(at).toBeGreaterThanOrEqual(0);
          expect(length).toBeGreaterThanOrEqual(0);
          expect(at + length).toBeLessThanOrEqual(written.length);
          expect(message).not.toBe('');
        }
      }),
      { numRuns: 2000 },
    );
  });
});

function checkPrinted(name: ReaderName, values: readonly string[]): void {
  // A target is printed with its kind before it.
  const printed = values.map((value) => (name === 'targets' ? value.replace(/^\w+ /, '') : value)).join(' ');
  const again = readers[name](grid, printed);
  if (!again.ok) throw new Error(`"${printed}" is not read back: ${again.faults[0]!.message}`);
  expect(again.value).toEqual(values);
}
