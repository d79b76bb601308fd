/**
 * `npm run digits`: makes assets/digit-shapes.json anew, from the typefaces that are not held out; and says how well it
 * knows those that are. Fetches the typefaces (some 100 MB, kept in node_modules/.cache), draws and learns: 15 minutes of
 * a processor. The same seed gives the same file, as long as the canvas draws the same.
 */
import { writeFileSync } from 'node:fs';
import { chanceFrom } from '../../puzzles/chance.ts';
import type { DigitShapes } from '../../recording/digit-shapes.ts';
import { scoresOf } from '../../recording/digit-shapes.ts';
import { featuresOf } from '../../recording/shape-features.ts';
import { type Font, fontsOf } from './fetch-typefaces.ts';
import { registerFonts } from './glyphs.ts';
import { learn } from './learn.ts';
import { asText, quantised } from './quantised.ts';
import { sheetSamples } from './sheet.ts';
import { classCount, otherClass, symbols } from './symbols.ts';
import { typefaces } from './typefaces.ts';

const seed = 1;
const [sheetCount, tryingSheetCount] = [400, 60];
const rounds = 10;
const middle = 96;
/** Smaller than this, in pixels of the recording, nobody tells a 3 from an 8: such marks would only blur what is learnt. */
const leastPx = 6;

interface Shape {
  readonly features: Float32Array;
  readonly symbol: number;
  /** Pixels that a cell is wide in the recording, and the part of it that the mark is tall. */
  readonly cellPx: number;
  readonly height: number;
}

function shapesFrom(fonts: readonly Font[], count: number, from: number): readonly Shape[] {
  const names = fonts.map(({ name }) => name);
  return Array.from({ length: count }, (_, index) => index).flatMap((index) => {
    if (index % 50 === 0) say(`sheet ${index} of ${count}`);
    return sheetSamples(names, chanceFrom(from + index)).map(({ mark, symbol, cellPx }) => ({
      features: featuresOf(mark),
      symbol,
      cellPx,
      height: mark.bottom - mark.top,
    }));
  });
}

function say(line: string): void {
  process.stderr.write(`${line}\n`);
}

/** Of the digits, how many are not known at each size: what of a board is asked about, its nine digits or none of them. */
function sayHowWellKnown(shapes: DigitShapes, unseen: readonly Shape[]): void {
  const kinds = [
    { name: 'digits, cells of 30 pixels and more', has: ({ cellPx, height }: Shape) => cellPx >= 30 && height > 0.26 },
    { name: 'digits, smaller cells', has: ({ cellPx, height }: Shape) => cellPx < 30 && height > 0.26 },
    {
      name: 'small digits, cells of 48 pixels and more',
      has: ({ cellPx, height }: Shape) => cellPx >= 48 && height <= 0.26,
    },
    {
      name: 'small digits, cells of 30 to 48 pixels',
      has: ({ cellPx, height }: Shape) => cellPx >= 30 && cellPx < 48 && height <= 0.26,
    },
  ];
  for (const { name, has } of kinds) {
    const some = unseen.filter((shape) => shape.symbol < 9 && has(shape));
    const right = some.filter(({ features, symbol }) => {
      const scores = scoresOf(shapes, features).slice(0, 9);
      return scores.indexOf(Math.max(...scores)) === symbol;
    });
    say(`${name}: ${right.length} of ${some.length} right (${((100 * right.length) / some.length).toFixed(2)} %)`);
  }
}

const fonts = fontsOf(typefaces, say);
registerFonts(fonts);
const learntFrom = fonts.filter(({ typeface }) => !typeface.heldOut);
const samples = shapesFrom(learntFrom, sheetCount, seed * 100_003).filter(
  ({ symbol, cellPx, height }) => symbol === otherClass || cellPx * height >= leastPx,
);
say(`${samples.length} marks to learn from`);
const layers = learn(samples, { middle, classes: classCount, rounds, chance: chanceFrom(seed), say });
const shapes: DigitShapes = { symbols, layers: [quantised(layers[0]), quantised(layers[1])] };
const packages = typefaces
  .filter(({ heldOut }) => !heldOut)
  .map((typeface) => {
    const licence = learntFrom.find((font) => font.typeface === typeface)?.licence;
    return { package: `@fontsource/${typeface.name}`, version: typeface.version, licence };
  });
const made = {
  digitShapes: 1,
  symbols,
  learntFrom: packages,
  seed,
  sheets: sheetCount,
  layers: shapes.layers.map(asText),
};
writeFileSync(new URL('../../../assets/digit-shapes.json', import.meta.url), `${JSON.stringify(made)}\n`);
sayHowWellKnown(
  shapes,
  shapesFrom(
    fonts.filter(({ typeface }) => typeface.heldOut),
    tryingSheetCount,
    seed * 100_003 + 50_000,
  ),
);
