import type { DensityResult } from "../../calibration/density-result.ts";
import { measuredDensity } from "../../calibration/distribution.ts";
import { measure } from "../../calibration/measure.ts";
import { type Random32, seededRandom } from "../../calibration/random.ts";
import { type Finding, findingFor } from "../conformity/finding.ts";
import { builtIn, type Library } from "../metals/library.ts";
import { complaint } from "./complaint.ts";
import { type ComputeError, type ComputeRequest, type ComputeResponse, computeRequest } from "./contract.ts";
import { measurementOf } from "./measurement-of.ts";
import { fromMetrology, fromSchema, idOf } from "./refusal.ts";
import { responseOf } from "./response-of.ts";

/** The same request gives the same digits, whenever and wherever it is computed. */
export const fixedSeed = 31415927;

/** Everything a checked request comes to: the measurement, the finding, and the answer written from both. */
export interface Evaluated {
  result: DensityResult;
  finding: Finding;
  response: ComputeResponse;
}

/** Evaluates a checked request. Throws RangeError as measure and findingFor do. */
export function evaluate(request: ComputeRequest, random: Random32, library: Library = builtIn): Evaluated {
  if (request.decision_rule && request.claim === undefined)
    throw new RangeError(
      "A decision rule compares with the band of a claim, and nothing is claimed. Give the claim, or leave decision_rule out.",
    );
  const claimed = request.claim === undefined ? undefined : library.metal(request.claim);
  const perMillion = claimed?.expansionPerMillionK ?? undefined;
  const result = measure(
    measurementOf(request, perMillion === undefined ? undefined : perMillion * 1e-6),
    random,
  );
  const finding = findingOf(result, request, library);
  return { result, finding, response: responseOf(request.id, result, finding) };
}

function findingOf(
  result: DensityResult,
  { claim, confidence, balance, pieces, decision_rule: rule }: ComputeRequest,
  library: Library,
): Finding {
  return findingFor(measuredDensity(result), claim, confidence, {
    celsius: result.liquidCelsius,
    massG: result.massGrams,
    readabilityG: balance.readability_g,
    pieces,
    library,
    ...(rule && { rule }),
  });
}

/**
 * Answers one request of the contract, given as parsed JSON. Never throws for a bad request: the answer is then
 * {"id","error":{"at","message"}}. The bench gives the library in force; the command line knows the built-in one alone,
 * so that the same lines give the same answers on every computer.
 */
export function compute(request: unknown, library: Library = builtIn): ComputeResponse | ComputeError {
  const parsed = computeRequest.safeParse(request, { error: complaint });
  if (!parsed.success) return fromSchema(idOf(request), parsed.error);
  try {
    return evaluate(parsed.data, seededRandom(fixedSeed), library).response;
  } catch (error) {
    return fromMetrology(parsed.data.id, error);
  }
}

/** True for the answer to a request that could not be computed. */
export function isError(answer: ComputeResponse | ComputeError): answer is ComputeError {
  return "error" in answer;
}
