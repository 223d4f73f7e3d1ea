/** Probability that a value lies below y, and its slope there; the slope may be rough. */
export type Cumulative = (y: number) => readonly [below: number, slope: number];

/**
 * The y below which the probability p lies, found from a guess to a millionth of `near`, which is a width like that of the
 * distribution; Infinity when a probability above p is reached nowhere.
 */
export function quantile(at: Cumulative, p: number, guess: number, near: number): number {
  let low = 0;
  let high = Number.POSITIVE_INFINITY;
  let y = guess;
  for (let i = 0; i < 100; i++) {
    const [below, slope] = at(y);
    if (below > p) high = y;
    else low = y;
    let next = y - (below - p) / slope;
    if (!(next > low && next < high)) next = high === Number.POSITIVE_INFINITY ? 2 * y : (low + high) / 2;
    // Newton's error is the square of its step: a step of a thousandth leaves a millionth
    if (Math.abs(next - y) <= 1e-3 * near) return next;
    if (next > 1e9) return Number.POSITIVE_INFINITY;
    y = next;
  }
  return y;
}
