/**
 * The values of the options of `render`: which steps, how large, which part.
 */
import { type NamedCodec, namedCodecs } from '../output/codecs/named-codecs.ts';
import type { Share } from '../output/parts/parts.ts';
import { compare, divide, type Fraction, fraction, fractionFromDecimal, toNumber, zero } from '../scene/fraction.ts';
import { nearestWords } from '../scene/nearest-word.ts';
import { UsageError } from './usage-error.ts';

export type Format = 'mp4' | 'mov' | 'webm' | 'png';
const formats: readonly Format[] = ['mp4', 'mov', 'webm', 'png'];

/** The ids of the first and the last step, both included; `last` undefined: to the end. */
export interface StepRange {
  readonly first: string;
  readonly last: string | undefined;
}

/** `mov`, `.MOV`. */
export function readFormat(text: string, option: string): Format {
  const found = formats.find((format) => format === text.replace(/^\./, '').toLowerCase());
  if (found !== undefined) return found;
  const [nearest] = nearestWords(text, formats);
  throw new UsageError(
    `${option} ${text}: ${nearest === undefined ? 'there are mp4, mov, webm and png' : `did you mean ${nearest}?`}`,
  );
}

/** `av1`, `AV1`. */
export function readCodec(text: string, option: string): NamedCodec {
  const found = namedCodecs.find((codec) => codec === text.toLowerCase());
  if (found !== undefined) return found;
  const [nearest] = nearestWords(text, namedCodecs);
  throw new UsageError(
    `${option} ${text}: ${nearest === undefined ? `there are ${namedCodecs.join(' and ')}` : `did you mean ${nearest}?`}`,
  );
}

/** `towers`, `towers..corner`, `towers..`. */
export function readStepRange(text: string, option: string): StepRange {
  const match = /^([A-Za-z0-9-]+)(?:(\.\.)([A-Za-z0-9-]*))?$/.exec(text.trim());
  if (match === null)
    throw new UsageError(
      `${option} ${text}: write the id of one step, or of two with .. between them, such as towers..corner`,
    );
  const [, first = '', dots, last = ''] = match;
  return { first, last: dots === undefined ? first : last === '' ? undefined : last };
}

/** Seconds: `1s`, `1`, `0.5s`. */
export function readHandles(text: string, option: string): Fraction {
  const seconds = fractionFromDecimal(text.trim().replace(/s$/, ''));
  if (seconds === undefined || compare(seconds, zero) < 0)
    throw new UsageError(`${option} ${text}: write seconds, such as 1s or 0.5s`);
  return seconds;
}

/** The fraction of both sides of the frame, above 0, at most 1: `1/4`, `0.25`. */
export function readScale(text: string, option: string): number {
  const [top, bottom, ...more] = text.split('/').map((part) => fractionFromDecimal(part.trim()));
  const isFraction = top !== undefined && more.length === 0 && (!text.includes('/') || bottom !== undefined);
  const under = bottom ?? fraction(1n);
  if (!isFraction || compare(under, zero) <= 0 || compare(top, zero) <= 0 || compare(top, under) > 0)
    throw new UsageError(
      `${option} ${text}: write a fraction of the frame's sides, above 0 and at most 1, such as 1/4`,
    );
  return toNumber(divide(top, under));
}

/** `2/8`. */
export function readPart(text: string, option: string): Share {
  const match = /^(\d{1,4})\/(\d{1,4})$/.exec(text.trim());
  const [number, of] = [Number(match?.[1]), Number(match?.[2])];
  if (match === null || number < 1 || number > of)
    throw new UsageError(`${option} ${text}: write the part's number and how many there are, such as 2/8`);
  return { number, of };
}
