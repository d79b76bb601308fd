/**
 * Remarks on captions: the limits that the words leave no room for, and where.
 */
import { fraction } from '../scene/fraction.ts';
import { printSeconds } from '../timeline/seconds.ts';
import { lengthOf, limits, speedOf, type TextCue } from './cue.ts';

/** How many places are listed one by one. */
const mostPlaces = 5;

/** One sentence each; empty if all cues can be read. */
export function remarksOnCues(cues: readonly TextCue[]): string[] {
  const fast = cues.filter((cue) => speedOf(cue) > limits.charactersASecond + 0.05);
  const short = cues.filter((cue) => cue.to - cue.from < limits.shortest && !fast.includes(cue));
  const long = cues.filter(({ lines }) => lines.some((line) => lengthOf(line) > limits.lineLength));
  const at = (cue: TextCue) => printSeconds(fraction(cue.from, 1000));
  const withSpeed = (cue: TextCue) => `${at(cue)} (${Math.ceil(speedOf(cue))})`;
  return [
    ...(fast.length === 0
      ? []
      : [
          `warning: ${comes(fast)} faster than ${limits.charactersASecond} characters a second, as the words do, and few can read that in time: at ${placesOf(fast, withSpeed)}`,
        ]),
    ...(short.length === 0
      ? []
      : [
          `warning: ${stands(short)} on screen for less than a second, since the next sentence follows immediately: at ${placesOf(short, at)}`,
        ]),
    ...(long.length === 0
      ? []
      : [`warning: a line is longer than ${limits.lineLength} characters: at ${placesOf(long, at)}`]),
  ];
}

const comes = ({ length }: readonly TextCue[]): string => (length === 1 ? '1 cue comes' : `${length} cues come`);
const stands = ({ length }: readonly TextCue[]): string => (length === 1 ? '1 cue is' : `${length} cues are`);

function placesOf(cues: readonly TextCue[], print: (cue: TextCue) => string): string {
  const listed = cues.slice(0, mostPlaces).map(print);
  if (cues.length > listed.length) return `${listed.join(', ')} and ${cues.length - listed.length} more`;
  return listed.length < 2 ? listed.join('') : `${listed.slice(0, -1).join(', ')} and ${listed.at(-1)}`;
}
