import { describe, expect, it } from 'vitest';
import { readScene } from '../../src/lesson/read-scene.ts';
import { boardEdit, type PlaceText } from '../../src/scene/board-text.ts';

const square: PlaceText = { at: undefined, shape: { kind: 'square', left: 60.04, top: 40, side: 960.26 } };
const list: readonly PlaceText[] = [
  { at: '0:00.000', shape: { kind: 'hidden' } },
  { at: '0:01.500', shape: square.shape },
  {
    at: '0:02.000',
    shape: {
      kind: 'corners',
      corners: [
        [1, 2],
        [901, 4],
        [899, 905.5],
        [3, 900],
      ],
    },
  },
];
const puzzle = 'puzzle: {boxes: 2x2, givens: 1... ..1. .1.. ...1}';
const steps = 'steps: [{id: look, say: Look}]';

function written(text: string, places: readonly PlaceText[]): string {
  const edit = boardEdit(text, places);
  if (edit === undefined) return 'not written';
  return text.slice(0, edit.start) + edit.text + text.slice(edit.end);
}

const one = '{left: 60, top: 40, side: 960.3}';
const three = [
  '{at: 0:00.000, hidden: true}',
  `{at: 0:01.500, left: 60, top: 40, side: 960.3}`,
  '{at: 0:02.000, corners: [[1, 2], [901, 4], [899, 905.5], [3, 900]]}',
];

const rows: readonly (readonly [what: string, before: string, single: string, several: string])[] = [
  [
    'no video',
    `proofreel: 1\n${puzzle}\n# the steps\n${steps}\n`,
    `proofreel: 1\n${puzzle}\n# the steps\nvideo:\n  board: ${one}\n${steps}\n`,
    `proofreel: 1\n${puzzle}\n# the steps\nvideo:\n  board:\n    - ${three.join('\n    - ')}\n${steps}\n`,
  ],
  [
    'a video without a board',
    `proofreel: 1\n${puzzle}\nvideo:\n    # of the channel\n    size: 1280x720 # small\n    rate: 25\n${steps}\n`,
    `proofreel: 1\n${puzzle}\nvideo:\n    # of the channel\n    board: ${one}\n    size: 1280x720 # small\n    rate: 25\n${steps}\n`,
    `proofreel: 1\n${puzzle}\nvideo:\n    # of the channel\n    board:\n      - ${three.join('\n      - ')}\n    size: 1280x720 # small\n    rate: 25\n${steps}\n`,
  ],
  [
    'a video in braces',
    `proofreel: 1\n${puzzle}\nvideo: {size: 1280x720,  rate: 25}\n${steps}\n`,
    `proofreel: 1\n${puzzle}\nvideo: {board: ${one}, size: 1280x720,  rate: 25}\n${steps}\n`,
    `proofreel: 1\n${puzzle}\nvideo: {board: [${three.join(', ')}], size: 1280x720,  rate: 25}\n${steps}\n`,
  ],
  [
    'another board on the line of its key',
    `proofreel: 1\n${puzzle}\nvideo:\n  board: {left: 1, top: 2, side: 500}   # by eye\n  rate: 25\n${steps}\n`,
    `proofreel: 1\n${puzzle}\nvideo:\n  board: ${one}   # by eye\n  rate: 25\n${steps}\n`,
    `proofreel: 1\n${puzzle}\nvideo:\n  board: [${three.join(',\n    ')}]   # by eye\n  rate: 25\n${steps}\n`,
  ],
  [
    'a list of boards on lines of their own',
    `proofreel: 1\n${puzzle}\nvideo:\n  board:\n  - {at: 0, left: 1, top: 2, side: 500}\n  - at: 3\n    hidden: true\n\n  rate: 25\n${steps}\n`,
    `proofreel: 1\n${puzzle}\nvideo:\n  board:\n  - ${one}\n\n  rate: 25\n${steps}\n`,
    `proofreel: 1\n${puzzle}\nvideo:\n  board:\n  - ${three.join('\n  - ')}\n\n  rate: 25\n${steps}\n`,
  ],
  [
    'a board in lines',
    `proofreel: 1\n${puzzle}\nvideo:\n  board:\n    left: 1\n    top: 2\n    side: 500\n  rate: 25\n${steps}\n`,
    `proofreel: 1\n${puzzle}\nvideo:\n  board:\n    ${one}\n  rate: 25\n${steps}\n`,
    `proofreel: 1\n${puzzle}\nvideo:\n  board:\n    - ${three.join('\n    - ')}\n  rate: 25\n${steps}\n`,
  ],
  [
    'a scene in braces',
    `{proofreel: 1, ${puzzle}, ${steps}}\n`,
    `{proofreel: 1, ${puzzle}, video: {board: ${one}}, ${steps}}\n`,
    `{proofreel: 1, ${puzzle}, video: {board: [${three.join(', ')}]}, ${steps}}\n`,
  ],
];

describe('another board', () => {
  it.each(rows)('%s', (_, before, single, several) => {
    expect(written(before, [square])).toBe(single);
    expect(written(before, list)).toBe(several);
    for (const after of [single, several]) {
      expect(readScene(after).diagnostics.filter(({ severity }) => severity === 'error')).toEqual([]);
    }
    expect(readScene(several).scene?.video.board.map(({ shape }) => shape.kind)).toEqual([
      'hidden',
      'square',
      'corners',
    ]);
  });

  it('keeps the line ends that the text has', () => {
    const text = `proofreel: 1\r\n${puzzle}\r\n${steps}\r\n`;
    expect(written(text, list).replaceAll('\r\n', '')).not.toContain('\n');
  });
});
