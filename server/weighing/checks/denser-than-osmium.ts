import { densest } from "../../metals/possible-densities.ts";
import type { ProcedureCheck } from "./procedure-check.ts";

/** The whole interval of the density lies above osmium, the densest material there is. */
export const denserThanOsmium: ProcedureCheck = {
  code: "check.denser-than-osmium",
  detect({ density }) {
    if (density === undefined || density.valueGPerCm3 - density.expandedGPerCm3 <= densest) return undefined;
    return {
      severity: "stop",
      params: { density_g_cm3: density.valueGPerCm3, densest_g_cm3: densest },
      remedies: [{ code: "check.remedy.cover-fully", offer: { do: "repeat", role: "wet", instead: true } }],
    };
  },
};
