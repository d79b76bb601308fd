/**
 * Learning the classifier: two layers of weights, brought nearer to what the samples say by small steps.
 *
 * Softmax and cross entropy, minibatches, and the step sizes of D. Kingma and J. Ba, "Adam", ICLR 2015; a part of the
 * middle layer rests at each step (N. Srivastava et al., "Dropout", JMLR 15, 2014). All by a seed, in double precision
 * sums, so that one version of Node learns the same each time.
 */
import type { Chance } from '../../puzzles/chance.ts';

export interface Labelled {
  readonly features: Float32Array;
  /** A class, from 0. */
  readonly symbol: number;
}

/** `weights`: row by row, one row for each output, of `inputs` numbers. */
export interface Layer {
  readonly inputs: number;
  readonly outputs: number;
  readonly weights: Float32Array;
  readonly biases: Float32Array;
}

interface Learning {
  readonly middle: number;
  readonly classes: number;
  readonly rounds: number;
  readonly chance: Chance;
  readonly say: (line: string) => void;
}

const batch = 32;
const firstRate = 0.002;
const resting = 0.2;
/** Of a label's weight, what is given to the other classes: a typeface that nobody has seen may always look otherwise. */
const smoothing = 0.02;

export function learn(
  samples: readonly Labelled[],
  { middle, classes, rounds, chance, say }: Learning,
): readonly [Layer, Layer] {
  const inputs = samples[0]!.features.length;
  const first = freshLayer(inputs, middle, chance);
  const second = freshLayer(middle, classes, chance);
  const [stepFirst, stepSecond] = [steps(first), steps(second)];
  const hidden = new Float64Array(middle);
  const awake = new Float64Array(middle);
  const output = new Float64Array(classes);
  const back = new Float64Array(middle);
  const total = Math.ceil(samples.length / batch) * rounds;
  let done = 0;
  for (let round = 0; round < rounds; round++) {
    const order = chance.shuffled(samples);
    let [lost, wrong] = [0, 0];
    for (let from = 0; from < order.length; from += batch) {
      const some = order.slice(from, from + batch);
      for (const { features, symbol } of some) {
        for (let unit = 0; unit < middle; unit++) {
          const isAwake = chance.below(1000) >= resting * 1000;
          const sum = isAwake ? weighted(first, unit, features) : 0;
          awake[unit] = sum > 0 ? 1 / (1 - resting) : 0;
          hidden[unit] = sum > 0 ? sum * awake[unit]! : 0;
        }
        let highest = Number.NEGATIVE_INFINITY;
        for (let unit = 0; unit < classes; unit++) {
          output[unit] = weighted(second, unit, hidden);
          if (output[unit]! > highest) highest = output[unit]!;
        }
        if (output[symbol]! < highest) wrong++;
        let sum = 0;
        for (let unit = 0; unit < classes; unit++) sum += Math.exp(output[unit]! - highest);
        lost += highest + Math.log(sum) - output[symbol]!;
        back.fill(0);
        for (let unit = 0; unit < classes; unit++) {
          const target = (unit === symbol ? 1 - smoothing : 0) + smoothing / classes;
          const slope = Math.exp(output[unit]! - highest) / sum - target;
          for (let each = 0; each < middle; each++) back[each]! += slope * second.weights[unit * middle + each]!;
          stepSecond.add(unit, slope, hidden);
        }
        for (let unit = 0; unit < middle; unit++)
          if (awake[unit]! > 0) stepFirst.add(unit, back[unit]! * awake[unit]!, features);
      }
      // The rate falls along half a wave of the cosine.
      const rate = firstRate * 0.5 * (1 + Math.cos((Math.PI * done) / total)) + 1e-5;
      stepFirst.take(rate, some.length);
      stepSecond.take(rate, some.length);
      done++;
    }
    say(
      `round ${round + 1} of ${rounds}: loss ${(lost / order.length).toFixed(4)}, ${((100 * wrong) / order.length).toFixed(2)} % wrong while learning`,
    );
  }
  return [first, second];
}

function weighted({ inputs, weights, biases }: Layer, unit: number, values: ArrayLike<number>): number {
  let sum = biases[unit]!;
  const from = unit * inputs;
  for (let each = 0; each < inputs; each++) sum += weights[from + each]! * values[each]!;
  return sum;
}

/** Small weights by chance, as wide as suits units that pass on what is above 0 (K. He et al., ICCV 2015). */
function freshLayer(inputs: number, outputs: number, chance: Chance): Layer {
  const spread = Math.sqrt(6 / inputs);
  const weights = Float32Array.from({ length: inputs * outputs }, () => spread * (chance.below(2 ** 24) / 2 ** 23 - 1));
  return { inputs, outputs, weights, biases: new Float32Array(outputs) };
}

/** Gathers the slopes of a batch, and steps against their running means. */
function steps({ inputs, outputs, weights, biases }: Layer) {
  const slopes = new Float32Array(inputs * outputs);
  const biasSlopes = new Float32Array(outputs);
  const adam = [adamOf(weights, slopes, 1e-5), adamOf(biases, biasSlopes, 0)];
  return {
    add(unit: number, slope: number, values: ArrayLike<number>): void {
      biasSlopes[unit]! += slope;
      const from = unit * inputs;
      for (let each = 0; each < inputs; each++) slopes[from + each]! += slope * values[each]!;
    },
    take(rate: number, count: number): void {
      for (const each of adam) each(rate, count);
    },
  };
}

function adamOf(values: Float32Array, slopes: Float32Array, decay: number) {
  const mean = new Float32Array(values.length);
  const square = new Float32Array(values.length);
  let [fading, fadingSquare] = [1, 1];
  return (rate: number, count: number): void => {
    fading *= 0.9;
    fadingSquare *= 0.999;
    for (let index = 0; index < values.length; index++) {
      const slope = slopes[index]! / count;
      mean[index] = 0.9 * mean[index]! + 0.1 * slope;
      square[index] = 0.999 * square[index]! + 0.001 * slope * slope;
      const step = mean[index]! / (1 - fading) / (Math.sqrt(square[index]! / (1 - fadingSquare)) + 1e-8);
      values[index]! -= rate * (step + decay * values[index]!);
      slopes[index] = 0;
    }
  };
}
