import { climb } from "./climb.ts";
import type { ProcedureCheck } from "./procedure-check.ts";
import { densitiesInOrder } from "./still-climbing.ts";

/** The repeats climbed and then levelled off: the early ones held bubbles and pull the mean down. */
export const climbed: ProcedureCheck = {
  code: "check.climbed",
  detect(situation) {
    const { runs, levelled, fellGrams, early } = climb(situation);
    if (runs !== "up" || !levelled || early.length === 0) return undefined;
    return {
      severity: "warn",
      params: { densities: densitiesInOrder(situation), fell_g: fellGrams },
      remedies: [
        { code: "check.remedy.exclude-early", offer: { do: "exclude", role: "wet", places: early } },
        { code: "check.remedy.dry-and-weigh-again" },
      ],
    };
  },
};
