import { type Load, load, traitsFor } from "./balance.ts";
import type { DisplacedMass } from "./density.ts";
import type { OpenContribution } from "./density-trials.ts";
import type { Expression, Inputs } from "./input.ts";
import type { Measurement } from "./measurement.ts";
import { pairedCorrelation } from "./repeats.ts";

/** The dry and the displaced mass of one measurement, and what they were weighed from. */
export interface Weighings {
  dryGrams: Expression;
  displacedGrams: DisplacedMass;
  /** dry first */
  loads: Load[];
  /** contributions that enter the displaced mass alone */
  open: OpenContribution[];
}

/** Names the inputs of every load and builds both masses. */
export function weighingsOf(inputs: Inputs, measurement: Measurement): Weighings {
  const { weighing, paired = false } = measurement;
  const balance = { ...measurement.balance, paired };
  const dry = load(inputs, "dry", measurement.dry, traitsFor(balance, "dry"));
  const { offDry, loads, displacedGrams, open } = weighing.term(inputs, { ...measurement, balance });
  if (measurement.paired && loads[0]) pair(inputs, dry, loads[0]);
  const tied = new Set(inputs.correlations.flatMap(({ a, b }) => [a, b]));
  return {
    dryGrams: offDry ? (a, of) => a.minus(dry.grams(a, of), offDry.grams(a, of)) : dry.grams,
    displacedGrams,
    loads: [dry, ...(offDry ? [offDry] : []), ...loads],
    open: open.filter(({ input }) => !tied.has(input)),
  };
}

/** Readings taken in pairs share what moves both: their correlation, where both carry a scatter of their own. */
function pair(inputs: Inputs, dry: Load, wet: Load): void {
  const own = ({ scatter, each }: Load) => scatter.shape === "student" && scatter.dof === each.length - 1;
  if (own(dry) && own(wet)) inputs.correlate(dry.scatter, wet.scatter, pairedCorrelation(dry.each, wet.each));
}
