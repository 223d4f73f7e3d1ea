import { Refusal } from "./refusal.ts";
import { gramsOf, type TimedSeries } from "./series.ts";

/** A load out of zeros and readings in time. */
export interface DriftFit {
  /** the load, g */
  grams: number;
  /** standard deviation of one look about the fit, g; 0 without spare looks */
  s: number;
  /** looks beyond what the fit needs */
  dof: number;
  /** u of the load over s: √ of its diagonal element of (XᵀX)⁻¹ */
  factor: number;
  /** drift of the zero, g per second */
  gramsPerSecond: number;
  /** readings less the fit, g, in order; zeros left out */
  residuals: readonly number[];
}

/**
 * Least-squares fit of load and drift: each look is zero + rate·time (+ load) (− film, or a zero of its own run, by
 * `lifted`). Throws Refusal when the looks cannot tell drift and load apart, saying which look would.
 */
export function driftFit({ timed, lifted, unit }: TimedSeries): DriftFit {
  const readings = timed.filter((one) => "reading" in one);
  if (readings.length === 0 || readings.length === timed.length)
    throw new Refusal("measurement.timed-needs-both", {
      zeros: timed.length - readings.length,
      readings: readings.length,
    });
  const { rows, columns } = design(timed, lifted);
  const looked = timed.map((one) => gramsOf("reading" in one ? one.reading : one.zero, unit));
  const about = looked[0]!;
  const solved = leastSquares(
    rows,
    looked.map((g) => g - about),
  );
  if (solved === null)
    throw new Refusal("measurement.drift-not-told", { looks: timed.length, unknowns: columns });
  const { solution, inverseDiagonal, residuals } = solved;
  const dof = timed.length - columns;
  const s = dof > 0 ? Math.sqrt(residuals.reduce((sum, one) => sum + one * one, 0) / dof) : 0;
  return {
    grams: solution[0]!,
    s,
    dof,
    factor: Math.sqrt(inverseDiagonal[0]!),
    gramsPerSecond: solution[1]! / scaleOf(timed),
    residuals: residuals.filter((_, place) => "reading" in timed[place]!),
  };
}

/** Span of the times, s, by which they are divided so that the unknowns are of one size. */
function scaleOf(timed: TimedSeries["timed"]): number {
  const times = timed.map((one) => one.atSeconds);
  return Math.max(1e-9, Math.max(...times) - Math.min(...times));
}

/** Columns: load, drift, zero, then the film or the further runs' zeros. */
function design(
  timed: TimedSeries["timed"],
  lifted: TimedSeries["lifted"],
): { rows: number[][]; columns: number } {
  const start = timed[0]!.atSeconds;
  const scale = scaleOf(timed);
  let run = 0;
  let immersed = false;
  let before = false;
  const readings = timed.map((one) => {
    const reading = "reading" in one;
    if (!reading && immersed) {
      if (lifted === "wet") run = 1;
      if (lifted === "dried" && before) run += 1;
    }
    immersed ||= reading;
    before = reading;
    return { reading, time: (one.atSeconds - start) / scale, run };
  });
  const runs = Math.max(...readings.map((one) => one.run));
  const rows = readings.map(({ reading, time, run: own }) => {
    const steps = Array.from({ length: runs }, (_, i) => {
      if (lifted === "wet") return reading || own === 0 ? 0 : 1;
      return own === i + 1 ? 1 : 0;
    });
    const zero = lifted === "dried" && own > 0 ? 0 : 1;
    return [reading ? 1 : 0, time, zero, ...steps];
  });
  return { rows, columns: 3 + runs };
}

interface Solved {
  solution: number[];
  inverseDiagonal: number[];
  residuals: number[];
}

/** Ordinary least squares by the normal equations; null when the columns are not independent. */
function leastSquares(rows: readonly number[][], y: readonly number[]): Solved | null {
  const n = rows[0]!.length;
  if (rows.length < n) return null;
  // [XᵀX | I | Xᵀy], Gauss–Jordan with the largest pivot
  const m = Array.from({ length: n }, (_, i) => [
    ...Array.from({ length: n }, (_, j) => rows.reduce((t, row) => t + row[i]! * row[j]!, 0)),
    ...Array.from({ length: n }, (_, j) => (i === j ? 1 : 0)),
    rows.reduce((t, row, k) => t + row[i]! * y[k]!, 0),
  ]);
  for (let c = 0; c < n; c++) {
    let best = c;
    for (let r = c + 1; r < n; r++) if (Math.abs(m[r]![c]!) > Math.abs(m[best]![c]!)) best = r;
    if (Math.abs(m[best]![c]!) < 1e-6) return null;
    [m[c], m[best]] = [m[best]!, m[c]!];
    const pivot = m[c]!.map((x) => x / m[c]![c]!);
    m[c] = pivot;
    for (let r = 0; r < n; r++) {
      if (r === c) continue;
      const by = m[r]![c]!;
      m[r] = m[r]!.map((x, j) => x - by * pivot[j]!);
    }
  }
  const solution = m.map((row) => row[2 * n]!);
  const residuals = rows.map((row, k) => y[k]! - row.reduce((sum, x, j) => sum + x * solution[j]!, 0));
  return { solution, inverseDiagonal: m.map((row, i) => row[n + i]!), residuals };
}
