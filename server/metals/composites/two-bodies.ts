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

function refused(what: string): RangeError {
  return new RangeError(
    `${what} Check the stone's mass and density, and that the readings are of the whole piece.`,
  );
}

/**
 * Density of the unknown body of a piece of two, in g/cm³: the whole was weighed (mass in g, density in g/cm³), the
 * other body's mass and density are known. For a set stone: give the stone, get the metal; or the other way round.
 * Throws RangeError when the known body is heavier or larger than the whole.
 */
export function densityOfRest(
  whole: { massG: Uncertain; density: Uncertain },
  known: { massG: Uncertain; density: Uncertain },
): Uncertain {
  const restVolume = whole.massG.value / whole.density.value - known.massG.value / known.density.value;
  if (known.massG.value >= whole.massG.value)
    throw refused(`The known body weighs ${known.massG.value} g, the whole only ${whole.massG.value} g.`);
  if (restVolume <= 0)
    throw refused(
      `The known body alone takes more volume than the whole displaces: ${restVolume.toFixed(4)} cm³ would be left.`,
    );
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
 * Throws RangeError when the whole is denser or lighter than both.
 */
export function massesOfTwo(
  whole: { massG: Uncertain; density: Uncertain },
  first: Uncertain,
  second: Uncertain,
): TwoMasses {
  const [light, dense] = [Math.min(first.value, second.value), Math.max(first.value, second.value)];
  const { value } = whole.density;
  if (light === dense)
    throw refused(`Both bodies have the density ${light} g/cm³: no weighing separates them.`);
  const slack = 2 * Math.max(whole.density.u, first.u, second.u);
  if (value < light - slack || value > dense + slack)
    throw refused(
      `The whole has ${value.toFixed(3)} g/cm³, outside ${light} to ${dense} g/cm³ of its two bodies.`,
    );
  const firstG = ([m, rho, r1, r2]: number[]) => (r1! * (m! - (m! / rho!) * r2!)) / (r1! - r2!);
  const inputs = [whole.massG, whole.density, first, second];
  return {
    firstG: through(firstG, inputs),
    secondG: through((x) => x[0]! - firstG(x), inputs),
    firstShare: through((x) => firstG(x) / x[0]!, inputs),
  };
}
