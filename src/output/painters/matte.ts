/**
 * A transparent film as two opaque ones, for editing suites and mixers that take colour and transparency as two
 * pictures: the fill has the colours, the matte has the transparency as grey, white where it is opaque.
 *
 * Colours of the fill are straight: laid over a picture by its matte, each pixel is fill * matte + picture * (1 -
 * matte). They are extended slightly outward, because video smooths colours across edges.
 */
import type { CanvasRenderingContext2D } from 'canvas';
import type { Painter } from './painter.ts';

/** How far colours are extended over the edge, in pixels: a chroma block and the next one. */
const reach = 3;

export function fillPainter(painter: Painter): Painter {
  return derived(painter, 'fill', (pixels, width) => extendOutward(pixels, width));
}

export function mattePainter(painter: Painter): Painter {
  return derived(painter, 'matte', (pixels) => {
    for (let at = 0; at < pixels.length; at += 4) pixels.fill(pixels[at + 3]!, at, at + 3);
  });
}

/** `change` works on R, G, B, A with straight alpha; afterwards every pixel is made opaque. */
function derived(
  painter: Painter,
  kind: 'fill' | 'matte',
  change: (pixels: Uint8ClampedArray, width: number) => void,
): Painter {
  const { width, height } = painter;
  return {
    ...painter,
    transparent: false,
    digestAt: (frame) => `${kind}/${painter.digestAt(frame)}`,
    paint(context: CanvasRenderingContext2D, frame) {
      context.save();
      painter.paint(context, frame);
      context.restore();
      const image = context.getImageData(0, 0, width, height);
      change(image.data, width);
      for (let at = 3; at < image.data.length; at += 4) image.data[at] = 255;
      context.putImageData(image, 0, 0);
    },
    draw: undefined,
    painting: painter.painting === undefined ? undefined : { kind, of: painter.painting },
  };
}

/** Invisible pixels take the colour of a visible neighbour, outward in rings. */
function extendOutward(pixels: Uint8ClampedArray, width: number): void {
  const words = new Uint32Array(pixels.buffer, pixels.byteOffset, pixels.length / 4);
  const isSeen = (at: number): boolean => pixels[at * 4 + 3] !== 0;
  const taken = new Set<number>();
  let ring: number[] = [];
  for (let at = 0; at < words.length; at++) if (isSeen(at)) ring.push(at);
  for (let step = 0; step < reach; step++) {
    const next: number[] = [];
    for (const at of ring) {
      const column = at % width;
      for (let dy = -1; dy <= 1; dy++) {
        for (let dx = -1; dx <= 1; dx++) {
          const neighbour = at + dy * width + dx;
          if (column + dx < 0 || column + dx >= width || neighbour < 0 || neighbour >= words.length) continue;
          if (isSeen(neighbour) || taken.has(neighbour)) continue;
          words[neighbour] = words[at]! & 0xffffff; // Still invisible; little-endian, like every machine today.
          pixels[neighbour * 4 + 3] = 0;
          taken.add(neighbour);
          next.push(neighbour);
        }
      }
    }
    ring = next;
  }
}
