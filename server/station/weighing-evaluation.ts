import type { Evaluation } from "../compute/evaluation.ts";
import { resultsByClaim } from "../laboratory/results-by-claim.ts";
import { builtIn } from "../metals/library.ts";
import { countingEvidence } from "../weighing/counting-evidence.ts";
import type { Item } from "../weighing/item.ts";
import { requestFor } from "../weighing/request.ts";
import { situationOf } from "../weighing/situation.ts";
import type { BenchParts } from "./bench-parts.ts";

/** What the readings of a piece come to so far; undefined while one is missing. */
export async function evaluationOfItem(
  item: Item,
  bench: Pick<BenchParts, "ledger" | "conditions" | "profileOf" | "evaluate" | "library">,
): Promise<Evaluation | undefined> {
  const request = requestFor(item, bench.conditions(), bench.profileOf);
  if (request === undefined) return undefined;
  const library = bench.library?.() ?? builtIn;
  const situation = situationOf(item, request.balance, undefined, library);
  const results = item.claim === undefined ? [] : await resultsByClaim(bench.ledger, item.claim, library);
  const asked = results.length > 0 ? { ...request, laboratory_results: results } : request;
  return bench.evaluate(asked, { situation, evidence: countingEvidence(item.tests) });
}
