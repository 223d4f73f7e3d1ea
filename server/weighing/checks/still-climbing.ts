import type { Param } from "../../../calibration/message.ts";
import { climb } from "./climb.ts";
import type { ProcedureCheck } from "./procedure-check.ts";
import { displacedInOrder, meanGrams, roughDensity, type Situation } from "./situation.ts";

/** Common practice: after five immersions that still rise, the run is stopped. */
const enough = 5;

/** Each immersion reads denser than the one before and no two agree yet: bubbles are leaving, or water goes in. */
export const stillClimbing: ProcedureCheck = {
  code: "check.still-climbing",
  look(situation) {
    const { runs, levelled, fellGrams } = climb(situation);
    if (runs !== "up" || levelled) return undefined;
    const many = situation.wet.length >= enough;
    return {
      severity: "stop",
      params: {
        densities: densitiesInOrder(situation),
        fell_g: fellGrams,
        count: situation.wet.length,
        many: many ? "yes" : "no",
      },
      remedies: many
        ? [{ code: "check.remedy.stop-the-run" }, { code: "check.remedy.boil-and-wet" }]
        : [
            { code: "check.remedy.go-on", offer: { do: "repeat", role: "wet" } },
            { code: "check.remedy.brush-and-edge" },
          ],
    };
  },
};

/** The rough densities of the immersions in g/cm³ to a hundredth, in order. */
export function densitiesInOrder(situation: Situation): Param {
  const dry = meanGrams(situation.dry) ?? Number.NaN;
  return displacedInOrder(situation).map((displaced) => ({
    decimal: roughDensity(dry, displaced, situation.liquidGPerCm3).toFixed(2),
  }));
}
