import type { ItemEvidence } from "./item-evidence.ts";
import type { ItemTerms } from "./settlement.ts";
import type { LeftOutReason } from "./source.ts";

type Held = Extract<
  LeftOutReason,
  "voided" | "no-valid-reading" | "excluded" | "tests-against" | "mass-changed"
>;

/** Why a piece is paid for only once a named person has decided so; undefined where nothing speaks against it. */
export function heldBack({ item, changed }: ItemEvidence): Held | undefined {
  if (item.voided) return "voided";
  if (item.state === "no-valid-reading") return "no-valid-reading";
  if (item.state === "excluded") return "excluded";
  if (item.testsAgainst) return "tests-against";
  return changed && changed.kind !== "the same" ? "mass-changed" : undefined;
}

/** The decision on a piece that counts: one from before it was weighed, tested or assayed anew no longer does. */
export function standingDecision(
  { item }: Pick<ItemEvidence, "item">,
  { decision }: ItemTerms,
): ItemTerms["decision"] {
  return decision !== undefined && decision.seq > item.changedSeq ? decision : undefined;
}
