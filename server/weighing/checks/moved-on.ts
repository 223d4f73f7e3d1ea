import type { ProcedureCheck } from "./procedure-check.ts";
import { scatterGrams } from "./situation.ts";

/** From so many times the scatter of a reading on, what is recorded would be another number. */
const matters = 3;

/** The display moved on after the last reading was taken, while its load stayed: it was no reading of a load at rest. */
export const movedOn: ProcedureCheck = {
  code: "check.moved-on",
  detect(situation) {
    const moved = situation.live?.findLast((reading) => reading.movedOn)?.movedOn;
    if (moved === undefined) return undefined;
    const { grams, role } = moved;
    return {
      severity: Math.abs(grams) > matters * scatterGrams(situation, role) ? "stop" : "warn",
      params: { moved_g: grams },
      remedies: [{ code: "check.remedy.take-again", offer: { do: "repeat", role } }],
    };
  },
};
