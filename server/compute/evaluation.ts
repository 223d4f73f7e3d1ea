import { type CurvePoint, densityCurve } from "../../calibration/distribution.ts";
import type { Message } from "../../calibration/message.ts";
import { seededRandom } from "../../calibration/random.ts";
import { Refusal } from "../../calibration/refusal.ts";
import { tell } from "../../views/messages/tell.ts";
import type { Finding } from "../conformity/finding.ts";
import { libraryWith, type OwnMetals } from "../metals/own-metals.ts";
import { complaint } from "./complaint.ts";
import { evaluate, fixedSeed } from "./compute.ts";
import { type ComputeRequest, type ComputeResponse, computeRequest } from "./contract.ts";
import { fromSchema } from "./refusal.ts";

/** What the readings of a piece come to, as plain data that can cross from the worker to the bench. */
export interface Evaluated {
  request: ComputeRequest;
  response: ComputeResponse;
  finding: Finding;
  curve: readonly CurvePoint[];
  displacedGrams: number;
}

/** The evaluation of a piece, or the sentence that says why its readings cannot be evaluated. */
export type Evaluation = Evaluated | { refused: string | Message };

/** Evaluates what the bench asks for; may take its time, and never blocks the page. */
export type Evaluate = (request: unknown) => Promise<Evaluation>;

/** True when the readings could not be evaluated. */
export function isRefused(evaluation: Evaluation): evaluation is { refused: string | Message } {
  return "refused" in evaluation;
}

/** Why the readings could not be evaluated, where a sentence around it is English. */
export function inEnglish({ refused }: { refused: string | Message }): string {
  return typeof refused === "string" ? refused : tell(refused, "en");
}

/**
 * The evaluation of one request in the published form, with the owner's metals beside the built-in ones. Never throws
 * for bad readings: the refusal says why.
 */
export function evaluationOf(asked: unknown, own?: OwnMetals): Evaluation {
  const parsed = computeRequest.safeParse(asked, { error: complaint });
  if (!parsed.success) return { refused: fromSchema(null, parsed.error).error.message };
  try {
    const { result, finding, response } = evaluate(parsed.data, seededRandom(fixedSeed), libraryWith(own));
    return {
      request: parsed.data,
      response,
      finding,
      curve: densityCurve(result),
      displacedGrams: result.displacedGrams,
    };
  } catch (error) {
    if (error instanceof Refusal) return { refused: { code: error.code, params: error.params } };
    if (error instanceof RangeError) return { refused: error.message };
    throw error;
  }
}
