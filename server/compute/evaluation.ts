import type { CurvePoint } from "../../calibration/distribution.ts";
import type { Message } from "../../calibration/message.ts";
import type { Evidence } from "../conformity/evidence/evidence.ts";
import type { Instrument } from "../conformity/next-test.ts";
import { libraryWith, type OwnMetals } from "../metals/own-metals.ts";
import type { Situation } from "../weighing/checks/situation.ts";
import { statementFor } from "../weighing/statement.ts";
import type { NoReading, Statement } from "../weighing/statement-shape.ts";
import { type ComputeRequest, computeRequest } from "./contract.ts";
import { evidenceOf } from "./evidence-of.ts";
import { fromMetrology, fromSchema } from "./refusal.ts";

/** What the readings of a piece come to, as plain data that can cross from the worker to the bench. */
export interface Evaluated {
  request: ComputeRequest;
  statement: Statement;
  curve: readonly CurvePoint[];
  displacedGrams: number;
}

/** Why readings cannot be evaluated; with the statement that says so where they are those of no density. */
export interface NotEvaluated {
  refused: Message;
  stated?: { request: ComputeRequest; statement: NoReading };
}

/** The evaluation of a piece, or why its readings cannot be evaluated. */
export type Evaluation = Evaluated | NotEvaluated;

/** What the bench knows of a weighing beside its request. */
export interface BenchKnows {
  situation?: Situation | undefined;
  evidence?: readonly Evidence[] | undefined;
  /** instruments at hand beside the balance; unknown when left out */
  owned?: readonly Instrument[] | undefined;
  /** a person is asked about stops that can be answered */
  asksPerson?: boolean;
}

/** Evaluates what the bench asks for; may take its time, and never blocks the page. */
export type Evaluate = (request: unknown, knows?: BenchKnows) => Promise<Evaluation>;

/** True when the readings could not be evaluated. */
export function isRefused(evaluation: Evaluation): evaluation is NotEvaluated {
  return "refused" in evaluation;
}

/**
 * The evaluation of one request in the published form, with the owner's metals beside the built-in ones. Never throws
 * for bad readings: the refusal says why.
 */
export function evaluationOf(asked: unknown, own?: OwnMetals, knows: BenchKnows = {}): Evaluation {
  const parsed = computeRequest.safeParse(asked, { reportInput: true });
  if (!parsed.success) return { refused: fromSchema(null, parsed.error).error.message };
  const { situation, evidence = (parsed.data.evidence ?? []).map(evidenceOf) } = knows;
  try {
    const made = statementFor(parsed.data, {
      library: libraryWith(own),
      evidence,
      situation,
      owned: knows.owned,
      asksPerson: situation !== undefined || knows.asksPerson,
    });
    const request = parsed.data;
    if (made.drawn) {
      const { curve, displacedGrams } = made.drawn;
      return { request, statement: made.statement, curve: curve(), displacedGrams };
    }
    const { statement } = made;
    return { refused: statement.answer, stated: { request, statement } };
  } catch (error) {
    return { refused: fromMetrology("", error).error.message };
  }
}
