import type { ProcedureCheck } from "./procedure-check.ts";
import { grams, scatterGrams } from "./situation.ts";

/** Dry repeats further apart than the balance can scatter: another piece, a wet one, or fingers on it. */
export const dryReadingsDiffer: ProcedureCheck = {
  code: "check.dry-readings-differ",
  look(situation) {
    const masses = situation.dry.map(grams);
    if (masses.length < 2) return undefined;
    const span = Math.max(...masses) - Math.min(...masses);
    // the span of a few readings of one mass stays below about 4.5 σ (studentised range, 5 readings, 1 %)
    const tolerable = 4.5 * scatterGrams(situation, "dry");
    if (span <= tolerable) return undefined;
    return {
      severity: "stop",
      params: { span_g: span, tolerable_g: tolerable },
      remedies: [
        { code: "check.remedy.dry-and-repeat", offer: { do: "repeat", role: "dry" } },
        { code: "check.remedy.no-draught" },
      ],
    };
  },
};
