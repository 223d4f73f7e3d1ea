import { gramsPerUnit, massUnits } from "../../../calibration/units.ts";
import type { ProcedureCheck } from "./procedure-check.ts";
import { meanGrams, scatterGrams } from "./situation.ts";

/** A dry mass no piece has, or not the mass the ticket gives: wrong piece, wrong unit, or a slip of the point. */
export const massNotExpected: ProcedureCheck = {
  code: "check.mass-not-expected",
  detect(situation) {
    const { dry, expectedMass } = situation;
    const mass = meanGrams(dry);
    const unit = dry[0]?.unit;
    if (mass === undefined || unit === undefined) return undefined;
    // no more than an empty pan shows
    if (mass <= 3 * scatterGrams(situation, "dry"))
      return {
        severity: "stop",
        params: { dry_g: mass, case: "none", low_g: 0, high_g: 0, from: "", unit, meant: "" },
        remedies: [
          { code: "check.remedy.zero-empty-pan", offer: { do: "repeat", role: "dry", instead: true } },
        ],
      };
    if (expectedMass === undefined) return undefined;
    const { lowGrams, highGrams, from } = expectedMass;
    if (mass >= lowGrams && mass <= highGrams) return undefined;
    const shown = mass / Number(gramsPerUnit[unit]);
    const fits = (grams: number) => grams >= lowGrams && grams <= highGrams;
    const meant = massUnits.find((other) => other !== unit && fits(shown * Number(gramsPerUnit[other])));
    const shifted = [0.01, 0.1, 10, 100].find((factor) => fits(mass * factor));
    return {
      severity: "stop",
      params: {
        dry_g: mass,
        low_g: lowGrams,
        high_g: highGrams,
        from,
        unit,
        meant: meant ?? "",
        case: meant !== undefined ? "unit" : shifted !== undefined ? "point" : "other",
      },
      remedies: [{ code: "check.remedy.compare-piece" }, { code: "check.remedy.look-at-unit" }],
    };
  },
};
