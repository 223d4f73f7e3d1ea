import { type Load, load, traitsFor } from "./balance.ts";
import type { DisplacedMass } from "./density.ts";
import type { OpenContribution } from "./density-trials.ts";
import type { Expression, Input, Inputs } from "./input.ts";
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

/**
 * Spans of two balances that nobody compared differ by so much of the load, relative standard uncertainty each (common
 * practice: their owners adjust them with weights of their own). One balance cancels its own.
 */
export const apart = 5e-4;

/** Names the inputs of every load and builds both masses. `span`: error of the scale of the balance. */
export function weighingsOf(inputs: Inputs, measurement: Measurement, span: Input): Weighings {
  const { balance, immersedBalance, weighing } = measurement;
  const dry = load(inputs, "dry", measurement.dry, traitsFor(balance, "dry"));
  const inLiquid = immersedBalance
    ? traitsFor(immersedBalance, "immersed", {
        firstSpan: span,
        span: inputs.normal("second balance, span", "relative", 0, immersedBalance.spanU ?? apart),
      })
    : traitsFor(balance, "immersed");
  const { offDry, loads, displacedGrams, open } = weighing.term(inputs, { ...measurement, inLiquid });
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
