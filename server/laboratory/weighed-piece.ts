import { recordedDensity } from "../conformity/recorded-density.ts";
import { liquidCelsius } from "../reports/conditions.ts";
import type { Stated } from "../reports/stated.ts";
import type { WeighedPiece } from "./assay-against-density.ts";

/** A record as an assay is held against it; its confidence is the one it was weighed with. */
export function weighedPiece({ result }: Stated): WeighedPiece & { confidence: number } {
  const { response, request } = result;
  const confidence = typeof request.confidence === "number" ? request.confidence : 0.9545;
  return {
    measured: recordedDensity(response, confidence),
    celsius: liquidCelsius(result) ?? 20,
    massG: response.mass_g,
    expandedMassG: 2 * (response.u_mass_g ?? 0),
    confidence,
  };
}
