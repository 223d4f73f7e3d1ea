import { type Load, load, traitsFor } from "./balance.ts";
import type { DisplacedMass } from "./density.ts";
import type { OpenContribution } from "./density-trials.ts";
import { flaskWarmth } from "./flask.ts";
import type { Expression, Inputs } from "./input.ts";
import type { Measurement } from "./measurement.ts";
import { pairedCorrelation } from "./repeats.ts";
import type { Series } from "./series.ts";

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
  const { balance, weighing, hanger } = measurement;
  const dry = load(inputs, "dry", measurement.dry, traitsFor(balance, "dry"));
  const loads = [dry];
  let dryGrams = dry.grams;
  if (weighing.method === "hung" && hanger.inAir) {
    const inAir = load(inputs, "hanger in air", hanger.inAir, traitsFor(balance, "dry"));
    loads.push(inAir);
    dryGrams = (a, of) => a.minus(dry.grams(a, of), inAir.grams(a, of));
  }
  const wet = wetLoads(inputs, measurement);
  if (measurement.paired) pair(inputs, dry, wet[0]!.load);
  const tied = new Set(inputs.correlations.flatMap(({ a, b }) => [a, b]));
  const open = wet
    .flatMap(({ load: { terms }, factor }) =>
      terms.map(({ input, sign }) => ({ input, factor: sign * factor })),
    )
    .filter(({ input }) => !tied.has(input));
  const warmth = weighing.method === "flask" ? flaskWarmth(inputs, weighing, measurement.liquid) : undefined;
  return {
    dryGrams,
    displacedGrams: (a, of, grams) => {
      let total = weighing.method === "displaced" ? a.of(0) : grams;
      for (const { load: one, factor } of wet)
        total = factor === 1 ? a.plus(total, one.grams(a, of)) : a.minus(total, one.grams(a, of));
      return warmth ? a.plus(total, a.times(of(warmth.input), a.of(warmth.factor))) : total;
    },
    loads: [...loads, ...wet.map(({ load: one }) => one)],
    open: warmth ? [...open, warmth] : open,
  };
}

interface WetLoad {
  load: Load;
  factor: 1 | -1;
}

/** The loads other than the dry one, each with its sign in the displaced mass; the piece in the liquid first. */
function wetLoads(inputs: Inputs, { balance, weighing, hanger }: Measurement): WetLoad[] {
  const traits = traitsFor(balance, "immersed");
  const wet = (name: string, series: Series, factor: 1 | -1): WetLoad => ({
    load: load(inputs, name, series, traits),
    factor,
  });
  if (weighing.method === "displaced") return [wet("rise", weighing.rise, 1)];
  if (weighing.method === "flask")
    return [wet("flask with piece", weighing.withPiece, -1), wet("full flask", weighing.full, 1)];
  const immersed = wet("immersed", weighing.immersed, -1);
  return hanger.inLiquid ? [immersed, wet("hanger in liquid", hanger.inLiquid, 1)] : [immersed];
}

/** Readings taken in pairs share what moves both: their correlation, where both carry a scatter of their own. */
function pair(inputs: Inputs, dry: Load, wet: Load): void {
  const own = ({ scatter, each }: Load) => scatter.shape === "student" && scatter.dof === each.length - 1;
  if (own(dry) && own(wet)) inputs.correlate(dry.scatter, wet.scatter, pairedCorrelation(dry.each, wet.each));
}
