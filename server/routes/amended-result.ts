import { waterRange } from "../../calibration/water.ts";
import { after, type Piece } from "../bench/piece.ts";
import { Refusal } from "../bench/refusal.ts";
import { typedCelsius } from "../bench/typed-reading.ts";
import { computeRequest } from "../compute/contract.ts";
import { type Evaluate, isRefused } from "../compute/evaluation.ts";
import type { Entry } from "../ledger/entry.ts";
import { type Result, statedBy } from "../reports/stated.ts";
import { programVersion } from "../version.ts";

/**
 * The result of a recorded piece with another water temperature, for one that was typed wrongly: everything else, the
 * decision rule too, stays as it was recorded. A correction of the thermometer by its check moves along. Throws Refusal
 * in words when the temperature cannot be, or the piece was not weighed in water.
 */
export async function amendedWater(
  entries: readonly Entry[],
  typed: string,
  evaluate: Evaluate,
): Promise<Result> {
  const { result } = statedBy(entries);
  const request = computeRequest.parse(result.request);
  const shown = entries.reduce<Piece | undefined>(after, undefined)?.waterCelsius;
  if (request.liquid.kind !== "water" || shown === undefined)
    throw new Refusal(
      "This piece was not weighed in water of a stated temperature, so there is none to correct.",
      "celsius",
    );
  const celsius = typedCelsius(typed, waterRange);
  if ("refused" in celsius) throw new Refusal(celsius.refused, "celsius");
  const first = entries.find((entry) => entry.kind === "result");
  const recorded = first ? computeRequest.parse(first.body.request).liquid : request.liquid;
  const offset = recorded.kind === "water" ? recorded.temperature_c - Number(shown) : 0;
  const temperature_c = Number((Number(celsius.understood) + offset).toFixed(6));
  const evaluation = await evaluate({ ...request, liquid: { ...request.liquid, temperature_c } });
  if (isRefused(evaluation)) throw new Refusal(`Nothing was amended. ${evaluation.refused}`);
  const { response, finding } = evaluation;
  const versions = { ...result.versions, program: programVersion, library: finding.libraryVersion };
  return { ...result, request: evaluation.request, response, versions };
}
