import { type Message, message } from "../../calibration/message.ts";
import { called } from "../metals/called.ts";
import type { Library } from "../metals/library.ts";
import type { Evidence } from "./evidence/evidence.ts";
import { type ExcludedByTest, weighEvidence } from "./evidence/weighed-evidence.ts";
import type { State } from "./state.ts";

/** What other tests alone say of a piece that was not weighed yet. */
export interface BeforeWeighing {
  state: State;
  answer: Message;
  /** contradictions and oddities */
  checks: Message[];
  excluded: ExcludedByTest[];
}

/** Holds other tests alone against the claim: they exclude it, or leave it open until the piece is weighed. */
export function beforeWeighing(
  claim: string | undefined,
  evidence: readonly Evidence[],
  library: Library,
): BeforeWeighing {
  const claimed = claim !== undefined && library.has(claim) ? library.metal(claim) : undefined;
  const { excluded, contradictions, remarks } = weighEvidence(
    { fits: library.metals, others: [], claimed: undefined },
    evidence,
    library.worth,
  );
  const checks = [...contradictions, ...remarks];
  const against = claimed && contradictions.length === 0 && excluded.some(({ id }) => id === claimed.id);
  return against
    ? {
        state: "excluded",
        answer: message("answer.excluded-untold", { claim: called(claimed) }),
        checks,
        excluded,
      }
    : {
        state: claimed ? "inconclusive" : "no-claim",
        answer: message("answer.not-weighed"),
        checks,
        excluded,
      };
}
