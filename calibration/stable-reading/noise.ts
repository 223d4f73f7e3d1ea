import type { Trembling } from "./motion-filter.ts";

/** One way the display may tremble, how likely it is here, and how large its white noise is. */
export interface Noise extends Trembling {
  share: number;
  /** the variance of the white noise is known as if from 2·weight lines: inverse gamma, shape and scale in d² */
  weight: number;
  scale: number;
}

/** Before anything was seen of a balance: noise of 0.4 d, mostly without draught. */
export const usualNoise: readonly Noise[] = [
  { ratio: 0, share: 0.7 },
  { ratio: 1.5, share: 0.1 },
  { ratio: 6, share: 0.12 },
  { ratio: 25, share: 0.08 },
].map((one) => ({ ...one, tauSeconds: 2, weight: 2, scale: 2 * 0.4 ** 2 }));

/** Standard deviation of one line, noise and draught, in d. */
export function lineDeviation(noises: readonly Noise[]): number {
  return Math.sqrt(
    noises.reduce(
      (total, { share, scale, weight, ratio }) => total + (share * scale * (1 + ratio)) / weight,
      0,
    ),
  );
}
