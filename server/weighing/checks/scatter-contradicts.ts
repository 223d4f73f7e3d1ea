import { levels } from "../../../calibration/agreement.ts";
import type { Found, ProcedureCheck } from "./procedure-check.ts";
import {
  aloneStandsOut,
  excluding,
  type Repeated,
  repeatedIn,
  severityOf,
  standingOut,
} from "./repeated-readings.ts";

/**
 * Readings of one load that scatter more than was stated: χ² against the stated scatter, or F where it was found with few
 * degrees of freedom (agreement.ts). Told at 0.02, where the mean is widened already; stopped at 0.001.
 */
export const scatterContradicts: ProcedureCheck = {
  code: "check.scatter-contradicts",
  detect: (situation) =>
    disagreeing(repeatedIn(situation).filter(({ role, assumed }) => role !== "dry" && !assumed)),
};

/** The worst of the loads whose readings scatter too much. */
export function disagreeing(loads: readonly Repeated[]): Found | undefined {
  const [worst] = loads.toSorted((a, b) => a.found.scatter.p - b.found.scatter.p);
  if (worst === undefined || worst.found.scatter.verdict === "agree") return undefined;
  return scattering(worst);
}

/** Readings that scatter more than one reading should, with what may be done about it. */
export function scattering(load: Repeated): Found {
  const { found, offers, statedGrams } = load;
  return {
    severity: severityOf(found.scatter.verdict === "contradict" ? "contradict" : "differ"),
    params: {
      ...standingOut(load),
      found_g: found.s,
      stated_g: statedGrams,
      chi_square: found.chiSquare,
      p: found.scatter.p,
      level: levels.stops,
    },
    remedies: [
      ...(aloneStandsOut(load)
        ? [{ code: "check.remedy.exclude-standing-out", offer: excluding(load) } as const]
        : []),
      {
        code: offers === "dry" ? "check.remedy.dry-and-repeat" : "check.remedy.repeat-undisturbed",
        offer: { do: "repeat", role: offers },
      },
      { code: "check.remedy.state-the-scatter" },
    ],
  };
}
