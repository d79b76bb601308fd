/**
 * Exact fractions of integers, for times and rates: a frame number must never depend on the rounding of a float.
 */
import { Bug } from '../grid/bug.ts';

/** `numerator / denominator`, in lowest terms, the denominator above zero. */
export interface Fraction {
  readonly numerator: bigint;
  readonly denominator: bigint;
}

export const zero: Fraction = { numerator: 0n, denominator: 1n };

/** The fraction in lowest terms. `denominator` must not be zero. */
export function fraction(numerator: bigint | number, denominator: bigint | number = 1n): Fraction {
  const [top, bottom] = [BigInt(numerator), BigInt(denominator)];
  if (bottom === 0n) throw new Bug('a fraction over zero');
  const sign = bottom < 0n ? -1n : 1n;
  const divisor = greatestCommonDivisor(top < 0n ? -top : top, bottom * sign);
  return { numerator: (top * sign) / divisor, denominator: (bottom * sign) / divisor };
}

/** A plain decimal such as `12`, `0.5`, `1.25`, read exactly; undefined for any other text. */
export function fractionFromDecimal(text: string): Fraction | undefined {
  const match = /^(\d+)(?:\.(\d+))?$/.exec(text);
  if (match === null) return undefined;
  const decimals = match[2] ?? '';
  return fraction(BigInt(match[1]! + decimals), 10n ** BigInt(decimals.length));
}

/**
 * The decimal as which a number prints, exactly: 0.1 is 1/10, and not the nearest fraction over a power of two. For
 * numbers that a person wrote (a look's seconds). The number must be finite.
 */
export function fractionOf(number: number): Fraction {
  const match = /^(-?)(\d+)(?:\.(\d+))?(?:e([+-]\d+))?$/.exec(String(number));
  if (match === null) throw new Bug(`${number} as a fraction`);
  const decimals = match[3] ?? '';
  const digits = BigInt(`${match[1]}${match[2]}${decimals}`);
  const exponent = Number(match[4] ?? 0) - decimals.length;
  return exponent < 0 ? fraction(digits, 10n ** BigInt(-exponent)) : fraction(digits * 10n ** BigInt(exponent));
}

export function add(a: Fraction, b: Fraction): Fraction {
  return fraction(a.numerator * b.denominator + b.numerator * a.denominator, a.denominator * b.denominator);
}

export function subtract(a: Fraction, b: Fraction): Fraction {
  return fraction(a.numerator * b.denominator - b.numerator * a.denominator, a.denominator * b.denominator);
}

export function multiply(a: Fraction, b: Fraction): Fraction {
  return fraction(a.numerator * b.numerator, a.denominator * b.denominator);
}

export function divide(a: Fraction, b: Fraction): Fraction {
  return fraction(a.numerator * b.denominator, a.denominator * b.numerator);
}

/** Below zero, zero or above zero as `a` is less than, equal to or greater than `b`. */
export function compare(a: Fraction, b: Fraction): number {
  const difference = a.numerator * b.denominator - b.numerator * a.denominator;
  return difference < 0n ? -1 : difference > 0n ? 1 : 0;
}

/** The nearest whole number, halves up: 1/2 gives 1, -1/2 gives 0. */
export function nearest(value: Fraction): bigint {
  return floor(add(value, fraction(1n, 2n)));
}

/** The greatest whole number that is not above. */
export function floor(value: Fraction): bigint {
  const quotient = value.numerator / value.denominator;
  return value.numerator < 0n && quotient * value.denominator !== value.numerator ? quotient - 1n : quotient;
}

/**
 * As a floating-point number, only for drawing and printing; whatever becomes a frame goes through
 * `timeline/seconds.ts`.
 */
export function toNumber(value: Fraction): number {
  return Number(value.numerator) / Number(value.denominator);
}

function greatestCommonDivisor(a: bigint, b: bigint): bigint {
  while (b !== 0n) [a, b] = [b, a % b];
  return a === 0n ? 1n : a;
}
