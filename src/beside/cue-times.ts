/**
 * When a cue is on screen: from its first word to its last, and longer if reading it takes longer and its neighbours
 * leave room.
 */
import { lengthOf, limits, type TextCue } from './cue.ts';

/** A cue from its first word to its last. */
export interface UntimedCue extends TextCue {
  /** Whether its sentence began in the cue before: only then may it be on screen before its first word. */
  readonly goesOn: boolean;
}

/** A silence so short that the picture would flicker if the cue disappeared, in milliseconds. */
const flicker = 500;
/** How far a cue may begin before or after its first word to stay on screen long enough. */
const mostMoved = 500;

/** The cues, on screen long enough to be read as far as their neighbours leave room. */
export function inTime(cues: readonly UntimedCue[], end: number): TextCue[] {
  const froms = cues.map(({ from }) => from);
  const needs = cues.map((cue) => Math.max(limits.shortest, timeFor(cue, limits.charactersASecond)));
  const tos = cues.map((cue, index) => {
    const next = froms[index + 1] ?? end;
    const wanted = Math.max(cue.to, cue.from + timeFor(cue, limits.easyCharactersASecond), cue.from + limits.shortest);
    return Math.min(next - wanted < flicker && index + 1 < cues.length ? next : wanted, next, end);
  });
  const spare = (index: number) => Math.max(0, tos[index]! - froms[index]! - needs[index]!);
  for (const [index, { goesOn }] of cues.entries()) {
    const short = () => Math.max(0, needs[index]! - (tos[index]! - froms[index]!));
    if (goesOn) {
      const free = Math.min(short(), mostMoved, froms[index]! - tos[index - 1]!);
      froms[index]! -= free;
      if (tos[index - 1] === froms[index]) {
        const moved = Math.min(short(), mostMoved - free, spare(index - 1));
        froms[index]! -= moved;
        tos[index - 1]! -= moved;
      }
    }
    if (tos[index] === froms[index + 1]) {
      const moved = Math.min(short(), mostMoved, spare(index + 1));
      froms[index + 1]! += moved;
      tos[index]! += moved;
    }
  }
  return cues.flatMap(({ name, lines }, index) => {
    const [from, to] = [froms[index]!, tos[index]!];
    return to > from ? [{ name, from, to, lines }] : [];
  });
}

/** Milliseconds to read a cue at this many characters a second. */
function timeFor({ lines }: TextCue, charactersASecond: number): number {
  return Math.ceil((1000 * lengthOf(lines.join(' '))) / charactersASecond);
}
