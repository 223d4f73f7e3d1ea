import { normalBelow, normalQuantile } from "./normal.ts";

// biome-ignore format: a table
const lanczos = [
  0.99999999999980993, 676.5203681218851, -1259.1392167224028, 771.32342877765313, -176.61502916214059,
  12.507343278686905, -0.13857109526572012, 9.9843695780195716e-6, 1.5056327351493116e-7,
] as const;

/** ln Γ(x), x > 0, by Lanczos' series with g = 7, nine terms; relative error about 1e-15. */
function logGamma(x: number): number {
  const z = x - 1;
  let series = lanczos[0]!;
  for (let i = 1; i < lanczos.length; i++) series += lanczos[i]! / (z + i);
  const t = z + 7.5;
  return 0.5 * Math.log(2 * Math.PI) + (z + 0.5) * Math.log(t) - t + Math.log(series);
}

/** Regularised incomplete beta I_x(a, b) by the continued fraction of Abramowitz & Stegun 26.5.8 (Lentz's steps). */
export function incompleteBeta(x: number, a: number, b: number): number {
  if (x <= 0) return 0;
  if (x >= 1) return 1;
  if (x > (a + 1) / (a + b + 2)) return 1 - incompleteBeta(1 - x, b, a);
  const tiny = 1e-300;
  const front = Math.exp(
    a * Math.log(x) + b * Math.log1p(-x) - Math.log(a) + logGamma(a + b) - logGamma(a) - logGamma(b),
  );
  const guard = (v: number) => (Math.abs(v) < tiny ? tiny : v);
  let c = 1;
  let d = 1 / guard(1 - ((a + b) * x) / (a + 1));
  let h = d;
  for (let m = 1; m < 500; m++) {
    const even = (m * (b - m) * x) / ((a + 2 * m - 1) * (a + 2 * m));
    d = 1 / guard(1 + even * d);
    c = guard(1 + even / c);
    h *= d * c;
    const odd = (-(a + m) * (a + b + m) * x) / ((a + 2 * m) * (a + 2 * m + 1));
    d = 1 / guard(1 + odd * d);
    c = guard(1 + odd / c);
    const step = d * c;
    h *= step;
    if (Math.abs(step - 1) < 1e-16) break;
  }
  return front * h;
}

/** Above this many degrees of freedom an expansion in 1/dof is better than the gamma and beta functions. */
const manyDof = 2000;

/**
 * Γ((ν+1)/2) / (Γ(ν/2) √(ν/2)). The difference of two logarithms keeps fewer and fewer digits as they grow, and none
 * above 1e15; the series is Abramowitz & Stegun 6.1.47 for a step of one half, relative error below 1e-13 from 2000 on.
 */
function gammaRatio(dof: number): number {
  if (dof > manyDof) return 1 - 1 / (4 * dof) + 1 / (32 * dof ** 2) + 5 / (128 * dof ** 3);
  return Math.exp(logGamma((dof + 1) / 2) - logGamma(dof / 2)) / Math.sqrt(dof / 2);
}

/** Density of Student's t with `dof` (> 0, Infinity allowed) degrees of freedom. */
export function studentDensity(t: number, dof: number): number {
  if (dof === Number.POSITIVE_INFINITY) return Math.exp(-0.5 * t * t) / Math.sqrt(2 * Math.PI);
  return (gammaRatio(dof) * Math.exp(-((dof + 1) / 2) * Math.log1p((t * t) / dof))) / Math.sqrt(2 * Math.PI);
}

/** Probability that Student's t with `dof` (> 0, Infinity allowed) degrees of freedom lies below t. */
export function studentBelow(t: number, dof: number): number {
  if (dof > manyDof) return normalBelow(t * (1 - 1 / (4 * dof)) * (1 / Math.sqrt(1 + (t * t) / (2 * dof))));
  const upper = 0.5 * incompleteBeta(dof / (dof + t * t), dof / 2, 0.5);
  return t > 0 ? 1 - upper : upper;
}

/** Abramowitz & Stegun 26.7.5: t as an expansion in 1/dof about the normal quantile z. */
function fromNormal(z: number, dof: number): number {
  const z2 = z * z;
  const g1 = (z * (z2 + 1)) / 4;
  const g2 = (z * ((5 * z2 + 16) * z2 + 3)) / 96;
  const g3 = (z * (((3 * z2 + 19) * z2 + 17) * z2 - 15)) / 384;
  const g4 = (z * ((((79 * z2 + 776) * z2 + 1482) * z2 - 1920) * z2 - 945)) / 92160;
  return z + g1 / dof + g2 / dof ** 2 + g3 / dof ** 3 + g4 / dof ** 4;
}

/**
 * The t below which Student's t with `dof` degrees of freedom (real, > 0, Infinity allowed) lies with probability p.
 * 0 < p < 1; relative error below 1e-12.
 */
export function studentQuantile(p: number, dof: number): number {
  if (p === 0.5) return 0;
  if (p < 0.5) return -studentQuantile(1 - p, dof);
  const z = normalQuantile(p);
  if (dof === Number.POSITIVE_INFINITY) return z;
  if (dof > manyDof) return fromNormal(z, dof);
  // Newton on the upper tail, kept between bounds
  let low = 0;
  let high = Number.POSITIVE_INFINITY;
  let t = dof > 3 ? fromNormal(z, dof) : 1 / (2 * (1 - p)) + z;
  const tail = 1 - p;
  for (let i = 0; i < 200; i++) {
    const upper = 0.5 * incompleteBeta(dof / (dof + t * t), dof / 2, 0.5);
    if (upper > tail) low = t;
    else high = t;
    let next = t + (upper - tail) / studentDensity(t, dof);
    if (!(next > low && next < high)) next = high === Number.POSITIVE_INFINITY ? 2 * t : (low + high) / 2;
    if (Math.abs(next - t) <= 4e-16 * Math.abs(t)) return next;
    t = next;
  }
  return t;
}

/** Coverage factor for a two-sided interval of this probability, such as 0.9545. */
export function coverageFactor(confidence: number, dof: number): number {
  return studentQuantile((1 + confidence) / 2, dof);
}
