import type { Instrument } from "../conformity/next-test.ts";
import { builtIn, type Library } from "../metals/library.ts";
import { statementFor } from "../weighing/statement.ts";
import type { NoReading, Statement } from "../weighing/statement-shape.ts";
import { computeRequest } from "./contract.ts";
import { evidenceOf } from "./evidence-of.ts";
import { fromMetrology, fromSchema, idOf, type Refused } from "./refusal.ts";

/**
 * Answers one request of the contract, given as parsed JSON, with the statement of the weighing. Never throws for a bad
 * request: what is wrong with it is the answer then. The bench gives the library in force; the command line knows the
 * built-in one alone, so that the same lines give the same answers on every computer.
 */
export function compute(
  request: unknown,
  library: Library = builtIn,
  owned?: readonly Instrument[],
): Statement | NoReading | Refused {
  const parsed = computeRequest.safeParse(request, { reportInput: true });
  if (!parsed.success) return fromSchema(idOf(request), parsed.error);
  try {
    const evidence = (parsed.data.evidence ?? []).map(evidenceOf);
    return statementFor(parsed.data, { library, evidence, owned, asPublished: true }).statement;
  } catch (error) {
    return fromMetrology(parsed.data.id, error);
  }
}

/** True for the answer to a request that could not be computed. */
export function isError(answer: Statement | NoReading | Refused): answer is Refused {
  return "error" in answer;
}
