import { ambientIn } from "./ambient.ts";
import type { Load } from "./balance.ts";
import type { DensityParts } from "./density.ts";
import type { OpenContribution } from "./density-trials.ts";
import { apart, weighingsOf } from "./displacement.ts";
import { type Expression, Inputs } from "./input.ts";
import { liquidIn } from "./liquid.ts";
import type { Measurement } from "./measurement.ts";
import { gramsOf, readingTexts, type Series } from "./series.ts";
import { wireChange } from "./suspension.ts";

/** Linear expansion of the trade's metals at 20 °C, 1/°C: platinum 9e-6 to zinc-rich brass 21e-6 (common practice). */
const linearExpansion = { from: 9e-6, to: 21e-6 } as const;

/** The measurement's named inputs and what its density is made of. */
export interface Assembled {
  inputs: Inputs;
  parts: DensityParts;
  /** every weighed load, the dry one first */
  loads: Load[];
  /** contributions that enter the displaced mass alone: readings other than the dry one, bubbles, wire */
  open: OpenContribution[];
}

/** Names every input once and puts the model together. Throws RangeError for values outside a stated range. */
export function partsOf(given: Measurement): Assembled {
  const measurement = withCapacities(given);
  const { balance, liquid, immersedBalance } = measurement;
  const inputs = new Inputs();
  const spanU = balance.spanU ?? (immersedBalance ? apart : 0);
  const span = inputs.normal("balance span", "relative", 0, spanU);
  const { dryGrams, displacedGrams, loads, open } = weighingsOf(inputs, measurement, span);
  const { kgPerM3: air, hectopascals } = ambientIn(inputs, measurement.air);
  const { kgPerM3, celsius } = liquidIn(inputs, liquid, { balance, air, span, hectopascals });
  const untrue = untrueIn(inputs, measurement);
  const added = (measurement.added ?? []).map((body) => ({
    grams: inputs.normal(`mass of ${body.name}`, "g", body.massGrams, body.uMassGrams),
    kgPerM3: inputs.normal(`density of ${body.name}`, "kg/m³", body.gPerCm3 * 1000, body.uGPerCm3 * 1000),
  }));
  const linear = measurement.linearExpansionPerCelsius;
  // a claimed metal's handbook value is good to a twentieth; an unclaimed piece may be any of the trade's metals
  const expansionPerCelsius =
    linear === undefined
      ? inputs.between("expansion to 20 °C", "1/°C", 3 * linearExpansion.from, 3 * linearExpansion.to)
      : inputs.rectangular("expansion to 20 °C", "1/°C", 3 * linear, 3 * linear * 0.05);
  return {
    inputs,
    loads,
    open: [...open, ...untrue.open],
    parts: {
      dryGrams,
      displacedGrams,
      untrueGrams: untrue.grams,
      liquidKgPerM3: kgPerM3,
      airKgPerM3: air,
      span,
      added,
      celsius,
      expansionPerCelsius,
    },
  };
}

/** The balances with the load over which their departure bends: as stated, or the heaviest they weighed. */
function withCapacities(measurement: Measurement): Measurement {
  const { balance, immersedBalance, dry, weighing, hanger, paired = false } = measurement;
  const heaviest = (all: readonly (Series | undefined)[]) =>
    Math.max(
      ...all.flatMap((series) =>
        series ? readingTexts(series).map((text) => Math.abs(gramsOf(text, series.unit))) : [],
      ),
    );
  const wet = [...weighing.series, hanger.inLiquid];
  const first = [dry, hanger.inAir, ...(immersedBalance ? [] : wet)];
  return {
    ...measurement,
    balance: { ...balance, paired, capacityGrams: balance.capacityGrams ?? heaviest(first) },
    ...(immersedBalance && {
      immersedBalance: {
        ...immersedBalance,
        paired,
        capacityGrams: immersedBalance.capacityGrams ?? heaviest(wet),
      },
    }),
  };
}

/** Bubbles, which only ever lift, and the change of the pull on the hanger. Without a liquid there is neither. */
function untrueIn(
  inputs: Inputs,
  { liquid, hanger, bubbleAllowanceMg }: Measurement,
): { grams: Expression; open: readonly OpenContribution[] } {
  if (liquid.kind === "none") return { grams: (a) => a.of(0), open: [] };
  const bubbles = inputs.between("bubbles", "g", 0, bubbleAllowanceMg / 1000);
  const wire = wireChange(inputs, hanger, liquid);
  return {
    grams: (a, of) => a.plus(of(bubbles), wire.grams(a, of)),
    open: [{ input: bubbles, factor: -1 }, ...wire.open],
  };
}
