import { plain } from "./arithmetic.ts";
import type { Input, Inputs } from "./input.ts";
import type { Liquid } from "./liquid.ts";
import { waterFormula } from "./water.ts";

/** What is known of the two fillings of a flask. */
export interface FlaskFillings {
  /** mass of the liquid in the full flask, g */
  liquidGrams?: number;
  /** full flask warmer than the flask with the piece by, °C */
  warmerCelsius?: number;
  uWarmerCelsius?: number;
}

/** Cubic expansion of borosilicate glass, 1/°C: 3 · 3.3e-6 (common practice). */
const glassExpansion = 9.9e-6;

/** Cubic expansion of the liquid, 1/°C: of water from its formula, of another as stated, else that of water at 20 °C. */
function expansionOf(liquid: Liquid): number {
  if (liquid.kind !== "water") return liquid.expansionPerCelsius ?? 2.07e-4;
  const t = liquid.temperature.celsius;
  const step = 0.01;
  return (
    -(waterFormula(plain, t + step) - waterFormula(plain, t - step)) / (2 * step * waterFormula(plain, t))
  );
}

/**
 * A flask filled warmer holds less liquid, which the difference of the two fillings takes for displaced mass. Input:
 * the difference of their temperatures; factor: grams of displaced mass per °C.
 */
export function flaskWarmth(
  inputs: Inputs,
  { liquidGrams = 0, warmerCelsius = 0, uWarmerCelsius = 0 }: FlaskFillings,
  liquid: Liquid,
): { input: Input; factor: number } {
  return {
    input: inputs.normal("flask temperature difference", "°C", warmerCelsius, uWarmerCelsius),
    factor: liquidGrams * (expansionOf(liquid) - glassExpansion),
  };
}
