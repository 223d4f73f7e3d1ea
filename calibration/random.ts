/** Next 32 random bits, 0…2³² − 1. Chance is always passed in, so the same seed gives the same digits. */
export type Random32 = () => number;

/**
 * Seeded random bits: xoshiro128++ of Blackman & Vigna 2021 (public domain), its state filled from the seed by
 * splitmix32.
 */
export function seededRandom(seed: number): Random32 {
  let z = seed | 0;
  const filled = () => {
    z = (z + 0x9e3779b9) | 0;
    let x = z ^ (z >>> 16);
    x = Math.imul(x, 0x21f0aaad);
    x ^= x >>> 15;
    x = Math.imul(x, 0x735a2d97);
    return x ^ (x >>> 15);
  };
  let [a, b, c, d] = [filled(), filled(), filled(), filled()];
  const turned = (x: number, by: number) => (x << by) | (x >>> (32 - by));
  return () => {
    const result = (turned((a + d) | 0, 7) + a) | 0;
    const t = b << 9;
    c ^= a;
    d ^= b;
    b ^= c;
    a ^= d;
    c ^= t;
    d = turned(d, 11);
    return result >>> 0;
  };
}
