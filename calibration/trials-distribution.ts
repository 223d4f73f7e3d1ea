import { belowIn, type Convolution, densityIn } from "./convolution.ts";

/**
 * The distribution of a density as plain data. Each trial k leaves open what enters only the displaced mass, and enters
 * it straight: rounding and scatter of the immersed reading, bubbles, wire. Given everything else, ρ lies below y
 * exactly when the displaced mass lies above a_k/(y − air_k); the distribution of those open contributions says how likely that
 * is. The mean over the trials is the distribution: smooth, without sorting, and good to four digits of probability
 * from a few thousand trials.
 */
export interface DensityTrials {
  /** dry reading times (liquid − air), g·kg/m³, over the balance's scale */
  a: Float64Array;
  /** displaced mass with the open contributions at their middle, g */
  displaced: Float64Array;
  /** air density, kg/m³ */
  air: Float64Array;
  /** of the sum of the open contributions, g */
  open: Convolution;
}

/** Probability that the density lies below y, and its slope there, per kg/m³. y in kg/m³. */
export function trialsAt({ a, displaced, air, open }: DensityTrials, y: number): readonly [number, number] {
  const { below: p, density: f, step, reach } = open;
  const last = p.length - 1;
  const perStep = 1 / step;
  let below = 0;
  let slope = 0;
  // the tables of convolution.ts, read in place: this loop is where a Monte Carlo interval spends its time
  for (let k = 0; k < a.length; k++) {
    const above = y - air[k]!;
    if (above <= 0) continue;
    const needed = a[k]! / above;
    const t = displaced[k]! - needed;
    const x = (t + reach) * perStep;
    if (x >= 0 && x < last) {
      const i = x | 0;
      const r = x - i;
      const q = 1 - r;
      const f0 = f[i]!;
      const f1 = f[i + 1]!;
      below +=
        q * q * ((1 + 2 * r) * p[i]! + r * step * f0) + r * r * ((1 + 2 * q) * p[i + 1]! - q * step * f1);
      slope += ((f0 + r * (f1 - f0)) * needed) / above;
    } else {
      below += belowIn(open, t);
      slope += (densityIn(open, t) * needed) / above;
    }
  }
  return [below / a.length, slope / a.length];
}
