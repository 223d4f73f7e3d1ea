import type { Param } from "../../../calibration/message.ts";
import { climb } from "./climb.ts";
import type { ProcedureCheck } from "./procedure-check.ts";
import { displacedInOrder, meanGrams, roughDensity, type Situation } from "./situation.ts";

/** Common practice: after five immersions that still rise, the run is stopped. */
const enough = 5;

/** Each immersion reads denser than the one before and no two agree yet: bubbles are leaving, or water goes in. */
export const stillClimbing: ProcedureCheck = {
  code: "check.still-climbing",
  detect(situation) {
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

/** The rough densities of the immersions in g/cm³, in order: to a hundredth, or as finely as their run shows. */
export function densitiesInOrder(situation: Situation): Param {
  const dry = meanGrams(situation.dry) ?? Number.NaN;
  const densities = displacedInOrder(situation).map((displaced) =>
    roughDensity(dry, displaced, situation.liquidGPerCm3),
  );
  const span = Math.max(...densities) - Math.min(...densities);
  const decimals = Math.min(5, Math.max(2, 1 - Math.floor(Math.log10(span))));
  return densities.map((density) => ({ decimal: density.toFixed(decimals) }));
}
