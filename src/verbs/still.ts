import { flag, one, out, required, text } from './kinds.ts';
import { as, look } from './look.ts';
import { verb } from './verb.ts';

export const still = verb({
  does: 'draws one frame: the last of a step with all its marks in place, or the one at a given time',
  usage: 'SCENE --step ID -o OUT.png',
  takes: { scene: one('SCENE', 'the scene file (YAML)') },
  options: {
    out: required(out('the picture, a .png'), '-o OUT.png'),
    step: text('<id>', 'the step to show'),
    at: text('<time>', 'the time to show: 12.5, 1:02.5, 01:00:02:12'),
    stamp: flag('draw an unproved step anyway, stamped'),
    thumbnail: flag("compose a 1280x720 thumbnail: the step's picture beside a large title"),
    title: text('<text>', "the thumbnail's title, instead of the step's own"),
    look,
    as,
  },
  examples: [
    'proofreel still scenes/lamp-room.yaml --step kite -o kite.png',
    'proofreel still scenes/lamp-room.yaml --at 1:02 -o frame.png',
    'proofreel still scenes/lamp-room.yaml --step tail --thumbnail -o thumbnail.png',
  ],
});
