/**
 * The reference pictures: one small film, look and frame for one matter each. `npm run pictures` shows them all.
 *
 * They are what the program drew and an eye has accepted; what can be asserted is asserted elsewhere.
 */
import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { parse } from 'yaml';
import { defaultLook } from '../../src/picture/default-look.ts';
import type { Look } from '../../src/scene/look.ts';
import { type Film, frameAt } from '../../src/timeline/film.ts';
import {
  ask,
  circle,
  clash,
  during,
  type FilmWish,
  fill,
  film,
  focus,
  ghost,
  houseLine,
  label,
  link,
  type MarkWish,
  note,
  opens,
  outline,
  place,
  reach,
  ring,
  sight,
  sparseGivens,
  stamp,
  strike,
} from './films.ts';

export interface Golden {
  /** Of the file in `goldens/`, and of what it shows. */
  readonly name: string;
  readonly film: Film;
  readonly look: Look;
  readonly frame: number;
}

/** The dark look, as it is shipped. */
export const darkLook: Look = lookFile('bluehour');

/** A 4x4 board over the whole of a small transparent frame, so that a mark is large and alone. */
const tile = { boxes: '2x2', width: 320, height: 320, draw: 'overlay', board: square(10, 10, 300) } as const;
/** A whole lesson's frame, a third of full size. */
const lesson: FilmWish = {
  width: 640,
  height: 360,
  givens: sparseGivens,
  candidates: true,
  title: 'The lamp room',
  credit: 'in-house',
  heading: { title: 'Two strings, one box', argument: 'two-string kite', conclusions: 'r4c4≠5' },
};
const kite: readonly MarkWish[] = [
  outline('r789c123'),
  circle('5r7c4', 0),
  circle('5r4c3', 1),
  link('strong', '5r7c4', '5r7c1'),
  link('weak', '5r7c1', '5r9c3'),
  link('strong', '5r9c3', '5r4c3'),
  strike('5r4c4'),
  note('Two of those places share the bottom left box, so they are not both five.', 0),
];

/** Most kinds of mark on one small board, for the looks beside the default one. */
const manyMarks: FilmWish = {
  ...tile,
  boxes: '2x3',
  draw: 'board',
  candidates: true,
  givens: '..2... ....6. ...... .3.... ...41. 5.....',
  marks: [
    houseLine('r123456c1', 'solid'),
    houseLine('r3c123456', 'dashed'),
    outline('r12c56', 2),
    fill('r6c34', 1),
    circle('3r1c1', 0),
    circle('1r1c2', 1),
    circle('4r2c1', 2),
    circle('5r2c4', 3),
    circle('1r3c1'),
    link('strong', '5r2c4', '5r5c2'),
    link('weak', '1r3c1', '1r3c46'),
    reach('1r1c2', '1r1c4', 1),
    strike('1r1c4'),
    strike('2r3c5'),
    opens('1r6c3'),
    place('r4c4=2'),
    label('5r2c4', 'here', 3),
    ghost('3r6c6', true),
    ghost('4r6c4', false),
    clash('3r6c6', '4r6c4'),
  ],
};

