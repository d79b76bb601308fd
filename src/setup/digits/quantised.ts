/**
 * Learnt layers as whole numbers of eight bits, and as the text that is committed.
 */
import type { WeightLayer } from '../../recording/digit-shapes.ts';
import type { Layer } from './learn.ts';

/** Each row by its own scale, so that its largest weight is 127. */
export function quantised({ inputs, outputs, weights, biases }: Layer): WeightLayer {
  const small = new Int8Array(inputs * outputs);
  const scales = Array.from({ length: outputs }, (_, unit) => {
    const row = weights.subarray(unit * inputs, (unit + 1) * inputs);
    const scale = rounded(Math.max(1e-6, ...row.map(Math.abs)) / 127);
    for (const [index, weight] of row.entries()) small[unit * inputs + index] = Math.round(weight / scale);
    return scale;
  });
  return { inputs, outputs, weights: small, scales, biases: [...biases].map(rounded) };
}

/** The layer as JSON has it: weights in Base64. */
export function asText({ inputs, outputs, weights, scales, biases }: WeightLayer) {
  return { inputs, outputs, scales, biases, weights: Buffer.from(weights.buffer).toString('base64') };
}

function rounded(value: number): number {
  return Number(value.toPrecision(6));
}
