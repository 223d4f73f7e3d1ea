import { solidMetal } from "../../metals/possible-densities.ts";
import { nothingOnHook } from "./nothing-on-hook.ts";
import type { ProcedureCheck } from "./procedure-check.ts";
import { roughDensity, scatterGrams, soFar } from "./situation.ts";

/** Denser than osmium: part of the piece stands out of the water, or part of the buoyancy went missing. */
export const notCovered: ProcedureCheck = {
  code: "check.not-covered",
  detect(situation) {
    const now = soFar(situation);
    if (now === undefined || now.displacedGrams <= 0 || now.dryGrams <= 0) return undefined;
    // a coarse scale may miss the densest metals by its own scatter
    const most = now.displacedGrams + 2 * scatterGrams(situation, "wet");
    if (
      roughDensity(now.dryGrams, most, situation.liquidGPerCm3) <= solidMetal.high ||
      nothingOnHook.detect(situation) !== undefined
    )
      return undefined;
    return {
      severity: "stop",
      params: { displaced_g: now.displacedGrams, dry_g: now.dryGrams, density_g_cm3: now.gPerCm3 },
      remedies: [
        { code: "check.remedy.cover-fully", offer: { do: "repeat", role: "wet", instead: true } },
        { code: "check.remedy.hanger-in-one" },
        { code: "check.remedy.evaporation-and-zero" },
      ],
    };
  },
};
