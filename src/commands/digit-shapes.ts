/**
 * The shapes of digits as assets/digit-shapes.json has them. `npm run digits` makes it.
 */
import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { z } from 'zod';
import { Bug } from '../grid/bug.ts';
import { areWhole, type DigitShapes, type WeightLayer } from '../recording/digit-shapes.ts';

const layerShape = z.object({
  inputs: z.int(),
  outputs: z.int(),
  scales: z.array(z.number()),
  biases: z.array(z.number()),
  /** Base64. */
  weights: z.string(),
});

const fileShape = z.object({
  digitShapes: z.literal(1),
  symbols: z.string(),
  layers: z.tuple([layerShape, layerShape]),
});

export function readDigitShapes(): DigitShapes {
  const file = fileURLToPath(new URL('../../assets/digit-shapes.json', import.meta.url));
  const { symbols, layers } = fileShape.parse(JSON.parse(readFileSync(file, 'utf8')));
  const shapes: DigitShapes = { symbols, layers: [layerOf(layers[0]), layerOf(layers[1])] };
  if (!areWhole(shapes)) throw new Bug('assets/digit-shapes.json is not what this version reads; make it anew');
  return shapes;
}

function layerOf({ weights, ...layer }: z.infer<typeof layerShape>): WeightLayer {
  return { ...layer, weights: Int8Array.from(Buffer.from(weights, 'base64')) };
}
