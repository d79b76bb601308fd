/**
 * A whole number as an option takes it.
 */
import { BadCall } from './bad-call.ts';

/** @throws BadCall for anything but a whole number from `least` to `most`, both included */
export function wholeNumber(
  text: string,
  { option, least, most }: { readonly option: string; readonly least: number; readonly most: number },
): number {
  const value = /^\d+$/.test(text.trim()) ? Number(text) : Number.NaN;
  if (value >= least && value <= most) return value;
  throw new BadCall(`${option} ${text}: a whole number from ${least} to ${most} is due`);
}
