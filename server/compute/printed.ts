import type { Message } from "../../calibration/message.ts";
import type { NoReading, Statement } from "../weighing/statement-shape.ts";
import { isError } from "./compute.ts";
import type { ComputeError, ComputeResponse } from "./contract.ts";
import type { Refused } from "./refusal.ts";

/** Words of a message in the language of the answer. */
type Telling = (message: Message) => string;

/** A statement as the contract publishes it. */
export function printed(statement: Statement | NoReading, tell: Telling): ComputeResponse {
  const { checks, conformity, not_excluded, excluded_by_tests, fineness, answer, ...rest } = statement;
  const { says: sentence, consistent_after: _, global_risk, decision, ...stands } = conformity;
  return {
    ...rest,
    checks: checks.map(({ code, severity, params }) => ({
      code,
      severity,
      params,
      message: tell({ code, params }),
    })),
    conformity: {
      ...stands,
      ...(decision && { decision: { ...decision, ...(global_risk && { global_risk }) } }),
      message: tell(sentence ?? answer),
    },
    not_excluded: not_excluded.map(({ id, kind, occurrence, likelihood_ratio }) => ({
      id,
      kind,
      occurrence,
      likelihood_ratio,
    })),
    excluded_by_tests: excluded_by_tests.map(({ id, by }) => ({ id, by })),
    answer: tell(answer),
    fineness: fineness && withoutParts(fineness),
  } as ComputeResponse;
}

/** What sums need of a piece is no part of the contract: `--total` sums. */
function withoutParts({ parts: _, family_parts: __, ...fineness }: NonNullable<Statement["fineness"]>) {
  return fineness;
}

/** An answer as the contract publishes it. */
export function printedAnswer(
  answer: Statement | NoReading | Refused,
  tell: Telling,
): ComputeResponse | ComputeError {
  if (!isError(answer)) return printed(answer, tell);
  const { at, message } = answer.error;
  return { id: answer.id, error: { at, message: tell(message) } };
}
