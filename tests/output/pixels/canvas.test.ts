/**
 * The canvas: its own fonts, one frame at a time, pixels that stay as they were handed out.
 */
import { createCanvas } from 'canvas';
import { describe, expect, it } from 'vitest';
import { canvasOrder, fontFamily, frameCanvas, registerFonts } from '../../../src/output/pixels/canvas.ts';
import { straighten } from '../../../src/output/pixels/straight-alpha.ts';
import { squarePainter } from '../square-painter.ts';

describe('the fonts', () => {
  registerFonts();
  const context = createCanvas(10, 10).getContext('2d');
  const widthOf = (font: string, text: string): number => {
    context.font = font;
    return context.measureText(text).width;
  };

  it('are our own: the width of the family is not that of what stands in for an unknown one', () => {
    expect(widthOf(`40px "${fontFamily}"`, 'either 7r1c5')).not.toBeCloseTo(
      widthOf('40px "No Such Family"', 'either 7r1c5'),
      0,
    );
  });

  it('have the weights that the looks use', () => {
    expect(widthOf(`bold 40px "${fontFamily}"`, 'skyscraper')).toBeGreaterThan(
      widthOf(`40px "${fontFamily}"`, 'skyscraper'),
    );
  });

  it('have figures of even width', () => {
    const widths = [...'0123456789'].map((digit) => widthOf(`40px "${fontFamily}"`, digit.repeat(8)));
    expect(Math.max(...widths) - Math.min(...widths)).toBeLessThan(0.01);
  });
});

describe('a frame', () => {
  const painter = squarePainter({
    width: 8,
    height: 4,
    squares: (frame) => [{ left: 2 * frame, top: 0, width: 2, height: 4, colour: [220, 40, 40, 128] }],
  });

  it('does not show the one before', () => {
    const canvas = frameCanvas(8, 4, undefined);
    canvas.draw(painter, 0);
    const first = canvas.pixels();
    canvas.draw(painter, 1);
    // A canvas keeps 220 * 128 / 255 = 110.4 as 110, which is 219 again.
    const [clear, red] = ['0,0,0,0', '219,40,40,128'];
    expect(row(straighten(first, canvasOrder))).toEqual([red, red, clear, clear, clear, clear, clear, clear]);
    expect(row(straighten(canvas.pixels(), canvasOrder))).toEqual([clear, clear, red, red, clear, clear, clear, clear]);
  });

  it('begins without a transform or a clip, whatever the painter left', () => {
    const canvas = frameCanvas(8, 4, undefined);
    const careless = {
      ...painter,
      paint: (...[context, frame]: Parameters<typeof painter.paint>): void => {
        painter.paint(context, frame);
        context.translate(3, 1);
        context.globalAlpha = 0.2;
        context.rect(0, 0, 1, 1);
        context.clip();
      },
    };
    canvas.draw(careless, 0);
    const once = canvas.pixels();
    canvas.draw(careless, 1);
    canvas.draw(careless, 0);
    expect(canvas.pixels()).toEqual(once);
  });

  it('lies over the key colour where one is given', () => {
    const canvas = frameCanvas(8, 4, '#00b140');
    canvas.draw(painter, 0);
    // Half of 220,40,40 and half of 0,177,64: 110, 108, 52.
    expect(row(straighten(canvas.pixels(), canvasOrder)).slice(1, 3)).toEqual(['110,108,52,255', '0,177,64,255']);
  });
});

/** The first row's pixels as text. */
function row(pixels: Uint8Array): readonly string[] {
  return Array.from({ length: 8 }, (_, x) => pixels.subarray(x * 4, x * 4 + 4).join(','));
}
