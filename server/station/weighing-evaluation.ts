import type { Evaluation } from "../compute/evaluation.ts";
import { builtIn } from "../metals/library.ts";
import { countingEvidence } from "../weighing/counting-evidence.ts";
import type { Item } from "../weighing/item.ts";
import { requestFor } from "../weighing/request.ts";
import { situationOf } from "../weighing/situation.ts";
import type { BenchParts } from "./bench-parts.ts";

/** What the readings of a piece come to so far; undefined while one is missing. */
export async function evaluationOfItem(
  item: Item,
  bench: Pick<BenchParts, "conditions" | "profileOf" | "evaluate" | "library">,
): Promise<Evaluation | undefined> {
  const request = requestFor(item, bench.conditions(), bench.profileOf);
  if (request === undefined) return undefined;
  const situation = situationOf(item, request.balance, undefined, bench.library?.() ?? builtIn);
  return bench.evaluate(request, { situation, evidence: countingEvidence(item.tests) });
}
