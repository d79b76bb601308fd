import { out, required, several } from './kinds.ts';
import { verb } from './verb.ts';

export const join = verb({
  does: 'joins the parts that `render --part` made, on one machine or several, without encoding anything again',
  usage: 'PART... -o OUT',
  takes: { parts: several('PART', 'all parts of one render, in any order') },
  options: {
    out: required(
      out('the video or folder, of the kind that the parts were rendered for'),
      '-o OUT: the video that the parts are of',
    ),
  },
  examples: ['proofreel join lesson-*-of-8.part -o lesson.mp4'],
});
