const density0 = 1 / Math.sqrt(2 * Math.PI);

/** Density of the standard normal distribution at z. */
export function normalDensity(z: number): number {
  return density0 * Math.exp(-0.5 * z * z);
}

/** Probability that a standard normal value lies below z; absolute error below 1e-15. */
export function normalBelow(z: number): number {
  const x = Math.abs(z);
  if (Number.isNaN(z)) return Number.NaN;
  if (x > 38) return z > 0 ? 1 : 0;
  // the upper tail is less than half of the last digit of 1
  if (z > 8.3) return 1;
  if (x < 3) {
    // Φ(x) = ½ + φ(x)·(x + x³/3 + x⁵/(3·5) + …); Marsaglia 2004, J. Stat. Software 11(4) [reference from memory]
    let term = x;
    let total = x;
    for (let i = 3; term > 1e-17 * total; i += 2) {
      term *= (x * x) / i;
      total += term;
    }
    const half = normalDensity(x) * total;
    return z > 0 ? 0.5 + half : 0.5 - half;
  }
  // upper tail as a continued fraction φ(x)/(x + 1/(x + 2/(x + …))); Abramowitz & Stegun 26.2.14
  let fraction = x;
  for (let i = 100; i >= 1; i--) fraction = x + i / fraction;
  const tail = normalDensity(x) / fraction;
  return z > 0 ? 1 - tail : tail;
}

type Eight = readonly [number, number, number, number, number, number, number, number];

// written out, because a Monte Carlo trial asks for a quantile a dozen times
const eighth = (x: number, c: Eight) =>
  ((((((c[7] * x + c[6]) * x + c[5]) * x + c[4]) * x + c[3]) * x + c[2]) * x + c[1]) * x + c[0];

const ratio = (x: number, [top, bottom]: readonly [Eight, Eight]) => eighth(x, top) / eighth(x, bottom);

// biome-ignore format: a table
const middle = [
  [3.3871328727963665, 133.14166789178438, 1971.5909503065513, 13731.69376550946, 45921.95393154987, 67265.7709270087, 33430.57558358813, 2509.0809287301227],
  [1, 42.31333070160091, 687.1870074920579, 5394.196021424751, 21213.794301586597, 39307.89580009271, 28729.085735721943, 5226.495278852854],
] as const;
// biome-ignore format: a table
const shoulder = [
  [1.4234371107496835, 4.630337846156546, 5.769497221460691, 3.6478483247632045, 1.2704582524523684, 0.2417807251774506, 0.022723844989269184, 0.0007745450142783414],
  [1, 2.053191626637759, 1.6763848301838038, 0.6897673349851, 0.14810397642748008, 0.015198666563616457, 0.0005475938084995345, 1.0507500716444169e-09],
] as const;
// biome-ignore format: a table
const tail = [
  [6.657904643501103, 5.463784911164114, 1.7848265399172913, 0.29656057182850487, 0.026532189526576124, 0.0012426609473880784, 2.7115555687434876e-05, 2.0103343992922881e-07],
  [1, 0.599832206555888, 0.1369298809227358, 0.014875361290850615, 0.0007868691311456133, 1.8463183175100548e-05, 1.421511758316446e-07, 2.0442631033899397e-15],
] as const;

/**
 * The z below which a standard normal value lies with probability p, 0 < p < 1; relative error about 1e-15.
 * Wichura 1988, Applied Statistics 37, 477–484, algorithm AS 241 (PPND16).
 */
export function normalQuantile(p: number): number {
  const q = p - 0.5;
  if (Math.abs(q) <= 0.425) return q * ratio(0.180625 - q * q, middle);
  const r = Math.sqrt(-Math.log(q < 0 ? p : 1 - p));
  const z = r <= 5 ? ratio(r - 1.6, shoulder) : ratio(r - 5, tail);
  return q < 0 ? -z : z;
}
