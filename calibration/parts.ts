import { ambientIn } from "./ambient.ts";
import { type Load, load } from "./balance.ts";
import type { DensityParts } from "./density.ts";
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

/** The measurement's named inputs and what its density is made of. Throws RangeError for values outside a stated range. */
export function partsOf(measurement: Measurement): { inputs: Inputs; parts: DensityParts; loads: Load[] } {
  const { balance, weighing, liquid } = measurement;
  const inputs = new Inputs();
  const dryTraits = balance;
  const wetTraits = {
    ...balance,
    readabilityGrams: balance.immersedReadabilityGrams ?? balance.readabilityGrams,
    repeatabilityGrams: balance.immersedRepeatabilityGrams ?? balance.repeatabilityGrams,
  };
  const dry = load(inputs, "dry", measurement.dry, dryTraits);
  const loads = [dry];
  const wet = (name: string, series: Parameters<typeof load>[2]) => {
    const weighedLoad = load(inputs, name, series, wetTraits);
    loads.push(weighedLoad);
    return weighedLoad;
  };
  let displacedGrams: DisplacedMass;
  if (weighing.method === "hung") displacedGrams = hung(wet("immersed", weighing.immersed));
  else if (weighing.method === "displaced") displacedGrams = displaced(wet("rise", weighing.rise));
  else displacedGrams = flask(wet("full flask", weighing.full), wet("flask with piece", weighing.withPiece));
  if (measurement.paired) pair(inputs, loads);

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
  const linear = measurement.linearExpansionPerCelsius;
  return {
    inputs,
    loads,
    parts: {
      dryGrams: dry.grams,
      displacedGrams,
      bubbleGrams: inputs.between("bubbles", "g", 0, measurement.bubbleAllowanceMg / 1000),
      wireGrams: wireChange(inputs, measurement.hanger, tension, roughDensity),
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

function pair(inputs: Inputs, [dry, wet]: readonly Load[]): void {
  if (!dry || !wet || dry.scatter.shape !== "student" || wet.scatter.shape !== "student") return;
  inputs.correlate(dry.scatter, wet.scatter, pairedCorrelation(dry.each, wet.each));
}
