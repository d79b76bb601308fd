/**
 * `video`: the frame, its rate, what lies under the marks, and where the board lies on it.
 */

import { readBoard } from './board.ts';
import { readCamera } from './camera.ts';
import type { Faults } from './faults.ts';
import { type Fraction, fraction, toNumber } from './fraction.ts';
import { type Context, fixedTimeOf, locatedText, wordOf } from './reading.ts';
import type { Located, Timecode, Video } from './scene.ts';
import { timecodeOf, whyNoLabel } from './timecode-label.ts';
import { type MapNode, type TextNode, textOf, valueOf } from './yaml-tree.ts';

const defaultSize = { width: 1920, height: 1080 };
const wholeRates: readonly string[] = ['24', '25', '30', '50', '60'];

/** The video with all that the scene leaves out filled in. A faulty value is reported and taken as left out. */
export function readVideo(map: MapNode | undefined, rate: Fraction | undefined, faults: Faults): Video {
  const context = { faults, rate };
  const size = (map === undefined ? undefined : readSize(map, faults)) ?? defaultSize;
  const board = map === undefined ? [] : readBoard(valueOf(map, 'board'), size, context);
  const footage = map === undefined ? undefined : readFootage(map, context);
  return {
    ...size,
    rate: rate ?? fraction(30n),
    length: map === undefined ? undefined : fixedTimeOf(map, 'length', context),
    timecode: map === undefined ? undefined : readTimecode(map, context),
    board,
    small: wordOf(map, 'small', ['123', '789', 'whole']) ?? '123',
    // Over a recording only what it does not show itself; alone, all of it.
    draw:
      wordOf(map, 'draw', ['overlay', 'writing', 'board']) ??
      (board.length > 0 || footage !== undefined ? 'overlay' : 'board'),
    candidates: wordOf(map, 'candidates', ['all', 'pencilled', 'none']) ?? 'all',
    coordinates: isOn(wordOf(map, 'coordinates', ['on', 'off'])) ?? false,
    said: isOn(wordOf(map, 'said', ['on', 'off'])) ?? false,
    camera: map === undefined ? undefined : readCamera(map, size, faults),
    narration: map === undefined ? undefined : locatedText(map, 'narration'),
    audio: map === undefined ? undefined : locatedText(map, 'audio'),
    footage,
  };
}

/** Undefined where nothing is said. */
export function isOn(word: 'on' | 'off' | undefined): boolean | undefined {
  return word === undefined ? undefined : word === 'on';
}

/** Frames a second, 30 where the scene does not say; undefined after a report. */
export function readRate(map: MapNode | undefined, faults: Faults): Fraction | undefined {
  const node = map === undefined ? undefined : textOf(map, 'rate');
  if (node === undefined) return map !== undefined && valueOf(map, 'rate') !== undefined ? undefined : fraction(30n);
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
const roundedRates: Readonly<Record<string, string>> = {
  '23.97': '24000/1001',
  '23.976': '24000/1001',
  '23.98': '24000/1001',
  '29.97': '30000/1001',
  '47.95': '48000/1001',
  '47.952': '48000/1001',
  '59.94': '60000/1001',
  '119.88': '120000/1001',
};

function whyNoRate(text: string): string {
  const exact = roundedRates[text];
  if (exact !== undefined) return `${text} is rounded, and frames would drift from the sound; write ${exact}`;
  if (/^\d+$/.test(text))
    return `${text} is none of the usual rates 24, 25, 30, 50 and 60; if it is meant, write ${text}/1`;
  return `"${text}" is no rate; it is 24, 25, 30, 50, 60, or an exact fraction such as 30000/1001`;
}

/** The frame's size after `size`; undefined where it is missing, or after a report. */
export function readSize(
  map: MapNode,
  faults: Faults,
): { readonly width: number; readonly height: number } | undefined {
  const node = textOf(map, 'size');
  if (node === undefined) return undefined;
  const match = /^(\d{1,6})\s*[x\u00d7]\s*(\d{1,6})$/i.exec(node.text.trim());
  if (match === null) {
    faults.error(
      'not-a-size',
      node.span,
      `"${node.text.trim()}" is no size; write width x height in pixels, as in 1920x1080`,
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

function readTimecode(map: MapNode, { faults, rate }: Pick<Context, 'faults' | 'rate'>): Located<Timecode> | undefined {
  const node = textOf(map, 'timecode');
  if (node === undefined) return undefined;
  const timecode = timecodeOf(node.text.trim());
  if (timecode === undefined) {
    faults.error(
      'not-a-time',
      node.span,
      `"${node.text.trim()}" is no timecode; write four pairs of digits, as in 01:00:00:00`,
    );
    return undefined;
  }
  const refused = rate === undefined ? undefined : whyNoLabel(timecode, rate);
  if (refused === undefined) return { value: timecode, span: node.span };
  faults.error(refused.code, node.span, refused.message);
  return undefined;
}

function readFootage(map: MapNode, context: Pick<Context, 'faults' | 'rate'>): Video['footage'] {
  const value = valueOf(map, 'footage');
  if (value?.kind === 'text') return { file: located(value), start: undefined };
  if (value?.kind !== 'map') return undefined;
  const file = textOf(value, 'file');
  const start = fixedTimeOf(value, 'start', context);
  return file === undefined ? undefined : { file: located(file), start };
}

function located(node: TextNode): Located<string> {
  return { value: node.text, span: node.span };
}
