import { normalBelow } from "../normal.ts";

/** One part of a mixture of normal distributions. */
export interface Part {
  share: number;
  mean: number;
  sd: number;
}

/** Value below which the mixture lies with this probability, by halving; good to 1e-9 of its width. */
export function quantile(parts: readonly Part[], probability: number): number {
  let low = Math.min(...parts.map(({ mean, sd }) => mean - 12 * sd));
  let high = Math.max(...parts.map(({ mean, sd }) => mean + 12 * sd));
  const counting = parts.filter(({ share }) => share > 1e-12);
  for (let i = 0; i < 50; i++) {
    const middle = (low + high) / 2;
    const below = counting.reduce(
      (total, { share, mean, sd }) => total + share * normalBelow((middle - mean) / sd),
      0,
    );
    if (below < probability) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}
