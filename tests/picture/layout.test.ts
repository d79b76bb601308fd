/**
 * Frames of many shapes with everything on them that a lesson may have: nothing overlaps, nothing leaves the safe area.
 * What is compared is the ink of every line of words, as the canvas library measures it while it draws.
 */
import { createCanvas } from 'canvas';
import { describe, expect, it } from 'vitest';
import { drawingAt } from '../../src/frames/drawing.ts';
import { paint } from '../../src/frames/paint.ts';
import { registerFonts } from '../../src/output/pixels/canvas.ts';
import type { Box } from '../../src/picture/board-place.ts';
import { defaultLook } from '../../src/picture/default-look.ts';
import { cameraBox, overlap } from '../../src/picture/free-room.ts';
import { layoutOf } from '../../src/picture/layout.ts';
import { boardBlock } from '../../src/picture/room-for-words.ts';
import { safeArea } from '../../src/picture/safe-area.ts';
import { type Film, frameAt } from '../../src/timeline/film.ts';
import { circle, during, type FilmWish, film, note, sparseGivens, strike } from './films.ts';

const sizes = [
  [960, 540],
  [540, 540],
  [540, 960],
  [720, 540],
  [540, 720],
  [1280, 540],
  [480, 360],
] as const;

/** Title, the step's title, the argument's own name, a note, what is said. */
const texts: Readonly<Record<string, readonly [string, string, string, string, string]>> = {
  short: ['A lamp', 'Kite', 'kite', 'Both lie in b7.', 'Look here.'],
  long: [
    'The lamp room, the stairs that lead to it, and everything that was ever left on them',
    'Two strings that meet in one box, and what happens to all that sees both of their ends',
    'a grouped alternating inference chain through almost locked sets',
    'Both 5r7c1 and 5r9c3 lie in b7, so (5)r7c4=r7c1-r9c3=r4c3-(5=6)r4c6-(6)r8c6=r8c9 shows r4c4<>5 and more.',
    'One of the two ends must be a five, so nothing that sees both of them can be a five, and that is so for every cell that lies in the same row as one end and in the same column as the other.',
  ],
  oneWord: [
    'Donaudampfschifffahrtselektrizitätenhauptbetriebswerkbauunterbeamtengesellschaft',
    'Rindfleischetikettierungsüberwachungsaufgabenübertragungsgesetz',
    'Zweidraht',
    'Grundstücksverkehrsgenehmigungszuständigkeitsübertragungsverordnung',
    'Rindfleischetikettierungsüberwachungsaufgabenübertragungsgesetz',
  ],
  chinese: [
    '灯塔的房间以及其中所有的东西',
    '两条线和一个宫：从两端看到的格子都不能是五',
    '双线风筝',
    'r7c1和r9c3在同一宫，所以不能都是五。',
    '两端之一必须是五，因此同时看到两端的格子，例如r4c4，不能是五。',
  ],
  arabic: [
    'غرفة المصباح وكل ما فيها من الأشياء القديمة',
    'خيطان وصندوق واحد',
    'طائرة',
    'الخانتان r7c1 و r9c3 في صندوق واحد، فلا يكون 5r7c1 و 5r9c3 معا.',
    'أحد الطرفين يجب أن يكون خمسة، لذلك لا يمكن أن تكون r4c4 خمسة.',
  ],
  hebrew: [
    'חדר המנורה וכל אשר בו',
    'שני חוטים ותיבה אחת',
    'עפיפון',
    'שניהם בתיבה b7.',
    'אחד הקצוות חייב להיות חמש, ולכן r4c4 אינו חמש.',
  ],
  russian: [
    'Комната с лампой и всё, что в ней осталось',
    'Две нити и один квадрат',
    'воздушный змей',
    'Обе клетки r7c1 и r9c3 лежат в b7.',
    'Один из концов равен пяти, поэтому r4c4 не может быть пятёркой.',
  ],
  greek: [
    'Το δωμάτιο του φάρου',
    'Δύο νήματα, ένα κουτί',
    'χαρταετός',
    'Και τα δύο στο b7.',
    'Ένα από τα δύο άκρα είναι πέντε, άρα το r4c4 δεν είναι.',
  ],
};