export const goldens: readonly Golden[] = [
  golden('fill', [
    fill('r1c12', 0),
    fill('r2c12', 1),
    fill('r3c12', 2),
    fill('r4c12', 3),
    fill('r12c3', 4),
    fill('r34c3', 5),
    fill('r1c4'),
  ]),
  golden('fill-over-fill', [fill('r1c1234', 0), fill('r1c23', 4)]),
  golden('circle', [
    circle('1r1c1'),
    circle('1r1c2', 0),
    circle('1r1c3', 1),
    circle('1r1c4', 2),
    circle('1r2c1', 3),
    circle('1r2c2', 4),
    circle('1r2c3', 5),
    circle('4r4c4', 0),
    circle('4r4c4', 1),
  ]),
  golden('circle-begun', [circle('1r2c2', 0), circle('4r2c3', 1)], { frame: 1 }),
  golden('link', [
    link('strong', '1r1c1', '1r1c4'),
    link('weak', '2r2c1', '3r4c3'),
    link('strong', '4r2c4', '4r4c4', 1),
  ]),
  golden('link-begun', [link('strong', '1r1c1', '1r1c4'), link('weak', '2r2c1', '3r4c3')], { frame: 4 }),
  golden('link-in-a-cell', [
    link('strong', '1r2c2', '2r2c2'),
    link('weak', '1r3c3', '4r3c3'),
    link('strong', '3r1c4', '1r1c4'),
  ]),
  {
    name: 'rings-side-by-side',
    film: film({
      ...lesson,
      marks: [
        circle('5r4c5', 4),
        circle('5r7c4', 4),
        link('strong', '5r4c5', '6r4c5'),
        link('strong', '8r7c4', '5r7c4'),
        strike('2r7c2'),
        strike('5r7c2'),
      ],
    }),
    look: defaultLook,
    frame: 60,
  },
  golden('link-of-groups', [link('strong', '1r1c12', '1r3c234'), link('weak', '1r3c234', '34r4c1')]),
  golden('link-round-digits', [link('strong', '1r2c1', '1r2c4'), circle('2r2c2'), circle('1r2c3', 0)]),
  golden('strike', [strike('1r1c1'), strike('4r2c3'), circle('2r3c3', 1), strike('2r3c3')]),
  golden('ghost', [ghost('1r1c1', true), ghost('2r1c3', false), ghost('4r2c2', true, 0), ghost('3r3c1', false, 1)], {
    small: 'whole',
  }),
  golden('ghost-of-group', [ghost('1r1c12', true), ghost('3r3c23 3r4c3', false), ghost('24r4c1', true)], {
    small: 'whole',
  }),
  golden('ghost-begun', [ghost('1r1c1', true), ghost('3r3c23', false), clash('1r1c1', '4r4c4')], {
    small: 'whole',
    frame: 1,
  }),
  golden(
    'clash',
    [
      ghost('1r1c1', true),
      ghost('1r1c4', true),
      clash('1r1c1', '1r1c4'),
      ghost('2r3c1', true),
      ghost('3r3c1', true),
      clash('2r3c1', '3r3c1'),
      ghost('4r4c4', true),
      clash('4r4c4'),
    ],
    { small: 'whole' },
  ),
  golden('place', [place('r2c2=3'), place('r4c1=1')]),
  golden(
    'ring-round-a-written-digit',
    [
      ...[link('strong', '3r2c2', '3r2c4'), link('weak', '1r4c4', '1r4c1')],
      ...[place('r2c2=3'), ring('r2c2=3', 0), ring('r4c1=1'), ring('r4c3=2', 1)],
    ],
    { written: ['r2c2=3', 'r4c1=1', 'r4c3=2'], draw: 'board' },
  ),
  golden('outline', [outline('r1c1234 r2c14 r3c14 r4c1234'), outline('r2c2 r3c3', 1)]),
  golden('outline-styles', [outline('r1c12', 0), outline('r1c34', 1), outline('r34c12', 2), outline('r34c34', 3)]),
  golden('label', [circle('1r2c2', 0), label('1r2c2', 'here', 0), circle('3r4c4', 1), label('3r4c4', 'or here', 1)]),
  golden('focus', [focus('r2c1234 r13c2')]),
  golden(
    'reach',
    [circle('1r1c1'), circle('1r4c4', 1), reach('1r1c1', '1r1c4'), reach('1r4c4', '1r1c4', 1), strike('1r1c4')],
    {
      small: 'whole',
    },
  ),
  golden(
    'strikes-side-by-side',
    [strike('4r1c1'), strike('5r1c1'), strike('4r2c2'), strike('8r2c2'), circle('5r3c3', 0), strike('6r3c3')],
    {
      boxes: '3x3',
      small: 'whole',
    },
  ),
  golden('hull-round-what-is-not-its', [
    circle('1r2c3'),
    link('strong', '1r2c14', '1r4c1'),
    link('weak', '12r4c1', '2r3c34'),
  ]),
  golden('heads-in-a-crowd', [
    link('strong', '1r2c2', '4r2c2'),
    link('weak', '4r2c2', '4r3c2'),
    link('strong', '4r3c2', '1r3c2'),
    link('weak', '1r3c2', '1r3c3'),
  ]),
  ...['bluehour', 'limelight', 'stillwater'].map((name) => ({
    name: `many-marks-${name}`,
    film: film(manyMarks),
    look: lookFile(name),
    frame: 60,
  })),
  { name: 'many-marks', film: film(manyMarks), look: defaultLook, frame: 60 },
  {
    name: 'many-marks-small-and-slanted',
    film: film({
      ...manyMarks,
      width: 200,
      height: 200,
      board: [
        {
          from: frameAt(0),
          shape: {
            kind: 'corners',
            corners: [
              [30, 12],
              [176, 20],
              [192, 180],
              [8, 190],
            ],
          },
        },
      ],
    }),
    look: lookFile('bluehour'),
    frame: 60,
  },
  golden('opens', [opens('1r2c2'), opens('4r3c3', 0), place('r1c4=3')]),
  golden('bases-and-covers', [
    houseLine('r1c1234', 'solid'),
    houseLine('r3c1234', 'solid'),
    houseLine('r1234c2', 'dashed'),
    houseLine('r1234c4', 'dashed'),
  ]),
  golden('sight-along-a-diagonal', [sight('r2c2', 'r1c1 r3c3 r4c4', 'diagonal')]),
  golden('sight', [sight('r2c2', 'r2c134 r1c2'), sight('r4c4', 'r4c3')]),
  golden('small-digits-brought-along', [circle('1r1c1', 0), strike('4r2c2'), link('strong', '2r3c1', '3r3c3')], {
    small: 'whole',
  }),
  golden('small-digits-789', [circle('1r1c1', 0), circle('5r2c2', 1), strike('9r3c3')], { boxes: '3x3', small: '789' }),
  golden(
    'filmed-at-an-angle',
    [
      fill('r1c1', 1),
      outline('r34c34'),
      circle('1r1c4', 0),
      link('strong', '2r2c1', '2r2c4'),
      link('weak', '2r4c1', '3r3c3'),
      strike('4r1c2'),
    ],
    {
      small: 'whole',
      board: [
        {
          from: frameAt(0),
          shape: {
            kind: 'corners',
            corners: [
              [70, 30],
              [290, 50],
              [310, 250],
              [15, 300],
            ],
          },
        },
      ],
    },
  ),
  { name: 'lesson', film: film({ ...lesson, marks: kite }), look: defaultLook, frame: 60 },
  { name: 'lesson-dark', film: film({ ...lesson, marks: kite }), look: darkLook, frame: 60 },
  { name: 'lesson-highest-contrast', film: film({ ...lesson, marks: kite }), look: lookFile('limelight'), frame: 60 },
  { name: 'lesson-fading-in', film: film({ ...lesson, marks: kite }), look: lookFile('stillwater'), frame: 1 },
  {
    name: 'lesson-upright',
    film: film({ ...lesson, width: 360, height: 640, marks: kite }),
    look: defaultLook,
    frame: 60,
  },
  {
    name: 'lesson-square',
    film: film({ ...lesson, width: 480, height: 480, marks: kite }),
    look: defaultLook,
    frame: 60,
  },
  {
    name: 'lesson-supposed',
    film: film({
      ...lesson,
      marks: [
        ghost('5r4c4', true),
        ghost('5r7c4', false),
        ghost('5r7c1', true),
        ghost('5r9c3', false),
        ghost('5r4c3', true),
        clash('5r4c4', '5r4c3'),
      ],
    }),
    look: defaultLook,
    frame: 60,
  },
  {
    name: 'lesson-supposed-dark',
    film: film({
      ...lesson,
      marks: [ghost('5r4c4', true), ghost('5r7c14', false), clash('5r7c1', '5r7c4')],
    }),
    look: darkLook,
    frame: 60,
  },
  {
    name: 'lesson-false-step',
    film: film({
      ...lesson,
      heading: { isFalseStep: true, title: 'Two strings, one box', argument: 'two-string kite' },
      marks: [
        fill('r7c14', 0),
        ghost('5r4c4', true),
        ghost('5r7c1', true),
        ghost('5r9c4', true),
        label('5r4c4', 'does not follow'),
      ],
    }),
    look: defaultLook,
    frame: 60,
  },
  {
    name: 'lesson-with-all-around',
    film: film({
      ...lesson,
      coordinates: true,
      said: [{ from: frameAt(0), until: frameAt(100), text: 'One end or the other is five, so r4c4 is not.' }],
      marks: [...kite.slice(0, -1), note('5r7c1 and 5r9c3 share b7.', 0)],
    }),
    look: defaultLook,
    frame: 60,
  },
  {
    name: 'lesson-beside-a-camera',
    film: film({
      ...lesson,
      coordinates: true,
      camera: { left: 470, top: 220, width: 160, height: 90 },
      marks: [...kite.slice(0, -1), note('5r7c1 and 5r9c3 share b7.', 0)],
    }),
    look: defaultLook,
    frame: 60,
  },
  {
    name: 'lesson-upright-with-all-around',
    film: film({
      ...lesson,
      width: 360,
      height: 640,
      coordinates: true,
      said: [{ from: frameAt(0), until: frameAt(100), text: 'One end or the other is five, so r4c4 is not.' }],
      heading: { isFalseStep: true, title: 'Two strings, one box', argument: 'two-string kite' },
      marks: [...kite.slice(0, -1), note('5r7c1 and 5r9c3 share b7.', 0)],
    }),
    look: darkLook,
    frame: 60,
  },
  {
    name: 'lesson-square-beside-a-camera',
    film: film({
      ...lesson,
      width: 480,
      height: 480,
      coordinates: true,
      camera: { left: 300, top: 300, width: 160, height: 90 },
      heading: { isFalseStep: true, title: 'Two strings, one box', argument: 'two-string kite' },
      marks: kite.slice(0, -1),
    }),
    look: lookFile('limelight'),
    frame: 60,
  },
  {
    name: 'lesson-question',
    film: film({
      ...lesson,
      marks: [focus('r7c123456789 r12345689c3'), circle('5r7c14', 1), ask('Where else can a five go in this column?')],
    }),
    look: defaultLook,
    frame: 60,
  },
  {
    name: 'digit-growing',
    film: film({ ...lesson, frameCount: 50, written: ['r5c5=5'], marks: [place('r5c5=5')] }),
    look: defaultLook,
    frame: 2,
  },
  {
    name: 'stamp',
    film: film({ ...lesson, marks: [...kite, stamp('kite: the link 5r7c4=5r7c1 is broken by 5r7c2')] }),
    look: defaultLook,
    frame: 60,
  },
  {
    name: 'stamp-over-footage',
    film: film({
      ...lesson,
      draw: 'overlay',
      board: square(20, 20, 300),
      marks: [...kite, stamp('kite: the link is broken')],
    }),
    look: darkLook,
    frame: 60,
  },
  {
    name: 'callouts',
    film: film({
      ...lesson,
      draw: 'overlay',
      board: square(20, 20, 300),
      marks: [during(note('First one.', 0), 0, 90), during(note('Then another one that is a little longer.'), 30, 90)],
    }),
    look: defaultLook,
    frame: 60,
  },
];

function golden(name: string, marks: readonly MarkWish[], more: Partial<FilmWish> & { frame?: number } = {}): Golden {
  const { frame, ...wish } = more;
  return { name, film: film({ ...tile, ...wish, marks }), look: defaultLook, frame: frame ?? 60 };
}

function square(left: number, top: number, side: number): Film['board'] {
  return [{ from: frameAt(0), shape: { kind: 'square', left, top, side } }];
}

/** A look's file, taken at its word; that the file is a look is tested with the looks. */
export function lookFile(name: string): Look {
  return parse(readFileSync(fileURLToPath(new URL(`../../assets/looks/${name}.yaml`, import.meta.url)), 'utf8'));
}
