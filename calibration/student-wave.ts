/**
 * Characteristic function of Student's t with `dof` ≥ 1 at u ≥ 0, by cubic Hermite interpolation between exact values: a
 * Student value is normal given its chance variance 1/g, g being χ²/dof, so φ(u) = E exp(−u²/2g). The mean over g is taken
 * in ln g by the trapezoidal rule, which is exact to all digits for so smooth a law; the table is good to a millionth.
 */
export function studentWave(u: number, dof: number): number {
  const { at, slope, step } = waveTable(dof);
  const x = u / step;
  if (x >= knots) return 0;
  const i = x | 0;
  const r = x - i;
  const q = 1 - r;
  return (
    q * q * ((1 + 2 * r) * at[i]! + r * step * slope[i]!) +
    r * r * ((1 + 2 * q) * at[i + 1]! - q * step * slope[i + 1]!)
  );
}

interface WaveTable {
  at: Float64Array;
  slope: Float64Array;
  step: number;
}

const knots = 320;
const tables = new Map<number, WaveTable>();

/** Where φ has fallen below 1e-10: at e^(−√dof·u) for few degrees of freedom, at that of the normal law for many. */
const reachOf = (dof: number) => Math.max(7.5, 26 / Math.sqrt(dof));

function waveTable(dof: number): WaveTable {
  const known = tables.get(dof);
  if (known) return known;
  const mixture = chiSquareMixture(dof);
  const step = reachOf(dof) / knots;
  const table: WaveTable = { at: new Float64Array(knots + 1), slope: new Float64Array(knots + 1), step };
  for (let i = 0; i <= knots; i++) {
    const u = i * step;
    for (const [g, weight] of mixture) {
      const wave = weight * Math.exp((-0.5 * u * u) / g);
      table.at[i]! += wave;
      table.slope[i]! -= (u / g) * wave;
    }
  }
  if (tables.size > 64) tables.clear();
  tables.set(dof, table);
  return table;
}

/** Values of g = χ²/dof with their weights, evenly spaced in ln g over all but 1e-13 of the law. */
function chiSquareMixture(dof: number): (readonly [g: number, weight: number])[] {
  // density of ln g is proportional to exp(dof/2 · (ln g − g)); its width is √(2/dof)
  const width = Math.sqrt(2 / dof);
  const logs: number[] = [];
  const log = (x: number) => (dof / 2) * (x - Math.exp(x) + 1);
  const step = Math.min(0.12, width / 4);
  for (let x = 0; log(x) > -32; x -= step) logs.push(x);
  for (let x = step; log(x) > -32; x += step) logs.push(x);
  const weights = logs.map((x) => Math.exp(log(x)));
  const total = weights.reduce((sum, weight) => sum + weight, 0);
  return logs.map((x, i) => [Math.exp(x), weights[i]! / total] as const);
}
