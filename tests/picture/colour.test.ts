/**
 * Contrast by WCAG 2.2 (1.4.3 and 1.4.11), worked out by culori and not by the program. Colour-vision deficiency by
 * the matrices of Machado, Oliveira & Fernandes, IEEE TVCG 15(6), 2009, as culori has them: they are applied to
 * gamma-encoded sRGB, as the authors did. Differences are CIEDE2000.
 */
import {
  differenceCiede2000,
  filterDeficiencyDeuter,
  filterDeficiencyProt,
  filterDeficiencyTrit,
  wcagContrast,
} from 'culori';
import { describe, expect, it } from 'vitest';
import { casingOf, contrast, luminance, mix } from '../../src/picture/colour.ts';
import { defaultLook } from '../../src/picture/default-look.ts';
import type { Look } from '../../src/scene/look.ts';
import { type GroupColour, groupColours } from '../../src/scene/scene.ts';
import { frameAt } from '../../src/timeline/film.ts';
import { drawn, type Pixel } from './drawn.ts';
import { circle, fill, film, link, sparseGivens, strike } from './films.ts';
import { darkLook, lookFile } from './goldens.ts';

const looks: readonly Look[] = [defaultLook, darkLook, lookFile('limelight')];
/** Light, dark and middling footage, the tinted cells of each look among it. */
const grounds = ['#ffffff', '#fdfcf8', '#000000', '#18222f', '#777777', '#9a6b3f', '#2f5d3a'];
/**
 * As dark as makes it hardest: vermilion and the darkest casing are 3:1 from every ground but those of a narrow band of
 * luminance (about 0.06 to 0.14), where the better of the two still reaches 2.2.
 */
const hardest = '#2f5d3a';

describe('contrast is as WCAG has it', () => {
  const rows: readonly (readonly [string, string, number])[] = [
    ['#000000', '#ffffff', 21],
    ['#777777', '#ffffff', 4.48],
    ['#ffffff', '#ffffff', 1],
  ];
  for (const [a, b, ratio] of rows) it(`${a} on ${b}: ${ratio}`, () => expect(contrast(a, b)).toBeCloseTo(ratio, 2));

  it('and the same as culori works out, for the colours in use', () => {
    for (const look of looks) {
      for (const colour of Object.values(look.colours.groups)) {
        for (const ground of grounds) expect(contrast(colour, ground)).toBeCloseTo(wcagContrast(colour, ground), 6);
      }
    }
  });
});

for (const look of looks) {
  describe(`${look.name}`, () => {
    const { colours } = look;
    const strokes = {
      ...colours.groups,
      strong: colours.strong,
      weak: colours.weak,
      removal: colours.removal,
      plain: colours.plain,
      placement: colours.placement,
    };

    it('every stroke and its casing are 3:1 apart, so that one of them stands out from any ground', () => {
      for (const [name, colour] of Object.entries(strokes)) {
        expect([name, wcagContrast(colour, casingOf(colours, colour)) >= 3]).toEqual([name, true]);
        for (const ground of ['#ffffff', '#000000', colours.cell, colours.frame]) {
          const best = Math.max(wcagContrast(colour, ground), wcagContrast(casingOf(colours, colour), ground));
          expect([name, ground, best >= 3]).toEqual([name, ground, true]);
        }
      }
    });

    it('words are 4.5:1 on what they stand on', () => {
      for (const [text, ground] of [
        [colours.text, colours.frame],
        [colours.text, colours.card],
        [colours.quietText, colours.frame],
        [colours.given, colours.cell],
        [colours.written, colours.cell],
        [mix(colours.cell, colours.candidate, look.inks.candidate), colours.cell],
      ] as const) {
        expect([text, ground, wcagContrast(text, ground) >= 4.5]).toEqual([text, ground, true]);
      }
    });

    it('digits are 4.5:1 on a tint of any group', () => {
      for (const [name, colour] of Object.entries(colours.groups)) {
        const tint = mix(colours.cell, colour, look.inks.fill);
        expect([name, wcagContrast(colours.given, tint) >= 4.5]).toEqual([name, true]);
      }
    });

    it('the groups are those of Okabe and Ito, and vermilion is the colour of removals alone', () => {
      expect(colours.groups).toEqual({
        orange: '#e69f00',
        sky: '#56b4e9',
        green: '#009e73',
        yellow: '#f0e442',
        blue: '#0072b2',
        purple: '#cc79a7',
      });
      const elsewhere = Object.entries(colours)
        .filter(([, value]) => value === '#d55e00')
        .map(([name]) => name);
      expect(elsewhere).toEqual(['removal']);
    });
  });
}

describe('seen with a deficiency', () => {
  const eyes = {
    'no deficiency': (colour: string) => colour,
    protanopia: filterDeficiencyProt(1),
    deuteranopia: filterDeficiencyDeuter(1),
    tritanopia: filterDeficiencyTrit(1),
  };
  const difference = differenceCiede2000();

  for (const [name, eye] of Object.entries(eyes)) {
    it(`${name}: any two groups, and removals, are at least 8 apart`, () => {
      for (const look of looks) {
        const named = { ...look.colours.groups, removal: look.colours.removal };
        const entries = Object.entries(named);
        entries.forEach(([one, a], index) => {
          for (const [other, b] of entries.slice(index + 1)) {
            const apart = difference(eye(a), eye(b));
            expect([name, one, other, apart, apart >= 8]).toEqual([name, one, other, apart, true]);
          }
        });
      }
    });

    it(`${name}: strong and weak links differ in lightness as well as in stroke`, () => {
      for (const { colours } of looks) expect(difference(eye(colours.strong), eye(colours.weak))).toBeGreaterThan(10);
    });
  }
});

