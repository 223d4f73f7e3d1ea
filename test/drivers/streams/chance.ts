/** Draws of one stream. Generator: sfc32 (C. Doty-Humphrey, PractRand, public domain) [from memory]. */
export interface Draws {
  /** 0 ≤ x < 1 */
  unit(): number;
  between(low: number, high: number): number;
  /** mean 0, standard deviation 1; polar method of Marsaglia */
  normal(): number;
}

export function draws(seed: number): Draws {
  let [a, b, c, counter] = [seed | 0, 0x2545f491, 0x6c078965, 1];
  const unit = () => {
    const t = (a + b + counter) | 0;
    counter = (counter + 1) | 0;
    a = b ^ (b >>> 9);
    b = (c + (c << 3)) | 0;
    c = ((c << 21) | (c >>> 11)) + t;
    return (t >>> 0) / 2 ** 32;
  };
  for (let i = 0; i < 15; i++) unit();
  let spare: number | undefined;
  return {
    unit,
    between: (low, high) => low + (high - low) * unit(),
    normal() {
      if (spare !== undefined) {
        const kept = spare;
        spare = undefined;
        return kept;
      }
      for (;;) {
        const [u, v] = [2 * unit() - 1, 2 * unit() - 1];
        const s = u * u + v * v;
        if (s === 0 || s >= 1) continue;
        const factor = Math.sqrt((-2 * Math.log(s)) / s);
        spare = v * factor;
        return u * factor;
      }
    },
  };
}
