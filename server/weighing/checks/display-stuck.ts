import type { ProcedureCheck } from "./procedure-check.ts";
import type { Situation, SituationReading } from "./situation.ts";

/**
 * The display gave the same line, to the last sign, from one capture to the next. A piece that is lifted and laid or
 * hung anew moves it, so either it was not lifted, and the two readings are one, or the display or its cable hangs.
 */
export const displayStuck: ProcedureCheck = {
  code: "check.display-stuck",
  look(situation) {
    const stuck = all(situation).find(({ unmoved }) => unmoved);
    if (stuck === undefined) return undefined;
    return {
      severity: "warn",
      params: { reading: { decimal: stuck.text }, unit: stuck.unit },
      remedies: [{ code: "check.remedy.touch-the-pan" }, { code: "check.remedy.exclude-second-look" }],
    };
  },
};

function all({ dry, wet, flaskFull, dryAfter, zeros }: Situation): SituationReading[] {
  return [dry, wet, flaskFull ?? [], dryAfter ?? [], zeros ?? []].flat();
}
