import { file, flag, one, out, text } from './kinds.ts';
import { verb } from './verb.ts';

export const locate = verb({
  does: 'finds where the board lies in a recording, and when: for `video.board`, with cutaways, zooms and pans',
  usage: 'RECORDING [--write SCENE]',
  takes: { recording: one('RECORDING', 'the recording of a solve, or a picture of a board') },
  options: {
    puzzle: text('<puzzle>', 'the puzzle on the board, as its symbols, a file or a scene: its givens must be seen'),
    write: file('put the board into this scene, and leave the rest of its text untouched'),
    out: out('draw what was found on pictures of the recording, a .png'),
    json: flag('print the answer as JSON (its schema: `proofreel schema --locate`)'),
  },
  examples: [
    'proofreel locate take-3.mp4 --write lesson.yaml',
    'proofreel locate take-3.mp4 --puzzle puzzle.txt -o found.png',
    'proofreel locate screenshot.png --json',
  ],
});
