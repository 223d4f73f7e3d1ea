import { Refusal } from "./refusal.ts";
/** Mean, scatter and degrees of freedom of repeated readings. */
export interface Repeats {
  mean: number;
  /** standard deviation of one reading, n − 1 in the denominator; 0 for a single reading */
  s: number;
  n: number;
}

/** Throws TypeError for no readings. */
export function repeats(readings: readonly number[]): Repeats {
  const n = readings.length;
  if (n === 0) throw new TypeError("no readings");
  const first = readings[0]!;
  // about the first reading, so that 31.1035 and 31.1036 do not lose their difference
  const shift = readings.reduce((total, r) => total + (r - first), 0) / n;
  const squares = readings.reduce((total, r) => total + (r - first - shift) ** 2, 0);
  return { mean: first + shift, s: n > 1 ? Math.sqrt(squares / (n - 1)) : 0, n };
}

/** Correlation coefficient of two series read in pairs, 0 when either does not scatter. JCGM 100:2008 eq. (17), (14). */
export function pairedCorrelation(a: readonly number[], b: readonly number[]): number {
  if (a.length !== b.length)
    throw new Refusal("measurement.pairs", { first: a.length, second: b.length }, "paired");
  const ma = repeats(a).mean;
  const mb = repeats(b).mean;
  let ab = 0;
  let aa = 0;
  let bb = 0;
  a.forEach((x, i) => {
    const da = x - ma;
    const db = b[i]! - mb;
    ab += da * db;
    aa += da * da;
    bb += db * db;
  });
  return aa === 0 || bb === 0 ? 0 : ab / Math.sqrt(aa * bb);
}

/** From this many readings on their own scatter is used instead of the bench's repeatability. */
export const ownScatterFrom = 4;
