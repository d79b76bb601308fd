import { audience } from './audience.ts';
import { defaulting, file, out, required, seconds, text } from './kinds.ts';
import { puzzleGiven, until } from './puzzle-given.ts';
import { verb } from './verb.ts';

export const draft = verb({
  does: 'writes the least plan of a puzzle as a scene ready to edit: arguments, lists, words to say',
  usage: 'PUZZLE -o SCENE',
  takes: { given: puzzleGiven },
  options: {
    out: required(out('the scene, a .yaml'), '-o SCENE.yaml'),
    language: defaulting(text('<language>', 'the words to say: en, de, or a file of phrases'), 'en'),
    title: text('<text>', "the scene's title"),
    narration: file(
      'an unscripted recording of the solve (.vtt, .srt, .json): steps take their times and words from it',
    ),
    until: until('draft'),
    ...audience,
    seconds: defaulting(seconds('the time limit of the search'), 10),
  },
  examples: [
    'proofreel draft puzzle.txt -o lesson.yaml',
    'proofreel draft puzzle.txt --language de -o lektion.yaml',
    'proofreel draft puzzle.txt --narration take.vtt -o lesson.yaml',
    'proofreel draft puzzle.txt --until r5c5 -o clip.yaml',
  ],
});
