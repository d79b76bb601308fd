import { flag, one, out } from './kinds.ts';
import { verb } from './verb.ts';

export const captions = verb({
  does: 'writes the spoken words as captions, from the narration or from what the steps say',
  usage: 'SCENE [-o OUT.vtt|.srt]',
  takes: { scene: one('SCENE', 'the scene file (YAML)') },
  options: {
    out: out('the captions, a .vtt (WebVTT) or .srt (default: WebVTT on standard output)'),
    describe: flag(
      'also write what is shown, for viewers who cannot see it: OUT.descriptions.vtt next to the captions',
    ),
  },
  examples: [
    'proofreel captions scenes/lamp-room.yaml -o lamp-room.captions.vtt',
    'proofreel captions lesson.yaml --describe -o lesson.srt',
  ],
});
