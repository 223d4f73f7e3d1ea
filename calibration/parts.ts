import { ambientIn } from "./ambient.ts";
import { type Load, load, type Series } from "./balance.ts";
import type { DensityParts } from "./density.ts";
import type { OpenContribution } from "./density-law.ts";
import { type DisplacedMass, displaced, flask, hung } from "./displacement.ts";
import { Inputs } from "./input.ts";
import { liquidIn } from "./liquid.ts";
import type { Measurement } from "./measurement.ts";
import { pairedCorrelation } from "./repeats.ts";
import { surfaceTension, wettedSurfaceTension, wireChange } from "./suspension.ts";

/** Linear expansion of the trade's metals at 20 °C, 1/°C: platinum 9e-6 to zinc-rich brass 21e-6 (common practice). */
export const linearExpansion = { from: 9e-6, to: 21e-6 } as const;

/** Surface tension of a liquid that nobody described, N/m: between alcohol and water. */
const unknownSurfaceTension = 0.05;

/** A load that enters the displaced mass alone, with this sign. */
type WetLoad = Load & { factor: 1 | -1 };

/** The measurement's named inputs and what its density is made of. Throws RangeError for values outside a stated range. */
export function partsOf(measurement: Measurement): {
  inputs: Inputs;
  parts: DensityParts;
  loads: Load[];
  open: OpenContribution[];
} {
  const { balance, weighing, liquid } = measurement;
  const inputs = new Inputs();
  const dryTraits = balance;
  const wetTraits = {
    ...balance,
    readabilityGrams: balance.immersedReadabilityGrams ?? balance.readabilityGrams,
    repeatabilityGrams: balance.immersedRepeatabilityGrams ?? balance.repeatabilityGrams,
  };
  const dry = load(inputs, "dry", measurement.dry, dryTraits);
  const wetLoads: WetLoad[] = [];
  const wet = (name: string, series: Series, factor: 1 | -1) => {
    const one = { ...load(inputs, name, series, wetTraits), factor };
    wetLoads.push(one);
    return one;
  };
  let displacedGrams: DisplacedMass;
  if (weighing.method === "hung") displacedGrams = hung(wet("immersed", weighing.immersed, -1));
  else if (weighing.method === "displaced") displacedGrams = displaced(wet("rise", weighing.rise, 1));
  else
    displacedGrams = flask(
      wet("full flask", weighing.full, 1),
      wet("flask with piece", weighing.withPiece, -1),
    );
  if (measurement.paired) pair(inputs, dry, wetLoads[0]!);

  const air = ambientIn(inputs, measurement.air);
  const liquidHere = liquidIn(inputs, liquid, air.hectopascals);
  const wetted = liquid.kind === "water" && liquid.wettingAgent === true;
  const tension =
    liquid.kind === "stated"
      ? unknownSurfaceTension
      : wetted
        ? wettedSurfaceTension
        : surfaceTension(liquid.temperature.celsius);
  const roughDensity = liquid.kind === "stated" ? liquid.gPerCm3 : 1;
  const bubbles = inputs.between("bubbles", "g", 0, measurement.bubbleAllowanceMg / 1000);
  const wire = wireChange(inputs, measurement.hanger, tension, roughDensity);
  const linear = measurement.linearExpansionPerCelsius;
  return {
    inputs,
    loads: [dry, ...wetLoads],
    open: openOf(inputs, wetLoads, [{ input: bubbles, factor: -1 }, ...wire.open]),
    parts: {
      dryGrams: dry.grams,
      displacedGrams,
      bubbleGrams: bubbles,
      wireGrams: wire.grams,
      liquidKgPerM3: liquidHere.kgPerM3,
      celsius: liquidHere.celsius,
      airKgPerM3: air.kgPerM3,
      span: inputs.normal("balance span", "relative", 0, balance.spanU ?? 0),
      added: (measurement.added ?? []).map((body) => ({
        grams: inputs.normal(`mass of ${body.name}`, "g", body.massGrams, body.uMassGrams),
        kgPerM3: inputs.normal(`density of ${body.name}`, "kg/m³", body.gPerCm3 * 1000, body.uGPerCm3 * 1000),
      })),
      expansionPerCelsius:
        linear === undefined
          ? inputs.between("expansion to 20 °C", "1/°C", 3 * linearExpansion.from, 3 * linearExpansion.to)
          : inputs.rectangular("expansion to 20 °C", "1/°C", 3 * linear, 3 * linear * 0.05),
    },
  };
}

/** What enters the displaced mass alone: the readings other than the dry one, bubbles, wire; without correlated ones. */
function openOf(
  inputs: Inputs,
  wetLoads: readonly WetLoad[],
  others: readonly OpenContribution[],
): OpenContribution[] {
  const tied = new Set(inputs.correlations.flatMap(({ a, b }) => [a, b]));
  const terms = wetLoads.flatMap((l) => l.terms.map((input) => ({ input, factor: l.factor })));
  return [...terms, ...others].filter(({ input }) => !tied.has(input));
}

function pair(inputs: Inputs, dry: Load, wet: Load): void {
  if (dry.scatter.shape !== "student" || wet.scatter.shape !== "student") return;
  inputs.correlate(dry.scatter, wet.scatter, pairedCorrelation(dry.each, wet.each));
}
