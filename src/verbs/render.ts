import { flag, option, out, required, several, text } from './kinds.ts';
import { as, look } from './look.ts';
import { readCodec, readFormat, readHandles, readPart, readScale, readStepRange } from './render-values.ts';
import { UsageError } from './usage-error.ts';
import { verb } from './verb.ts';

export const render = verb({
  does: 'renders the video: OUT.mp4, OUT.mov, OUT.webm, or a folder of PNG frames; refuses an unsound scene',
  usage: 'SCENE... -o OUT',
  takes: { scenes: several('SCENE', 'the scene files (YAML)') },
  options: {
    out: required(
      out('the video (.mp4, .mov, .webm) or a folder for PNG frames; for several videos, their folder'),
      '-o OUT: a .mp4, .mov or .webm, or a folder for PNG frames',
    ),
    steps: option(
      '<ids>',
      'render these steps only: one (corner), a range (towers..corner), or from one to the end (towers..)',
      readStepRange,
    ),
    scale: option('<fraction>', 'render a smaller frame for a quick look: 1/4, 1/2', readScale),
    by: option('<what>', '`step`: one video per step, named by its id, in the folder OUT', (words, name) => {
      if (words === 'step') return 'step' as const;
      throw new UsageError(`${name} ${words}: the only choice is --by step, one video per step`);
    }),
    handles: option('<time>', 'with --by step: extra film before and after each step, such as 1s', readHandles),
    format: option(
      '<name>',
      'for several videos: mp4, mov, webm or png (default: mov where frames stay transparent, else mp4)',
      readFormat,
    ),
    look,
    as,
    stamp: flag('render an unsound scene anyway, with every frame of an unproved step stamped'),
    key: text(
      '<colour>',
      "for an .mp4 of `draw: overlay` without footage: the colour behind the marks, such as '#00b140'",
    ),
    matte: flag('write two opaque videos: OUT-fill with the colours, OUT-matte with the transparency as grey'),
    lossless: flag('for .mov: Animation (qtrle) instead of ProRes 4444'),
    png: flag('for .mov: PNG pictures instead of ProRes 4444, also lossless'),
    codec: option(
      '<name>',
      'av1 for .mp4 instead of H.264, or for .webm instead of VP9; hevc for .mov instead of ProRes 4444',
      readCodec,
    ),
    compatible: flag(
      "for .mp4: encode still frames with the encoder's own pictures, for players that show them wrong; slower, larger",
    ),
    holds: flag('for a folder of PNG frames: write each picture once, with a list of when it is shown (holds.json)'),
    part: option(
      '<k/n>',
      'render one part of n, OUT-k-of-n.part, for `join`: one machine renders 1/8, another 2/8',
      readPart,
    ),
    noCache: flag('draw everything again: neither read nor write the cache of earlier renders'),
    quiet: flag('no progress'),
  },
  examples: [
    'proofreel render scenes/lamp-room.yaml -o lamp-room.mp4',
    'proofreel render lesson.yaml -o look.mp4 --steps towers..corner --scale 1/4',
    'proofreel render lesson.yaml -o clips/ --by step --handles 1s --format mov',
    'proofreel render one.yaml two.yaml -o videos/',
    'proofreel render marks.yaml -o marks.mov',
    'proofreel render lesson.yaml --as upright -o upright.mp4',
  ],
});
