import * as fc from 'fast-check';
import { expect, it } from 'vitest';
import { boxConverter } from '../../../src/output/pixels/changed-part.ts';

const [width, height] = [24, 16];
const rectangle = fc.record({
  left: fc.nat(width - 1),
  top: fc.nat(height - 1),
  wide: fc.integer({ min: 1, max: 9 }),
  high: fc.integer({ min: 1, max: 9 }),
  // Colours multiplied by alpha, as a canvas keeps them: none is above its alpha.
  alpha: fc.constantFrom(0, 1, 90, 255),
  parts: fc.tuple(fc.nat(255), fc.nat(255), fc.nat(255)),
});

it('converts what changed to what converting the whole gives', () => {
  const box = { left: 2, top: 2, width: 20, height: 12 };
  const film = fc.array(fc.array(rectangle, { maxLength: 3 }), { minLength: 2, maxLength: 6 });
  fc.assert(
    fc.property(film, (pictures) => {
      const inPieces = boxConverter(box, width);
      let pixels = new Uint8Array(width * height * 4);
      for (const rectangles of pictures) {
        pixels = pixels.slice();
        for (const one of rectangles) fill(pixels, one);
        const whole = boxConverter(box, width).convert(pixels);
        expect(inPieces.convert(pixels).equals(whole)).toBe(true);
      }
    }),
    { numRuns: 300, seed: 7 },
  );
});

function fill(
  pixels: Uint8Array,
  { left, top, wide, high, alpha, parts }: typeof rectangle extends fc.Arbitrary<infer T> ? T : never,
) {
  for (let y = top; y < Math.min(height, top + high); y++) {
    for (let x = left; x < Math.min(width, left + wide); x++) {
      pixels.set([...parts.map((part) => Math.round((part * alpha) / 255)), alpha], (y * width + x) * 4);
    }
  }
}
