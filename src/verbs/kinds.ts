/**
 * The kinds of arguments and options that verbs are made of.
 */
import { nearestWords } from '../scene/nearest-word.ts';
import { UsageError } from './usage-error.ts';
import type { Argument, Option } from './verb.ts';

export function one(written: string, does: string): Argument<string> {
  return { written, does, read: ([word = '']) => word };
}

/** One or more. */
export function several(written: string, does: string): Argument<readonly string[]> {
  return { written: `${written}...`, does, read: (words) => words };
}

/** A switch: true if it is written. */
export function flag(does: string): Option<boolean> {
  return { takes: undefined, does, read: () => true, absent: () => false };
}

/** An option with a value; undefined if it is not written. */
export function option<Value>(
  takes: string,
  does: string,
  read: (text: string, option: string) => Value,
): Option<Value, undefined> {
  return { takes, does, read, absent: () => undefined };
}

export function text(takes: string, does: string): Option<string, undefined> {
  return option(takes, does, (words) => words);
}

export function file(does: string): Option<string, undefined> {
  return text('<file>', does);
}

/** `-o`: the file or folder that the verb writes. */
export function out(does: string): Option<string, undefined> {
  const given = option('<file>', does, (path, option) => {
    if (path === '') throw new UsageError(`${option} is empty; name what to write`);
    return path;
  });
  return { ...given, letter: 'o' };
}

/** The same, but a call without it is refused: `needs` is what the message asks for. */
export function required<Value>(given: Option<Value, undefined>, needs: string): Option<Value> {
  return {
    ...given,
    absent: (verb) => {
      throw new UsageError(`${verb} needs ${needs}`);
    },
  };
}

/** The same, but with a default value, which the help then names as it would be `written`. */
export function defaulting<Value>(
  given: Option<Value, undefined>,
  value: NoInfer<Value>,
  written = String(value),
): Option<Value> {
  return { ...given, does: `${given.does} (default: ${written})`, absent: () => value };
}

/** One of a few words. */
export function choice<const Word extends string>(
  takes: string,
  words: readonly Word[],
  does: string,
): Option<Word, undefined> {
  return option(takes, does, (given, option) => {
    const found = words.find((word) => word === given);
    if (found !== undefined) return found;
    const [near] = nearestWords(given, words);
    const hint = near === undefined ? '' : `; did you mean ${near}?`;
    throw new UsageError(`${option} ${given}: it is ${words.join(', ')}${hint}`);
  });
}

/** From `least` to `most`, both included. */
export function wholeNumber(
  takes: string,
  { least, most }: { readonly least: number; readonly most: number },
  does: string,
): Option<number, undefined> {
  return option(takes, does, (given, option) => {
    const value = /^\d+$/.test(given.trim()) ? Number(given) : Number.NaN;
    if (value >= least && value <= most) return value;
    throw new UsageError(`${option} ${given}: expected a whole number from ${least} to ${most}`);
  });
}

/** A time limit: above 0, up to a day. */
export function seconds(does: string): Option<number, undefined> {
  return option('<number>', does, (given, option) => {
    const value = Number(given);
    if (/^\d+(\.\d+)?$/.test(given.trim()) && value > 0 && value <= 86_400) return value;
    throw new UsageError(`${option} ${given}: write a number of seconds above 0, up to 86400 (a day)`);
  });
}
