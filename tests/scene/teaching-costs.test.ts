/** Tables of teaching costs that users write: no name is lost without a word. */
import { describe, expect, it } from 'vitest';
import { readTeachingCosts } from '../../src/scene/teaching-costs.ts';

const table = (free: string, names: string) => `step: 1\nfree: [${free}]\nnames: {${names}}\n`;

describe('a table of costs', () => {
  it('is read with names in any spelling', () => {
    const { costs } = readTeachingCosts(table('Hidden Singles', 'x wing: 5, XY Chain: {cost: 9, sets: 4, each: 1}'));
    expect(costs).toEqual({
      step: 1,
      free: ['hidden single'],
      names: [
        { name: 'X-wing', cost: 5, sets: 1, each: 0 },
        { name: 'XY-chain', cost: 9, sets: 4, each: 1 },
      ],
    });
  });

  const rows: readonly (readonly [about: string, text: string, at: string, code: string, says: RegExp])[] = [
    [
      'a misspelt name with a cost',
      table('naked single', 'X-wing: 5, skyscrapper: 6'),
      'skyscrapper',
      'unknown-name',
      /no argument is called "skyscrapper"; did you mean skyscraper\?/,
    ],
    [
      'a misspelt name that is free',
      table('naked singel', 'X-wing: 5'),
      'naked singel',
      'unknown-name',
      /did you mean naked single\?/,
    ],
    [
      'a name in two spellings',
      table('naked single', 'Y-wing: 5, XY-wing: 6'),
      'XY-wing',
      'duplicate-key',
      /XY-wing appears twice here/,
    ],
  ];
  it.each(rows)('is refused for %s, and says where', (_, text, at, code, says) => {
    const { costs, diagnostics } = readTeachingCosts(text);
    expect(costs).toBeUndefined();
    expect(diagnostics.map((each) => [each.code, text.slice(each.span.start, each.span.end)])).toEqual([[code, at]]);
    expect(diagnostics[0]?.message).toMatch(says);
  });
});