describe('without any colour', () => {
  // A board of 900 pixels of which the frame holds r5c5 alone, or r5 from the second cell to the eighth.
  const boardAt = (left: number) =>
    [{ from: frameAt(0), shape: { kind: 'square', left, top: -400, side: 900 } }] as const;
  const cell = { width: 100, height: 100, draw: 'overlay', board: boardAt(-400) } as const;
  const row = { width: 700, height: 100, draw: 'overlay', board: boardAt(-100) } as const;
  /** Where a mark has ink, as one bit a pixel: two marks that differ here differ without their colours. */
  const shapeOf = (marks: Parameters<typeof film>[0]) => {
    const { pixels } = drawn(film({ ...row, ...marks }), 50);
    return pixels.filter((_, index) => index % 4 === 3).map((alpha) => (alpha > 200 ? 1 : 0));
  };
  const apart = (a: Uint8ClampedArray, b: Uint8ClampedArray) =>
    a.reduce((sum, bit, index) => sum + (bit === b[index] ? 0 : 1), 0);

  it('the circles of six groups, and one of none, are seven shapes', () => {
    const shapes = [undefined, 0, 1, 2, 3, 4, 5].map((group) => inLightness(group));
    shapes.forEach((one, index) => {
      for (const other of shapes.slice(index + 1)) expect(apart(one, other)).toBeGreaterThan(150);
    });
  });

  it('strong and weak links are two shapes', () => {
    const strong = shapeOf({ marks: [link('strong', '5r5c2', '5r5c8')] });
    const weak = shapeOf({ marks: [link('weak', '5r5c2', '5r5c8')] });
    expect(apart(strong, weak)).toBeGreaterThan(1500);
  });

  it('fills of six groups are six hatchings', () => {
    const light: Look = { ...defaultLook, colours: { ...defaultLook.colours, groups: allOf('#808080') } };
    const tiles = [0, 1, 2, 3, 4, 5].map(
      (group) => drawn(film({ ...cell, marks: [fill('r5c5', group)] }), 50, light).pixels,
    );
    tiles.forEach((one, index) => {
      for (const other of tiles.slice(index + 1)) {
        expect(one.reduce((sum, value, at) => sum + (Math.abs(value - other[at]!) > 8 ? 1 : 0), 0)).toBeGreaterThan(
          500,
        );
      }
    });
  });

  function inLightness(group: number | undefined): Uint8ClampedArray {
    const grey: Look = {
      ...defaultLook,
      colours: { ...defaultLook.colours, plain: '#b0b0b0', groups: allOf('#b0b0b0') },
    };
    const { pixels } = drawn(film({ ...cell, marks: [circle('5r5c5', group)] }), 50, grey, '#ffffff');
    return pixels.filter((_, index) => index % 4 === 0).map((value) => (value > 225 ? 2 : value > 100 ? 1 : 0));
  }
});

describe('on rendered pixels', () => {
  for (const look of looks) {
    for (const ground of grounds) {
      it(`${look.name} over ${ground}: rings, links and a strike stand out from the ground`, () => {
        const marks = [
          circle('5r2c2', 4),
          circle('5r2c5', 3),
          link('strong', '5r5c2', '5r5c8'),
          link('weak', '5r8c2', '5r8c8'),
          strike('5r2c8'),
        ];
        const shown = film({
          width: 900,
          height: 900,
          draw: 'overlay',
          board: [{ from: frameAt(0), shape: { kind: 'square', left: 0, top: 0, side: 900 } }],
          marks,
        });
        const picture = drawn(shown, 50, look, ground);
        // A patch over an edge of each mark; of the links between their nodes, long enough for a dash.
        for (const [name, left, top] of [
          ['beaded ring', 130, 110],
          ['notched ring', 430, 110],
          ['strong link', 440, 410],
          ['weak link', 440, 710],
          ['strike', 730, 110],
        ] as const) {
          const patch = Array.from({ length: 1600 }, (_, at) =>
            picture.at(left + (at % 40), top + Math.floor(at / 40) * 2),
          );
          const best = Math.max(...[...new Set(patch.map(hex))].map((colour) => wcagContrast(colour, ground)));
          expect([name, best >= (ground === hardest ? 2.2 : 3)]).toEqual([name, true]);
        }
      });
    }
  }
});

it('a digit under a strike keeps most of its ink', () => {
  const base = { givens: sparseGivens, candidates: true } as const;
  const plain = drawn(film({ ...base, marks: [circle('5r4c4')] }), 50);
  const struck = drawn(film({ ...base, marks: [circle('5r4c4'), strike('5r4c4')] }), 50);
  let [digit, kept] = [0, 0];
  // r4c4 of the board that the tool lays out: cells of 100 pixels from 45, 45; the 5 stands in the middle.
  for (let y = 345 + 30; y < 345 + 70; y++) {
    for (let x = 345 + 35; x < 345 + 65; x++) {
      if (luminance(hex(plain.at(x, y))) > 0.05) continue;
      digit++;
      if (luminance(hex(struck.at(x, y))) < 0.05) kept++;
    }
  }
  expect(digit).toBeGreaterThan(100);
  expect(kept / digit).toBeGreaterThan(0.6);
});

function allOf(colour: string): Record<GroupColour, string> {
  const [orange, sky, green, yellow, blue, purple] = groupColours.map(() => colour);
  return { orange: orange!, sky: sky!, green: green!, yellow: yellow!, blue: blue!, purple: purple! };
}

function hex([red, green, blue]: Pixel): string {
  return `#${[red, green, blue].map((value) => value.toString(16).padStart(2, '0')).join('')}`;
}
