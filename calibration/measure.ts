import { plain } from "./arithmetic.ts";
import { curveOf, studentCurve } from "./curve.ts";
import { only, weighed } from "./density.ts";
import type { DensityBudgetRow, DensityResult } from "./density-result.ts";
import type { Measurement } from "./measurement.ts";
import { type Distribution, monteCarlo, numericalTolerance, shareBelow } from "./monte-carlo.ts";
import { partsOf } from "./parts.ts";
import { propagate, secondOrderU, valueAndU } from "./propagation.ts";
import type { Random32 } from "./random.ts";
import { refuseIfNothingDisplaced } from "./refusals.ts";
import { coverageFactor, studentBelow } from "./student.ts";
import { warningsFor } from "./warnings.ts";

/** Density of water at its greatest, kg/m³: Tanaka et al. 2001, a5. The 4 °C of d20/4. */
const waterAt4 = 999.97495;

/** Significant digits of u to which GUM and Monte Carlo must agree (JCGM 101:2008, 7.9.2). */
const digits = 2;

/**
 * Evaluates one measurement: density, uncertainty, budget and interval. With `random` the distribution is propagated by
 * Monte Carlo too, the GUM interval validated against it (JCGM 101:2008, clause 8), and the Monte Carlo interval quoted
 * where it is not. Without, only the GUM interval is there; it takes a fraction of a millisecond.
 * Throws RangeError for values outside their range, and when the displaced mass is not clearly above zero.
 */
export function measure(measurement: Measurement, random?: Random32): DensityResult {
  const { confidence } = measurement;
  const { inputs, parts, loads } = partsOf(measurement);
  const plainValues = weighed(parts, plain, (input) => input.value);
  const displacedMass = valueAndU(only(parts, "displacedGrams"), inputs);
  refuseIfNothingDisplaced(measurement, loads, displacedMass, plainValues.grams);

  const model = only(parts, "kgPerM3");
  const gum = propagate(model, inputs);
  const dof = Number.isFinite(gum.dof) ? Math.max(1, Math.floor(gum.dof)) : gum.dof;
  const gumK = coverageFactor(confidence, dof);
  const gumInterval = [gum.value - gumK * gum.u, gum.value + gumK * gum.u] as const;
  const trials = random && monteCarlo(model, inputs, random, { confidence, digits });
  const validated = trials ? agrees(gumInterval, trials, gum.u) : true;
  const interval = validated || !trials ? gumInterval : trials.interval;
  const expanded = (interval[1] - interval[0]) / 2;
  const inGrams = (pair: readonly [number, number]) => [pair[0] / 1000, pair[1] / 1000] as const;
  const value = gum.value / 1000;
  const u = gum.u / 1000;
  const fromTrials = trials && !validated;
  const below = (x: number) =>
    fromTrials ? shareBelow(trials.sorted, x * 1000) : studentBelow((x - value) / u, dof);
  const at20 = valueAndU(only(parts, "kgPerM3At20"), inputs);
  const mass = valueAndU(only(parts, "grams"), inputs);
  const volume = valueAndU(only(parts, "cm3"), inputs);
  const budget: DensityBudgetRow[] = gum.rows.map(({ input, sensitivity, contribution, share }) => ({
    input: input.name,
    unit: input.unit,
    value: input.value,
    u: input.u,
    dof: input.dof,
    sensitivity: sensitivity / 1000,
    contributionGPerCm3: Math.abs(contribution) / 1000,
    share,
  }));
  const result = {
    gPerCm3: value,
    uGPerCm3: u,
    dof,
    k: expanded / gum.u,
    expandedGPerCm3: expanded / 1000,
    intervalGPerCm3: inGrams(interval),
    intervalFrom: fromTrials ? ("monte-carlo" as const) : ("gum" as const),
    confidence,
    gumIntervalGPerCm3: inGrams(gumInterval),
    ...(trials && {
      monteCarlo: {
        meanGPerCm3: trials.mean / 1000,
        uGPerCm3: trials.u / 1000,
        intervalGPerCm3: inGrams(trials.interval),
        trials: trials.trials,
        settled: trials.settled,
        validatesGum: validated,
      },
    }),
    gPerCm3At20: at20.value / 1000,
    uGPerCm3At20: at20.u / 1000,
    relativeDensity: { d20over4: at20.value / waterAt4, apparent: plainValues.apparent },
    massGrams: mass.value,
    uMassGrams: mass.u,
    volumeCm3: volume.value,
    uVolumeCm3: volume.u,
    displacedGrams: displacedMass.value,
    uDisplacedGrams: displacedMass.u,
    liquidGPerCm3: plainValues.liquidKgPerM3 / 1000,
    liquidCelsius: parts.celsius(plain, (input) => input.value),
    airKgPerM3: parts.airKgPerM3.value,
    pieces: measurement.pieces,
    budget,
    curve: fromTrials ? curveOf(trials.sorted, 1000) : studentCurve(value, u, dof),
  };
  return {
    ...result,
    warnings: warningsFor(measurement, loads, result, secondOrderU(model, inputs) / 1000),
    measured: {
      valueGPerCm3: value,
      uGPerCm3: u,
      intervalGPerCm3: result.intervalGPerCm3,
      confidence,
      intervalFrom: result.intervalFrom,
      probabilityBelow: below,
    },
  };
}

/** JCGM 101:2008, 8.1.3: both ends agree within the numerical tolerance of u. */
function agrees(gum: readonly [number, number], trials: Distribution, u: number): boolean {
  const tolerance = numericalTolerance(u, digits);
  return [0, 1].every((i) => Math.abs(gum[i]! - trials.interval[i]!) <= tolerance);
}
