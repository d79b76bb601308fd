/**
 * What a picture is made of, as text: that equal texts are equal pictures, that it holds after a shift in time and a
 * change elsewhere, and that everything which bears on a picture enters.
 */
import { createCanvas } from 'canvas';
import { expect, it } from 'vitest';
import { contentsOf } from '../../src/frames/content.ts';
import { digestOf, drawingAt } from '../../src/frames/drawing.ts';
import { paint } from '../../src/frames/paint.ts';
import { registerFonts } from '../../src/output/pixels/canvas.ts';
import { defaultLook } from '../../src/picture/default-look.ts';
import { type Film, frameAt } from '../../src/timeline/film.ts';
import { circle, film, link, type MarkWish, note } from './films.ts';

const small = { width: 320, height: 180, rate: { numerator: 25n, denominator: 1n } };
const first: MarkWish[] = [
  { ...circle('7r1c5'), from: 5, until: 40, step: 'a' },
  { ...link('strong', '7r1c5', '7r5c5'), from: 12, until: 40, step: 'a' },
  { ...note('Both ends see it'), from: 14, until: 40, step: 'a' },
];
const second = (by: number): MarkWish[] =>
  first.map((mark) => ({ ...mark, from: mark.from! + by, until: mark.until! + by, step: 'b' }));

it('equal texts are equal pictures, and a picture that returns is known again', () => {
  registerFonts();
  const shown = film({ ...small, frameCount: 100, marks: [...first, ...second(50)] });
  const pictures = new Map<string, Buffer>();
  let returns = 0;
  for (let frame = 0; frame < 100; frame++) {
    const { of } = contentsOf(shown, defaultLook);
    const text = of(drawingAt(shown, defaultLook, frameAt(frame)));
    const before = pictures.get(text);
    const canvas = createCanvas(shown.width, shown.height);
    paint(canvas.getContext('2d'), shown, defaultLook, drawingAt(shown, defaultLook, frameAt(frame)));
    const pixels = canvas.toBuffer('raw');
    if (before !== undefined) {
      returns += frame >= 50 ? 1 : 0;
      expect(pixels.equals(before)).toBe(true);
    }
    pictures.set(text, pixels);
  }
  expect(returns).toBe(50);
});

it('tells apart whatever the drawing tells apart', () => {
  const shown = film({ ...small, frameCount: 60, marks: first });
  const { of } = contentsOf(shown, defaultLook);
  const drawings = Array.from({ length: 60 }, (_, frame) => drawingAt(shown, defaultLook, frameAt(frame)));
  expect(new Set(drawings.map(of)).size).toBe(new Set(drawings.map(digestOf)).size);
});

it('stays as it was when another step is changed or comes later', () => {
  const before = film({ ...small, frameCount: 100, marks: [...first, ...second(50)] });
  const after = film({
    ...{ ...small, frameCount: 130 },
    marks: [...first, { ...circle('3r9c9'), from: 45, until: 60, step: 'new' }, ...second(70)],
  });
  const [a, b] = [contentsOf(before, defaultLook), contentsOf(after, defaultLook)];
  expect(b.common).toBe(a.common);
  const at = (shown: Film, frame: number) => drawingAt(shown, defaultLook, frameAt(frame));
  expect(b.of(at(after, 20))).toBe(a.of(at(before, 20)));
  expect(b.of(at(after, 90))).toBe(a.of(at(before, 70)));
});

it('changes with a mark of the step that is still to come, for routes and rooms depend on it', () => {
  const with_ = film({ ...small, frameCount: 60, marks: first });
  const without = film({ ...small, frameCount: 60, marks: [first[0]!, first[2]!] });
  const at = (shown: Film) => contentsOf(shown, defaultLook).of(drawingAt(shown, defaultLook, frameAt(8)));
  expect(at(with_)).not.toBe(at(without));
});

it('changes with everything that a film says beside its times', () => {
  const shown = film({ ...small, frameCount: 60, marks: first });
  const changes: Partial<Film>[] = [
    ...[{ title: 'Another' }, { credit: 'Somebody' }, { width: 322 }, { height: 182 }, { draw: 'overlay' as const }],
    ...[
      { small: '789' as const },
      { coordinates: true },
      { camera: { left: 0, top: 0, width: 20, height: 20 } as never },
    ],
    { standing: [{ cell: 3 as never, digit: 4 as never, given: true }] },
  ];
  const common = contentsOf(shown, defaultLook).common;
  for (const change of changes) expect(contentsOf({ ...shown, ...change }, defaultLook).common).not.toBe(common);
  const look = { ...defaultLook, strokes: { ...defaultLook.strokes, link: defaultLook.strokes.link * 2 } };
  expect(contentsOf(shown, look).common).not.toBe(common);
});
