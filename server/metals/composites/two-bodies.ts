import { Refusal } from "../../../calibration/refusal.ts";

/** A value with its standard uncertainty. */
export interface Uncertain {
  value: number;
  u: number;
}

/** Propagates independent inputs through f by central differences of one standard uncertainty (first-order GUM). */
function through(f: (inputs: number[]) => number, inputs: Uncertain[]): Uncertain {
  const values = inputs.map((i) => i.value);
  let variance = 0;
  for (const [at, { value, u }] of inputs.entries()) {
    if (u === 0) continue;
    const shifted = (by: number) => f(values.with(at, value + by));
    variance += ((shifted(u) - shifted(-u)) / 2) ** 2;
  }
  return { value: f(values), u: Math.sqrt(variance) };
}

/**
 * Density of the unknown body of a piece of two, in g/cm³: the whole was weighed (mass in g, density in g/cm³), the
 * other body's mass and density are known. For a set stone: give the stone, get the metal; or the other way round.
 * Refuses when the known body is heavier or larger than the whole.
 */
export function densityOfRest(
  whole: { massG: Uncertain; density: Uncertain },
  known: { massG: Uncertain; density: Uncertain },
): Uncertain {
  const restVolume = whole.massG.value / whole.density.value - known.massG.value / known.density.value;
  if (known.massG.value >= whole.massG.value)
    throw new Refusal("composite.refusal.known-heavier", {
      known_g: known.massG.value,
      whole_g: whole.massG.value,
    });
  if (restVolume <= 0) throw new Refusal("composite.refusal.known-larger", { rest_cm3: restVolume });
  const rest = ([m, rho, mk, rhok]: number[]) => (m! - mk!) / (m! / rho! - mk! / rhok!);
  return through(rest, [whole.massG, whole.density, known.massG, known.density]);
}

/** Masses of both bodies, g, and the share of the first in the whole mass. */
export interface TwoMasses {
  firstG: Uncertain;
  secondG: Uncertain;
  /** mass fraction of the first body, 0…1 */
  firstShare: Uncertain;
}

/**
 * Masses of two bodies of known densities that make up a piece: gold in quartz, a stone in its setting. From volumes that
 * add: m₁ = ρ₁(M − Vρ₂)/(ρ₁ − ρ₂). Give the density of each body as the middle of its range with a standard uncertainty.
 * Refuses when the whole is denser or lighter than both.
 */
export function massesOfTwo(
  whole: { massG: Uncertain; density: Uncertain },
  first: Uncertain,
  second: Uncertain,
): TwoMasses {
  const [light, dense] = [Math.min(first.value, second.value), Math.max(first.value, second.value)];
  const { value } = whole.density;
  if (light === dense) throw new Refusal("composite.refusal.same-density", { density_g_cm3: light });
  const slack = 2 * Math.max(whole.density.u, first.u, second.u);
  if (value < light - slack || value > dense + slack)
    throw new Refusal("composite.refusal.whole-outside", {
      whole_g_cm3: value,
      low_g_cm3: light,
      high_g_cm3: dense,
    });
  const firstG = ([m, rho, r1, r2]: number[]) => (r1! * (m! - (m! / rho!) * r2!)) / (r1! - r2!);
  const inputs = [whole.massG, whole.density, first, second];
  return {
    firstG: through(firstG, inputs),
    secondG: through((x) => x[0]! - firstG(x), inputs),
    firstShare: through((x) => firstG(x) / x[0]!, inputs),
  };
}
