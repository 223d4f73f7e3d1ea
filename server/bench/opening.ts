import type { BodyOf } from "../ledger/kinds.ts";
import type { Preferences } from "./bench-parts.ts";
import type { Conditions } from "./conditions.ts";
import type { Ticket } from "./piece.ts";

/** The ticket, with the rule in force at this moment: one chosen later would be chosen after the value is known. */
export function openingBody(
  { ticket, description, method, claim, lot, ...told }: Ticket,
  { decisionRule }: Preferences,
  { confidencePercent }: Conditions,
): BodyOf<"piece-opened"> {
  return {
    ticket,
    description,
    method,
    claim: claim ?? null,
    ...(lot === undefined ? {} : { lot }),
    ...told,
    rule: { ...decisionRule, confidence_percent: confidencePercent },
  };
}
