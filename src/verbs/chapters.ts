import { file, one, out } from './kinds.ts';
import { verb } from './verb.ts';

export const chapters = verb({
  does: 'prints the chapter list that video sites read, or writes the lesson as a timeline with a marker per step',
  usage: 'SCENE [-o OUT.otio]',
  takes: { scene: one('SCENE', 'the scene file (YAML)') },
  options: {
    out: out('the list (.txt) or an OpenTimelineIO timeline (.otio) (default: the list on standard output)'),
    video: file('for .otio: the rendered video that becomes its clip (default: OUT.mov)'),
  },
  examples: [
    'proofreel chapters scenes/lamp-room.yaml',
    'proofreel chapters lesson.yaml -o lesson.otio --video marks.mov',
  ],
});
