import type { ComputeRequest } from "../compute/contract.ts";
import type { Library } from "../metals/library.ts";
import { answerOf } from "./answer.ts";
import { noNumbers } from "./no-numbers.ts";
import type { NoReading, StatedCheck } from "./statement-shape.ts";

/** What a stop check leaves to say of a claim: nothing. */
export function withoutVerdict({ claim }: ComputeRequest) {
  return {
    conformity: { claim: claim ?? null, state: "no-valid-reading" as const },
    not_excluded: [],
    excluded_by_tests: [],
    fineness: null,
    cautions: [],
    next_tests: [],
  };
}

/** The statement of readings from which no density follows. */
export function noReading(request: ComputeRequest, checks: StatedCheck[], library: Library): NoReading {
  const statement = {
    id: request.id,
    ...noNumbers,
    checks,
    ...withoutVerdict(request),
    versions: { library: library.version },
  };
  return { ...statement, answer: answerOf(statement, undefined, library) };
}