/** Camera places as parts of the frame: left, top, width, height. */
const cameras = [
  undefined,
  [0.72, 0.6, 0.26, 0.25],
  [0, 0, 0.3, 0.25],
  [0.4, 0.3, 0.2, 0.3],
  [0, 0.8, 0.35, 0.2],
] as const;

describe('on a frame that the tool lays out', () => {
  for (const [at, [width, height]] of sizes.entries()) {
    it(`${width}x${height}: words, board, numbers and camera keep clear of one another`, () => {
      const faults: string[] = [];
      for (const [which, [name, [title, heading, argument, noted, said]]] of Object.entries(texts).entries()) {
        // Where no font has a letter, its stand-in has a least size that is too large for so small a frame.
        if (name === 'chinese' && width < 540) continue;
        for (const index of [(which + 2 * at) % cameras.length]) {
          const camera = cameras[index];
          const shown = film({
            ...lesson,
            width,
            height,
            title,
            heading: { title: heading, argument, conclusions: 'r4c4≠5 r5c5=7', isFalseStep: index % 2 === 0 },
            marks: [circle('5r7c4', 0), strike('5r4c4'), note(noted, 0)],
            said: [{ from: frameAt(0), until: frameAt(100), text: said }],
            coordinates: index % 3 !== 1,
            camera: camera === undefined ? undefined : partOf(width, height, camera),
          });
          faults.push(...faultsOf(shown).map((fault) => `${name}, camera ${index}: ${fault}`));
        }
      }
      expect(faults).toEqual([]);
    });
  }
});

it('finds words that do overlap', () => {
  const boxes = [
    { text: 'one', left: 0, top: 0, right: 50, bottom: 20, baseline: 20, px: 16 },
    { text: 'two', left: 40, top: 10, right: 90, bottom: 30, baseline: 30, px: 16 },
  ];
  expect(overlapping(boxes)).toEqual(['"one" lies on "two"']);
});

describe('while a note comes and goes', () => {
  const rows: Readonly<Record<string, Partial<FilmWish>>> = {
    'on a wide frame': {},
    'on a square frame': { width: 540 },
    'beside a camera that leaves little room': { camera: { left: 520, top: 270, width: 440, height: 270 } },
    'with what is said': { said: [{ from: frameAt(0), until: frameAt(100), text: 'Look here.' }] },
  };
  for (const [where, wish] of Object.entries(rows)) {
    it(`the other words stay where they are ${where}`, () => {
      const [title, heading, argument, noted] = texts.long!;
      const shown = film({
        ...lesson,
        ...wish,
        title,
        heading: { title: heading, argument, conclusions: 'r4c4≠5 r5c5=7' },
        marks: [circle('5r7c4', 0), during(note(noted), 40, 80)],
      });
      const [without, with_] = [wordsOn(shown, 10), wordsOn(shown, 60)];
      expect(with_.length).toBeGreaterThan(without.length);
      expect(with_).toEqual(expect.arrayContaining(without));
    });
  }
});

describe('what is said', () => {
  it('stands on the frame, and nothing does where it is not wanted', () => {
    const said = [{ from: frameAt(0), until: frameAt(100), text: 'Look here.' }];
    expect(wordsOn(film({ ...lesson, said })).map(({ text }) => text)).toContain('Look here.');
    expect(layoutOf(film({ ...lesson, said: [] }), undefined).said).toBeUndefined();
  });
});

/** Without small digits: they lie on the board, which is looked at as a whole, and take most of the time to draw. */
const lesson: FilmWish = {
  width: 960,
  height: 540,
  givens: sparseGivens,
  credit: 'in-house, with much patience',
};

function partOf(width: number, height: number, [left, top, wide, high]: readonly [number, number, number, number]) {
  const [x, y] = [Math.round(left * width), Math.round(top * height)];
  return { left: x, top: y, width: Math.round(wide * width), height: Math.round(high * height) };
}

