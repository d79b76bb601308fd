/**
 * Looks by chance: light and dark, thin and thick lines, tiles, tinted boxes, frames, round corners.
 */
import { fileURLToPath } from 'node:url';
import { registerFont } from 'canvas';
import type { Chance } from '../../random.ts';
import { mixed } from './draw-screen.ts';
import type { Colour, SmallDigits, TakeLook } from './take.ts';

const fonts: readonly string[] = ['Take Plex', 'DejaVu Sans', 'DejaVu Serif', 'DejaVu Sans Mono'];

registerFont(fileURLToPath(new URL('../../../assets/fonts/IBMPlexSans_500Medium.ttf', import.meta.url)), {
  family: 'Take Plex',
});

interface Scheme {
  readonly background: Colour;
  readonly cell: Colour;
  readonly ink: Colour;
  readonly written: Colour;
}

const schemes: readonly Scheme[] = [
  { background: [246, 246, 244], cell: [255, 255, 255], ink: [20, 20, 24], written: [30, 90, 200] },
  { background: [228, 236, 240], cell: [250, 252, 253], ink: [40, 52, 66], written: [0, 120, 110] },
  { background: [238, 226, 204], cell: [252, 246, 232], ink: [74, 52, 30], written: [150, 60, 20] },
  { background: [24, 26, 30], cell: [36, 39, 45], ink: [226, 228, 232], written: [120, 180, 255] },
  { background: [12, 22, 38], cell: [20, 34, 58], ink: [204, 220, 240], written: [255, 200, 90] },
  { background: [60, 62, 66], cell: [244, 244, 240], ink: [24, 24, 24], written: [40, 110, 60] },
];

export function lookFrom(chance: Chance): TakeLook {
  const { background, cell, ink, written } = chance.pick(schemes);
  const share = (least: number, most: number) => least + ((most - least) * chance.below(1001)) / 1000;
  const lineInk = mixed(cell, ink, chance.pick([0.16, 0.3, 0.55, 1]));
  const isTiles = chance.below(5) === 0;
  const linePx = chance.pick([1, 1, 1.5, 2, 3]);
  const boxTimes = chance.pick([1.4, 2, 3]);
  const frame = isTiles ? 'none' : chance.pick(['on', 'on', 'outside', 'none'] as const);
  return {
    background,
    cell,
    otherBox: chance.below(4) === 0 ? mixed(cell, written, 0.08) : undefined,
    line: lineInk,
    boxLine: chance.below(2) === 0 ? ink : mixed(lineInk, ink, 0.3),
    linePx,
    boxLinePx: Math.max(linePx + 0.5, linePx * boxTimes),
    frame,
    frameCells: share(0.05, 0.2),
    roundCells: frame !== 'none' && chance.below(3) === 0 ? share(0.05, 0.25) : 0,
    gapCells: isTiles ? share(0.04, 0.1) : 0,
    given: ink,
    written,
    small: mixed(cell, ink, 0.65),
    selected: mixed(cell, written, 0.3),
    lit: chance.below(2) === 0 ? mixed(cell, written, 0.12) : undefined,
    font: chance.pick(fonts),
    isBold: chance.below(3) === 0,
    digitCells: share(0.55, 0.78),
    smallDigits: chance.pick<SmallDigits>(['row', 'middle', 'places']),
    fadeFrames: chance.below(4) === 0 ? 4 : 0,
  };
}
