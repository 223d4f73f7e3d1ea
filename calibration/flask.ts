import { plain } from "./arithmetic.ts";
import { load } from "./balance.ts";
import type { Input, Inputs } from "./input.ts";
import type { Liquid } from "./liquid.ts";
import type { MeasurementCheck } from "./measurement-check.ts";
import type { Series } from "./series.ts";
import { waterFormula } from "./water.ts";
import { displacedWithinUncertainty, sumOfLoads, type Weighing } from "./weighing.ts";

/** The two fillings of a flask, and what is known of them. */
export interface FlaskFillings {
  full: Series;
  withPiece: Series;
  /** mass of the liquid in the full flask, g */
  liquidGrams?: number;
  /** full flask warmer than the flask with the piece by, °C */
  warmerCelsius?: number;
  uWarmerCelsius?: number;
  /** standard deviation of one filling to the mark, g, beside the scatter of the balance; see fillingOf */
  fillingGrams?: number | "usual";
  /** said beside the result */
  notes?: readonly MeasurementCheck[];
}

/** Topping up to the mark and wiping scatter by this, g (common practice: about 2 mg with a capillary stopper). */
const usualFillingGrams = 0.002;

/** Scatter of one filling, g: as stated; the usual one only where no scatter of a whole flask reading is stated. */
export function fillingOf(
  filling: FlaskFillings["fillingGrams"],
  immersedRepeatabilityGrams: number | undefined,
): number {
  if (filling !== "usual") return filling ?? 0;
  return immersedRepeatabilityGrams === undefined ? usualFillingGrams : 0;
}

/** Cubic expansion of borosilicate glass, 1/°C: 3 · 3.3e-6 (common practice). */
const glassExpansion = 9.9e-6;

/** Cubic expansion of the liquid, 1/°C: of water from its formula, of another as stated, else that of water at 20 °C. */
function expansionOf(liquid: Liquid): number {
  if (liquid.kind === "none") return 0;
  if (liquid.kind !== "water") return liquid.expansionPerCelsius ?? 2.07e-4;
  const t = liquid.temperature.celsius;
  const step = 0.01;
  return (
    -(waterFormula(plain, t + step) - waterFormula(plain, t - step)) / (2 * step * waterFormula(plain, t))
  );
}

/** A flask filled to its mark: displaced is full flask and piece less the flask with the piece in it. */
export function flask(fillings: FlaskFillings): Weighing {
  return {
    key: "flask",
    series: [fillings.full, fillings.withPiece],
    term(inputs, { balance, inLiquid, liquid }) {
      // set on the pan by hand both times
      const traits = {
        ...inLiquid,
        repeatabilityGrams: Math.hypot(
          inLiquid.repeatabilityGrams,
          fillingOf(fillings.fillingGrams, balance.immersedRepeatabilityGrams),
        ),
        eccentricityPerGram: balance.eccentricityPerGram ?? 0,
      };
      const loads = sumOfLoads(
        [
          { load: load(inputs, "flask with piece", fillings.withPiece, traits), sign: -1 },
          { load: load(inputs, "full flask", fillings.full, traits), sign: 1 },
        ],
        true,
      );
      const warmth = flaskWarmth(inputs, fillings, liquid);
      return {
        loads: loads.loads,
        displacedGrams: (a, of, at) =>
          a.plus(loads.displacedGrams(a, of, at), a.times(of(warmth.input), a.of(warmth.factor))),
        open: [...loads.open, warmth],
      };
    },
    notes: fillings.notes ?? [],
    nothing: "measurement.nothing-displaced.flask",
    drowned: displacedWithinUncertainty,
  };
}

/**
 * A flask filled warmer holds less liquid, which the difference of the two fillings takes for displaced mass. Input:
 * the difference of their temperatures; factor: grams of displaced mass per °C.
 */
function flaskWarmth(
  inputs: Inputs,
  { liquidGrams = 0, warmerCelsius = 0, uWarmerCelsius = 0 }: FlaskFillings,
  liquid: Liquid,
): { input: Input; factor: number } {
  return {
    input: inputs.normal("flask temperature difference", "°C", warmerCelsius, uWarmerCelsius),
    factor: liquidGrams * (expansionOf(liquid) - glassExpansion),
  };
}
