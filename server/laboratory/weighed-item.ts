import { recordedDensity } from "../conformity/recorded-density.ts";
import { builtIn, type Library } from "../metals/library.ts";
import { liquidCelsius } from "../reports/conditions.ts";
import type { Stated } from "../reports/stated.ts";
import { recordedFineness } from "../weighing/recorded-fineness.ts";
import type { WeighedItem } from "./assay-against-density.ts";

/** A record as an assay is held against it; its confidence is the one it was weighed with. */
export function weighedItem(
  { result, statement }: Stated,
  library: Library = builtIn,
): WeighedItem & { confidence: number } {
  const { request } = result;
  const confidence = typeof request.confidence === "number" ? request.confidence : 0.9545;
  const celsius = liquidCelsius(result) ?? 20;
  return {
    measured: recordedDensity(statement, confidence),
    celsius,
    stated: recordedFineness(statement, { confidence, celsius, library }),
    massG: statement.mass_g,
    expandedMassG: 2 * (statement.u_mass_g ?? 0),
    confidence,
  };
}
