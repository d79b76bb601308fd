import { compare, divide, type Fraction, fraction, fractionFromDecimal, subtract, zero } from '../scene/fraction.ts';
import { readFixedTime } from '../scene/time.ts';
import { file, one, option, out } from './kinds.ts';
import { UsageError } from './usage-error.ts';
import { verb } from './verb.ts';

export const retime = verb({
  does: "moves a scene's times after its narration was recorded again, and leaves the rest of its text untouched",
  usage: 'SCENE --before OLD.vtt --after NEW.vtt -o NEW.yaml',
  takes: { scene: one('SCENE', 'the scene file (YAML)') },
  options: {
    out: out('the new scene (default: standard output)'),
    before: file('the narration that the scene was timed to (.vtt, .srt or .json)'),
    after: file('the new recording of it'),
    offset: option('<time>', 'without narrations: shift every time by this much, 1.5 or -0:02', readOffset),
    stretch: option(
      '<factor>',
      'without narrations: multiply every time, before any offset, by 25/24 or 1.04',
      readFactor,
    ),
  },
  examples: [
    'proofreel retime lesson.yaml --before take-1.vtt --after take-2.vtt -o lesson-2.yaml',
    'proofreel retime lesson.yaml --offset 1.5 -o later.yaml',
  ],
});

/** A shift as written, for messages, and in seconds. */
export interface Offset {
  readonly text: string;
  readonly seconds: Fraction;
}

/** `1.5`, `+1.5`, `-1.5`, `-0:02`. */
function readOffset(text: string, option: string): Offset {
  const match = /^([-+\u2212]?)(.*)$/.exec(text.trim());
  const read = readFixedTime(match?.[2] ?? '', undefined);
  if (!read.ok || read.time.kind !== 'seconds')
    throw new UsageError(`${option} ${text}: write seconds or minutes and seconds: 1.5, -1.5, -0:02`);
  const { seconds } = read.time;
  const isForward = match?.[1] === '' || match?.[1] === '+';
  return { text, seconds: isForward ? seconds : subtract(zero, seconds) };
}

/** `25/24`, `1.04`. */
function readFactor(text: string, option: string): Fraction {
  const [top, bottom, ...more] = text.split('/').map((part) => fractionFromDecimal(part.trim()));
  const isFraction = top !== undefined && more.length === 0 && (!text.includes('/') || bottom !== undefined);
  const under = bottom ?? fraction(1n);
  if (!isFraction || compare(top, zero) <= 0 || compare(under, zero) <= 0)
    throw new UsageError(`${option} ${text}: write a factor above zero: 25/24 or 1.04`);
  return divide(top, under);
}
