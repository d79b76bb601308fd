/**
 * The frame as `video` and `versions` give it: its size, its rate, and the label of the first one.
 */
import type { Timecode } from './anchor-absolute.ts';
import type { Faults } from './faults.ts';
import { type Fraction, fraction, toNumber } from './fraction.ts';
import type { Located } from './scene.ts';
import { timecodeOf, whyNoLabel } from './timecode-label.ts';
import type { TextNode } from './yaml-tree.ts';

/** In pixels. */
export interface FrameSize {
  readonly width: number;
  readonly height: number;
}

const wholeRates: readonly string[] = ['24', '25', '30', '50', '60'];

/** Frames a second; undefined after a report. */
export function readRate(node: TextNode, { faults }: { readonly faults: Faults }): Fraction | undefined {
  const text = node.text.trim();
  if (wholeRates.includes(text)) return fraction(BigInt(text));
  const match = /^(\d{1,9})\/(\d{1,9})$/.exec(text);
  if (match === null || Number(match[2]) === 0) {
    faults.error('not-a-rate', node.span, whyNoRate(text));
    return undefined;
  }
  const rate = fraction(BigInt(match[1]!), BigInt(match[2]!));
  if (toNumber(rate) >= 1 && toNumber(rate) <= 240) return rate;
  faults.error('out-of-range', node.span, `${text} is outside the range; rates go from 1 to 240 frames a second`);
  return undefined;
}

/** The rates that are often written as rounded decimals (SMPTE ST 12-1 gives the exact ones). */
const roundedRates: ReadonlyMap<string, string> = new Map([
  ['23.97', '24000/1001'],
  ['23.976', '24000/1001'],
  ['23.98', '24000/1001'],
  ['29.97', '30000/1001'],
  ['47.95', '48000/1001'],
  ['47.952', '48000/1001'],
  ['59.94', '60000/1001'],
  ['119.88', '120000/1001'],
]);

function whyNoRate(text: string): string {
  const exact = roundedRates.get(text);
  if (exact !== undefined) return `${text} is rounded, and frames would drift from the sound; write ${exact}`;
  if (/^\d+$/.test(text))
    return `${text} is not one of the usual rates 24, 25, 30, 50 and 60; if it is meant, write ${text}/1`;
  return `"${text}" is not a rate; it is 24, 25, 30, 50, 60, or an exact fraction such as 30000/1001`;
}

/** The frame's size; undefined after a report. */
export function readSize(node: TextNode, { faults }: { readonly faults: Faults }): FrameSize | undefined {
  const match = /^(\d{1,6})\s*[x\u00d7]\s*(\d{1,6})$/i.exec(node.text.trim());
  if (match === null) {
    faults.error(
      'not-a-size',
      node.span,
      `"${node.text.trim()}" is not a size; write width x height in pixels, as in 1920x1080`,
    );
    return undefined;
  }
  const [width, height] = [Number(match[1]), Number(match[2])];
  if (Math.min(width, height) < 16 || Math.max(width, height) > 8192) {
    faults.error(
      'out-of-range',
      node.span,
      `${width}x${height} is outside the range; width and height go from 16 to 8192 pixels`,
    );
    return undefined;
  }
  if (width % 2 === 0 && height % 2 === 0) return { width, height };
  const even = `${width + (width % 2)}x${height + (height % 2)}`;
  faults.error(
    'not-a-size',
    node.span,
    `${width}x${height} has an odd number of pixels, which video cannot carry; write ${even}`,
  );
  return undefined;
}

/** The label of the first frame; undefined after a report. `rate` is undefined if it could not be read. */
export function readTimecode(
  node: TextNode,
  { faults, rate }: { readonly faults: Faults; readonly rate: Fraction | undefined },
): Located<Timecode> | undefined {
  const timecode = timecodeOf(node.text.trim());
  if (timecode === undefined) {
    faults.error(
      'not-a-time',
      node.span,
      `"${node.text.trim()}" is not a timecode; write four pairs of digits, as in 01:00:00:00`,
    );
    return undefined;
  }
  const refused = rate === undefined ? undefined : whyNoLabel(timecode, rate);
  if (refused === undefined) return { value: timecode, span: node.span };
  faults.error(refused.code, node.span, refused.message);
  return undefined;
}
