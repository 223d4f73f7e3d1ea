import { compute, isError } from "../../../server/compute/compute.ts";
import type { Statement } from "../../../server/weighing/statement-shape.ts";

/** The statement of a request; fails with the reason when no density follows. */
export function stated(request: unknown): Statement {
  const answer = compute(request);
  if (isError(answer)) throw new Error(`${answer.error.at}: ${JSON.stringify(answer.error.message)}`);
  if (answer.density_g_cm3 === null) throw new Error(`no density: ${JSON.stringify(answer.checks)}`);
  return answer;
}
