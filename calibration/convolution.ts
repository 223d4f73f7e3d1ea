import type { Input } from "./input.ts";
import { normalBelow, normalDensity } from "./normal.ts";
import { studentBelow, studentDensity } from "./student.ts";

/**
 * The distribution of a sum of independent, symmetric contributions about zero, as plain data: probability below and density at
 * evenly spaced points from −reach to +reach. Beyond them a Student tail (dof + (t/scale)²)^(−dof/2), or nothing.
 */
export interface Convolution {
  reach: number;
  step: number;
  below: Float64Array;
  density: Float64Array;
  tail: { dof: number; scale: number } | null;
}

type Part = Pick<Input, "u" | "shape" | "dof">;

const cells = 1280;
const root3 = Math.sqrt(3);

const unitTables = new Map<number, Convolution>();

/** Normal (dof = Infinity) or Student distribution of unit scale; made once for each number of degrees of freedom. */
function unitTable(dof: number): Convolution {
  const kept = unitTables.get(dof);
  if (kept) return kept;
  const normal = dof === Number.POSITIVE_INFINITY;
  const reach = normal ? 8 : 12;
  const step = (2 * reach) / cells;
  const at = (i: number) => i * step - reach;
  const table: Convolution = {
    reach,
    step,
    below: Float64Array.from({ length: cells + 1 }, (_, i) =>
      normal ? normalBelow(at(i)) : studentBelow(at(i), dof),
    ),
    density: Float64Array.from({ length: cells + 1 }, (_, i) =>
      normal ? normalDensity(at(i)) : studentDensity(at(i), dof),
    ),
    tail: normal ? null : { dof, scale: 1 },
  };
  if (unitTables.size > 64) unitTables.clear();
  unitTables.set(dof, table);
  return table;
}

function tailFactor({ tail, reach }: Convolution, t: number, power: number): number {
  if (tail === null) return 0;
  const end = tail.dof + (reach / tail.scale) ** 2;
  const there = tail.dof + (t / tail.scale) ** 2;
  return (end / there) ** (power / 2);
}

/** Probability below t, by cubic Hermite interpolation; error below 1e-8 for smooth distributions. */
export function belowIn(sum: Convolution, t: number): number {
  const { below, density, step } = sum;
  const x = (t + sum.reach) / step;
  if (x < 0) return below[0]! * tailFactor(sum, t, sum.tail?.dof ?? 0);
  if (!(x < cells)) return 1 - below[0]! * tailFactor(sum, t, sum.tail?.dof ?? 0);
  const i = x | 0;
  const r = x - i;
  const q = 1 - r;
  return (
    q * q * ((1 + 2 * r) * below[i]! + r * step * density[i]!) +
    r * r * ((1 + 2 * q) * below[i + 1]! - q * step * density[i + 1]!)
  );
}

/** Density at t, by linear interpolation. */
export function densityIn(sum: Convolution, t: number): number {
  const x = (t + sum.reach) / sum.step;
  if (!(x >= 0 && x < cells)) return sum.density[0]! * tailFactor(sum, t, (sum.tail?.dof ?? 0) + 1);
  const i = x | 0;
  return sum.density[i]! + (x - i) * (sum.density[i + 1]! - sum.density[i]!);
}

/** Adds a rectangle of half-width w: the mean of the distribution over t ± w. */
function widened(sum: Convolution, w: number): Convolution {
  const { below, density, step, reach } = sum;
  const area = new Float64Array(cells + 1);
  for (let i = 0; i < cells; i++)
    area[i + 1] =
      area[i]! +
      (step / 2) * (below[i]! + below[i + 1]!) +
      ((step * step) / 12) * (density[i]! - density[i + 1]!);
  const areaTo = (t: number) => {
    const x = (t + reach) / step;
    if (x <= 0) return below[0]! * (t + reach);
    if (x >= cells) return area[cells]! + below[cells]! * (t - reach);
    const i = x | 0;
    const r = x - i;
    const q = 1 - r;
    return (
      q * q * ((1 + 2 * r) * area[i]! + r * step * below[i]!) +
      r * r * ((1 + 2 * q) * area[i + 1]! - q * step * below[i + 1]!)
    );
  };
  const at = (i: number) => i * step - reach;
  return {
    ...sum,
    below: below.map((_, i) => (areaTo(at(i) + w) - areaTo(at(i) - w)) / (2 * w)),
    density: density.map((_, i) => (belowIn(sum, at(i) + w) - belowIn(sum, at(i) - w)) / (2 * w)),
  };
}

function rectangle(w: number, reach: number): Convolution {
  const step = (2 * reach) / cells;
  const at = (i: number) => i * step - reach;
  return {
    reach,
    step,
    below: Float64Array.from({ length: cells + 1 }, (_, i) =>
      Math.max(0, Math.min(1, 0.5 + at(i) / (2 * w))),
    ),
    density: Float64Array.from({ length: cells + 1 }, (_, i) => (Math.abs(at(i)) < w ? 1 / (2 * w) : 0)),
    tail: null,
  };
}

/** The distribution on a wider grid in the input's own unit. */
function stretched(unit: Convolution, u: number, reach: number): Convolution {
  const step = (2 * reach) / cells;
  const at = (i: number) => (i * step - reach) / u;
  return {
    reach,
    step,
    below: unit.below.map((_, i) => belowIn(unit, at(i))),
    density: unit.density.map((_, i) => densityIn(unit, at(i)) / u),
    tail: unit.tail && { dof: unit.tail.dof, scale: u },
  };
}

/**
 * The distribution of the sum of the parts, at least one of which has u > 0: one normal or Student part at most, not much smaller
 * than the rest, and any number of rectangles. Throws TypeError for two curved parts.
 */
export function convolution(parts: readonly Part[]): Convolution {
  const uncertain = parts.filter((part) => part.u > 0);
  const curved = uncertain.filter((part) => part.shape !== "rectangular");
  if (uncertain.length === 0 || curved.length > 1)
    throw new TypeError(`${uncertain.length} parts with spread, ${curved.length} of them curved`);
  const widths = uncertain
    .filter((part) => part.shape === "rectangular")
    .map((part) => root3 * part.u)
    .sort((a, b) => b - a);
  const spread = widths.reduce((total, w) => total + w, 0);
  const first = curved[0];
  if (!first) {
    const [widest, ...others] = widths as [number, ...number[]];
    return others.reduce(added, rectangle(widest, 1.02 * spread));
  }
  const unit = unitTable(first.shape === "normal" ? Number.POSITIVE_INFINITY : first.dof);
  return widths.reduce(added, stretched(unit, first.u, spread + unit.reach * first.u));
}

/** A rectangle much narrower than the grid changes nothing that the grid could show. */
function added(sum: Convolution, w: number): Convolution {
  return w > sum.step / 4 ? widened(sum, w) : sum;
}
