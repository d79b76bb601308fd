/**
 * Which symbol a mark is, known by its shape: two layers of weights, learnt from many typefaces by src/setup/digits.
 *
 * All is sums and products in one order, so that the same mark gives the same scores on every machine.
 */
import { featureCount } from './shape-features.ts';

/** Weights as whole numbers from -127 to 127, row by row, one row of `inputs` for each output; a row's share its scale. */
export interface WeightLayer {
  readonly inputs: number;
  readonly outputs: number;
  readonly weights: Int8Array;
  readonly scales: readonly number[];
  readonly biases: readonly number[];
}

export interface DigitShapes {
  /** One for each output of the second layer but its last, which stands for all that is none of them. */
  readonly symbols: string;
  readonly layers: readonly [WeightLayer, WeightLayer];
}

/**
 * How well the features fit each symbol, and last how well they fit none: differences are logarithms of odds (natural
 * ones), as far as the typefaces that were learnt from can tell.
 */
export function scoresOf({ layers: [first, second] }: DigitShapes, features: Float32Array): readonly number[] {
  const middle = new Float64Array(first.outputs);
  for (let unit = 0; unit < first.outputs; unit++) middle[unit] = Math.max(0, weighted(first, unit, features));
  return Array.from({ length: second.outputs }, (_, unit) => weighted(second, unit, middle));
}

function weighted({ inputs, weights, scales, biases }: WeightLayer, unit: number, values: ArrayLike<number>): number {
  let sum = 0;
  const from = unit * inputs;
  for (let each = 0; each < inputs; each++) sum += weights[from + each]! * values[each]!;
  return sum * scales[unit]! + biases[unit]!;
}

/** Whether layers fit each other, the features, and the symbols. */
export function areWhole({ symbols, layers: [first, second] }: DigitShapes): boolean {
  const fits = ({ inputs, outputs, weights, scales, biases }: WeightLayer) =>
    weights.length === inputs * outputs && scales.length === outputs && biases.length === outputs;
  return (
    fits(first) &&
    fits(second) &&
    first.inputs === featureCount &&
    second.inputs === first.outputs &&
    second.outputs === symbols.length + 1
  );
}
