import type { BalanceTraits, Load, LoadTraits } from "./balance.ts";
import type { DisplacedMass } from "./density.ts";
import type { OpenContribution } from "./density-trials.ts";
import type { Inputs } from "./input.ts";
import type { Liquid } from "./liquid.ts";
import type { MeasurementCheck } from "./measurement-check.ts";
import { type Code, type Message, message } from "./message.ts";
import type { Series } from "./series.ts";
import type { Hanger } from "./suspension.ts";

/** What a way of weighing brings to the model. */
export interface DisplacedTerm {
  /** weighed with the dry piece and no part of it, such as a hanger in air */
  offDry?: Load;
  /** loads other than the dry one, the piece in the liquid first */
  loads: readonly Load[];
  displacedGrams: DisplacedMass;
  /** contributions that enter the displaced mass alone, and enter it straight */
  open: readonly OpenContribution[];
}

/** One way of finding what a piece displaces, with what was read in it. */
export interface Weighing {
  /** key of a compute request that a refusal of it is about */
  readonly key: string;
  /** readings beside the dry ones */
  readonly series: readonly Series[];
  /** names its inputs and builds its displaced mass */
  term(
    inputs: Inputs,
    given: { balance: BalanceTraits; inLiquid: LoadTraits; hanger: Hanger; liquid: Liquid },
  ): DisplacedTerm;
  /** said beside the result of this way of weighing */
  readonly notes?: readonly MeasurementCheck[];
  /** said when nothing was displaced: params displaced_g, dry_g, wet_g */
  readonly nothing: Code;
  /** said when what was displaced is within its own uncertainty; both in g, or in cm³ without a liquid */
  drowned(displaced: number, reach: number): Message;
}

/** A load with its sign in the displaced mass. */
export interface SignedLoad {
  load: Load;
  sign: 1 | -1;
}

/** The displaced mass as the sum of loads, with the dry mass or without. */
export function sumOfLoads(signed: readonly SignedLoad[], withDry: boolean): DisplacedTerm {
  return {
    loads: signed.map(({ load }) => load),
    displacedGrams: (a, of, { dryGrams }) => {
      let total = withDry ? dryGrams : a.of(0);
      for (const { load, sign } of signed)
        total = sign === 1 ? a.plus(total, load.grams(a, of)) : a.minus(total, load.grams(a, of));
      return total;
    },
    open: signed.flatMap(({ load, sign }) =>
      load.terms
        .filter(({ shared }) => !shared)
        .map(({ input, factor }) => ({ input, factor: factor * sign })),
    ),
  };
}

/** What is said of a displaced mass in g that cannot be told from zero. */
export const displacedWithinUncertainty = (displaced_g: number, reach_g: number): Message =>
  message("measurement.displaced-within-uncertainty", { displaced_g, reach_g });
