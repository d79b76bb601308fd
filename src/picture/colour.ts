/**
 * Colours as `#rrggbb`, and the little arithmetic that painting needs.
 * Relative luminance and contrast: W3C WCAG 2.2, definitions of "relative luminance" and "contrast ratio".
 */
import { Bug } from '../grid/bug.ts';
import type { LookColours } from '../scene/look.ts';

/** Red, green, blue, 0 to 255. */
export type Rgb = readonly [red: number, green: number, blue: number];

/** The casing for a stroke or word of this colour: the look's casing with more contrast. */
export function casingOf(colours: LookColours, colour: string): string {
  return contrast(colour, colours.casing) >= contrast(colour, colours.casingLight)
    ? colours.casing
    : colours.casingLight;
}

/** From 1 (none) to 21 (black on white). */
export function contrast(a: string, b: string): number {
  const [lighter, darker] = [luminance(a), luminance(b)].sort((one, other) => other - one);
  return (lighter! + 0.05) / (darker! + 0.05);
}

/** Relative luminance, 0 (black) to 1 (white). */
export function luminance(colour: string): number {
  const [red, green, blue] = rgbOf(colour).map(linear);
  return 0.2126 * red! + 0.7152 * green! + 0.0722 * blue!;
}

/** `part` of `b` over `a`, as an opaque colour: what `b` with that alpha looks like on `a`. */
export function mix(a: string, b: string, part: number): string {
  const [under, over] = [rgbOf(a), rgbOf(b)];
  const channels = under.map((value, index) => Math.round(value + (over[index]! - value) * part));
  return `#${channels.map((value) => value.toString(16).padStart(2, '0')).join('')}`;
}

/** The channels of `#rrggbb`; any other text is a `Bug`, since looks are checked when they are read. */
export function rgbOf(colour: string): Rgb {
  if (!/^#[0-9a-f]{6}$/i.test(colour)) throw new Bug(`${colour} is not a colour of the form #rrggbb`);
  const at = (start: number) => Number.parseInt(colour.slice(start, start + 2), 16);
  return [at(1), at(3), at(5)];
}

function linear(channel: number): number {
  const part = channel / 255;
  return part <= 0.04045 ? part / 12.92 : ((part + 0.055) / 1.055) ** 2.4;
}
