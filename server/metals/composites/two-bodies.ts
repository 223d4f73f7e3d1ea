import { Refusal } from "../../../calibration/refusal.ts";
import { isTooCoarse } from "../../../calibration/too-coarse.ts";
import { densest } from "../possible-densities.ts";

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
 * Refuses when the known body is heavier or larger than the whole, when what is left would be denser than any metal, and
 * when its volume is known so badly that its density tells nothing.
 */
export function densityOfRest(
  whole: { massG: Uncertain; density: Uncertain },
  known: { massG: Uncertain; density: Uncertain },
): Uncertain {
  if (known.massG.value >= whole.massG.value)
    throw new Refusal("composite.refusal.known-heavier", {
      known_g: known.massG.value,
      whole_g: whole.massG.value,
    });
  const inputs = [whole.massG, whole.density, known.massG, known.density];
  const cm3Left = ([m, rho, mk, rhok]: number[]) => m! / rho! - mk! / rhok!;
  const { value: rest_cm3, u } = through(cm3Left, inputs);
  if (rest_cm3 <= 0) throw new Refusal("composite.refusal.known-larger", { rest_cm3 });
  if (isTooCoarse(rest_cm3, coverage * u))
    throw new Refusal("composite.refusal.rest-open", { rest_cm3, expanded_cm3: coverage * u });
  const rest = through((x) => (x[0]! - x[2]!) / cm3Left(x), inputs);
  if (rest.value - coverage * rest.u > densest)
    throw new Refusal("composite.refusal.rest-denser", {
      rest_g_cm3: rest.value,
      densest_g_cm3: densest,
    });
  return rest;
}

/** A value with what it may be at two standard uncertainties, cut where nothing can be. */
export interface Bounded extends Uncertain {
  range: readonly [low: number, high: number];
  /** an end was cut: the value ± 2 u would reach what cannot be */
  cut: boolean;
}

/** Masses of both bodies, g, and the share of the first in the whole mass. */
export interface TwoMasses {
  /** between nothing and the whole */
  firstG: Bounded;
  secondG: Bounded;
  /** mass fraction of the first body, 0…1 */
  firstShare: Bounded;
}

/** Standard uncertainties to either side of a value. */
const coverage = 2;

function boundedBy(most: number, { value, u }: Uncertain): Bounded {
  const [low, high] = [value - coverage * u, value + coverage * u];
  return { value, u, range: [Math.max(0, low), Math.min(most, high)], cut: low < 0 || high > most };
}

/**
 * Masses of two bodies of known densities that make up a piece: gold in quartz, a stone in its setting. From volumes that
 * add: m₁ = ρ₁(M − Vρ₂)/(ρ₁ − ρ₂). Give the density of each body as the middle of its range with a standard uncertainty.
 * Refuses when the whole is denser or lighter than both by more than the uncertainties explain, and when these leave
 * everything open, from none of a body to nothing else.
 */
export function massesOfTwo(
  whole: { massG: Uncertain; density: Uncertain },
  first: Uncertain,
  second: Uncertain,
): TwoMasses {
  const [light, dense] = [Math.min(first.value, second.value), Math.max(first.value, second.value)];
  if (light === dense) throw new Refusal("composite.refusal.same-density", { density_g_cm3: light });
  const firstG = ([m, rho, r1, r2]: number[]) => (r1! * (m! - (m! / rho!) * r2!)) / (r1! - r2!);
  const inputs = [whole.massG, whole.density, first, second];
  const share = boundedBy(
    1,
    through((x) => firstG(x) / x[0]!, inputs),
  );
  const [from, to] = share.range;
  if (from > to)
    throw new Refusal("composite.refusal.whole-outside", {
      whole_g_cm3: whole.density.value,
      low_g_cm3: light,
      high_g_cm3: dense,
    });
  if (from === 0 && to === 1)
    throw new Refusal("composite.refusal.masses-open", { low_g_cm3: light, high_g_cm3: dense });
  const most = whole.massG.value;
  return {
    firstG: boundedBy(most, through(firstG, inputs)),
    secondG: boundedBy(
      most,
      through((x) => x[0]! - firstG(x), inputs),
    ),
    firstShare: share,
  };
}
