import { nearestWords } from '../scene/nearest-word.ts';
import type { HandoutCount } from '../slides/handout.ts';
import { type SizeName, sizeNames } from '../slides/page-size.ts';
import { defaulting, flag, one, option, out, required } from './kinds.ts';
import { look } from './look.ts';
import { UsageError } from './usage-error.ts';
import { verb } from './verb.ts';

export const slides = verb({
  does: 'writes the steps as slides or handouts: OUT.pdf, OUT.pptx, OUT.html, or a folder of PNG pictures',
  usage: 'SCENE -o OUT',
  takes: { scene: one('SCENE', 'the scene file (YAML)') },
  options: {
    out: required(
      out('the slides (.pdf, .pptx, .html) or a folder for PNG pictures'),
      '-o OUT: a .pdf, .pptx or .html, or a folder for PNG pictures',
    ),
    builds: flag('one slide per beat instead of one per step'),
    size: option('<name>', '16:9 (the default), 4:3, A4 or Letter', readSize),
    handout: option('<number>', 'paper sheets with 2, 4 or 6 steps each, and ruled space for notes', readHandout),
    exercise: flag('hide what follows, ask for it, and put it on answer pages at the end'),
    stamp: flag('draw an unsound scene anyway, each unproved step stamped'),
    look,
    lang: defaulting(
      option('<tag>', "the language of the scene's words, for screen readers: en, de, ...", readTag),
      'en',
    ),
    quiet: flag('no progress'),
  },
  examples: [
    'proofreel slides scenes/lamp-room.yaml -o lamp-room.html',
    'proofreel slides lesson.yaml -o sheets.pdf --handout 4 --exercise --size Letter',
  ],
});

function readSize(text: string): SizeName {
  const found = sizeNames.find((name) => name.toLowerCase() === text.toLowerCase());
  if (found !== undefined) return found;
  const [nearest] = nearestWords(text, sizeNames);
  throw new UsageError(
    `${text} is not a size; ${nearest === undefined ? `the sizes are ${sizeNames.join(', ')}` : `did you mean ${nearest}?`}`,
  );
}

/** By the number written; limited to the counts that a sheet can have. */
const handouts: { readonly [Count in HandoutCount]: Count } = { 2: 2, 4: 4, 6: 6 };

function readHandout(text: string, option: string): HandoutCount {
  const found = Object.values(handouts).find((count) => String(count) === text);
  if (found === undefined) throw new UsageError(`${option} ${text}: a sheet holds 2, 4 or 6 slides`);
  return found;
}

/** BCP 47 (RFC 5646): a language of two or three letters, then subtags. */
function readTag(text: string, option: string): string {
  if (/^[a-z]{2,3}(-[a-z0-9]{2,8})*$/i.test(text)) return text;
  throw new UsageError(`${option} ${text} is not a language tag; write en, de, fr-CA, pt-BR, ...`);
}
