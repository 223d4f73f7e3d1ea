import { levels } from "../../../calibration/agreement.ts";
import { sameByChance } from "../../../calibration/display-step.ts";
import type { ProcedureCheck } from "./procedure-check.ts";
import { repeatedIn } from "./repeated-readings.ts";
import { grams, type Situation, type SituationReading } from "./situation.ts";

/**
 * The display gave the same line, to the last sign, from one capture to the next; or all repeats show the same figure
 * although the stated scatter spreads them over several steps. A piece that is lifted and laid or
 * hung anew moves it, so either it was not lifted, and the two readings are one, or the display or its cable hangs.
 * A flask that shows the same with a piece as without is stopped: every metal is denser than the liquid it drives out.
 */
export const displayStuck: ProcedureCheck = {
  code: "check.display-stuck",
  detect(situation) {
    const unchanged = stillAsFull(situation);
    const stuck = unchanged ?? all(situation).find(({ unmoved }) => unmoved) ?? stoodStill(situation);
    if (stuck === undefined) return undefined;
    return {
      severity: unchanged ? "stop" : "warn",
      params: { reading: { decimal: stuck.text }, unit: stuck.unit },
      remedies: [{ code: "check.remedy.touch-the-pan" }, { code: "check.remedy.exclude-second-look" }],
    };
  },
};

/** A reading of the flask with the piece that is, within a few steps, that of the full flask. */
function stillAsFull({ flaskFull = [], wet, balance }: Situation): SituationReading | undefined {
  const d = balance.immersedReadabilityGrams ?? balance.readabilityGrams;
  return wet.find((one) => flaskFull.some((full) => Math.abs(grams(one) - grams(full)) <= 2.5 * d));
}

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
