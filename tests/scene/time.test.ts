/**
 * All forms of a time, and which of them stand where. Timecode after SMPTE ST 12-1.
 */
import { describe, expect, it } from 'vitest';
import type { Time } from '../../src/scene/anchors.ts';
import { type Fraction, fraction } from '../../src/scene/fraction.ts';
import { readFixedTime, readTime, type TimeForms } from '../../src/scene/time.ts';

const ntsc = fraction(30_000, 1001);
const pal = fraction(25);

const seconds = (top: number, bottom = 1): Time => ({ kind: 'seconds', seconds: fraction(top, bottom) });
const offset = (top: number, bottom = 1): Time => ({ kind: 'after', seconds: fraction(top, bottom) });
const cue = (name: string, top = 0, bottom = 1): Time => ({ kind: 'cue', cue: name, plus: fraction(top, bottom) });
const words = (said: string, occurrence = 1, fallback?: number): Time => ({
  kind: 'words',
  words: said,
  occurrence,
  fallback: fallback === undefined ? undefined : { kind: 'seconds', seconds: fraction(fallback) },
});
const label = (hours: number, minutes: number, seconds: number, frames: number, dropFrame: boolean): Time => ({
  kind: 'timecode',
  timecode: { hours, minutes, seconds, frames, dropFrame },
});

describe('a time is read', () => {
  const rows: readonly [string, Time][] = [
    ['12.5', seconds(25, 2)],
    ['12.5s', seconds(25, 2)],
    ['12 s', seconds(12)],
    ['0', seconds(0)],
    ['0.1', seconds(1, 10)],
    ['1:02', seconds(62)],
    ['90:00', seconds(5400)],
    ['1:02.5', seconds(125, 2)],
    ['1:00:02.5', seconds(7205, 2)],
    ['01:00:02:12', label(1, 0, 2, 12, false)],
    ['01:00:02;12', label(1, 0, 2, 12, true)],
    ['00:01:00;02', label(0, 1, 0, 2, true)],
    ['00:10:00;00', label(0, 10, 0, 0, true)],
    ['+1.5', offset(3, 2)],
    ['+ 2', offset(2)],
    ['+1:00', offset(60)],
    ['cue intro', cue('intro')],
    ['cue 7', cue('7')],
    ['cue intro +0.5', cue('intro', 1, 2)],
    ['cue the lamp room + 1', cue('the lamp room', 1)],
    ['words "either here or here"', words('either here or here')],
    ['words 2 "sevens"', words('sevens', 2)],
    ['words "sevens" or 4:12', words('sevens', 1, 252)],
    ['words 3 “sevens” or 5', words('sevens', 3, 5)],
    ['  12.5 ', seconds(25, 2)],
  ];
  it.each(rows)('%s', (text, expected) => {
    expect(readTime(text, { rate: ntsc, forms: 'any' })).toEqual({ ok: true, time: expected });
  });
});

describe('a time stands where it may', () => {
  const rows: readonly [string, Record<TimeForms, boolean>][] = [
    ['12.5', { any: true, unanchored: true, fixed: true }],
    ['01:00:02:12', { any: true, unanchored: true, fixed: true }],
    ['+1.5', { any: true, unanchored: false, fixed: false }],
    ['cue intro', { any: true, unanchored: true, fixed: false }],
    ['words "here"', { any: true, unanchored: true, fixed: false }],
  ];
  it.each(rows)('%s', (text, allowed) => {
    for (const forms of ['any', 'unanchored', 'fixed'] as const) {
      const reading = readTime(text, { rate: pal, forms });
      expect(reading.ok ? 'read' : reading.fault.code, forms).toBe(allowed[forms] ? 'read' : 'time-form');
    }
  });
});

describe('a label exists at a rate or does not', () => {
  const rows: readonly [string, Fraction, string | undefined][] = [
    ['00:00:10;12', ntsc, undefined],
    ['00:00:10;12', fraction(60_000, 1001), undefined],
    ['00:00:10;12', pal, 'drop-frame'],
    ['00:00:10;12', fraction(30), 'drop-frame'],
    ['00:00:10;12', fraction(24_000, 1001), 'drop-frame'],
    ['00:01:00;00', ntsc, 'dropped-label'],
    ['00:01:00;01', ntsc, 'dropped-label'],
    ['00:01:00;02', ntsc, undefined],
    ['00:10:00;01', ntsc, undefined],
    ['00:01:01;00', ntsc, undefined],
    ['00:01:00;03', fraction(60_000, 1001), 'dropped-label'],
    ['00:01:00;04', fraction(60_000, 1001), undefined],
    ['00:01:00:00', ntsc, undefined],
    ['00:00:00:24', pal, undefined],
    ['00:00:00:25', pal, 'out-of-range'],
    ['00:00:00:23', fraction(24_000, 1001), undefined],
    ['00:00:00:24', fraction(24_000, 1001), 'out-of-range'],
    ['00:00:00:29', ntsc, undefined],
    ['00:00:00:30', ntsc, 'out-of-range'],
    ['23:59:59:00', pal, undefined],
    ['24:00:00:00', pal, 'out-of-range'],
    ['00:60:00:00', pal, 'out-of-range'],
    ['00:00:60:00', pal, 'out-of-range'],
  ];
  it.each(rows)('%s', (text, rate, code) => {
    const reading = readFixedTime(text, rate);
    expect(reading.ok ? undefined : reading.fault.code).toBe(code);
  });
});

describe('a fault in a time lies where it is', () => {
  const rows: readonly [string, string][] = [
    [' later ', 'later'],
    ['cue intro +x', 'x'],
    ['cue intro -0.5', '-0.5'],
    ['words 0 "here"', '0'],
    ['words "here" then 3', 'then 3'],
    ['words "here" or soon', 'soon'],
    ['words "here" or 24:00:00:00', '24:00:00:00'],
    ['words "here" or cue a', 'cue a'],
    ['words "..."', '"..."'],
  ];
  it.each(rows)('%s', (text, place) => {
    const reading = readTime(text, { rate: pal, forms: 'any' });
    expect(reading.ok ? undefined : text.slice(reading.fault.at, reading.fault.at + reading.fault.length)).toBe(place);
  });
});
