import { climb } from "./climb.ts";
import type { ProcedureCheck } from "./procedure-check.ts";
import { densitiesInOrder } from "./still-climbing.ts";

/** Each immersion reads lighter than the one before: fresh cold water gives off its air onto the piece. */
export const bubblesGrowing: ProcedureCheck = {
  code: "check.bubbles-growing",
  detect(situation) {
    const { runs, levelled, fellGrams } = climb(situation);
    if (runs !== "down") return undefined;
    return {
      severity: levelled ? "warn" : "stop",
      params: { densities: densitiesInOrder(situation), grew_g: -fellGrams },
      remedies: [
        { code: "check.remedy.boil-water" },
        { code: "check.remedy.brush-and-read", offer: { do: "repeat", role: "wet" } },
        { code: "check.remedy.thin-wire" },
      ],
    };
  },
};
