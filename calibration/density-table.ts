import { type DensityTrials, lawAt, lawQuantile } from "./density-law.ts";

/**
 * A density's distribution as a short table, plain data: probability below and its slope at evenly spaced values of
 * 1/ρ, in which it is nearly symmetric even where ρ itself has no far end. Read between knots by cubic Hermite
 * interpolation; 64 cells over all but 1e-7 at either side put it right to about 1e-6 in probability.
 */
export interface DensityTable {
  /** 1/ρ of the first and last knot, cm³/g, descending in ρ */
  from: number;
  to: number;
  /** probability that the true density lies below the knot's */
  below: readonly number[];
  /** its change per cm³/g */
  slope: readonly number[];
}

const cells = 64;
const leftOut = 1e-7;
/** A density nobody meets, kg/m³: where the table of a distribution without a far end stops. */
const farEnd = 1e6;

/** Tabulates the distribution of the trials. `guess` is a density near its middle, kg/m³. */
export function tabulate(trials: DensityTrials, guess: number): DensityTable {
  const from = 1000 / Math.min(farEnd, lawQuantile(trials, 1 - leftOut, guess));
  const to = 1000 / lawQuantile(trials, leftOut, guess);
  const below: number[] = [];
  const slope: number[] = [];
  for (let i = 0; i <= cells; i++) {
    const inverse = from + ((to - from) * i) / cells;
    const [p, perKgPerM3] = lawAt(trials, 1000 / inverse);
    below.push(p);
    slope.push((-perKgPerM3 * 1000) / (inverse * inverse));
  }
  return { from, to, below, slope };
}

/** Probability below a density, g/cm³, and its slope there per g/cm³; 0 and 1 beyond the table. */
export function readTable(
  { from, to, below, slope }: DensityTable,
  gPerCm3: number,
): readonly [number, number] {
  if (!(gPerCm3 > 0)) return [0, 0];
  const inverse = 1 / gPerCm3;
  const step = (to - from) / cells;
  const x = (inverse - from) / step;
  if (x < 0) return [1, 0];
  if (!(x < cells)) return [0, 0];
  const i = Math.floor(x);
  const r = x - i;
  const q = 1 - r;
  const [p0, p1, s0, s1] = [below[i]!, below[i + 1]!, slope[i]! * step, slope[i + 1]! * step];
  const p = q * q * ((1 + 2 * r) * p0 + r * s0) + r * r * ((1 + 2 * q) * p1 - q * s1);
  const perCell = 6 * r * q * (p1 - p0) + q * (1 - 3 * r) * s0 + r * (3 * r - 2) * s1;
  return [p, (-perCell / step) * inverse * inverse];
}

/** The density below which the probability p lies, g/cm³; the ends of the table for p beyond them. */
export function tableQuantile(table: DensityTable, p: number): number {
  let [low, high] = [1 / table.to, 1 / table.from];
  for (let i = 0; i < 60; i++) {
    const middle = 2 / (1 / low + 1 / high);
    if (readTable(table, middle)[0] < p) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}