interface Ink extends Box {
  readonly text: string;
  readonly baseline: number;
  /** Font size, in pixels. */
  readonly px: number;
}

function faultsOf(shown: Film): string[] {
  const words = wordsOn(shown);
  const { place } = layoutOf(shown, undefined);
  const board = boardBlock(shown, place!);
  const safe = safeArea(shown);
  const camera = cameraBox(shown);
  const faults = overlapping(words);
  const beside = words.filter(({ left, right, top, bottom }) => {
    const middle = [(left + right) / 2, (top + bottom) / 2] as const;
    return middle[0] < board.left || middle[0] > board.right || middle[1] < board.top || middle[1] > board.bottom;
  });
  // Something is always said, whatever the room.
  if (beside.length < 2) faults.push(`only ${beside.length} lines of words`);
  for (const word of words) {
    if (camera !== undefined && overlap(word, camera)) faults.push(`"${word.text}" lies in the camera's place`);
    const isCoordinate = /^[rc]\d$/.test(word.text);
    for (const far of beyond(safe, word, word.px, isCoordinate))
      faults.push(`"${word.text}" leaves the safe area by ${far}`);
  }
  for (const word of beside) if (overlap(word, board)) faults.push(`"${word.text}" lies on the board`);
  if (camera !== undefined && overlap(board, camera)) faults.push("the board lies in the camera's place");
  for (const far of beyond(safe, board, 0, true)) faults.push(`the board leaves the safe area by ${far}`);
  return faults;
}

/**
 * What of it leaves the safe area, if anything does. A line's capitals end at its top: what is higher, such as an l,
 * may stand over it. An upright frame's right side is kept free of words, not of the board.
 */
function beyond(safe: Box, { left, top, right, bottom }: Box, px: number, isBoard: boolean): string[] {
  return [
    left < safe.left - 1 ? `${safe.left - left} px to the left` : [],
    top < safe.top - 1 - px * 0.25 ? `${safe.top - top} px upwards` : [],
    right > safe.right + 1 && !isBoard ? `${right - safe.right} px to the right` : [],
    bottom > safe.bottom + 1 ? `${bottom - safe.bottom} px downwards` : [],
  ].flat();
}

function overlapping(words: readonly Ink[]): string[] {
  return words.flatMap((one, index) =>
    words
      .slice(index + 1)
      .filter((other) => overlap(one, other) && !follow(one, other))
      .map((other) => `"${one.text}" lies on "${other.text}"`),
  );
}

/** Parts of one line, which may touch by a pixel: the canvas measures ink in whole ones. */
function follow(one: Ink, other: Ink): boolean {
  const shared = Math.min(one.right, other.right) - Math.max(one.left, other.left);
  return one.baseline === other.baseline && shared <= 2;
}

/** The ink of every text on the frame but the digits on the board. */
function wordsOn(shown: Film, frame = 50): Ink[] {
  registerFonts();
  const canvas = createCanvas(shown.width, shown.height);
  const context = canvas.getContext('2d');
  const words: Ink[] = [];
  const write = context.fillText.bind(context);
  context.fillText = (text: string, x: number, y: number) => {
    const ink = context.measureText(text);
    const { actualBoundingBoxLeft: left, actualBoundingBoxRight: right } = ink;
    const { actualBoundingBoxAscent: ascent, actualBoundingBoxDescent: descent } = ink;
    const px = Number(/([\d.]+)px/.exec(context.font)?.[1]);
    // node-canvas (3.2) gives the left of text that is set from its left with the other sign, as measured.
    const box = {
      left: context.textAlign === 'left' ? x + left : x - left,
      right: x + right,
      top: y - ascent,
      bottom: y + descent,
    };
    if (!/^\d$/.test(text)) words.push({ text, ...box, baseline: y, px });
    write(text, x, y);
  };
  paint(context, shown, defaultLook, drawingAt(shown, defaultLook, frameAt(frame)));
  return words;
}
