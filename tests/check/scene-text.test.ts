import { describe, expect, it } from 'vitest';
import { edited, takenOut } from '../../src/check/scene-text.ts';

describe('a text deleted from a list, with its separator', () => {
  it.each([
    ['  so: one two three', 'one', '  so: two three'],
    ['  so: one two three', 'two', '  so: one three'],
    ['  so: one two three', 'three', '  so: one two'],
    ['  so: one, two, three', 'two', '  so: one, three'],
    ['  so: one, two', 'one', '  so: two'],
    ['{so: one two}', 'one', '{so: two}'],
    ['cascade: [one, two]', 'one', 'cascade: [two]'],
    ['  - one, two', 'one', '  - two'],
    ['  so: >-\n    one two\n    three', 'three', '  so: >-\n    one two\n    '],
    ['  so: >-\n    one two\n    three', 'one', '  so: >-\n    two\n    three'],
  ])('%j without %s', (text, part, left) => {
    const start = text.indexOf(part);
    expect(edited(text, [takenOut(text, { start, end: start + part.length })])).toBe(left);
  });
});
