import type { ProcedureCheck } from "./procedure-check.ts";
import { repeatedIn } from "./repeated-readings.ts";
import { disagreeing } from "./scatter-contradicts.ts";

/** Dry repeats further apart than the balance scatters: another piece, a wet one, or fingers on it. */
export const dryReadingsDiffer: ProcedureCheck = {
  code: "check.dry-readings-differ",
  detect: (situation) =>
    disagreeing(repeatedIn(situation).filter(({ role, assumed }) => role === "dry" && !assumed)),
};
