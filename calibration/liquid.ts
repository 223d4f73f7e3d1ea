import { sum } from "./arithmetic.ts";
import { type BalanceTraits, load, traitsFor } from "./balance.ts";
import { referenceWeightKgPerM3 } from "./density.ts";
import type { Expression, Input, Inputs } from "./input.ts";
import { Refusal } from "./refusal.ts";
import type { Series } from "./series.ts";
import {
  checkWaterRange,
  dissolvedAirShift,
  risePerSolids,
  solidsCompositionHalfWidth,
  waterCompressibility,
  waterFormula,
  waterFormulaU,
} from "./water.ts";

/** How pure the water is said to be. */
export const purities = ["distilled", "deionised", "boiled", "tap"] as const;
export type Purity = (typeof purities)[number];

/** How much air the water holds: between none and saturation unless somebody knows. */
export const dissolvedAirs = ["unknown", "none", "saturated"] as const;
export type DissolvedAir = (typeof dissolvedAirs)[number];

/** Temperature of the liquid with what is known of it. */
export interface Temperature {
  celsius: number;
  /** standard uncertainty of the thermometer reading */
  uCelsius: number;
  /** degrees of freedom behind it; infinite when left out */
  dof?: number;
  /** what was added to the thermometer's reading, contained in `celsius`; the uncertainty is then that of the correction */
  correctionCelsius?: number;
  /** half-width of the difference between thermometer and piece */
  gradientCelsius?: number;
}

export interface Water {
  kind: "water";
  temperature: Temperature;
  purity: Purity;
  /** mg/L; when nobody measured tap water it may hold anything up to `tapSolids` */
  dissolvedSolidsMgPerL?: number;
  dissolvedAir?: DissolvedAir;
  /** a drop of wetting agent in the water */
  wettingAgent?: boolean;
  /** standard uncertainty of the water formula, kg/m³, where better is known than `waterFormulaU` */
  formulaUKgPerM3?: number;
}

export interface StatedLiquid {
  kind: "stated";
  name: string;
  gPerCm3: number;
  uGPerCm3: number;
  /** of the liquid at the weighing; without it or `statedAtCelsius` the stated density is taken as that of the weighing */
  temperature?: Temperature;
  /** temperature the stated density holds at, and the cubic expansion of the liquid per °C; any liquid's when absent */
  statedAtCelsius?: number;
  expansionPerCelsius?: number;
}

/** A liquid measured with a body of known volume: its dry reading less its immersed one, or the rise it makes. */
export interface MeasuredLiquid {
  kind: "measured";
  name: string;
  body: { cm3: number; uCm3: number } & ({ dry: Series; immersed: Series } | { rise: Series });
  temperature?: Temperature;
  expansionPerCelsius?: number;
}

/** No liquid at all: the volume is found without one. */
export interface NoLiquid {
  kind: "none";
  /** of the piece while it is measured */
  temperature: Temperature;
}

export type Liquid = Water | StatedLiquid | MeasuredLiquid | NoLiquid;

/** What a liquid measured on the same balance shares with the piece. */
export interface Surroundings {
  balance: BalanceTraits;
  air: Input;
  span: Input;
  /** air pressure over the liquid */
  hectopascals: number;
}

/** Cubic expansion of a liquid nobody described, 1/°C: from water to fluorinated liquids (common practice). */
const unknownExpansion = { from: 0.2e-3, to: 1.6e-3 } as const;

/** Tap water nobody measured, mg/L (common practice: drinking water stays below this nearly everywhere). */
const tapSolids = 600;

/** A liquid in the model: its density in kg/m³ and its temperature. */
export interface LiquidInModel {
  kgPerM3: Expression;
  celsius: Expression;
}

function temperatureIn(inputs: Inputs, name: string, t: Temperature): Expression {
  const { celsius, uCelsius, dof = Number.POSITIVE_INFINITY, correctionCelsius, gradientCelsius = 0 } = t;
  const shown =
    correctionCelsius === undefined
      ? inputs.student(`${name} temperature`, "°C", celsius, uCelsius, dof)
      : inputs.normal(`${name} temperature`, "°C", celsius - correctionCelsius, 0);
  const added =
    correctionCelsius === undefined
      ? []
      : [inputs.student("thermometer correction", "°C", correctionCelsius, uCelsius, dof)];
  const gradient = inputs.rectangular("temperature gradient", "°C", 0, gradientCelsius);
  return (a, of) =>
    sum(
      a,
      [shown, ...added, gradient].map((input) => of(input)),
    );
}

function waterIn(inputs: Inputs, water: Water, hectopascals: number): LiquidInModel {
  checkWaterRange(water.temperature.celsius);
  const celsius = temperatureIn(inputs, "water", water.temperature);
  const formula = inputs.normal("water formula", "kg/m³", 0, water.formulaUKgPerM3 ?? waterFormulaU);
  const air = dissolvedAirIn(inputs, water.dissolvedAir ?? "unknown");
  const measured = water.dissolvedSolidsMgPerL;
  const solids =
    measured !== undefined
      ? inputs.rectangular("dissolved solids", "mg/L", measured, measured * solidsCompositionHalfWidth)
      : inputs.between(
          "dissolved solids",
          "mg/L",
          0,
          water.purity === "tap" || water.purity === "boiled" ? tapSolids : 0,
        );
  // a drop in half a litre adds up to 0.01 kg/m³, the trade's 0.1 % by volume up to 0.05 (common practice)
  const agent = inputs.between("wetting agent", "kg/m³", 0, water.wettingAgent ? 0.05 : 0);
  const pressed = 1 + waterCompressibility(water.temperature.celsius) * (hectopascals * 100 - 101325);
  return {
    celsius,
    kgPerM3: (a, of) => {
      const t = celsius(a, of);
      const pure = a.plus(a.times(waterFormula(a, t), a.of(pressed)), of(formula));
      const withAir = a.plus(pure, a.times(dissolvedAirShift(a, t), of(air)));
      const withSolids = a.plus(withAir, a.times(of(solids), a.of(risePerSolids / 1000)));
      return a.plus(withSolids, of(agent));
    },
  };
}

