import type { ResultView } from "../../../views/result.tsx";
import { calledById } from "../../metals/composites/composite-by-id.ts";
import type { Library } from "../../metals/library.ts";
import type { RecordedNoReading, RecordedStatement } from "../../weighing/recorded-statement.ts";

/** The meaning of a statement as pages draw it. */
export function resultViewOf(
  { conformity, not_excluded, answer, fineness, cautions = [] }: RecordedStatement | RecordedNoReading,
  library: Library,
): ResultView {
  const { claim, state, says: message, decision, global_risk: risk } = conformity;
  return {
    state,
    ...(claim === null ? {} : { claim: calledById(claim, library) }),
    answer,
    ...(message && { message }),
    claimStands: not_excluded.some(({ id }) => id === claim),
    alternatives: not_excluded
      .filter(({ id }) => id !== claim)
      .map(({ id, kind, occurrence, likelihood_ratio, why, separated_by }) => ({
        id,
        called: calledById(id, library),
        ...(kind && { kind }),
        ...(occurrence && { occurrence }),
        ...(likelihood_ratio === undefined ? {} : { likelihoodRatio: likelihood_ratio }),
        ...(why && { why }),
        ...(separated_by && { separatedBy: separated_by.message }),
      })),
    ...(fineness && { fineness }),
    cautions,
    ...(decision && { decision }),
    ...(risk && {
      risk: {
        wrong: 1000 * (risk.consumers + risk.beyond_density),
        rightly: 1000 * risk.producers,
        unseen: 1000 * risk.beyond_density,
      },
    }),
  };
}
