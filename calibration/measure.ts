import { numericalTolerance } from "./adaptive.ts";
import { plain } from "./arithmetic.ts";
import { only, weighed } from "./density.ts";
import type { DensityResult } from "./density-result.ts";
import { tabulate } from "./density-table.ts";
import { type DensityDistribution, distribute } from "./density-trials.ts";
import type { Measurement } from "./measurement.ts";
import { partsOf } from "./parts.ts";
import { asQuantities, type BudgetRow, propagated, secondOrderU, uOf } from "./propagation.ts";
import { type Quantity, quantities } from "./quantity.ts";
import type { Random32 } from "./random.ts";
import { refuseEndless, refuseIfNothingDisplaced } from "./refusals.ts";
import { coverageFactor } from "./student.ts";
import { warningsFor } from "./warnings.ts";

/** Density of water at its greatest, kg/m³: Tanaka et al. 2001, a5. The 4 °C of d20/4. */
const waterAt4 = 999.97495;

type Interval = readonly [number, number];

/** JCGM 101:2008, 8.1.3: both ends agree within the numerical tolerance for two digits of u. */
function agrees(gum: Interval, trials: Interval, u: number): boolean {
  const tolerance = numericalTolerance(u, 2);
  return gum.every((end, i) => Math.abs(end - trials[i]!) <= tolerance);
}

const inGrams = ([low, high]: Interval): Interval => [low / 1000, high / 1000];

const inBudget = ({ input, sensitivity, contribution, share }: BudgetRow) => ({
  input: input.name,
  unit: input.unit,
  value: input.value,
  u: input.u,
  dof: input.dof,
  sensitivity: sensitivity / 1000,
  contributionGPerCm3: Math.abs(contribution) / 1000,
  share,
});

const summary = (d: DensityDistribution, validatesGum: boolean) => ({
  meanGPerCm3: d.mean / 1000,
  uGPerCm3: d.u / 1000,
  intervalGPerCm3: inGrams(d.interval),
  trials: d.count,
  settled: d.settled,
  validatesGum,
});

/**
 * Evaluates one measurement: density, uncertainty, budget and interval. With `random` the distribution is propagated by
 * Monte Carlo too, the GUM interval validated against it (JCGM 101:2008, clause 8), and the Monte Carlo interval quoted
 * where it is not. Without, only the GUM interval is there; it takes a fraction of a millisecond.
 * Throws Refusal for values outside their range, and when the displaced mass is not clearly above zero.
 */
export function measure(measurement: Measurement, random?: Random32): DensityResult {
  const { confidence } = measurement;
  const { inputs, parts, loads, open } = partsOf(measurement);
  const at = weighed(parts, quantities, asQuantities(inputs));
  const u = (quantity: Quantity) => uOf(quantity, inputs);
  const displaced = { value: at.displacedGrams.value, u: u(at.displacedGrams) };
  const whole = () => weighed({ ...parts, added: [] }, plain, ({ value }) => value).displacedGrams;
  refuseIfNothingDisplaced(measurement, loads, displaced, at.dryGrams.value, whole);

  const gum = propagated(at.kgPerM3, inputs);
  // truncated to the lower integer: JCGM 100:2008, G.4.1
  const dof = Number.isFinite(gum.dof) ? Math.max(1, Math.floor(gum.dof)) : gum.dof;
  const reach = coverageFactor(confidence, dof) * gum.u;
  const gumInterval: Interval = [gum.value - reach, gum.value + reach];
  let trials: DensityDistribution | undefined;
  if (random) {
    const contributions = gum.rows.map((row) => row.contribution);
    const options = { open, contributions, guess: gumInterval, confidence, u: gum.u };
    trials = distribute(parts, inputs, at, options, random);
    refuseEndless(measurement, trials.interval, displaced);
  }
  const quoted = trials && !agrees(gumInterval, trials.interval, gum.u) ? trials : undefined;
  const interval = quoted?.interval ?? gumInterval;
  const result = {
    gPerCm3: gum.value / 1000,
    uGPerCm3: gum.u / 1000,
    dof,
    k: (interval[1] - interval[0]) / 2 / gum.u,
    expandedGPerCm3: (interval[1] - interval[0]) / 2000,
    intervalGPerCm3: inGrams(interval),
    intervalFrom: quoted ? ("monte-carlo" as const) : ("gum" as const),
    confidence,
    gumIntervalGPerCm3: inGrams(gumInterval),
    ...(trials && { monteCarlo: summary(trials, quoted === undefined) }),
    gPerCm3At20: at.kgPerM3At20.value / 1000,
    uGPerCm3At20: u(at.kgPerM3At20) / 1000,
    relativeDensity: { d20over4: at.kgPerM3At20.value / waterAt4, apparent: at.apparent.value },
    massGrams: at.grams.value,
    uMassGrams: u(at.grams),
    volumeCm3: at.cm3.value,
    uVolumeCm3: u(at.cm3),
    displacedGrams: displaced.value,
    uDisplacedGrams: displaced.u,
    liquidGPerCm3: measurement.liquid.kind === "none" ? null : at.liquidKgPerM3.value / 1000,
    liquidCelsius: parts.celsius(plain, (input) => input.value),
    airKgPerM3: parts.airKgPerM3.value,
    pieces: measurement.pieces,
    budget: gum.rows.map(inBudget),
    distribution: quoted
      ? { kind: "trials" as const, table: tabulate(quoted.at, gum.value, gum.u, quoted.roughly) }
      : { kind: "student" as const, gPerCm3: gum.value / 1000, uGPerCm3: gum.u / 1000, dof },
  };
  // below this the second-order terms are under a thousandth of u
  const bent = displaced.u > 0.03 * displaced.value;
  const secondOrder = bent ? secondOrderU(only(parts, "kgPerM3"), inputs) / 1000 : undefined;
  return { ...result, warnings: warningsFor(measurement, loads, result, secondOrder) };
}
