/** Steps found again in a recording that followed no script. */
import { describe, expect, it } from 'vitest';
import { utterancesOf } from '../../src/draft/heard.ts';
import { narrate } from '../../src/draft/narrated.ts';
import { gridOf } from '../../src/grid/grid.ts';
import { readScene } from '../../src/lesson/read-scene.ts';
import { schedule } from '../../src/lesson/schedule.ts';
import { readNarration } from '../../src/timeline/narration.ts';
import { drafted, phrasesIn } from './drafted.ts';

const symbols = '....29..8..3...2.....5......54......7.6.4.52...8....1.....3...9.6...7.51.8..914..';

/** Cues of four seconds each, one after the other. */
function spoken(...cues: readonly string[]) {
  const stamp = (seconds: number) =>
    `00:${String(Math.floor(seconds / 60)).padStart(2, '0')}:${String(seconds % 60).padStart(2, '0')}.000`;
  const text = cues.map((cue, index) => `${stamp(4 * index)} --> ${stamp(4 * index + 4)}\n${cue}\n`);
  return readNarration(`WEBVTT\n\n${text.join('\n')}`, 'take.vtt').narration;
}

describe('what is heard', () => {
  const grid = gridOf('3x3');
  const rows: readonly (readonly [say: string, heard: readonly string[], language: string])[] = [
    ['there is a seven in row three column five', ['digit 7', 'row 3', 'column 5', 'cell 22'], 'en'],
    ['so r3c5 is a 7', ['row 3', 'column 5', 'cell 22', 'digit 7'], 'en'],
    ['R three, C five', ['row 3', 'column 5', 'cell 22'], 'en'],
    ['that is an X wing on sevens, in columns two and box 9', ['name X-wing', 'digit 7', 'column 2', 'box 9'], 'en'],
    ['a naked pair of threes and eights', ['name naked pair', 'digit 3', 'digit 8'], 'en'],
    ['row twelve, and thirty of them', [], 'en'],
    [
      'ein Wolkenkratzer der Siebenen in Zeile drei, Spalte fünf',
      ['name skyscraper', 'digit 7', 'row 3', 'column 5', 'cell 22'],
      'de',
    ],
  ];
  it.each(rows)('%s', (say, heard, language) => {
    const [utterance] = utterancesOf(spoken(say), phrasesIn(language), grid);
    expect([...utterance!.heard].sort()).toEqual([...heard].sort());
  });
});

describe('steps in a narration', () => {
  const { draft, plan } = drafted(symbols, { steps: 300 });
  const ids = draft.steps.map(({ id }) => id);
  const told = (...cues: readonly string[]) => {
    const narration = spoken(...cues);
    const made = narrate(draft.steps, plan, narration, phrasesIn('en'));
    const text = draft.textWith(made.steps, ['narration: take.vtt']);
    const { scene } = readScene(text);
    expect(schedule(scene!, narration, {}).diagnostics.filter(({ severity }) => severity === 'error')).toEqual([]);
    return made;
  };
  const at = (made: ReturnType<typeof told>, id: string) => made.steps.find((step) => step.id === id)?.at;

  it('are found by their arguments, cells and digits, in order', () => {
    const made = told(
      'Hello and welcome.',
      'There is a pointing pair of sixes in box two, so row three column nine is no six.',
      'Where can a one go? In row one and in row five there are two places.',
      'A skyscraper, then, and no one in r2c2.',
    );
    expect(made.heard).toEqual(['pointing-pair', 'skyscraper-places', 'skyscraper']);
    expect([at(made, 'pointing-pair'), at(made, 'skyscraper')]).toEqual(['0:04', '0:12']);
    expect(made.steps.find(({ id }) => id === 'skyscraper')?.say).toBe('A skyscraper, then, and no one in r2c2.');
    expect(made.unheard).toEqual(ids.filter((id) => !made.heard.includes(id)));
    expect(made.unmatched).toEqual([]);
  });

  it('are not found where their order is another', () => {
    const made = told('A skyscraper of ones, so not in r2c2.', 'And a pointing pair of sixes in box two.');
    expect(made.heard).toHaveLength(1);
    expect(made.unmatched).toHaveLength(1);
  });

  it('of which nothing is heard have times all the same, and what is said besides is told', () => {
    const made = told('Look at that swordfish.', 'And a nine in r1c6?');
    expect(made.heard).toEqual([]);
    expect(made.unheard).toEqual(ids);
    expect(made.unmatched.map(({ at: when }) => when)).toEqual(['0:00', '0:04']);
  });
});
