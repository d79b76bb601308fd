import * as fc from 'fast-check';
import Smpte from 'smpte-timecode';
import { describe, expect, it } from 'vitest';
import type { Timecode } from '../../src/scene/anchor-absolute.ts';
import { type Fraction, fraction } from '../../src/scene/fraction.ts';
import { framesOfLabel, framesPerDay, labelOfFrames } from '../../src/scene/timecode.ts';
import { printLabel, timecodeOf } from '../../src/scene/timecode-label.ts';

const ntsc = fraction(30_000, 1001);
const doubled = fraction(60_000, 1001);
const film = fraction(24_000, 1001);

function label(text: string): Timecode {
  const timecode = timecodeOf(text);
  if (timecode === undefined) throw new Error(`no label: ${text}`);
  return timecode;
}

describe('labels and frames, both ways', () => {
  const rows: readonly (readonly [rate: Fraction, text: string, frames: number, source: string])[] = [
    [ntsc, '00:01:00;02', 1800, 'SMPTE ST 12-1: the first label of a minute that skips'],
    [ntsc, '00:00:59;29', 1799, 'SMPTE ST 12-1: the label before the skip'],
    [ntsc, '00:10:00;00', 17_982, 'SMPTE ST 12-1: ten minutes; the tenth minute keeps its labels'],
    [ntsc, '01:00:00;00', 107_892, 'SMPTE ST 12-1: an hour'],
    [ntsc, '23:59:59;29', 2_589_407, 'SMPTE ST 12-1: the last of a day of 2,589,408'],
    // Roll-overs, worked by hand from the rule.
    [ntsc, '00:00:00;00', 0, 'the first'],
    [ntsc, '00:00:01;00', 30, 'a second has thirty labels'],
    [ntsc, '00:01:59;29', 3597, '1800 + 1800 - 2 - 1'],
    [ntsc, '00:02:00;02', 3598, 'the second skip'],
    [ntsc, '00:09:59;29', 17_981, 'the last before the tenth minute'],
    [ntsc, '00:10:00;01', 17_983, 'label 01 exists in a tenth minute'],
    [ntsc, '00:11:00;02', 19_782, '17982 + 1800'],
    [ntsc, '01:00:00:00', 108_000, 'without drop-frame'],
    [doubled, '00:01:00;04', 3600, 'SMPTE ST 12-1: 59.94 skips four'],
    [doubled, '00:00:59;59', 3599, 'the label before the skip'],
    [doubled, '00:10:00;00', 35_964, 'twice 17,982'],
    [doubled, '01:00:00;00', 215_784, 'twice 107,892'],
    [film, '01:00:00:00', 86_400, '24 labels a second'],
    [fraction(24), '01:00:00:12', 86_412, ''],
    [fraction(25), '01:00:02:12', 90_062, ''],
    [fraction(50), '00:00:01:49', 99, ''],
    [fraction(60), '10:00:00:59', 2_160_059, ''],
  ];
  it.each(rows)('%o %s is frame %i (%s)', (rate, text, frames) => {
    expect(framesOfLabel(label(text), rate)).toEqual({ ok: true, frames });
    expect(printLabel(labelOfFrames(frames, rate, { dropFrame: text.includes(';') }))).toBe(text);
  });

  it('a day of drop-frame labels is 2,589,408 frames (SMPTE ST 12-1), and the next label is the first again', () => {
    expect(framesPerDay(ntsc, { dropFrame: true })).toBe(2_589_408);
    expect(printLabel(labelOfFrames(2_589_408, ntsc, { dropFrame: true }))).toBe('00:00:00;00');
  });
});

describe('labels that name no frame', () => {
  const rows: readonly (readonly [rate: Fraction, text: string, code: string, part: string])[] = [
    [ntsc, '00:01:00;00', 'dropped-label', '00:01:00;02'],
    [ntsc, '00:01:00;01', 'dropped-label', '00:01:00;02'],
    [ntsc, '12:59:00;00', 'dropped-label', '12:59:00;02'],
    [doubled, '00:01:00;03', 'dropped-label', '00:01:00;04'],
    [fraction(25), '00:00:10;12', 'drop-frame', 'write 00:00:10:12'],
    [fraction(30), '00:00:10;12', 'drop-frame', 'at 30 write'],
    [film, '00:00:10;12', 'drop-frame', 'at 24000/1001 write'],
    [fraction(25), '00:00:10:25', 'out-of-range', '00 to 24'],
    [ntsc, '00:00:10;30', 'out-of-range', '00 to 29'],
    [ntsc, '00:00:60;00', 'out-of-range', 'seconds'],
    [ntsc, '00:60:00;00', 'out-of-range', 'minutes'],
    [ntsc, '24:00:00;00', 'out-of-range', '00 to 23'],
  ];
  it.each(rows)('%o %s: %s', (rate, text, code, part) => {
    const counted = framesOfLabel(label(text), rate);
    expect(counted).toMatchObject({ ok: false, code });
    expect(counted.ok ? '' : counted.message).toContain(part);
  });
});

describe('against smpte-timecode', () => {
  const rates = [
    { rate: film, name: 23.976 as const, drop: false },
    { rate: fraction(24), name: 24 as const, drop: false },
    { rate: fraction(25), name: 25 as const, drop: false },
    { rate: ntsc, name: 29.97 as const, drop: true },
    { rate: ntsc, name: 29.97 as const, drop: false },
    { rate: doubled, name: 59.94 as const, drop: true },
    { rate: fraction(60), name: 60 as const, drop: false },
  ];
  it.each(rates)(
    '$name, drop-frame $drop: the same label for 600 frames of a day, around each skip too',
    ({ rate, name, drop }) => {
      const day = framesPerDay(rate, { dropFrame: drop });
      const sample = Array.from({ length: 400 }, (_, index) => (index * 7919 * 31) % day);
      for (let minute = 1; minute <= 40; minute++) {
        const edge = minute * 60 * Math.round(name);
        for (let near = edge - 80; near <= edge + 2; near += 17) sample.push(near);
      }
      for (const frames of sample) {
        const theirs = Smpte(frames, name, drop);
        const ours = labelOfFrames(frames, rate, { dropFrame: drop });
        expect(printLabel(ours)).toBe(theirs.toString());
        expect(framesOfLabel(ours, rate)).toEqual({
          ok: true,
          frames: Smpte(theirs.toString(), name, drop).frameCount,
        });
      }
    },
  );
});

it('a printed frame is read as itself', () => {
  const rates = [fraction(24), fraction(25), ntsc, fraction(60), doubled, film];
  fc.assert(
    fc.property(fc.constantFrom(...rates), fc.boolean(), fc.nat(2_073_599), (rate, dropFrame, frames) => {
      const printed = printLabel(labelOfFrames(frames, rate, { dropFrame }));
      expect(framesOfLabel(label(printed), rate)).toEqual({ ok: true, frames });
    }),
  );
});
