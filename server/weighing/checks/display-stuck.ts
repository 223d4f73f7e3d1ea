import { levels } from "../../../calibration/agreement.ts";
import { sameByChance } from "../../../calibration/display-step.ts";
import type { ProcedureCheck } from "./procedure-check.ts";
import { repeatedIn } from "./repeated-readings.ts";
import type { Situation, SituationReading } from "./situation.ts";

/**
 * The display gave the same line, to the last sign, from one capture to the next; or all repeats show the same figure
 * although the stated scatter spreads them over several steps. A piece that is lifted and laid or
 * hung anew moves it, so either it was not lifted, and the two readings are one, or the display or its cable hangs.
 */
export const displayStuck: ProcedureCheck = {
  code: "check.display-stuck",
  look(situation) {
    const stuck = all(situation).find(({ unmoved }) => unmoved) ?? stoodStill(situation);
    if (stuck === undefined) return undefined;
    return {
      severity: "warn",
      params: { reading: { decimal: stuck.text }, unit: stuck.unit },
      remedies: [{ code: "check.remedy.touch-the-pan" }, { code: "check.remedy.exclude-second-look" }],
    };
  },
};

/** A reading of a load whose repeats all show the same, where they should scatter over several steps. */
function stoodStill(situation: Situation): SituationReading | undefined {
  return repeatedIn(situation).find(
    ({ readings, found, repeatabilityGrams, readabilityGrams }) =>
      found.span === 0 && sameByChance(readings.length, repeatabilityGrams, readabilityGrams) < levels.stops,
  )?.readings[0];
}

function all({ dry, wet, flaskFull, dryAfter, zeros }: Situation): SituationReading[] {
  return [dry, wet, flaskFull ?? [], dryAfter ?? [], zeros ?? []].flat();
}