function dissolvedAirIn(inputs: Inputs, held: DissolvedAir): Input {
  if (held === "unknown") return inputs.between("dissolved air", "share of saturation", 0, 1);
  return inputs.normal("dissolved air", "share of saturation", held === "none" ? 0 : 1, 0);
}

/** ρL = ρa + D(1 − ρa/ρc)/V, with the body's displaced mass D on the balance. */
function measuredIn(
  inputs: Inputs,
  liquid: MeasuredLiquid,
  { balance, air, span }: Surroundings,
): LiquidInModel {
  const { body } = liquid;
  const volume = inputs.normal("volume of the known body", "cm³", body.cm3, body.uCm3);
  const wet = traitsFor(balance, "immersed");
  let risen: Expression;
  if ("rise" in body) risen = load(inputs, "known body, rise", body.rise, wet).grams;
  else {
    const dry = load(inputs, "known body, dry", body.dry, traitsFor(balance, "dry"));
    const immersed = load(inputs, "known body, immersed", body.immersed, wet);
    risen = (a, of) => a.minus(dry.grams(a, of), immersed.grams(a, of));
  }
  const t = liquid.temperature;
  return {
    celsius: t ? temperatureIn(inputs, liquid.name, t) : (a) => a.of(20),
    kgPerM3: (a, of) => {
      const grams = a.times(risen(a, of), a.plus(a.of(1), of(span)));
      const weights = a.minus(a.of(1), a.times(of(air), a.of(1 / referenceWeightKgPerM3)));
      return a.plus(of(air), a.times(a.over(a.times(grams, weights), of(volume)), a.of(1000)));
    },
  };
}

/** Densities of liquids a piece is weighed in, g/cm³: lighter than pentane (0.63) to denser than Clerici's solution (4.25) [from memory]. */
export const liquidRange = { from: 0.5, to: 5 } as const;

/** Throws Refusal for a density that no such liquid has. */
function statedIn(inputs: Inputs, liquid: StatedLiquid): LiquidInModel {
  const { from, to } = liquidRange;
  if (!(liquid.gPerCm3 >= from && liquid.gPerCm3 <= to))
    throw new Refusal(
      "measurement.liquid-range",
      { value_g_cm3: liquid.gPerCm3, from, to },
      "liquid.density_g_cm3",
    );
  const stated = inputs.normal(
    `density of ${liquid.name}`,
    "kg/m³",
    liquid.gPerCm3 * 1000,
    liquid.uGPerCm3 * 1000,
  );
  const t = liquid.temperature;
  const celsius = t ? temperatureIn(inputs, liquid.name, t) : (((a) => a.of(20)) satisfies Expression);
  const at = liquid.statedAtCelsius ?? t?.celsius ?? 20;
  if (t === undefined || (liquid.expansionPerCelsius === undefined && liquid.statedAtCelsius === undefined))
    return { celsius, kgPerM3: (_, of) => of(stated) };
  const expansion =
    liquid.expansionPerCelsius === undefined
      ? inputs.between(`expansion of ${liquid.name}`, "1/°C", unknownExpansion.from, unknownExpansion.to)
      : inputs.normal(`expansion of ${liquid.name}`, "1/°C", liquid.expansionPerCelsius, 0);
  return {
    celsius,
    kgPerM3: (a, of) => {
      const warmer = a.minus(celsius(a, of), a.of(at));
      return a.times(of(stated), a.minus(a.of(1), a.times(of(expansion), warmer)));
    },
  };
}

/**
 * Stands for a liquid in the one model where there is none: 1 cm³ of it lifts 1 g on the balance in this air, so that
 * the displaced mass in g is the volume in cm³.
 */
function noneIn(inputs: Inputs, { temperature }: NoLiquid, { air }: Surroundings): LiquidInModel {
  return {
    celsius: temperatureIn(inputs, "piece", temperature),
    kgPerM3: (a, of) => a.plus(a.of(1000), a.times(of(air), a.of(1 - 1000 / referenceWeightKgPerM3))),
  };
}

/** The liquid's named inputs and its density. Throws RangeError for water outside 0–40 °C. */
export function liquidIn(inputs: Inputs, liquid: Liquid, surroundings: Surroundings): LiquidInModel {
  if (liquid.kind === "water") return waterIn(inputs, liquid, surroundings.hectopascals);
  if (liquid.kind === "none") return noneIn(inputs, liquid, surroundings);
  return liquid.kind === "stated" ? statedIn(inputs, liquid) : measuredIn(inputs, liquid, surroundings);
}
