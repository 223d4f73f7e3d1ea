/**
 * Variance, in d², that rounding leaves in the mean of many values that are themselves spread with this variance: the
 * Fourier series of the sawtooth (Widrow and Kollár, Quantization Noise, from memory). 1/12 at rest, about 0 from 0.5 d on.
 */
export function roundingLeft(variance: number): number {
  let total = 0;
  for (let k = 1; k <= 5; k++) total += Math.exp(-4 * Math.PI ** 2 * k * k * variance) / (k * k);
  return total / seriesAtRest / 12;
}

/** Σ 1/k² as far as it is summed. */
const seriesAtRest = 1 + 1 / 4 + 1 / 9 + 1 / 16 + 1 / 25;
