import { type Cumulative, quantile } from "./quantile.ts";

/**
 * A density's distribution as a short table, plain data. It runs over 1/ρ, in which the distribution is nearly symmetric
 * even where ρ itself has no far end: knot z stands at 1/ρ = middle + scale·sinh(z), so that the bulk is read finely and
 * Student's tails are still reached. Cubic Hermite interpolation over 32 cells is right to about 5e-5.
 */
export interface DensityTable {
  /** cm³/g */
  middle: number;
  scale: number;
  /** z of the first and last knot; ρ falls from first to last */
  from: number;
  to: number;
  /** probability that the true density lies below the knot's */
  below: readonly number[];
  /** its change per unit of z */
  slope: readonly number[];
}

const cells = 32;
/** Left out at either side. */
const leftOut = 1e-6;
/** A density nobody meets, kg/m³: where the table of a distribution without a far end stops. */
const farEnd = 1e6;

/**
 * Tabulates a distribution over kg/m³. `guess` is a density near its middle, `width` about its u, kg/m³; `roughly` is the
 * same distribution less well known, which places the knots.
 */
export function tabulate(at: Cumulative, guess: number, width: number, roughly = at): DensityTable {
  const inverse = (p: number) => 1000 / Math.min(farEnd, quantile(roughly, p, guess, width));
  const middle = inverse(0.5);
  const scale = (inverse(0.16) - inverse(0.84)) / 2;
  const from = Math.asinh((inverse(1 - leftOut) - middle) / scale);
  const to = Math.asinh((inverse(leftOut) - middle) / scale);
  const below: number[] = [];
  const slope: number[] = [];
  for (let i = 0; i <= cells; i++) {
    const z = from + ((to - from) * i) / cells;
    const cm3PerG = middle + scale * Math.sinh(z);
    const [p, perKgPerM3] = at(1000 / cm3PerG);
    below.push(p);
    slope.push(((-perKgPerM3 * 1000) / cm3PerG ** 2) * scale * Math.cosh(z));
  }
  return { middle, scale, from, to, below, slope };
}

/** Probability below a density, g/cm³, and its slope there per g/cm³; 0 and 1 beyond the table. */
export function readTable(table: DensityTable, gPerCm3: number): readonly [number, number] {
  if (!(gPerCm3 > 0)) return [0, 0];
  const { middle, scale, from, to, below, slope } = table;
  const offset = (1 / gPerCm3 - middle) / scale;
  const step = (to - from) / cells;
  const x = (Math.asinh(offset) - from) / step;
  if (x < 0) return [1, 0];
  if (!(x < cells)) return [0, 0];
  const i = Math.floor(x);
  const r = x - i;
  const q = 1 - r;
  const [p0, p1, s0, s1] = [below[i]!, below[i + 1]!, slope[i]! * step, slope[i + 1]! * step];
  const p = q * q * ((1 + 2 * r) * p0 + r * s0) + r * r * ((1 + 2 * q) * p1 - q * s1);
  const perCell = 6 * r * q * (p1 - p0) + q * (1 - 3 * r) * s0 + r * (3 * r - 2) * s1;
  return [p, -perCell / (step * scale * Math.hypot(1, offset) * gPerCm3 * gPerCm3)];
}

/** The density below which the probability p lies, g/cm³; the ends of the table for p beyond them. */
export function tableQuantile(table: DensityTable, p: number): number {
  const inverse = (z: number) => table.middle + table.scale * Math.sinh(z);
  let [low, high] = [1 / inverse(table.to), 1 / inverse(table.from)];
  for (let i = 0; i < 60; i++) {
    const middle = 2 / (1 / low + 1 / high);
    if (readTable(table, middle)[0] < p) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}
